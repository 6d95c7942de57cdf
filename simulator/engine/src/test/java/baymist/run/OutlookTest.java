package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SceneFixtures;
import baymist.scene.SupplySpec;
import baymist.scene.WallFinish;
import org.junit.jupiter.api.Test;

/** Laws of the outlook, on a block of 1 x 0.2 x 0.15 m with one ring pass. */
class OutlookTest {
    private static SceneFixtures job() {
        return SceneFixtures.minimal().withVoxel(0.025, 0.025, 0.025).withHangS(30);
    }

    private static ProductSpec product(double nonVolatile, double settingS) {
        return new ProductSpec("oil", 880, 0.04, 0.03, nonVolatile, 293.15, 5e-6, 0, 0, 1, settingS);
    }

    @Test
    void whatLeftByOpeningsIsTheLedgersOverspray() {
        RunResult r = TestScenes.run(job().build(), 2);
        Outlook o = r.outlook();
        assertEquals(r.ledger().oversprayKg(), o.escapedKg(), 1e-12 * r.ledger().sprayedKg());
        // The jets' air has one way out: orifice, Cd 0.85 at 80 psi (Moss), times the trigger time; some is still
        // pressed in.
        double air = o.releases().get(0).airM3();
        assertEquals("hole", o.releases().get(0).opening());
        assertTrue(air > 5e-3 && air < 20e-3, air + " m3");
    }

    @Test
    void productNeededIsTargetTimesAreaAndTheBoreStaysFull() {
        RunResult r = TestScenes.run(job().build(), 2);
        assertEquals(880 * r.coverage().total().areaM2() * 10e-6, r.outlook().neededKg(), 1e-12);
        assertEquals(
                Math.PI / 4 * 0.002 * 0.002 * 1.2, r.outlook().wands().get(0).volumeM3(), 1e-12);
    }

    @Test
    void dryIsTheNonVolatileShareAndNoFilmComesLater() {
        RunResult r = TestScenes.run(
                job().withProduct(product(0.5, Double.POSITIVE_INFINITY)).build(), 2);
        Outlook o = r.outlook();
        Outlook.FilmAge now = o.ages().get(0);
        Outlook.FilmAge later = o.ages().get(1);
        assertEquals(
                r.coverage().total(),
                new baymist.coverage.Fractions(
                        "all surfaces",
                        now.wet().areaM2(),
                        now.wet().reached(),
                        now.wet().protectedShare(),
                        now.wet().thin(),
                        now.wet().excess(),
                        now.wet().meanFilmM()));
        assertEquals(0.5 * now.wet().meanFilmM(), now.dry().meanFilmM(), 1e-18);
        assertTrue(now.dry().protectedShare() <= now.wet().protectedShare());
        double lost =
                (now.wet().meanFilmM() - later.wet().meanFilmM()) * now.wet().areaM2() * 880;
        assertTrue(lost >= -1e-12 * r.ledger().filmKg());
        assertTrue(o.drippedLaterKg() <= lost + 1e-12 * r.ledger().filmKg());
    }

    @Test
    void aFilmThatSetsAtOnceStays() {
        RunResult r = TestScenes.run(job().withProduct(product(1, 1e-3)).build(), 2);
        Outlook o = r.outlook();
        assertEquals(
                o.ages().get(0).wet().protectedShare(), o.ages().get(1).wet().protectedShare(), 1e-3);
        assertEquals(0, o.drippedLaterKg(), 1e-9);
    }

    @Test
    void denserFogMeetsMoreOften() {
        SupplySpec thick = new SupplySpec.Pressure(551_580.58, 0.85, 3.7e-3, new DropletSpec.RosinRammler(30e-6, 2));
        double thin = TestScenes.run(job().build(), 2).outlook().coagulating().meetings();
        RunResult r = TestScenes.run(job().withSupply(thick).build(), 2);
        assertTrue(thin > 0);
        assertEquals(10, r.outlook().coagulating().meetings() / thin, 0.1);
        assertTrue(r.findings().stream().anyMatch(f -> f.id().equals("FOG-001"))
                == r.outlook().coagulating().growth() > 1.1);
    }

    @Test
    void sharesOfFilmAreOrdered() {
        Outlook o = TestScenes.run(job().build(), 2).outlook();
        assertTrue(o.closedShare() <= o.wettedShare() && o.wettedShare() <= 1);
        assertTrue(o.seams().protectedShare() <= o.seams().reached());
        // Twelve edges of the block, 4 (1 + 0.2 + 0.15) m.
        assertEquals(5.4, o.seams().lengthM(), 1e-9);
        assertTrue(o.seamDepthM() > 0 && o.seamDepthM() < 0.1);
        assertTrue(o.wallForceOverThrust() > 0);
    }

    @Test
    void measuredWallsTakeMoreFogThanSmoothOnes() {
        RunResult smooth = TestScenes.run(job().build(), 2);
        RunResult lining =
                TestScenes.run(job().withWalls(WallFinish.ROUGH_LINING).build(), 2);
        assertTrue(sum(lining.fogKg()) > sum(smooth.fogKg()));
        assertEquals("rough_lining", lining.record().settings().get("walls"));
        assertTrue(Math.abs(lining.ledger().closure()) <= 1e-9);
    }

    private static double sum(double[] kg) {
        double sum = 0;
        for (double k : kg) {
            sum += k;
        }
        return sum;
    }
}
