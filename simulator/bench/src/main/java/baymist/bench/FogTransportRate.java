package baymist.bench;

import baymist.airflow.AirField;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.Transport;
import baymist.scene.VoxelSpec;
import baymist.scene.WallFinish;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Rate of fog transport as a run has it, set-up of each window included, beside the memory's triad of the same process; and what levels of steps save.
 *
 * <p>{@code java -cp benchmarks.jar baymist.bench.FogTransportRate [threads]} starts itself twice, plain and with the Java platform's vectors.
 */
public final class FogTransportRate {
    private static final int REPEATS = 4;
    private static final int NX = 20;
    private static final int NY = 30;
    private static final int NZ = 50;

    /** What a run does by default with a jet and without one, and donor cells one size at a time. */
    private static final List<Way> WAYS = List.of(
            new Way("auto, no jet", Transport.AUTO, false),
            new Way("auto, jet on", Transport.AUTO, true),
            new Way("first_order", Transport.FIRST_ORDER, false));

    private record Way(String name, Transport transport, boolean jet) {}

    private FogTransportRate() {}

    /** A jet that hands next to nothing of each size to one cell. */
    private static SprayHits jet() {
        double[] kgPerS = new double[8];
        java.util.Arrays.fill(kgPerS, 1e-9);
        int[] none = {};
        double[] zero = {};
        return new SprayHits(
                none, zero, new int[] {100}, kgPerS, 0, none, zero, zero, zero, none, none, zero, zero, 0, -1, 0, 0, -1, 0, 0);
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        int threads = args.length > 0 ? Integer.parseInt(args[0]) : 2;
        if (args.length > 1) {
            measure(threads, args[1]);
            return;
        }
        System.out.printf(
                "fog transport, %d x %d x %d cells of 10 mm, 8 bins, double, %d threads, best of %d; updates/s x 12 B over triad%n",
                NX, NY, NZ, threads, REPEATS);
        for (List<String> module : List.of(List.<String>of(), List.of("--add-modules", "jdk.incubator.vector"))) {
            List<String> command = new ArrayList<>(List.of(System.getProperty("java.home") + "/bin/java", "-Xmx2g"));
            command.addAll(module);
            command.addAll(List.of("-cp", System.getProperty("java.class.path"), FogTransportRate.class.getName()));
            command.addAll(List.of(String.valueOf(threads), module.isEmpty() ? "plain" : "vectors"));
            new ProcessBuilder(command).inheritIO().start().waitFor();
        }
    }

    private static void measure(int threads, String name) {
        try (Workers workers = new Workers(threads)) {
            double triad = triadGBPerS(workers, threads);
            VoxelGrid grid = box();
            for (Way way : WAYS) {
                FogStepper fog = fog(grid, way.transport(), workers);
                SprayHits hits = way.jet() ? jet() : null;
                double best = 0;
                double saved = 0;
                for (int i = 0; i < REPEATS; i++) {
                    long updates = fog.stats().updates();
                    long steps = fog.stats().explicitSteps();
                    long start = clock(threads);
                    fog.advance(swirl(grid, 1 + 0.1 * i), hits, 0.25);
                    double seconds = (clock(threads) - start) * 1e-9;
                    double both = grid.cellCount() + grid.faces().count();
                    double done = (fog.stats().updates() - updates) / both * grid.cellCount();
                    best = Math.max(best, done / seconds);
                    saved = (double) (fog.stats().explicitSteps() - steps) * grid.cellCount() / done;
                }
                System.out.printf(
                        "%-8s %-22s %6.0f M cell-bin updates/s, triad %5.1f GB/s, share %.3f; levels save a factor of %.1f in updates%n",
                        name, way.name(), best * 1e-6, triad, best * 12e-9 / triad, saved);
            }
        }
    }

    /** Nanoseconds; with one thread those of its own processor time, which other programs don't lengthen. */
    private static long clock(int threads) {
        return threads == 1
                ? java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime()
                : System.nanoTime();
    }

    private static FogStepper fog(VoxelGrid grid, Transport transport, Workers workers) {
        double[] diameter = new double[8];
        double[] share = new double[8];
        for (int b = 0; b < 8; b++) {
            diameter[b] = 2e-6 * Math.pow(1.6, b);
            share[b] = 0.125;
        }
        FogStepper fog = new FogStepper(
                grid,
                new SizeBins(diameter, share),
                880,
                Air.STANDARD,
                new Vec3(0, 0, -9.81),
                WallFinish.SMOOTH,
                transport,
                workers);
        for (int c = 0; c < grid.cellCount(); c++) {
            fog.release(c, 1e-9 * (1 + Math.sin(0.3 * grid.i(c)) * Math.cos(0.4 * grid.k(c))));
        }
        return fog;
    }

    private static VoxelGrid box() {
        CavitySpec.Block block = new CavitySpec.Block(
                "box",
                new Vec3(0.01 * NX, 0.01 * NY, 0.01 * NZ),
                Vec3.ZERO,
                Vec3.ZERO,
                1e-3,
                List.of(),
                SourcePlace.of("benchmark"));
        Cavity cavity = CavityBuilder.build(block, List.of(), Map.of(), List.of());
        try (Workers one = new Workers(1)) {
            return Voxelizer.voxelize(cavity, new VoxelSpec(0.01, 0.01, 0.01), one);
        }
    }

    /** A plane jet with its return flow in the middle layer and gentle swirls beside it: m³/s through each face. */
    private static AirField swirl(VoxelGrid grid, double strength) {
        FaceSet faces = grid.faces();
        double[] flux = new double[faces.count()];
        for (int e = 0; e < flux.length; e++) {
            int c = faces.low()[e];
            double layer = strength * (grid.j(c) == NY / 2 ? 2e-2 : 1e-3);
            int i = grid.i(c) + 1;
            int k = grid.k(c) + 1;
            if (faces.axis()[e] == 0) {
                flux[e] = layer * (stream(i, k) - stream(i, k - 1));
            } else if (faces.axis()[e] == 2) {
                flux[e] = layer * (stream(i - 1, k) - stream(i, k));
            }
        }
        double[] mixing = new double[grid.cellCount()];
        java.util.Arrays.fill(mixing, 1e-5);
        double[] friction = new double[grid.surfels().count()];
        java.util.Arrays.fill(friction, 0.05);
        return new AirField(
                flux, new double[0], new double[grid.cellCount()], 0, mixing, friction, new double[0], 0);
    }

    private static double stream(int i, int k) {
        double z = (double) k / NZ;
        return Math.sin(Math.PI * i / NX) * 4 * z * (1 - z) * Math.tanh(6 * (z - 0.5));
    }

    /** McCalpin's triad, 24 bytes an element, best of ten. */
    private static double triadGBPerS(Workers workers, int threads) {
        int n = 4_000_000;
        double[] a = new double[n];
        double[] b = new double[n];
        double[] c = new double[n];
        double best = 0;
        for (int r = 0; r < 10; r++) {
            long start = clock(threads);
            workers.forBlocks(n, n / threads, (from, to) -> {
                for (int i = from; i < to; i++) {
                    a[i] = b[i] + 3 * c[i];
                }
            });
            best = Math.max(best, 24e-9 * n / ((clock(threads) - start) * 1e-9));
        }
        return best;
    }
}
