package baymist.bench;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.plan.DoseMatrix;
import baymist.plan.Stroke;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.voxel.VoxelGrid;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * All ratios in one table, each against the triad or against its plain form as measured in this process, with the goal beside it. Run from the project's folder:
 *
 * <p>{@code java -jar benchmarks.jar ratios [--threads N] [--write FOLDER] [--compare] [--only triad,fog,levels,air,rays,reach,plan]}. {@code --compare}
 * runs whole comparisons of candidates with one thread and with more, which takes minutes. Start Java with {@code --add-modules jdk.incubator.vector} as the program is started
 * to have its vectors.
 */
final class Ratios {
    private static final Path WING_BOX = Path.of("scenes", "wing-box.yaml");
    private static final int JUDGED = 400;

    private final int threads;
    private final List<Ratio> rows = new ArrayList<>();
    private double triadOne;
    private double triadAll;

    private Ratios(int threads) {
        this.threads = threads;
    }

    static void main(Arguments args) throws IOException {
        Ratios r = new Ratios(args.number("--threads", 2));
        List<String> only = args.texts("--only", "triad,fog,levels,air,rays,reach,plan");
        r.triad();
        for (String part : only) {
            System.err.println("measuring: " + part);
            switch (part) {
                case "triad" -> r.memory();
                case "fog" -> r.fog();
                case "levels" -> r.levels();
                case "air" -> r.air();
                case "rays" -> r.rays();
                case "reach" -> r.reach();
                case "plan" -> r.plan();
                default -> throw new IllegalArgumentException("no ratio is named " + part);
            }
        }
        if (args.has("--compare")) {
            System.err.println("measuring: compare");
            r.compare();
        }
        Page page = new Page("Ratios", "ratios" + args.words());
        page.say(
                "%s. Each figure is the best of several rounds. One thread is timed by its own processor time, more by the clock.",
                Machine.words());
        page.say("Vectors of the Java platform: %s.", Machine.vectors() ? "on" : "off (plain loops)");
        page.table(Ratio.header(), r.rows.stream().map(Ratio::row).toList());
        page.finish(args, "ratios.md");
    }

    private void triad() {
        try (Workers one = new Workers(1);
                Workers all = new Workers(threads)) {
            triadOne = Triad.bytesPerS(one);
            triadAll = threads == 1 ? triadOne : Triad.bytesPerS(all);
        }
    }

    private double triad(int of) {
        return of == 1 ? triadOne : triadAll;
    }

    private int[] teams() {
        return threads == 1 ? new int[] {1} : new int[] {1, threads};
    }

    private static String on(int threads) {
        return threads == 1 ? "1 thread" : threads + " threads";
    }

    private void memory() {
        for (int n : teams()) {
            rows.add(Ratio.told("triad, GB/s", "double, " + on(n), triad(n) * 1e-9, "%.1f"));
        }
    }

    private void fog() {
        for (int n : teams()) {
            try (Workers workers = new Workers(n)) {
                List<FogTransportRate.Rate> rates = FogTransportRate.rates(workers);
                for (FogTransportRate.Rate rate : rates) {
                    String way = rate.way() + (rate.way().contains("sizes") ? ", " : ", 8 sizes, ") + on(n);
                    double share = rate.updatesPerS() * 12 / triad(n);
                    boolean goal = rate.way().startsWith("auto") && !rate.way().contains("plain");
                    rows.add(
                            goal
                                    ? Ratio.atLeast(0.2, "fog: updates/s x 12 B over the triad", way, share, "%.3f")
                                    : Ratio.told("fog: updates/s x 12 B over the triad", way, share, "%.3f"));
                    rows.add(Ratio.told("fog: M cell-size updates/s", way, 1e-6 * rate.updatesPerS(), "%.0f"));
                }
                double kernel = rate(rates, "auto, kernel");
                String on = "8 sizes, " + on(n);
                rows.add(Ratio.atLeast(
                        3.5,
                        "fog: kernel over the same in plain loops",
                        on,
                        kernel / rate(rates, "auto, kernel in plain loops"),
                        "%.2f"));
                rows.add(Ratio.atLeast(
                        3.5,
                        "fog: kernel over the same in plain loops",
                        "ten sizes, " + on(n),
                        rate(rates, "auto, kernel, ten sizes") / rate(rates, "auto, kernel in plain loops, ten sizes"),
                        "%.2f"));
                rows.add(Ratio.told(
                        "fog: kernel over donor cells in double precision, one size at a time",
                        on,
                        kernel / rate(rates, "first_order"),
                        "%.2f"));
                rows.add(Ratio.told(
                        "fog: windows of 0.25 s with set-up over the same in plain loops",
                        on,
                        rate(rates, "auto, jet on") / rate(rates, "auto, jet on, plain loops"),
                        "%.2f"));
            }
        }
    }

    private static double rate(List<FogTransportRate.Rate> rates, String way) {
        return rates.stream()
                .filter(r -> r.way().equals(way))
                .findFirst()
                .orElseThrow()
                .updatesPerS();
    }

    private void levels() {
        try (Workers one = new Workers(1)) {
            FogLevelsRate.Saved s = FogLevelsRate.measure(one);
            String way = "auto, jet of 7 m/s on, 8 sizes, 1 thread, set-up included";
            rows.add(Ratio.atLeast(3, "fog: steps of many lengths over one length, in time", way, s.time(), "%.1f"));
            rows.add(Ratio.told("fog: the same in updates", way, s.updates(), "%.1f"));
            rows.add(Ratio.atMost(
                    0.5, "fog: film of the two apart (L1), %", "2 s of jet, 2 s without", 100 * s.film(), "%.2f"));
        }
    }

    private void air() {
        Scene scene = SceneReader.read(WING_BOX);
        Cavity cavity = CavityBuilder.build(scene);
        VoxelGrid grid = AirRate.grid(cavity, scene.voxel());
        for (int block = 4; block >= 1; block /= 2) {
            AirRate.Step step = AirRate.step(scene, cavity, grid, block);
            rows.add(Ratio.told(
                    "air: us a cell and step",
                    String.format(Locale.ROOT, "resolved, %,d cells, double, 1 thread", step.cells()),
                    1e6 * step.cellS(),
                    "%.2f"));
        }
        AirRate.Solve solve = AirRate.poisson(cavity, 1e6);
        String way = String.format(Locale.ROOT, "multigrid CG to 1e-6, %,d cells, double, 1 thread", solve.cells());
        rows.add(Ratio.atMost(70, "pressure: iterations", way, solve.iterations(), "%.0f"));
        rows.add(Ratio.told("pressure: seconds a solve", way, solve.seconds(), "%.2f"));
        rows.add(Ratio.told("pressure: least bytes moved over the triad", way, solve.bytesPerS() / triadOne, "%.2f"));
    }

    private void rays() {
        Scene scene = SceneReader.read(WING_BOX);
        Cavity cavity = CavityBuilder.build(scene);
        Cavity shell = RibbedShell.cavity();
        rays("wing box", cavity, AirRate.grid(cavity, scene.voxel()));
        rays("ribbed shell", shell, AirRate.grid(shell, VoxelizerBenchmark.VOXEL));
    }

    private void rays(String name, Cavity cavity, VoxelGrid grid) {
        for (int n : teams()) {
            try (Workers workers = new Workers(n)) {
                RayRate.Rates r = RayRate.rates(cavity, grid, 200_000, workers);
                String way = String.format(
                        Locale.ROOT,
                        "%s, %,d triangles, %,d cells, whole random rays, %s",
                        name,
                        r.triangles(),
                        r.cells(),
                        on(n));
                rows.add(Ratio.atLeast(2.5, "rays: cell to cell (DDA) over the tree (BVH)", way, r.gain(), "%.1f"));
                rows.add(Ratio.told("rays: M rays/s by the tree", way, 1e-6 * r.treePerS(), "%.2f"));
                if (n == 1) {
                    rows.add(Ratio.told(
                            "rays: the two meet walls within a voxel's diagonal, %", way, 100 * r.agree(), "%.1f"));
                }
            }
        }
    }

    private void reach() {
        Scene scene = SceneReader.read(WING_BOX);
        for (int n : teams()) {
            rows.add(Ratio.told(
                    "reach: lines/s",
                    "wing box, all entries and wands, " + on(n),
                    ReachRate.linesPerS(scene, n),
                    "%.0f"));
        }
    }

    private void plan() {
        DoseMatrix matrix = PlanBenchmark.build();
        List<Stroke> strokes = PlanBenchmark.strokes(matrix);
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i < JUDGED; i++) {
            long start = Triad.clockNs(1);
            matrix.score(strokes);
            best = Math.min(best, 1e-6 * (Triad.clockNs(1) - start));
        }
        rows.add(Ratio.atMost(
                20,
                "plan: ms to judge one by the dose matrix",
                "elevator, 12 strokes, all surfels, 1 thread",
                best,
                "%.1f"));
    }

    private void compare() {
        Scene scene = SceneReader.read(Path.of("scenes", "wing-box-choose.yaml"));
        rows.add(Ratio.atLeast(
                1.5,
                "comparison: one thread's time over that of " + on(threads),
                "wing-box-choose, 20 candidates at planning resolution, by the clock",
                CompareRate.gain(scene, threads, 2),
                "%.2f"));
    }
}
