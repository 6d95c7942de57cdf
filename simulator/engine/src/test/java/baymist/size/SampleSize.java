package baymist.size;

import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.study.StudyResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Sizings whose runs are a formula, for tests of everything but the runs. */
public final class SampleSize {
    private SampleSize() {}

    /** The demo scene of this command. */
    public static Scene scene() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("scenes"))) {
            folder = folder.getParent();
            if (folder == null) {
                throw new IllegalStateException("the project's scenes are not above the working folder");
            }
        }
        return SceneReader.read(folder.resolve("scenes").resolve("size-spar-line.yaml"));
    }

    /** The demo scene where a wand reaches a share of the spar that grows with its length, and a ring a little more than a plume. */
    public static SizeResult result(SizeRequest request, boolean meets) {
        Runs runs = new Runs(job -> {
            double length = job.wands().values().iterator().next().lengthM();
            boolean ring = job.passes().get(0).wand().contains("ring");
            return Math.min(meets ? 1 : 0.6, (ring ? 1.1 : 1.0) * length / 1.1);
        });
        return SizeStudy.run(scene(), request, runs);
    }

    /** Runs by a formula: share reached of a job. */
    static final class Runs implements SizeStudy.Runs {
        final List<Scene> seen = new ArrayList<>();
        private final ToDoubleFunction<Scene> reached;

        Runs(ToDoubleFunction<Scene> reached) {
            this.reached = reached;
        }

        @Override
        public List<StudyResult> plan(List<Scene> jobs) {
            seen.addAll(jobs);
            return jobs.stream().map(this::of).toList();
        }

        @Override
        public @Nullable StudyResult full(Scene job) {
            return of(job);
        }

        @Override
        public String planning() {
            return "by a formula";
        }

        private StudyResult of(Scene job) {
            return run(reached.applyAsDouble(job));
        }
    }

    /** A run that reached this share of the surface and of the seams. */
    static StudyResult run(double reached) {
        List<StudyResult.Bare> bare = List.of(new StudyResult.Bare("at the far end", 1e-3));
        return new StudyResult(
                "key", null, reached, 0, 0, 0, reached, 0, 1, 1e-5, 20, 60, 1e-4, bare, 1, List.of(), new double[0]);
    }
}
