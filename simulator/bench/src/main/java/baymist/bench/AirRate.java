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
 * The air's kernels on one thread, by its own processor time, against the triad of the same run: a step of the resolved air per cell (dense fog let loose in one bay, at
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

    /** Steps of the resolved air: blocks' side in voxels, cells of the air, steps done, seconds a cell and step. */
    record Step(int block, int cells, long steps, double cellS) {}

    /** A pressure solve to 1e-6. */
    record Solve(int cells, int iterations, double seconds) {
        double cellAndIterationS() {
            return seconds / iterations / cells;
        }

        double bytesPerS() {
            return BYTES_AN_ITERATION / cellAndIterationS();
        }
    }

    public static void main(String[] args) {
        Scene scene = SceneReader.read(Path.of(args.length > 0 ? args[0] : "scenes/wing-box.yaml"));
        double cells = args.length > 1 ? Double.parseDouble(args[1]) : 1e6;
        Cavity cavity = CavityBuilder.build(scene);
        double triad;
        try (Workers one = new Workers(1)) {
            triad = Triad.bytesPerS(one);
        }
        say("triad %.1f GB/s", triad / 1e9);
        for (int block = 4; block >= 1; block /= 2) {
            Step s = step(scene, cavity, grid(cavity, scene.voxel()), block);
            say(
                    "air step, blocks of %d: %d cells, %d steps, %.3f us a cell and step",
                    block, s.cells(), s.steps(), 1e6 * s.cellS());
        }
        Solve solve = poisson(cavity, cells);
        say(
                "pressure solve: %d cells, %d iterations to 1e-6, %.2f s, %.0f ns a cell and iteration, %.2f of the triad",
                solve.cells(),
                solve.iterations(),
                solve.seconds(),
                1e9 * solve.cellAndIterationS(),
                solve.bytesPerS() / triad);
    }

    static VoxelGrid grid(Cavity cavity, VoxelSpec voxel) {
        try (Workers workers = new Workers(2)) {
            return Voxelizer.voxelize(cavity, voxel, workers);
        }
    }

    static Step step(Scene scene, Cavity cavity, VoxelGrid grid, int block) {
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
            AirSettings settings =
                    new AirSettings(AirSpec.DEFAULT, scene.ambient(), scene.gravity(), scene.gravityMPerS2(), 1e-8);
            AirStage plan = AirStage.plan(settings, areas, grid, List.of(AirWindow.quiet(0, 100, open)));
            ResolvedAir air = ResolvedAir.of(plan, grid, areas, block);
            air.advance(0, STEPPED_S / 4, fog);
            long before = air.steps();
            long start = Triad.clockNs(1);
            air.advance(0, STEPPED_S, fog);
            steps = air.steps() - before;
            count = air.cells();
            best = Math.min(best, (Triad.clockNs(1) - start) / 1e9 / steps / count);
        }
        return new Step(block, count, steps, best);
    }

    /**
     * Solves on about a number of cells for a random right side, and for what blows in at one end and goes out at the other: the time of the first, the more iterations of the
     * two.
     */
    static Solve poisson(Cavity cavity, double cells) {
        double edge = Math.cbrt(grid(cavity, new VoxelSpec(0, 0, 0)).totalVolumeM3() / cells);
        VoxelGrid grid = grid(cavity, new VoxelSpec(edge, edge, edge));
        PoissonSolver solver = PoissonSolver.of(grid, OpenFractions.hang(cavity.openings()));
        double[] right = new double[grid.cellCount()];
        Random random = new Random(1);
        Arrays.setAll(right, c -> random.nextGaussian());
        double best = Double.POSITIVE_INFINITY;
        int iterations = 0;
        for (int n = 0; n <= ROUNDS; n++) {
            long start = Triad.clockNs(1);
            iterations = solver.solve(right, 1e-6).iterations();
            best = Math.min(best, (Triad.clockNs(1) - start) / 1e9);
        }
        double[] through = new double[right.length];
        through[0] = 1;
        through[right.length - 1] = -1;
        return new Solve(
                grid.cellCount(),
                Math.max(iterations, solver.solve(through, 1e-6).iterations()),
                best);
    }

    private static void say(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }
}
