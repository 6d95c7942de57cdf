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

    /**
     * What a run does by default, without a jet and with one (donor cells in single precision, eight sizes side by side); the same with set-up spread over a long
     * window, which is the kernel, with vectors where Java has them and in plain loops; limited slopes; and donor cells in double precision, one size at a time,
     * in plain loops whatever Java was started with.
     */
    private static final List<Way> WAYS = List.of(
            new Way("auto, no jet", Transport.AUTO, false, 0.25, false, 8),
            new Way("auto, jet on", Transport.AUTO, true, 0.25, false, 8),
            new Way("auto, kernel", Transport.AUTO, true, 2.5, false, 8),
            new Way("auto, kernel in plain loops", Transport.AUTO, true, 2.5, true, 8),
            new Way("auto, kernel, ten sizes", Transport.AUTO, true, 2.5, false, 10),
            new Way("auto, kernel in plain loops, ten sizes", Transport.AUTO, true, 2.5, true, 10),
            new Way("auto, jet on, plain loops", Transport.AUTO, true, 0.25, true, 8),
            new Way("second_order, kernel", Transport.SECOND_ORDER, false, 2.5, false, 8),
            new Way("first_order", Transport.FIRST_ORDER, false, 0.25, false, 8));

    /** A way of stepping; {@code plain}: by plain loops even where there are vectors; runs have ten sizes unless they say otherwise. */
    private record Way(String name, Transport transport, boolean jet, double windowS, boolean plain, int sizes) {}

    private FogTransportRate() {}

    /** A jet that hands next to nothing of each size to one cell. */
    private static SprayHits jet(int sizes) {
        double[] kgPerS = new double[sizes];
        java.util.Arrays.fill(kgPerS, 1e-9);
        return source(100, kgPerS);
    }

    /** A jet that does nothing but hand fog to one cell, kg/s by bin. */
    static SprayHits source(int cell, double[] kgPerS) {
        int[] none = {};
        double[] zero = {};
        return new SprayHits(
                none,
                zero,
                new int[] {cell},
                kgPerS,
                0,
                none,
                zero,
                zero,
                zero,
                none,
                none,
                zero,
                zero,
                0,
                -1,
                0,
                0,
                -1,
                0,
                0);
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        int threads = args.length > 0 ? Integer.parseInt(args[0]) : 2;
        if (args.length > 1) {
            measure(threads, args[1]);
            return;
        }
        System.out.printf(
                "fog transport, %d x %d x %d cells of 10 mm, 8 sizes unless said, single precision (first_order: double), %d threads, best of %d; updates/s x 12 B over triad%n",
                NX, NY, NZ, threads, REPEATS);
        for (List<String> module : List.of(List.<String>of(), List.of("--add-modules", "jdk.incubator.vector"))) {
            List<String> command = new ArrayList<>(List.of(System.getProperty("java.home") + "/bin/java", "-Xmx2g"));
            command.addAll(module);
            command.addAll(List.of("-cp", System.getProperty("java.class.path"), FogTransportRate.class.getName()));
            command.addAll(List.of(String.valueOf(threads), module.isEmpty() ? "plain" : "vectors"));
            new ProcessBuilder(command).inheritIO().start().waitFor();
        }
    }

    /**
     * One way of stepping.
     *
     * @param updatesPerS cell-bin updates a second, best of some
     * @param saved steps of one length for all over those that were done
     */
    record Rate(String way, double updatesPerS, double saved) {}

    private static void measure(int threads, String name) {
        try (Workers workers = new Workers(threads)) {
            double triad = Triad.bytesPerS(workers) * 1e-9;
            for (Rate r : rates(workers)) {
                System.out.printf(
                        "%-8s %-28s %6.0f M cell-bin updates/s, triad %5.1f GB/s, share %.3f; levels save a factor of %.1f in updates%n",
                        name, r.way(), r.updatesPerS() * 1e-6, triad, r.updatesPerS() * 12e-9 / triad, r.saved());
            }
        }
    }

    /** All ways, in the order of {@link #WAYS}. */
    static List<Rate> rates(Workers workers) {
        int threads = workers.threads();
        VoxelGrid grid = box(NX, NY, NZ);
        List<Rate> rates = new ArrayList<>();
        for (Way way : WAYS) {
            FogStepper fog = fog(grid, way.transport(), way.sizes(), workers);
            if (way.plain()) {
                fog.stepPlainly();
            }
            SprayHits hits = way.jet() ? jet(way.sizes()) : null;
            double best = 0;
            double saved = 0;
            for (int i = 0; i < REPEATS; i++) {
                long updates = fog.stats().updates();
                long steps = fog.stats().explicitSteps();
                long start = Triad.clockNs(threads);
                fog.advance(swirl(grid, 1 + 0.1 * i), hits, way.windowS());
                double seconds = (Triad.clockNs(threads) - start) * 1e-9;
                double both = grid.cellCount() + grid.faces().count();
                double done = (fog.stats().updates() - updates) / both * grid.cellCount();
                best = Math.max(best, done / seconds);
                saved = (double) (fog.stats().explicitSteps() - steps) * grid.cellCount() / done;
            }
            rates.add(new Rate(way.name(), best, saved));
        }
        return rates;
    }

    private static FogStepper fog(VoxelGrid grid, Transport transport, int sizes, Workers workers) {
        double[] diameter = new double[sizes];
        double[] share = new double[sizes];
        for (int b = 0; b < sizes; b++) {
            diameter[b] = 2e-6 * Math.pow(1.6, b * 8.0 / sizes);
            share[b] = 1.0 / sizes;
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

    static VoxelGrid box(int nx, int ny, int nz) {
        CavitySpec.Block block = new CavitySpec.Block(
                "box",
                new Vec3(0.01 * nx, 0.01 * ny, 0.01 * nz),
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
    static AirField swirl(VoxelGrid grid, double strength) {
        FaceSet faces = grid.faces();
        double[] flux = new double[faces.count()];
        for (int e = 0; e < flux.length; e++) {
            int c = faces.low()[e];
            double layer = strength * (grid.j(c) == grid.ny() / 2 ? 2e-2 : 1e-3);
            int i = grid.i(c);
            int k = grid.k(c);
            if (faces.axis()[e] == 0) {
                flux[e] = layer * (stream(grid, i, k) - stream(grid, i, k - 1));
            } else if (faces.axis()[e] == 2) {
                flux[e] = layer * (stream(grid, i - 1, k) - stream(grid, i, k));
            }
        }
        double[] mixing = new double[grid.cellCount()];
        java.util.Arrays.fill(mixing, 1e-5);
        double[] friction = new double[grid.surfels().count()];
        java.util.Arrays.fill(friction, 0.05);
        return new AirField(flux, new double[0], new double[grid.cellCount()], 0, mixing, friction, new double[0], 0);
    }

    /** Zero on the walls, so that what flows in flows out: cells 1 to n - 2 of the lattice lie inside. */
    private static double stream(VoxelGrid grid, int i, int k) {
        double z = (double) k / (grid.nz() - 2);
        return Math.sin(Math.PI * i / (grid.nx() - 2)) * 4 * z * (1 - z) * Math.tanh(6 * (z - 0.5));
    }
}
