package baymist.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.study.Planning;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Reach fields of a block of 1 x 0.2 x 0.15 m with an entry in its aft wall. */
class ReachFieldTest {
    private static final Planning FINE = new Planning(1, 6, 256, 1);
    private static final TipSpec ONE_SIDED =
            new TipSpec("one-sided", List.of(new TipSpec.Jet(Math.PI / 2, 0, 0.8e-3, 1, 1)));

    private static SceneFixtures block() {
        return SceneFixtures.minimal().withVoxel(0.025, 0.025, 0.025).withHangS(60);
    }

    private static Scene oneSided() {
        // a pass that sprays the ceiling alone: the floor and the walls stay bare
        return block().withWands(new WandSpec("rod", 1.2, 0.00635, 0.002, ONE_SIDED))
                .withPasses(new PassSpec("up", "aft", "rod", 0.8, 0.05, 0.1, 0, 0, 0, SceneFixtures.HERE))
                .build();
    }

    /** The same with nothing sprayed yet: no ceiling that drips on the floor. */
    private static Scene clean() {
        return oneSided().withPasses(List.of());
    }

    private static ReachField field(Scene scene, RegionChoice region, boolean confirm) {
        return ReachFields.of(scene, new FieldOptions(region, confirm, FINE), new RunOptions(2), RunObserver.NONE);
    }

    @Test
    void theBestPoseTurnsTheJetToTheRegionAndTheForwardRunAgrees() {
        // a spot on the floor, where film stays: the pin must turn from twelve to six o'clock
        RegionChoice spot = new RegionChoice.At(new Vec3(0.5, 0.1, 0), 0.06);
        ReachField f = field(clean(), spot, true);
        PoseShare best = f.poses().get(0);
        Vec3 jet = best.pose().pin();
        double flight = -best.pose().positionM().z() / jet.z();
        Vec3 struck = best.pose().positionM().plus(flight, jet);
        assertTrue(flight > 0 && struck.distance(f.region().centroidM()) < 0.06, "it strikes " + struck);
        assertTrue(best.share() > 0.6, "share " + best.share());
        Confirmation k = f.confirmed();
        assertNotNull(k);
        // what the field promises is what the run brings, as far as jets go: the same cast; fog adds a little
        assertEquals(k.predictedKg(), k.gainedKg(), 0.03 * k.predictedKg());
        assertEquals(0, k.filmBeforeM());
        assertTrue(k.reachedAfter() > 0.1, k.toString());
    }

    @Test
    void thePassForABareFloorReachesItAndStatesWhatTheRunFinds() {
        ReachField f = field(clean(), new RegionChoice.OfPart("floor"), true);
        assertNotNull(f.pass());
        assertNotNull(f.confirmedPass());
        assertTrue(f.confirmedPass().reachedAfter() > 0.1, f.pass() + "\n" + f.confirmedPass());
        assertEquals(f.pass().wetted(), f.confirmedPass().reachedAfter(), 0.1);
        assertTrue(f.poses().get(0).useful() > 0.1, f.poses().toString());
    }

    @Test
    void noCellSeesMoreThanTheRegionAndNothingSeesThroughItsOwnSheet() {
        ReachField f = field(oneSided(), new RegionChoice.OfPart("floor"), false);
        for (int c = 0; c < f.grid().cellCount(); c++) {
            assertTrue(f.jet().share()[c] >= 0 && f.jet().share()[c] <= 1);
            assertTrue(f.fog().share()[c] >= 0 && f.fog().share()[c] <= 1);
            // an empty block: all of the floor is in sight from everywhere
            assertEquals(1, f.jet().seen()[c], 1e-9);
        }
        // the lower the tip, the more fog settles on the floor
        int low = f.grid().cellHolding(new Vec3(0.5, 0.1, 0.02));
        int high = f.grid().cellHolding(new Vec3(0.5, 0.1, 0.13));
        assertTrue(f.fog().share()[low] > f.fog().share()[high]);
        assertNull(f.confirmed());
    }

    @Test
    void theSameBitsOnOneAndThreeThreads() {
        RegionChoice end = new RegionChoice.OfPart("forward wall");
        FieldOptions options = new FieldOptions(end, false);
        ReachField one = ReachFields.of(oneSided(), options, new RunOptions(1), RunObserver.NONE);
        ReachField three = ReachFields.of(oneSided(), options, new RunOptions(3), RunObserver.NONE);
        assertTrue(Arrays.equals(one.jet().share(), three.jet().share()));
        assertTrue(Arrays.equals(one.fog().share(), three.fog().share()));
        assertEquals(one.poses(), three.poses());
    }

    @Test
    void aRegionThatIsNotThereIsRefusedWithWhatThereIs() {
        Scene scene = oneSided();
        assertSays(scene, new RegionChoice.Bare(99), "FLD-001", "no bare region 99");
        assertSays(scene, new RegionChoice.OfPart("lid"), "FLD-002", "floor");
        assertSays(scene, new RegionChoice.At(new Vec3(0.5, 0.1, 0.5), 0.05), "FLD-003", "350 mm");
        assertSays(block().withWands().withEntries().withPasses().build(), new RegionChoice.OfPart("floor"), "FLD-004", "wands");
        assertSays(block().withPasses().build(), new RegionChoice.Bare(1), "FLD-001", "no passes");
    }

    private static void assertSays(Scene scene, RegionChoice region, String id, String words) {
        SceneException e = assertThrows(SceneException.class, () -> field(scene, region, false));
        assertEquals(id, e.findings().get(0).id());
        assertTrue(e.getMessage().contains(words), e.getMessage());
    }

    @Test
    void tipsRepeatAsOftenAsTheirJets() {
        assertEquals(2 * Math.PI, TipSymmetry.periodRad(ONE_SIDED), 1e-12);
        assertEquals(Math.PI / 4, TipSymmetry.periodRad(SceneFixtures.ring(8, 5e-4)), 1e-12);
        TipSpec plume = new TipSpec("plume", List.of(new TipSpec.Jet(0, 0, 1e-3, 1, 1)));
        assertEquals(0, TipSymmetry.periodRad(plume));
    }
}
