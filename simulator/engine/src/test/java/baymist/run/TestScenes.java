package baymist.run;

import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.scene.InitialFog;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import java.nio.file.Files;
import java.nio.file.Path;

/** Scenes for whole runs: the project's own files, made coarse so that a test ends within seconds. */
final class TestScenes {
    private TestScenes() {}

    /** A scene of the project by file name. */
    static Scene read(String name) {
        return SceneReader.read(root().resolve("scenes").resolve(name));
    }

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

    /** The same job with other numerics. */
    static Scene coarse(Scene s, VoxelSpec voxel, double hangS, int bins, int rays) {
        return with(s, voxel, s.air(), s.initialFog(), hangS, s.gravity(), bins, rays);
    }

    static Scene with(
            Scene s,
            VoxelSpec voxel,
            AirSpec air,
            @org.jspecify.annotations.Nullable InitialFog fog,
            double hangS,
            Vec3 gravity,
            int bins,
            int rays) {
        return new Scene(
                s.file(),
                s.hash(),
                s.title(),
                s.story(),
                s.cavity(),
                s.cuts(),
                s.states(),
                s.wands(),
                s.product(),
                s.supply(),
                s.entries(),
                s.passes(),
                hangS,
                s.targets(),
                gravity,
                s.gravityMPerS2(),
                voxel,
                air,
                fog,
                bins,
                rays,
                s.stationSpacingM());
    }
}
