package baymist.plan;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.DropletSpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.study.Change;
import java.util.ArrayList;
import java.util.List;

/** Runs a few of the sampled jobs as they were sampled, and holds what they reach against what the matrix said. */
final class HandsCheck {
    /** Which jobs are run, by their place between the poorest and the best: the one that 19 of 20 beat, a middling and a good one. */
    private static final double[] RANKS = {0.05, 0.5, 0.95};

    private HandsCheck() {}

    /** @param hangS wait between passes, s */
    static List<HandsResult.Check> of(
            DoseMatrix matrix, List<Stroke> plan, double hangS, RunOptions options, RunObserver observer) {
        List<Hands.Ranked> jobs = Hands.ranked(matrix, plan);
        List<HandsResult.Check> checks = new ArrayList<>();
        for (double rank : RANKS) {
            Hands.Ranked job = jobs.get((int) (rank * jobs.size()));
            observer.stage("a hand's job in full, " + (checks.size() + 1) + " of " + RANKS.length);
            Scene scene = scene(matrix, plan, hangS, job.job());
            double run =
                    Simulation.run(scene, options, observer).coverage().total().reached();
            checks.add(new HandsResult.Check(rank, job.reached(), run));
        }
        return checks;
    }

    /** The job as a scene: each stroke as its hand does it, low before high as the plan says. */
    static Scene scene(DoseMatrix matrix, List<Stroke> plan, double hangS, SampledJob job) {
        List<PassSpec> passes = new ArrayList<>();
        List<Stroke> sorted = PlanPasses.sorted(matrix, plan);
        for (int i = 0; i < sorted.size(); i++) {
            Stroke s = sorted.get(i);
            PassSpec planned = PlanPasses.of(matrix, List.of(s), 0).get(0);
            double wait = i == sorted.size() - 1 || PlanPasses.goesOn(s, sorted.get(i + 1)) ? 0 : hangS;
            pass(planned, i + 1, wait, job.hands().get(plan.indexOf(s)), passes);
        }
        Scene scene = matrix.scene().withPasses(passes);
        DropletSpec sizes = scene.supply().droplets();
        boolean sized = !((sizes instanceof DropletSpec.Adjusted a ? a.sizes() : sizes) instanceof DropletSpec.Tracer);
        double factor = Hands.sizeFactor(job);
        return sized && factor != 1 ? new Change.Nozzle(factor).apply(scene) : scene;
    }

    private static void pass(PassSpec planned, int number, double waitS, SampledJob.Hand hand, List<PassSpec> passes) {
        double deeper = Hands.deeperM(hand);
        double from = Math.max(1e-3, planned.fromDepthM() + deeper);
        double to = Math.max(0, Math.min(from, planned.toDepthM() + deeper));
        PassSpec done = planned.withDepthsM(from, to)
                .withDrawBackMPerS(planned.drawBackMPerS() * Hands.rateFactor(hand))
                .withClockRad(planned.clockRad() + Hands.turnedRad(hand))
                .withHangS(waitS);
        double held = Hands.heldS(hand);
        if (!(held > 0)) {
            passes.add(done.withName(number + ""));
            return;
        }
        // stops once on the way with the trigger held, then goes on
        double stop = from - hand.at() * (from - to);
        passes.add(done.withDepthsM(from, stop).withHangS(0).withName(number + ""));
        passes.add(done.withDepthsM(stop, to).withHoldS(held).withName(number + ", after a stop"));
    }
}
