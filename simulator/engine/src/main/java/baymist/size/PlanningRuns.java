package baymist.size;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import baymist.study.PlanningRun;
import baymist.study.StudyResult;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Honest runs by the engine: several at once at planning resolution, one alone at the scene's own; kept by content. */
public final class PlanningRuns implements SizeStudy.Runs {
    private final PlanningRun planning;
    private final RunOptions options;
    private final boolean verify;
    private final RunObserver observer;

    /**
     * @param options how many jobs run at once, and threads of a full run
     * @param verify whether the chosen wand is run in full
     */
    public PlanningRuns(PlanningRun planning, RunOptions options, boolean verify, RunObserver observer) {
        this.planning = planning;
        this.options = options;
        this.verify = verify;
        this.observer = observer;
    }

    @Override
    public void round(String what, int jobs) {
        observer.stage(what + ": " + jobs + (jobs == 1 ? " run" : " runs"));
    }

    @Override
    public List<StudyResult> plan(List<Scene> jobs) {
        return planning.runAll(jobs, options.threads(), new PlanningRun.Watch() {
            @Override
            public boolean cancelled() {
                return observer.cancelled();
            }
        });
    }

    @Override
    public @Nullable StudyResult full(Scene job) {
        if (!verify) {
            return null;
        }
        String key = SceneContent.hashOf(List.of(job, "in full"));
        StudyResult kept = planning.store().get(key);
        if (kept != null) {
            return kept;
        }
        observer.stage("the chosen wand in full");
        StudyResult result = StudyResult.of(key, Simulation.run(job, options, observer));
        try {
            planning.store().put(result);
        } catch (IOException e) {
            throw new UncheckedIOException("the result of a study can't be kept", e);
        }
        return result;
    }

    @Override
    public String planning() {
        return planning.planning().words();
    }
}
