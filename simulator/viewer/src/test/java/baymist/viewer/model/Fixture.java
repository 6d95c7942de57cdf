package baymist.viewer.model;

import baymist.recording.LiveFilm;
import baymist.recording.Preview;
import baymist.recording.Recording;
import baymist.run.CheckResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import java.nio.file.Files;
import java.nio.file.Path;

/** The demo elevator, coarse, run once for all tests. */
final class Fixture {
    static final RunOptions TWO = new RunOptions(2);
    static final Scene SCENE = SceneEdit.of(SceneReader.read(scene("control-surface-pin-forward.yaml")))
            .voxel(new VoxelSpec(0.016, 0.016, 0.016))
            .hangS(20)
            .done();
    static final CheckResult CHECK = Simulation.check(SCENE, TWO, RunObserver.NONE);
    static final Recording RECORDING = run(SCENE);

    private Fixture() {}

    static Recording run(Scene scene) {
        return Preview.of(scene, CHECK.cavity(), CHECK.grid().totalVolumeM3())
                .run(TWO, RunObserver.NONE, LiveFilm.NONE);
    }

    static Path scene(String name) {
        return root().resolve("scenes").resolve(name);
    }

    static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("scenes"))) {
            folder = folder.getParent();
        }
        return folder;
    }
}
