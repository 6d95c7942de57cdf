package baymist.verify;

import baymist.run.CheckResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import baymist.units.Dimension;
import java.util.HashMap;
import java.util.Map;

/**
 * Scenes of the table, each read, checked and run at most once. A row names the {@code scene} and may state another
 * {@code hang} (time after the last pass) and {@code voxel} (one length).
 */
final class SceneRuns {
    private final RunOptions options;
    private final Map<String, Scene> scenes = new HashMap<>();
    private final Map<String, CheckResult> checks = new HashMap<>();
    private final Map<String, RunResult> runs = new HashMap<>();

    SceneRuns(RunOptions options) {
        this.options = options;
    }

    Scene scene(Inputs in) {
        return scenes.computeIfAbsent(key(in), k -> read(in));
    }

    CheckResult check(Inputs in) {
        return checks.computeIfAbsent(key(in), k -> Simulation.check(scene(in), options, RunObserver.NONE));
    }

    RunResult run(Inputs in) {
        return runs.computeIfAbsent(key(in), k -> Simulation.run(scene(in), options, RunObserver.NONE));
    }

    private static Scene read(Inputs in) {
        Scene scene = SceneReader.read(in.file("scene"));
        if (in.has("hang")) {
            scene = scene.withHangS(in.timeS("hang"));
        }
        if (in.has("voxel")) {
            double v = in.si("voxel", Dimension.LENGTH);
            scene = scene.withVoxel(new VoxelSpec(v, v, v));
        }
        return scene;
    }

    private static String key(Inputs in) {
        return in.file("scene") + "|" + in.word("hang", "") + "|" + in.word("voxel", "");
    }
}
