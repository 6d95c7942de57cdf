package baymist.viewer.fx;

import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import baymist.scene.io.SceneWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The demo elevator made so coarse and short that a run takes a second or two. */
final class SmallJob {
    private SmallJob() {}

    static Scene scene() {
        Scene demo = SceneReader.read(root().resolve("scenes/control-surface-pin-forward.yaml"));
        return SceneEdit.of(demo)
                .voxel(new VoxelSpec(0.02, 0.02, 0.016))
                .air(demo.air().withMode(AirSpec.Mode.PROJECTED, 0))
                .numerics(2, 32, 0.06)
                .hangS(8)
                .done();
    }

    /** Writes it as a scene file. */
    static Path file(Path folder) throws IOException {
        Path file = folder.resolve("small.yaml");
        SceneWriter.write(scene(), file);
        return file;
    }

    static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("scenes"))) {
            folder = folder.getParent();
        }
        return folder;
    }
}
