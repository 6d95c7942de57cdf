package baymist.run;

import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.nio.file.Files;
import java.nio.file.Path;

/** The project's own scenes, for whole runs. */
final class TestScenes {
    private TestScenes() {}

    /** A scene of the project by file name. */
    static Scene read(String name) {
        return SceneReader.read(root().resolve("scenes").resolve(name));
    }

    /** The project's folder, above the module that the tests run in. */
    static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("scenes"))) {
            folder = folder.getParent();
            if (folder == null) {
                throw new IllegalStateException("the project's scenes are not above the working folder");
            }
        }
        return folder;
    }

    static RunResult run(Scene scene, int threads) {
        return Simulation.run(scene, new RunOptions(threads), RunObserver.NONE);
    }
}
