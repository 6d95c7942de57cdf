package baymist.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A plan of the block of {@link DoseMatrixTest}, against every pass of a grid. */
class PlannerTest {
    private static PlanResult plan;

    @BeforeAll
    static void make() {
        plan = Planner.plan(
                DoseMatrixTest.block(),
                new PlanOptions(DoseMatrixTest.FEW, DoseStore.none(), Double.NaN, Double.NaN, 4, 12, true, false),
                new RunOptions(2),
                RunObserver.NONE);
    }

    @Test
    void noPassOfAGridReachesAPointMoreForNoMoreProduct() {
        // exhaustive truth: clock angles x rates x ends, each run; none takes more trigger time than the plan may
        double best = 0;
        for (double clock = 0; clock < 2 * Math.PI - 1e-9; clock += Math.PI / 4) {
            for (double from : new double[] {0.498, 0.35}) {
                for (double rate : new double[] {0.1, 0.15}) {
                    double to = 0.01;
                    if ((from - to) / rate <= plan.limits().triggerS()) {
                        PassSpec pass =
                                new PassSpec("g", "aft", "rod", from, to, rate, clock, 0, 0, SceneFixtures.HERE);
                        Scene scene = plan.matrix().scene().withPasses(List.of(pass));
                        RunResult run = Simulation.run(scene, new RunOptions(2), RunObserver.NONE);
                        best = Math.max(best, run.coverage().total().reached());
                    }
                }
            }
        }
        assertTrue(best > 0.05);
        assertTrue(
                plan.checked().reached() >= best - 0.01,
                "plan " + plan.checked().reached() + ", best of the grid " + best);
    }

    @Test
    void thePlanKeepsItsLimits() {
        // limits of a hand: common practice, no source
        assertTrue(
                plan.checked().triggerS() <= plan.limits().triggerS() * 1.001,
                plan.checked().toString());
        assertTrue(plan.planned().passes().size() <= 4);
        for (PassSpec p : plan.planned().passes()) {
            assertTrue(p.drawBackMPerS() >= 0.05 && p.drawBackMPerS() <= 0.5, p.toString());
            assertTrue(p.fromDepthM() > p.toDepthM() && p.toDepthM() >= 0);
        }
        for (int i = 1; i < plan.strokes().size(); i++) {
            assertTrue(plan.strokes().get(i).last() >= plan.strokes().get(i).first());
        }
    }

    @Test
    void theScenesOwnPassesAreNeverBetterThanWhatIsHandedOver() {
        assertNotNull(plan.own());
        assertTrue(plan.checked().worth(plan.limits(), plan.planned().passes().size())
                >= plan.own().worth(plan.limits(), plan.stated().passes().size()));
    }

    @Test
    void theVerifiedFigureIsThatOfAPlainRunOfThePlan() {
        RunResult run = Simulation.run(plan.planned(), new RunOptions(1), RunObserver.NONE);
        assertNotNull(plan.verified());
        assertEquals(run.record().stateHash(), plan.verified().record().stateHash());
    }

    @Test
    void handsNeverDoBetterThanOneAndSureAreaIsNoMoreThanTheMean() {
        HandsResult h = plan.hands();
        assertNotNull(h);
        assertTrue(h.nineteenOfTwenty() <= h.meanReached() && h.meanReached() <= 1);
        assertTrue(h.surely() <= h.nineteenOfTwenty() + 0.05, h.surely() + " " + h.nineteenOfTwenty());
        assertEquals(5, h.habits().size());
        double before = Double.POSITIVE_INFINITY;
        for (HandsResult.Habit habit : h.habits()) {
            assertTrue(habit.lostReached() <= before);
            before = habit.lostReached();
        }
    }

    @Test
    void lowPassesComeFirst() {
        Scene scene = SceneFixtures.minimal()
                .withCuts(
                        SceneFixtures.round("upper hole", "aft wall", 0.03, new Vec3(1, 0.1, 0.12)),
                        SceneFixtures.round("lower hole", "aft wall", 0.03, new Vec3(1, 0.1, 0.03)))
                .withEntries(
                        new EntrySpec("above", "upper hole", null, SceneFixtures.HERE),
                        new EntrySpec("below", "lower hole", null, SceneFixtures.HERE))
                .withPasses()
                .withVoxel(0.05, 0.05, 0.03)
                .withHangS(1)
                .build();
        DoseSettings few = new DoseSettings(DoseMatrixTest.FINE, 0.5, 2, 1, 1, 1);
        DoseMatrix m = DoseMatrices.of(scene, few, DoseStore.none(), new RunOptions(2), RunObserver.NONE);
        assertEquals(
                List.of("above", "below"),
                m.lines().stream().map(l -> l.pass().entry()).distinct().toList());
        List<PassSpec> passes = PlanPasses.of(m, List.of(new Stroke(0, 0, 1, 0.1), new Stroke(2, 0, 1, 0.1)), 5);
        assertEquals(
                List.of("below", "above"), passes.stream().map(PassSpec::entry).toList());
        assertEquals(5, passes.get(0).hangS());
        assertEquals(0, passes.get(1).hangS());
    }

    @Test
    void aSceneWithoutAWayInIsRefusedWithTheReason() {
        Scene none = SceneFixtures.minimal().withPasses().withEntries().build();
        assertRefused(none, "PLN-002");
        Scene thick = SceneFixtures.minimal()
                .withPasses()
                .withWands(new baymist.scene.WandSpec("pole", 1, 0.05, 0.002, SceneFixtures.ring(8, 5e-4)))
                .withVoxel(0.05, 0.05, 0.05)
                .build();
        assertRefused(thick, "PLN-001");
    }

    private static void assertRefused(Scene scene, String id) {
        SceneException e = assertThrows(
                SceneException.class,
                () -> Planner.plan(scene, PlanOptions.DEFAULT, new RunOptions(1), RunObserver.NONE));
        assertEquals(id, e.findings().get(0).id());
    }
}
