package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityFixtures;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.CavitySpec;
import baymist.scene.MeshPose;
import baymist.scene.VoxelSpec;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Open shell meshes that stay outside of the repository; skipped where they are missing. */
class SharedMeshVoxelTest {
    private static Path data(String name) {
        Path at = Path.of(System.getProperty("user.dir")).toAbsolutePath();
        while (at != null && !Files.isRegularFile(at.resolve("shared/data").resolve(name))) {
            at = at.getParent();
        }
        assumeTrue(at != null, "shared data not at hand");
        return at.resolve("shared/data").resolve(name);
    }

    private static VoxelGrid grid(String file, MeshPose pose, VoxelSpec voxel) {
        Cavity cavity = CavityFixtures.build(
                new CavitySpec.Mesh(file, data(file), 1, null, 1e-3, List.of(), CavityFixtures.PLACE, pose, 0));
        try (Workers workers = new Workers(2)) {
            return Voxelizer.voxelize(cavity, voxel, workers);
        }
    }

    @Test
    void theFuselageIsACylinderWithSeventeenBays() {
        MeshPose pose = new MeshPose(new Vec3(0, -1, 0), Vec3.Z, new Vec3(-1, 0, 0), Vec3.ZERO, Vec3.ZERO, 1);
        VoxelGrid grid = grid("fuselage-frames.bdf", pose, new VoxelSpec(0.15, 0.1, 0.1));
        assertTrue(grid.leaks().isEmpty());
        // cabin, hold, and the belly between fourteen frames
        assertEquals(17, grid.bays().size());
        // facets of a circle of 3.0988 m over 9.144 m
        double round = Math.PI * 3.0988 * 3.0988 * 9.144;
        assertEquals(round, grid.totalVolumeM3(), 2e-3 * round);
        assertTrue(grid.totalVolumeM3() < round);
    }

    @Test
    void theWingBoxIsClosedIntoItsBays() {
        MeshPose pose = new MeshPose(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO, Vec3.ZERO, 1);
        VoxelGrid grid = grid("wingbox-coarse.bdf", pose, new VoxelSpec(0.1, 0.1, 0.025));
        assertTrue(grid.leaks().isEmpty());
        assertEquals(18, grid.bays().size());
    }
}
