package baymist.study;

import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.run.MemoryBudget;
import baymist.run.MemoryCheck;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.run.Structures;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Runs jobs at planning resolution, several at once with one thread each, and keeps what came out. Results come in the order of
 * the jobs and
 * are the same for any number at once.
 */
public final class PlanningRun {
    private final Planning planning;
    private final StudyStore store;
    private final Structures structures;
    private final MemoryBudget memory;

    public PlanningRun(Planning planning, StudyStore store) {
        this(planning, store, Structures.shared());
    }

    /** @param structures what the jobs have in common, built once */
    public PlanningRun(Planning planning, StudyStore store, Structures structures) {
        this(planning, store, structures, MemoryBudget.ofHeap());
    }

    private PlanningRun(Planning planning, StudyStore store, Structures structures, MemoryBudget memory) {
        this.planning = planning;
        this.store = store;
        this.structures = structures;
        this.memory = memory;
    }

    /** The same with what all jobs together may take; those that find no room wait for others to end. */
    public PlanningRun within(MemoryBudget other) {
        return new PlanningRun(planning, store, structures, other);
    }

    /** The same jobs at another resolution; what is kept and what was built is shared. */
    public PlanningRun at(Planning other) {
        return new PlanningRun(other, store, structures, memory);
    }

    /** Hears of jobs as they end; calls come one at a time, from several threads. */
    public interface Watch {
        /** Hears nothing and never cancels. */
        Watch NONE = new Watch() {};

        /**
         * A job has ended.
         *
         * @param index of the job
         * @param ended how many have, this one included
         */
        default void done(int index, StudyResult result, int ended) {}

        /** Asked between steps: whether to stop. */
        default boolean cancelled() {
            return false;
        }
    }

    public Planning planning() {
        return planning;
    }

    /** What the jobs have in common, built once. */
    public Structures structures() {
        return structures;
    }

    /** What keeps results. */
    public StudyStore store() {
        return store;
    }

    /** One job, see {@link #runAll}. */
    public StudyResult run(Scene scene) {
        return run(scene, Watch.NONE, 1);
    }

    /**
     * Jobs side by side.
     *
     * @param atOnce threads, at least 1
     * @return one result for each; a job that can't be done is refused with its reason, see {@link StudyResult#refused}
     * @throws RunCancelledException if the watch asks for it; what had ended is kept
     * @throws SceneException RUN-008 if a job needs more memory than there is
     * @throws baymist.problem.SimulationException if the numbers go wrong
     */
    public List<StudyResult> runAll(List<Scene> scenes, int atOnce, Watch watch) {
        @Nullable StudyResult[] results = new StudyResult[scenes.size()];
        AtomicInteger ended = new AtomicInteger();
        try (Workers workers = new Workers(atOnce)) {
            workers.forEach(results.length, i -> {
                RunCancelledException.throwIf(watch.cancelled());
                StudyResult r = run(scenes.get(i), watch, 1);
                results[i] = r;
                synchronized (ended) {
                    watch.done(i, r, ended.incrementAndGet());
                }
            });
        }
        return IntStream.range(0, results.length).mapToObj(i -> at(results, i)).toList();
    }

    private static StudyResult at(@Nullable StudyResult[] results, int i) {
        StudyResult r = results[i];
        if (r == null) {
            throw new IllegalStateException("job " + i + " gave no result");
        }
        return r;
    }

    /** One job with more threads, for one that stands alone. */
    public StudyResult run(Scene scene, int threads) {
        return run(scene, Watch.NONE, threads);
    }

    private StudyResult run(Scene scene, Watch watch, int threads) {
        String key = key(scene, planning);
        StudyResult kept = store.get(key);
        if (kept != null) {
            return kept;
        }
        StudyResult result;
        try {
            Scene coarse = planning.of(scene, structures.cavity(scene));
            result = StudyResult.of(
                    key, Simulation.run(coarse, new RunOptions(threads, memory), stopping(watch), structures));
        } catch (SceneException e) {
            if (MemoryCheck.isRefusal(e)) {
                // no property of the job: with more memory it can be done
                throw e;
            }
            result = StudyResult.refused(key, e.findings().get(0).text());
        }
        try {
            store.put(result);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException("the result of a study can't be kept", e);
        }
        return result;
    }

    /** Key of a job: SHA-256 (hex) over the scene's content and the resolution; the store adds the build of the program. */
    public static String key(Scene scene, Planning planning) {
        return SceneContent.hashOf(List.of(scene, planning));
    }

    private static RunObserver stopping(Watch watch) {
        return new RunObserver() {
            @Override
            public void stage(String name) {}

            @Override
            public void progress(double done, double jobTimeS) {}

            @Override
            public boolean cancelled() {
                return watch.cancelled();
            }
        };
    }
}
