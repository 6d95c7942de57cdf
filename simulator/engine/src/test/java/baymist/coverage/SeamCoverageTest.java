package baymist.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.SceneFixtures;
import baymist.scene.TargetSpec;
import baymist.scene.VoxelSpec;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Seams of a box of 0.4 x 0.3 x 0.2 m: twelve edges, 4 (a + b + c) long. */
class SeamCoverageTest {
    private static final double A = 0.4;
    private static final double B = 0.3;
    private static final double C = 0.2;
    private final Cavity cavity =
            CavityBuilder.build(SceneFixtures.block(new Vec3(A, B, C)), List.of(), Map.of(), List.of());
    private final VoxelGrid grid = grid();

    private VoxelGrid grid() {
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(cavity, new VoxelSpec(0.02, 0.025, 0.0125), workers);
        }
    }

    private SeamCoverage seams(double floorM, double wallsM) {
        double[] film = new double[grid.surfels().count()];
        for (int s = 0; s < film.length; s++) {
            double up = grid.surfels().normalZ()[s];
            film[s] = up > 0.9 ? floorM : up < -0.9 ? 0 : wallsM;
        }
        return SeamCoverage.of(cavity, grid, film, film, TargetSpec.DEFAULT);
    }

    @Test
    void lengthIsThatOfTheEdges() {
        SeamCoverage s = seams(0, 0);
        assertEquals(4 * (A + B + C), s.lengthM(), 1e-9);
        assertEquals(12, s.bySeam().size());
        assertEquals(
                s.lengthM(),
                s.bySeam().stream().mapToDouble(SeamCoverage.Seam::lengthM).sum(),
                1e-12);
        assertEquals(0, s.reached());
        assertEquals(A, s.bySeam().get(0).bareM(), 1e-9);
    }

    @Test
    void aFloorReachesItsOwnEdgesAndProtectsNone() {
        SeamCoverage s = seams(20e-6, 0);
        assertEquals(2 * (A + B) / (4 * (A + B + C)), s.reached(), 1e-12);
        assertEquals(0, s.protectedShare());
        SeamCoverage both = seams(20e-6, 12e-6);
        assertEquals((2 * (A + B) + 4 * C) / (4 * (A + B + C)), both.protectedShare(), 1e-12);
        assertEquals(1, both.reached(), 1e-12);
        assertTrue(both.bySeam().stream().noneMatch(x -> x.bareM() > 1e-12));
    }

    @Test
    void filmBesideASeamIsThatOfTheStripsBesideIt() {
        // Half a voxel's way on either side: the floor's strip is half of the voxel across, walls have none.
        SeamCoverage s = seams(10e-6, 0);
        double across = (2 * A * 0.025 + 2 * B * 0.02) / (2 * (A + B));
        double up = 0.0125;
        assertEquals(10e-6 * 0.5 * (0.5 * across + 0.5 * up), s.filmNearM2(), 1e-3 * s.filmNearM2());
    }
}
