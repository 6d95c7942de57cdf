package baymist.plan;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.run.Structures;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Verifies a plan by a run at the scene's own resolution with its air. Where that reaches less than was promised, the matrix is set right by it and what it then
 * knows better is run in full too; the plan whose full run is worth most is handed over.
 */
final class FullRounds {
    /** Reached shares that differ by no more agree (ASSUMED: a run's own voxels mislead by as much, docs/guide/convergence.md). */
    static final double AGREES = 0.01;

    /** What a plan must promise more than the best full run gave to be worth another, worth (ASSUMED: a half point pays for a full run). */
    private static final double PROMISING = 0.005;

    private final PlanLimits limits;
    private final double waitS;
    private final Structures structures;
    private final RunOptions run;
    private final RunObserver observer;

    /** @param waitS wait between passes, s */
    FullRounds(PlanLimits limits, double waitS, Structures structures, RunOptions run, RunObserver observer) {
        this.limits = limits;
        this.waitS = waitS;
        this.structures = structures;
        this.run = run;
        this.observer = observer;
    }

    /** A scene with its masks and what its full run found. */
    record Ran(Scene scene, RunResult result) {}

    /**
     * The plan that is handed over.
     *
     * @param matrix set right by its full run
     * @param rounds what was promised and what full runs found, in their order
     */
    record Verified(List<Stroke> strokes, Ran ran, DoseMatrix matrix, List<PlanResult.Round> rounds) {}

    /**
     * Verifies a plan and tries what the full runs teach.
     *
     * @param matrix set right by planning runs
     * @param promised what the planning run of the plan found
     * @param most further plans that are run in full, 0 or more
     */
    Verified of(Scene planned, List<Stroke> strokes, DoseMatrix matrix, PlanScore promised, int most) {
        Verified best = verified(ran(planned), strokes, matrix, promised, List.of());
        Set<List<Stroke>> known = new HashSet<>(Set.of(strokes));
        while (known.size() <= most && misses(best)) {
            List<Stroke> next = proposal(best, known);
            if (next == null) {
                break;
            }
            known.add(next);
            Scene scene = best.ran().scene().withPasses(PlanPasses.of(best.matrix(), next, waitS));
            Verified other =
                    verified(ran(scene), next, best.matrix(), best.matrix().score(next), best.rounds());
            best = worth(other) > worth(best)
                    ? other
                    : new Verified(best.strokes(), best.ran(), best.matrix(), other.rounds());
        }
        return best;
    }

    /** A full run, with bags over what only finer voxels show to be sprayed. */
    Ran ran(Scene planned) {
        RunResult result = Simulation.run(planned, run, observer, structures);
        List<String> hit = PlanHits.of(result);
        if (hit.isEmpty()) {
            return new Ran(planned, result);
        }
        Scene bagged = PlanMasks.bagged(planned, hit);
        return new Ran(bagged, Simulation.run(bagged, run, observer, structures));
    }

    /** What a full run found. */
    static PlanScore found(RunResult run) {
        double triggerS =
                run.stations().stream().mapToDouble(s -> s.durationS()).sum();
        return new PlanScore(
                run.coverage().total().reached(),
                run.coverage().total().protectedShare(),
                triggerS,
                run.ledger().sprayedKg() / run.scene().product().densityKgPerM3());
    }

    private Verified verified(
            Ran ran, List<Stroke> strokes, DoseMatrix matrix, PlanScore promised, List<PlanResult.Round> before) {
        double[] says = matrix.filmM(strokes);
        RunResult r = ran.result();
        double[] film = FineFilm.on(matrix.grid(), matrix.cavity(), r.grid(), r.filmM(), says);
        List<PlanResult.Round> rounds = new ArrayList<>(before);
        rounds.add(new PlanResult.Round(promised, found(r)));
        return new Verified(strokes, ran, matrix.anchored(strokes, film), rounds);
    }

    private boolean misses(Verified v) {
        PlanResult.Round last = v.rounds().get(v.rounds().size() - 1);
        return last.found().reached() < last.predicted().reached() - AGREES;
    }

    private double worth(Verified v) {
        return found(v.ran().result()).worth(limits, v.strokes().size());
    }

    /** The end of the way from the best plan by the matrix as it is now, or half the way, not run yet; null where it promises too little. */
    private @Nullable List<Stroke> proposal(Verified best, Set<List<Stroke>> known) {
        PlanSearch search = new PlanSearch(best.matrix(), limits);
        List<List<Stroke>> path = search.path(best.strokes());
        for (int i = path.size() - 1; i > 0; i /= 2) {
            List<Stroke> next = path.get(i);
            if (!next.isEmpty() && !known.contains(next)) {
                return search.worth(next) > worth(best) + PROMISING ? next : null;
            }
        }
        return null;
    }
}
