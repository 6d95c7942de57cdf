package baymist.bench;

import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.airflow.PoissonSolver;
import baymist.airflow.ResolvedAir;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * The air's kernels on one thread against the triad of the same run: a step of the resolved air per cell (dense fog let loose in one bay, at
 * blocks of 4, 2 and 1 voxels), and the pressure solve of some million cells: iterations to 1e-6 and bytes moved per iteration over the triad's. Best of three. Run with a
 * scene file and, for the solve, a number of cells as arguments.
 */
public final class AirRate {
    private static final int ROUNDS = 3;
    private static final double FOG_KG_PER_M3 = 0.02;
    private static final double STEPPED_S = 4;

    /** Least bytes of one preconditioned iteration per cell: 4 sweeps, 2 residuals and 1 product of 7 doubles, 6 ints, and 10 vector reads. */
    private static final double BYTES_AN_ITERATION = 8.0 / 7 * 7 * (7 * 8 + 6 * 4) + 10 * 8;

    private AirRate() {}

    public static void main(String[] args) {
        Scene scene = SceneReader.read(Path.of(args.length > 0 ? args[0] : "scenes/wing-box.yaml"));
        double cells = args.length > 1 ? Double.parseDouble(args[1]) : 1e6;
        Cavity cavity = CavityBuilder.build(scene);
        double triad = 0;
        for (int n = 0; n < ROUNDS; n++) {
            triad = Math.max(triad, triadBytesPerS());
        }
        say("triad %.1f GB/s", triad / 1e9);
        try (Workers workers = new Workers(2)) {
            VoxelGrid grid = Voxelizer.voxelize(cavity, scene.voxel(), workers);
            for (int block = 4; block >= 1; block /= 2) {
                step(scene, cavity, grid, block);
            }
            double edge = Math.cbrt(grid.totalVolumeM3() / cells);
            poisson(Voxelizer.voxelize(cavity, new VoxelSpec(edge, edge, edge), workers), cavity, triad);
        }
    }

    private static void step(Scene scene, Cavity cavity, VoxelGrid grid, int block) {
        double[] open = OpenFractions.hang(cavity.openings());
        double[] areas = OpenFractions.areasM2(cavity.openings());
        double[] fog = new double[grid.cellCount()];
        for (int c = 0; c < fog.length; c++) {
            fog[c] = grid.bayOfCell(c) == 0 ? FOG_KG_PER_M3 : 0;
        }
        double best = Double.POSITIVE_INFINITY;
        long steps = 0;
        int count = 0;
        for (int n = 0; n < ROUNDS; n++) {
            AirSettings settings = new AirSettings(
                    AirSpec.DEFAULT, scene.ambient(), scene.gravity(), scene.gravityMPerS2(), 1e-8);
            AirStage plan = AirStage.plan(settings, areas, grid, List.of(AirWindow.quiet(0, 100, open)));
            ResolvedAir air = ResolvedAir.of(plan, grid, areas, block);
            air.advance(0, STEPPED_S / 4, fog);
            long before = air.steps();
            long start = System.nanoTime();
            air.advance(0, STEPPED_S, fog);
            steps = air.steps() - before;
            count = air.cells();
            best = Math.min(best, (System.nanoTime() - start) / 1e9 / steps / count);
        }
        say("air step, blocks of %d: %d cells, %d steps, %.3f us a cell and step", block, count, steps, 1e6 * best);
    }

    private static void poisson(VoxelGrid grid, Cavity cavity, double triad) {
        double[] open = OpenFractions.hang(cavity.openings());
        PoissonSolver solver = PoissonSolver.of(grid, open);
        double[] right = new double[grid.cellCount()];
        Random random = new Random(1);
        Arrays.setAll(right, c -> random.nextGaussian());
        double best = Double.POSITIVE_INFINITY;
        PoissonSolver.Solution solution = solver.solve(right, 1e-6);
        for (int n = 0; n < ROUNDS; n++) {
            long start = System.nanoTime();
            solution = solver.solve(right, 1e-6);
            best = Math.min(best, (System.nanoTime() - start) / 1e9);
        }
        double moved = solution.iterations() * BYTES_AN_ITERATION * grid.cellCount();
        say(
                "pressure solve: %d cells, %d iterations to 1e-6, %.2f s, %.0f ns a cell and iteration, %.2f of the triad",
                grid.cellCount(),
                solution.iterations(),
                best,
                1e9 * best / solution.iterations() / grid.cellCount(),
                moved / best / triad);
    }

    private static double triadBytesPerS() {
        int n = 8_000_000;
        double[] a = new double[n];
        double[] b = new double[n];
        double[] c = new double[n];
        Arrays.fill(b, 1);
        Arrays.fill(c, 2);
        double best = 0;
        for (int round = 0; round < 8; round++) {
            long start = System.nanoTime();
            for (int i = 0; i < n; i++) {
                a[i] = b[i] + 3 * c[i];
            }
            best = Math.max(best, 24.0 * n / (System.nanoTime() - start) * 1e9);
        }
        if (a[n / 2] != 7) {
            throw new IllegalStateException("triad");
        }
        return best;
    }

    private static void say(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }
}
