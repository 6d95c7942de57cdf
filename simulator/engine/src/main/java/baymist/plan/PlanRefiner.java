package baymist.plan;

import baymist.run.RunObserver;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Search by runs: the matrix says which changes are worth a run, runs say which are better, and each better plan sets the matrix right about itself
 * ({@link DoseMatrix#anchored}). Ends when the runs allowed are used up, or nothing that the matrix proposes is better any more.
 */
final class PlanRefiner {
    /** Plans run together; a fixed number, so that results do not depend on threads. */
    private static final int TOGETHER = 4;

    /** Rounds without a better plan after which it ends. */
    private static final int STALE = 4;

    /** Plans around the best one that the matrix ranks; those not run yet are run where nothing else is left. */
    private static final int AROUND = 24;

    /** A run must be better by this much, worth. */
    private static final double BETTER = 1e-4;

    private final DoseMatrix matrix;
    private final PlanLimits limits;
    private final PlanTrials trials;
    private final int mostRuns;
    private final RunObserver observer;
    private final List<PlanResult.Round> rounds = new ArrayList<>();

    /** The largest share that a run of any plan within the limits reached. */
    private double most;

    /** The same of single strokes: no plan is handed over that reaches less than one of them. */
    private double mostSingle;

    PlanRefiner(DoseMatrix matrix, PlanLimits limits, PlanTrials trials, int mostRuns, RunObserver observer) {
        this.matrix = matrix;
        this.limits = limits;
        this.trials = trials;
        this.mostRuns = mostRuns;
        this.observer = observer;
    }

    /** What was found: the best plan by run, and the matrix as it was set right about it. */
    record Refined(PlanTrials.Trial best, DoseMatrix anchored) {}

    /** Each round's best: promised, found. */
    List<PlanResult.Round> rounds() {
        return rounds;
    }

    /** The best plan by run from some beginnings, or null where none can be run. */
    @Nullable
    @SuppressWarnings("ReferenceEquality") // whether it is still the same trial, not an equal one
    Refined best(List<List<Stroke>> beginnings, List<List<Stroke>> singles, Patches patches) {
        observer.stage("plans run at planning resolution");
        PlanSearch search = new PlanSearch(matrix, limits);
        List<List<Stroke>> first = beginnings.stream()
                .map(search::improved)
                .filter(p -> !p.isEmpty())
                .distinct()
                .sorted(Comparator.comparingDouble((List<Stroke> p) -> -search.worth(p)))
                .limit(Math.min(TOGETHER, mostRuns))
                .toList();
        PlanTrials.Trial best = better(null, trials.of(first), matrix);
        int left = Math.max(0, Math.min(mostRuns - trials.runs(), singles.size()));
        best = better(best, trials.of(singles.subList(0, left)), matrix);
        if (best == null) {
            return null;
        }
        DoseMatrix now = matrix.anchored(best.strokes(), best.filmM());
        int stale = 0;
        while (stale < STALE && trials.runs() < mostRuns) {
            List<List<Stroke>> proposed = proposals(now, best, stale, patches);
            if (proposed.isEmpty()) {
                break;
            }
            PlanTrials.Trial next = better(best, trials.of(proposed), now);
            if (next == best) {
                stale++;
            } else if (next != null) {
                best = next;
                now = matrix.anchored(best.strokes(), best.filmM());
                stale = 0;
            }
        }
        return new Refined(best, now);
    }

    /** Coverage first: a plan that reaches less than the most that is known is no candidate; of those that reach as much, what is worth more. */
    @SuppressWarnings("ReferenceEquality") // whether it is still the same trial, not an equal one
    private PlanTrials.@Nullable Trial better(
            PlanTrials.@Nullable Trial best, List<PlanTrials.Trial> found, DoseMatrix with) {
        List<PlanTrials.Trial> all = found.stream()
                .filter(t -> t.film() != null
                        && limits.use(t.score().triggerS(), t.score().productM3()) < 1.001)
                .toList();
        for (PlanTrials.Trial t : all) {
            most = Math.max(most, t.score().reached());
            mostSingle =
                    t.strokes().size() == 1 ? Math.max(mostSingle, t.score().reached()) : mostSingle;
        }
        PlanTrials.Trial now = best != null && reachesMost(best) ? best : null;
        for (PlanTrials.Trial t : all) {
            if (reachesMost(t) && (now == null || t.worth(limits) > now.worth(limits) + BETTER)) {
                now = t;
            }
        }
        if (now != null && now != best) {
            rounds.add(new PlanResult.Round(with.score(now.strokes()), now.score()));
        }
        return now;
    }

    private boolean reachesMost(PlanTrials.Trial trial) {
        double reached = trial.score().reached();
        return reached >= most - PlanScore.SAME_REACHED && reached >= mostSingle;
    }

    /** Plans on the way from the best one: the end, halves of the way, the first change; then from the program and from what is left. */
    private List<List<Stroke>> proposals(DoseMatrix now, PlanTrials.Trial best, int stale, Patches patches) {
        PlanSearch search = new PlanSearch(now, limits);
        List<List<Stroke>> path = search.path(best.strokes());
        Set<List<Stroke>> all = new LinkedHashSet<>();
        int end = path.size() - 1;
        for (int i = end; i > 0; i /= 2) {
            all.add(path.get(i));
        }
        if (stale > 0 || all.size() < 2) {
            Beginnings other = new Beginnings(now, limits);
            all.add(search.improved(other.strokes(ShortfallProgram.solve(now, patches, limits))));
            for (int i = 1; i <= end; i++) {
                all.add(path.get(i));
            }
            all.addAll(search.around(best.strokes(), AROUND));
        }
        return all.stream()
                .filter(p -> !p.isEmpty() && !trials.knows(p))
                .limit(Math.min(TOGETHER, mostRuns - trials.runs()))
                .toList();
    }
}
