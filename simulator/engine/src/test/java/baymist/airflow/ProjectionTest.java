package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Variational adjustment of Sasaki (1958, 1970) and Sherman (1978) on the staggered grid, against exact answers. */
class ProjectionTest {
    private static final double[] NONE = new double[0];

    private static Projection.Result project(VoxelGrid grid, double[] start, Vec3 weights) {
        Projection projection = new Projection(grid, NONE, weights, Components.of(grid, NONE));
        return projection.project(start, new double[grid.cellCount()], 1e-14);
    }

    /** u = amplitude sin x cos z, w = vertical cos x sin z on the box 0..pi squared, as face fluxes. */
    private static double[] waves(VoxelGrid grid, double amplitude, double vertical) {
        FaceSet faces = grid.faces();
        double[] flux = new double[faces.count()];
        for (int f = 0; f < flux.length; f++) {
            Vec3 face = grid.centre(faces.low()[f])
                    .plus(grid.centre(faces.high()[f]))
                    .times(0.5);
            double u = amplitude * Math.sin(face.x()) * Math.cos(face.z());
            double w = vertical * Math.cos(face.x()) * Math.sin(face.z());
            flux[f] = faces.areaM2()[f] * (faces.axis()[f] == 0 ? u : w);
        }
        return flux;
    }

    private static double[] random(VoxelGrid grid, long seed) {
        double area = grid.faces().areaM2()[0];
        return new Random(seed).doubles(grid.faces().count(), -area, area).toArray();
    }

    // check rows PJ-01 to PJ-03. Exact: the field is scaled by a1²/(a1² + a2²) and gets w = -f cos x sin z; also for
    // the discrete operator.
    @ParameterizedTest
    @CsvSource({"1, 0.5, 1e-12", "2, 0.2, 1e-12", "10, 0.00990099, 1e-8", "0.1, 0.990099, 1e-6"})
    void adjustmentScalesTheWaveByTheWeights(double ratio, double factor, double tolerance) {
        VoxelGrid grid = GridFixtures.box(16, 1, 16, Math.PI / 16).build();
        Vec3 weights = new Vec3(1, 1, 1 / (ratio * ratio));
        double[] found = project(grid, waves(grid, 1, 0), weights).fluxM3PerS();
        double exact = 1 / (1 + ratio * ratio);
        assertEquals(factor, exact, tolerance);
        double[] expected = waves(grid, exact, -exact);
        double size = grid.faces().areaM2()[0];
        for (int f = 0; f < found.length; f++) {
            assertEquals(expected[f] / size, found[f] / size, ratio > 5 || ratio < 0.5 ? 1e-10 : 1e-12);
        }
    }

    // check row PJ-04
    @Test
    void divergenceFreeFieldComesBackUnchanged() {
        VoxelGrid grid = GridFixtures.box(16, 1, 16, Math.PI / 16).build();
        double[] start = waves(grid, 1, -1);
        double[] found = project(grid, start, new Vec3(1, 1, 1)).fluxM3PerS();
        for (int f = 0; f < found.length; f++) {
            assertEquals(start[f], found[f], 1e-12 * grid.faces().areaM2()[0]);
        }
    }

    @Test
    void energyRemovedIsTheEnergyOfTheCorrection() {
        // check row PJ-05. Orthogonality of the projection: |u0|² = |u|² + |u0 - u|².
        VoxelGrid grid = GridFixtures.box(12, 10, 8, 0.01).build();
        double[] start = random(grid, 5);
        double[] found = project(grid, start, new Vec3(1, 1, 1)).fluxM3PerS();
        double before = 0;
        double after = 0;
        double removed = 0;
        for (int f = 0; f < start.length; f++) {
            before += start[f] * start[f];
            after += found[f] * found[f];
            removed += (start[f] - found[f]) * (start[f] - found[f]);
        }
        assertEquals(before, after + removed, 1e-10 * before);
        assertTrue(after < before);
    }

    @Test
    void anyStartFieldEndsFreeOfDivergence() {
        VoxelGrid grid = GridFixtures.box(20, 14, 10, 0.01).build();
        Projection.Result result = project(grid, random(grid, 9), new Vec3(1, 1, 1));
        // check row PJ-06. Residual is divergence over the cell's largest flux U h², so also over U/h times the cell's
        // volume.
        assertTrue(result.residual() < 1e-10, "residual " + result.residual());
        assertTrue(Arrays.stream(result.fluxM3PerS()).allMatch(Double::isFinite));
    }
}
