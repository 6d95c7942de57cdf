package baymist.plan;

import baymist.coverage.Fractions;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.run.Rehearsal;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.Structures;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Runs plans at planning resolution, several at once, none twice. The same results however many threads there are. */
final class PlanTrials {
    private final DoseMatrix matrix;
    private final Rehearsal rehearsal;
    private final Workers workers;
    private final RunObserver observer;
    private final double waitS;
    private final int most;
    private final Map<List<PassSpec>, Trial> known = new HashMap<>();
    private int runs;

    /**
     * What a run found.
     *
     * @param strokes the plan; empty where passes were run that are none of the matrix
     * @param film null where the plan can't be run
     */
    record Trial(List<Stroke> strokes, PlanScore score, Rehearsal.@Nullable Rehearsed film) {
        double worth(PlanLimits limits) {
            return film == null ? Double.NEGATIVE_INFINITY : score.worth(limits, strokes.size());
        }

        double[] filmM() {
            if (film == null) {
                throw new IllegalStateException("a plan that could not be run");
            }
            return film.filmM();
        }
    }

    /**
     * @param structures where sheets and voxels come from
     * @param waitS wait between passes, s
     * @param most runs that are shown as all of them
     */
    PlanTrials(
            DoseMatrix matrix, Structures structures, Workers workers, RunObserver observer, double waitS, int most) {
        this.matrix = matrix;
        this.rehearsal = Rehearsal.of(matrix.scene(), structures, workers);
        this.workers = workers;
        this.observer = observer;
        this.waitS = waitS;
        this.most = most;
    }

    /** Runs made so far. */
    int runs() {
        return runs;
    }

    boolean knows(List<Stroke> plan) {
        return known.containsKey(PlanPasses.of(matrix, plan, waitS));
    }

    /** Runs of plans, in their order. */
    List<Trial> of(List<List<Stroke>> plans) {
        List<Scene> jobs = plans.stream()
                .map(p -> matrix.scene().withPasses(PlanPasses.of(matrix, p, waitS)))
                .toList();
        return run(jobs, plans);
    }

    /** A run of a plan with another wait between its passes, s. */
    Trial withWait(List<Stroke> plan, double otherS) {
        return run(List.of(matrix.scene().withPasses(PlanPasses.of(matrix, plan, otherS))), List.of(plan))
                .get(0);
    }

    /** A run of other passes. */
    Trial of(Scene job) {
        return run(List.of(job), List.of(List.of())).get(0);
    }

    private List<Trial> run(List<Scene> jobs, List<List<Stroke>> plans) {
        List<Integer> fresh = new ArrayList<>();
        for (int i = 0; i < jobs.size(); i++) {
            if (!known.containsKey(jobs.get(i).passes())) {
                fresh.add(i);
            }
        }
        @Nullable Trial[] found = new Trial[fresh.size()];
        int before = runs;
        int[] done = {0};
        workers.forEach(found.length, i -> {
            RunCancelledException.throwIf(observer.cancelled());
            int k = fresh.get(i);
            found[i] = run(jobs.get(k), plans.get(k));
            synchronized (done) {
                done[0]++;
                observer.progress(Math.min(1, (double) (before + done[0]) / most), Double.NaN);
            }
        });
        for (int i = 0; i < found.length; i++) {
            Trial t = found[i];
            if (t != null) {
                known.put(jobs.get(fresh.get(i)).passes(), t);
            }
        }
        runs += found.length;
        List<Trial> all = new ArrayList<>();
        for (Scene job : jobs) {
            Trial t = known.get(job.passes());
            if (t == null) {
                throw new IllegalStateException("a plan was not run");
            }
            all.add(t);
        }
        return all;
    }

    private Trial run(Scene job, List<Stroke> plan) {
        try {
            Rehearsal.Rehearsed film = rehearsal.run(job);
            Fractions total = film.total();
            return new Trial(
                    plan,
                    new PlanScore(total.reached(), total.protectedShare(), film.triggerS(), film.productM3()),
                    film);
        } catch (SceneException refused) {
            return new Trial(plan, PlanScore.NONE, null);
        }
    }
}
