package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.coverage.Coverage;
import baymist.coverage.CoverageAssessor;
import baymist.coverage.Fractions;
import baymist.coverage.ItemAssessor;
import baymist.coverage.ItemDose;
import baymist.coverage.SeamCoverage;
import baymist.coverage.UnreachedRegion;
import baymist.geom.Vec3;
import baymist.scene.BodySpec;
import baymist.scene.PassSpec;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.TargetSpec;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Conservation as the reference: in every table of one whole run with two passes, two masked items and two vents the parts are the whole. */
class TablesTest {
    private static final RunResult RUN = TestScenes.run(scene(), 2);

    private static ProtectedItem item(String name, double x, ProtectedItem.Mask mask) {
        BodySpec body =
                new BodySpec.Cuboid(new Vec3(x, 0.05, 0.05), new Vec3(0.12, 0.05, 0.06), Vec3.X, Vec3.Y, Vec3.Z);
        return new ProtectedItem(name, body, null, 1e-6, mask, SceneFixtures.HERE);
    }

    private static Scene scene() {
        PassSpec deep = new PassSpec("deep", "aft", "rod", 0.8, 0.4, 0.1, 0, 0, 5, SceneFixtures.HERE);
        PassSpec near = new PassSpec("near", "aft", "rod", 0.35, 0.05, 0.1, 0, 0, 0, SceneFixtures.HERE);
        return SceneFixtures.minimal()
                .withVoxel(0.025, 0.025, 0.025)
                .withHangS(30)
                .withCuts(
                        SceneFixtures.round("hole", "aft wall", 0.02, new Vec3(1, 0.1, 0.075)),
                        SceneFixtures.round("vent", "ceiling", 0.015, new Vec3(0.2, 0.1, 0.15)))
                .withPasses(deep, near)
                .withProtected(
                        item("clutch", 0.3, ProtectedItem.Mask.BAG), item("fitting", 0.7, ProtectedItem.Mask.TAPE))
                .build();
    }

    private static <T> double sum(List<T> rows, ToDoubleFunction<T> value) {
        return rows.stream().mapToDouble(value).sum();
    }

    @Test
    void partsBaysFacingsAndRegionsAreTheWholeArea() {
        Coverage c = RUN.coverage();
        double area = c.total().areaM2();
        for (List<Fractions> table : List.of(c.byPart(), c.byBay(), c.byFacing())) {
            assertEquals(area, sum(table, Fractions::areaM2), 1e-12);
            assertEquals(area * c.total().reached(), sum(table, f -> f.areaM2() * f.reached()), 1e-12);
        }
        assertEquals(area * (1 - c.total().reached()), sum(c.unreached(), UnreachedRegion::areaM2), 1e-12);
    }

    @Test
    void seamsByPartBayKindAndPairAreAllSeams() {
        SeamCoverage c = RUN.coverage().seams();
        assertTrue(c.lengthM() > 0 && c.reached() > 0);
        for (List<SeamCoverage.Share> table : List.of(c.byPart(), c.byBay(), c.byKind())) {
            assertEquals(c.lengthM(), sum(table, SeamCoverage.Share::lengthM), 1e-9);
            assertEquals(c.lengthM() * c.reached(), sum(table, s -> s.lengthM() * s.reached()), 1e-9);
        }
        assertEquals(c.lengthM(), sum(c.bySeam(), SeamCoverage.Seam::lengthM), 1e-9);
        assertEquals(c.lengthM() * c.reached(), sum(c.bySeam(), s -> s.lengthM() * s.reached()), 1e-9);
    }

    /** What every pass brought to an item is what lies on its mask, and all masks together hold what the ledger calls masked. */
    @Test
    void arrivalsByPassAreTheDoseAndDosesAreTheMaskedProduct() {
        List<ItemDose> doses = ItemAssessor.assess(RUN.scene(), RUN.cavity(), RUN.grid(), RUN.filmM());
        assertEquals(2, doses.size());
        for (ItemDose d : doses) {
            List<Consequences.Arrival> own = RUN.outlook().consequences().arrivals().stream()
                    .filter(a -> a.item().equals(d.name()))
                    .toList();
            assertTrue(d.filmKg() > 0 && own.size() == 2, d + " " + own);
            // what runs on to a mask from the sheet is seen by the film alone: some millionths here
            assertEquals(d.filmKg(), sum(own, a -> a.jetKg() + a.fogKg()), 1e-4 * d.filmKg());
        }
        // beside the masks only the wand in its entry is masked
        double masked = RUN.ledger().maskedKg();
        assertEquals(masked, sum(doses, ItemDose::filmKg), 1e-3 * masked);
    }

    @Test
    void oilByBayIsAllOilAndWhatIsAllThereIs() {
        List<Consequences.Oil> oil = RUN.outlook().consequences().oil();
        Consequences.Oil all = oil.get(oil.size() - 1);
        assertEquals(Consequences.ALL, all.bay());
        List<Consequences.Oil> bays = oil.subList(0, oil.size() - 1);
        assertEquals(all.massKg(), sum(bays, Consequences.Oil::massKg), 1e-12);
        assertEquals(all.standingKg(), sum(bays, Consequences.Oil::standingKg), 1e-12);
        Vec3 moment = Vec3.ZERO;
        for (Consequences.Oil o : bays) {
            moment = moment.plus(o.massKg(), o.centreM());
        }
        assertEquals(0, moment.times(1 / all.massKg()).distance(all.centreM()), 1e-9);
        // film at close-up less what drips later; the product has no volatile share
        assertEquals(
                RUN.ledger().filmKg() - RUN.outlook().drippedLaterKg(),
                all.massKg(),
                1e-6 * RUN.ledger().filmKg());
    }

    @Test
    void fogAndSprayThatLeftByOpeningsAreTheOverspray() {
        double left =
                sum(RUN.outlook().releases(), r -> r.fogKg()) + RUN.outlook().escapedSprayKg();
        assertEquals(RUN.ledger().oversprayKg(), left, 1e-9 * RUN.ledger().sprayedKg());
        assertEquals(
                RUN.ledger().sprayedKg(),
                RUN.ledger().filmKg()
                        + RUN.ledger().airborneKg()
                        + RUN.ledger().oversprayKg()
                        + RUN.ledger().drippedKg()
                        + RUN.ledger().maskedKg(),
                1e-9 * RUN.ledger().sprayedKg());
    }

    @Test
    void coverageOfTheRunFallsAsEachThresholdRises() {
        double reached = 1;
        double covered = 1;
        double bare = 0;
        for (double um : new double[] {0.1, 0.5, 1, 3, 10, 30, 100}) {
            TargetSpec target = new TargetSpec(um * 1e-6, 2e-6 * um, 5e-6 * um);
            Coverage c = CoverageAssessor.assess(RUN.cavity(), RUN.grid(), RUN.filmM(), target);
            assertTrue(c.total().reached() <= reached && c.total().protectedShare() <= covered, um + " um");
            double now = sum(c.unreached(), UnreachedRegion::areaM2);
            assertTrue(now >= bare - 1e-12, um + " um");
            reached = c.total().reached();
            covered = c.total().protectedShare();
            bare = now;
        }
        assertTrue(reached < 1 && bare > 0);
    }
}
