package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.ClockAngle;
import baymist.access.Station;
import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.units.Air;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The jet seen from the sheet against the caster's rays and against the Gaussian's closed form. */
class JetReachTest {
    private static final DropletSpec COARSE = new DropletSpec.Classes(new double[] {300e-6}, new double[] {1});
    private static final double LIQUID = 5e-4;
    private static final ProductSpec PRODUCT = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15);
    private static final double CEILING_TIP = 0.14;

    private final GridFixture box = new GridFixture();

    private static SupplySpec supply(DropletSpec drops) {
        return new SupplySpec.Pressure(551_581, 0.85, LIQUID, drops);
    }

    private static WandSpec wand(double offAxis) {
        return new WandSpec("w", 1, 6e-3, 2e-3, new TipSpec("t", List.of(new TipSpec.Jet(offAxis, 0, 0.8e-3, 1, 1))));
    }

    private static JetReach reach(DropletSpec drops, JetSource jet) {
        return JetReach.of(jet, DropletBins.of(drops, 8), PRODUCT, Air.STANDARD, 1);
    }

    private static JetSource jet(double offAxis, TipPose pose, DropletSpec drops) {
        SupplySpec atTip =
                TipFlow.of(supply(drops), wand(offAxis), PRODUCT, Air.STANDARD).supply();
        return TipJets.of(wand(offAxis).tip(), pose, atTip, Air.STANDARD).get(0);
    }

    @ParameterizedTest
    @CsvSource({"0.02", "0.05"})
    void coarseDropsOnADiscSquareToTheJetAreTheGaussiansShare(double radiusM) {
        // 1 - exp(-ln2 (R/b)² (1 + 1/k²)), equation (5) of docs/theory/spray.md: closed form
        double x = 0.25;
        TipPose pose = new TipPose(Vec3.ZERO, Vec3.X, Vec3.Z);
        JetReach reach = reach(COARSE, jet(0, pose, COARSE));
        double sum = 0;
        int rings = 400;
        for (int i = 0; i < rings; i++) {
            double r = (i + 0.5) * radiusM / rings;
            double distance = Math.hypot(x, r);
            double cos = x / distance;
            sum += reach.share(distance, cos, cos, 2 * Math.PI * r * radiusM / rings);
        }
        double q = radiusM / (RoundJet.SPREAD * x);
        double width = 1 + 1 / (RoundJet.FOG_WIDTH * RoundJet.FOG_WIDTH);
        assertEquals(1 - Math.exp(-Math.log(2) * q * q * width), sum, 1e-3);
    }

    @ParameterizedTest
    @CsvSource({"0, 15e-6", "0, 30e-6", "20, 15e-6", "20, 30e-6", "-25, 60e-6"})
    void aFloorCatchesWhatTheCastersRaysLandOnIt(double tiltDeg, double dv50) {
        DropletSpec drops = new DropletSpec.RosinRammler(dv50, 2);
        Vec3 tip = new Vec3(0.2, 0.15, CEILING_TIP);
        double off = Math.toRadians(90 + tiltDeg);
        TipPose pose = new TipPose(tip, Vec3.Y, Vec3.Z.negate());
        SprayCaster caster = new SprayCaster(
                box.cavity,
                box.grid,
                new BruteTracer(box.cavity.sheets()),
                box,
                supply(drops),
                DropletBins.of(drops, 8),
                PRODUCT,
                Air.STANDARD,
                CastSettings.rays(4096));
        SprayHits hits = caster.cast(new Station(0, pose, 0, 1, 0.15), wand(off), new double[] {1, 1});
        double landed = 0;
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            landed += box.grid.surfels().part()[hits.hitSurfel()[i]] == 4 ? hits.hitKgPerS()[i] : 0;
        }
        JetSource jet = jet(off, pose, drops);
        JetReach reach = reach(drops, jet);
        double sum = 0;
        double h = 1e-3;
        for (double x = h / 2; x < 0.4; x += h) {
            for (double y = h / 2; y < GridFixture.RIB_Y; y += h) {
                Vec3 way = new Vec3(x, y, 0).minus(tip);
                double d = way.length();
                sum += reach.share(d, jet.direction().dot(way) / d, -way.z() / d, h * h);
            }
        }
        assertEquals(landed / LIQUID, sum, 0.01);
        assertTrue(sum > 0.02 && sum < 1, "neither none nor all of it lands: " + sum);
    }

    @Test
    void fartherAndMoreSlantingLandsLess() {
        DropletSpec drops = new DropletSpec.RosinRammler(20e-6, 2);
        TipPose pose = new TipPose(Vec3.ZERO, Vec3.X, ClockAngle.pin(Vec3.X, 0));
        JetReach reach = reach(drops, jet(0, pose, drops));
        double before = 1;
        for (double x = 0.02; x < 1; x += 0.02) {
            assertTrue(reach.landing(x, 1) <= before + 1e-12);
            before = reach.landing(x, 1);
            double square = 1;
            for (double n = 1; n > 0; n -= 0.1) {
                assertTrue(reach.landing(x, n) <= square + 1e-12);
                square = reach.landing(x, n);
            }
        }
        assertEquals(0, reach.share(0.2, -0.5, 0.5, 1e-4));
        assertEquals(0, reach.share(0.2, Math.cos(Math.atan(2.6 * RoundJet.SPREAD)), 0.5, 1e-4));
    }
}
