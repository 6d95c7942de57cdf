package baymist.plan;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A plan held against the best of a hundred gridded passes of the same scene, with no more product than that one takes.
 *
 * @param grid passes of the grid that were run
 * @param best the one that reaches most
 * @param plan the plan, which may use no more product
 * @param gridFull that pass at the scene's own resolution and air, or null
 * @param drilled where the scene allows drilling and the plan reaches no more, the plan with holes, within the same product; else null
 */
public record PlanProof(
        int grid,
        GriddedPasses.Row best,
        PlanResult plan,
        @Nullable RunResult gridFull,
        @Nullable PlanResult drilled) {
    /** What counts as all of it, or as no more product, share. */
    private static final double SAME = 0.001;

    /**
     * Runs the grid, then plans with the product of its best pass.
     *
     * @param count passes of the grid, at least
     * @param options of the plan; with `full` both are run at the scene's own resolution too
     */
    public static PlanProof of(Scene scene, PlanOptions options, int count, RunOptions run, RunObserver observer) {
        List<GriddedPasses.Row> rows = GriddedPasses.run(scene, options.dose(), count, run, observer);
        GriddedPasses.Row best = GriddedPasses.best(rows);
        PlanOptions within = options.withProductM3(best.score().productM3()).withoutHandRuns();
        PlanResult plan = Planner.plan(scene, within, run, observer);
        RunResult full = options.full() ? Simulation.run(scene.withPasses(List.of(best.pass())), run, observer) : null;
        PlanProof proof = new PlanProof(rows.size(), best, plan, full, null);
        boolean holes = scene.studies().drilling() != null && !proof.reachesMore();
        return holes
                ? new PlanProof(
                        rows.size(), best, plan, full, Planner.plan(scene, within.withDrill(true), run, observer))
                : proof;
    }

    /** Whether the plan reaches more with no more product: at planning resolution, and in full where that was run. */
    public boolean reachesMore() {
        return more(plan);
    }

    /** Whether the plan with holes does; false without. */
    public boolean reachesMoreDrilled() {
        return drilled != null && more(drilled);
    }

    /**
     * Whether nothing more can be reached and the plan is better at that: plan and best pass alike reach all that is not in a bay which no wand at hand can spray, and
     * the plan protects more of it, or takes less product.
     */
    public boolean betterAtTheSame() {
        double blind = plan.blind().stream()
                .mapToDouble(b -> b.share() * (1 - b.atMost()))
                .sum();
        PlanScore pass = best.score();
        boolean all = pass.reached() >= 1 - blind - SAME && plan.checked().reached() >= pass.reached() - 1e-9;
        boolean less = plan.checked().productM3() < pass.productM3() * (1 - SAME)
                || plan.checked().triggerS() < pass.triggerS() * (1 - SAME);
        return all
                && plan.checked().productM3() <= pass.productM3() * (1 + SAME)
                && (less || plan.checked().protectedShare() > pass.protectedShare() + SAME);
    }

    /** Whether the plan is better: it reaches more, by holes where the scene allows them, or as much and is better at that. */
    public boolean wins() {
        return reachesMore() || reachesMoreDrilled() || betterAtTheSame();
    }

    private boolean more(PlanResult made) {
        boolean coarse = made.checked().reached() > best.score().reached()
                && made.checked().productM3() <= best.score().productM3() * (1 + SAME);
        RunResult verified = made.verified();
        return coarse
                && (gridFull == null
                        || verified == null
                        || verified.coverage().total().reached()
                                > gridFull.coverage().total().reached());
    }
}
