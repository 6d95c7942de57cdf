package baymist.plan;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import org.jspecify.annotations.Nullable;

/**
 * A plan held against the best of a hundred gridded passes of the same scene, with no more product than that one takes.
 *
 * @param grid passes of the grid that were run
 * @param best the one that reaches most
 * @param plan the plan, which may use no more product
 * @param gridFull that pass at the scene's own resolution and air, or null
 */
public record PlanProof(
        int grid,
        GriddedPasses.Row best,
        PlanResult plan,
        @Nullable RunResult gridFull) {
    /**
     * Runs the grid, then plans with the product of its best pass.
     *
     * @param count passes of the grid, at least
     * @param options of the plan; with `full` both are run at the scene's own resolution too
     */
    public static PlanProof of(Scene scene, PlanOptions options, int count, RunOptions run, RunObserver observer) {
        var rows = GriddedPasses.run(scene, options.dose(), count, run, observer);
        GriddedPasses.Row best = GriddedPasses.best(rows);
        PlanResult plan = Planner.plan(scene, options.withProductM3(best.score().productM3()), run, observer);
        RunResult full =
                options.full() ? Simulation.run(scene.withPasses(java.util.List.of(best.pass())), run, observer) : null;
        return new PlanProof(rows.size(), best, plan, full);
    }

    /** What counts as all of it, share. */
    private static final double ALL = 0.001;

    /** Whether nothing can be gained: plan and best pass alike reach all that is not in a bay which no wand at hand can spray. */
    public boolean nothingMore() {
        double blind = plan.blind().stream()
                .mapToDouble(b -> b.share() * (1 - b.atMost()))
                .sum();
        double best = best().score().reached();
        return best >= 1 - blind - ALL && plan.checked().reached() >= best;
    }

    /** Whether the plan reaches more with no more product: at planning resolution, and in full where that was run. */
    public boolean wins() {
        boolean coarse = plan.checked().reached() > best.score().reached()
                && plan.checked().productM3() <= best.score().productM3() * 1.0005;
        RunResult verified = plan.verified();
        return coarse
                && (gridFull == null
                        || verified == null
                        || verified.coverage().total().reached()
                                > gridFull.coverage().total().reached());
    }
}
