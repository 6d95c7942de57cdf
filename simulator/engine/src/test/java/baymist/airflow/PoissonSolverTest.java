package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PoissonSolverTest {
    private static final double[] NONE = new double[0];

    private static double[] randomBalanced(int n, long seed) {
        Random random = new Random(seed);
        double[] b = random.doubles(n, -1, 1).toArray();
        double mean = Arrays.stream(b).sum() / n;
        return Arrays.stream(b).map(v -> v - mean).toArray();
    }

    /** Largest error against cos(pi x) cos(2 pi y) cos(pi z), an eigenfunction of the Laplacian on the closed unit box. */
    private static double manufacturedError(int n) {
        double h = 1.0 / n;
        VoxelGrid grid = GridFixtures.box(n, n, n, h).build();
        double[] exact = new double[grid.cellCount()];
        for (int c = 0; c < exact.length; c++) {
            Vec3 p = grid.centre(c);
            exact[c] = Math.cos(Math.PI * p.x()) * Math.cos(2 * Math.PI * p.y()) * Math.cos(Math.PI * p.z());
        }
        double eigenvalue = 6 * Math.PI * Math.PI;
        double[] b = Arrays.stream(exact).map(v -> eigenvalue * v * h * h * h).toArray();
        double[] found = PoissonSolver.of(grid, NONE).solve(b, 1e-10).potential();
        double worst = 0;
        for (int c = 0; c < exact.length; c++) {
            worst = Math.max(worst, Math.abs(found[c] - exact[c]));
        }
        return worst;
    }

    @Test
    void manufacturedSolutionConvergesAtSecondOrder() {
        // Method of manufactured solutions (Roache 2002, J. Fluids Eng. 124, 4).
        double coarse = manufacturedError(8);
        double middle = manufacturedError(16);
        double fine = manufacturedError(32);
        assertEquals(4, coarse / middle, 0.35);
        assertEquals(4, middle / fine, 0.1);
    }

    @Test
    void iterationsHardlyGrowWithTheGrid() {
        int[] counts = new int[3];
        int[] sizes = {16, 32, 64};
        for (int s = 0; s < 3; s++) {
            VoxelGrid grid =
                    GridFixtures.box(sizes[s], sizes[s], sizes[s], 0.01).build();
            PoissonSolver.Solution solution =
                    PoissonSolver.of(grid, NONE).solve(randomBalanced(grid.cellCount(), 7), 1e-8);
            counts[s] = solution.iterations();
            assertTrue(solution.residual() <= 1e-8);
        }
        assertTrue(counts[0] <= 9, Arrays.toString(counts));
        assertTrue(counts[2] <= counts[0] + 2, Arrays.toString(counts));
    }

    @Test
    void thinWallsAndFlatVoxelsKeepTheIterationsLow() {
        // Five staggered sheets with narrow slots, on odd faces, and voxels 5 to 1.
        GridFixtures fixture = GridFixtures.box(48, 24, 24, new Vec3(0.01, 0.002, 0.002));
        for (int b = 0; b < 5; b++) {
            int side = b % 2 == 0 ? 1 : 22;
            fixture.baffle(7 + 8 * b, b, (j, k) -> j == side ? 4e-6 : 0);
        }
        VoxelGrid grid = fixture.build();
        double[] open = {1, 0.5, 1, 0.01, 1};
        PoissonSolver.Solution solution = PoissonSolver.of(grid, open).solve(randomBalanced(grid.cellCount(), 3), 1e-8);
        assertTrue(solution.residual() <= 1e-8);
        assertTrue(solution.iterations() <= 25, "iterations " + solution.iterations());
    }

    @Test
    void closedOpeningsMakeGroupsOfTheirOwn() {
        VoxelGrid grid =
                GridFixtures.box(8, 4, 4, 0.01).baffle(4, 0, (j, k) -> 1e-4).build();
        double[] b = new double[grid.cellCount()];
        b[0] = 1;
        b[3] = -1;
        b[4] = 0.5;
        PoissonSolver.Solution solution =
                PoissonSolver.of(grid, new double[] {0}).solve(b, 1e-10);
        assertEquals(0.5 / 2.5, solution.imbalance(), 1e-12);
        assertTrue(solution.residual() <= 1e-10);
        // The second group's right side was a lone source: spread over its cells it sums to zero.
        PoissonSolver.Solution joined = PoissonSolver.of(grid, new double[] {1}).solve(b, 1e-10);
        assertEquals(0.5 / 2.5, joined.imbalance(), 1e-12);
        double[] flat = new double[grid.cellCount()];
        assertArrayEquals(
                flat,
                PoissonSolver.of(grid, new double[] {1}).solve(flat, 1e-10).potential());
    }

    @Test
    void manyLonePocketsAreNoObstacle() {
        GridFixtures fixture = GridFixtures.box(300, 1, 1, 0.01);
        for (int i = 2; i < 300; i += 2) {
            fixture.baffle(i, 0, (j, k) -> 0);
        }
        VoxelGrid grid = fixture.build();
        double[] b = new double[300];
        b[0] = 1;
        b[1] = -1;
        double[] x = PoissonSolver.of(grid, new double[] {0}).solve(b, 1e-12).potential();
        // Two cells joined by area/distance = 0.01 m: difference 1 / 0.01.
        assertEquals(100, x[0] - x[1], 1e-9);
    }

    @Test
    void aLoneCellSolvesToZero() {
        VoxelGrid grid = GridFixtures.box(1, 1, 1, 0.01).build();
        assertEquals(
                0, PoissonSolver.of(grid, NONE).solve(new double[] {3}, 1e-8).potential()[0]);
    }

    @Test
    void sameBitsWhicheverThreadSolves() {
        VoxelGrid grid = GridFixtures.box(24, 16, 12, 0.01).build();
        double[] b = randomBalanced(grid.cellCount(), 11);
        PoissonSolver solver = PoissonSolver.of(grid, NONE);
        double[] alone = solver.solve(b, 1e-8).potential();
        double[][] shared = new double[8][];
        try (Workers workers = new Workers(4)) {
            workers.forEach(8, i -> shared[i] = solver.solve(b, 1e-8).potential());
        }
        for (double[] x : shared) {
            assertArrayEquals(alone, x);
        }
    }
}
