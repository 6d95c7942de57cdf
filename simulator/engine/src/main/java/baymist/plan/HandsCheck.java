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
            observer.stage("a hand's job at planning resolution, " + (checks.size() + 1) + " of " + RANKS.length);
            checks.add(new HandsResult.Check(
                    rank,
                    job.reached(),
                    reached(matrix.scene(), matrix, plan, hangS, job.job(), options, observer),
                    false));
        }
        return checks;
    }

    /**
     * The poor one of these jobs, that 19 of 20 beat by the matrix, at the scene's own resolution with its air.
     *
     * @param planned the plan as a scene
     */
    static HandsResult.Check inFull(
            DoseMatrix matrix,
            List<Stroke> plan,
            double hangS,
            Scene planned,
            RunOptions options,
            RunObserver observer) {
        List<Hands.Ranked> jobs = Hands.ranked(matrix, plan);
        Hands.Ranked poor = jobs.get((int) (RANKS[0] * jobs.size()));
        observer.stage("a poor hand's job in full");
        double run = reached(planned, matrix, plan, hangS, poor.job(), options, observer);
        return new HandsResult.Check(RANKS[0], poor.reached(), run, true);
    }

    private static double reached(
            Scene base,
            DoseMatrix matrix,
            List<Stroke> plan,
            double hangS,
            SampledJob job,
            RunOptions options,
            RunObserver observer) {
        return Simulation.run(scene(base, matrix, plan, hangS, job), options, observer)
                .coverage()
                .total()
                .reached();
    }

    /** The job in a scene: each stroke as its hand does it, low before high as the plan says. */
    static Scene scene(Scene base, DoseMatrix matrix, List<Stroke> plan, double hangS, SampledJob job) {
        List<PassSpec> passes = new ArrayList<>();
        List<Stroke> sorted = PlanPasses.sorted(matrix, plan);
        for (int i = 0; i < sorted.size(); i++) {
            Stroke s = sorted.get(i);
            PassSpec planned = PlanPasses.of(matrix, List.of(s), 0).get(0);
            double wait = i == sorted.size() - 1 || PlanPasses.goesOn(s, sorted.get(i + 1)) ? 0 : hangS;
            pass(planned, i + 1, wait, job.hands().get(plan.indexOf(s)), passes);
        }
        Scene scene = base.withPasses(passes);
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
