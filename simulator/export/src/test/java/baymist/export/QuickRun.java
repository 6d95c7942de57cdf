package baymist.export;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.nio.file.Path;
import java.util.List;

/** A real job, run once for all tests: two passes into a control surface of four bays, as coarse as it gets. */
record QuickRun(RunResult result, RunWatch watch) {
    private static final class Made {
        private static final QuickRun RUN = make();
    }

    static QuickRun get() {
        return Made.RUN;
    }

    private static QuickRun make() {
        Scene scene = SceneReader.read(Path.of("src/test/scenes/quick-elevator.yaml"));
        RunWatch watch = new RunWatch(scene, List.of(), RunObserver.NONE);
        return new QuickRun(Simulation.run(scene, new RunOptions(2), watch), watch);
    }
}
