package baymist.surface;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.nio.file.Files;
import java.nio.file.Path;

/** The project's own structures with coarse voxels. */
record SurfaceScenes(Cavity cavity, VoxelGrid grid) {
    static SurfaceScenes of(String scene, double voxelM) {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("scenes"))) {
            folder = folder.getParent();
        }
        Scene read = SceneReader.read(folder.resolve("scenes").resolve(scene));
        Cavity cavity = CavityBuilder.build(read);
        try (Workers workers = new Workers(2)) {
            return new SurfaceScenes(
                    cavity, Voxelizer.voxelize(cavity, new VoxelSpec(voxelM, voxelM, voxelM), workers));
        }
    }

    Surface surface(SurfaceOptions options) {
        return Surface.of(cavity, grid, options);
    }
}
