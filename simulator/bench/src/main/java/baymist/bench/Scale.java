package baymist.bench;

import baymist.airflow.AirField;
import baymist.cavity.CavityBuilder;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.scene.Transport;
import baymist.scene.WallFinish;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * How time and memory grow with the cavity, on a wing box of many bays. Run from the project's folder with enough heap:
 *
 * <p>{@code java -Xmx10g -jar benchmarks.jar scale [--part big,steps,bays,refine] [--cells 30e6] [--write FOLDER]}
 *
 * <ul>
 *   <li>{@code big}: a run of a structure that does not fit into memory as a whole, largest heap.
 *   <li>{@code steps}: time of one step of the fog against cells, from 0.3 to 3 million.
 *   <li>{@code bays}: whole runs with bays added, voxels and job the same, stage by stage ({@link Growth}); and with every bay sprayed.
 *   <li>{@code refine}: whole runs with finer voxels.
 * </ul>
 */
final class Scale {
    private static final String QUICK = "hang: 20 s\nair: projected";
    /** The block is stated: which one the program takes hangs on the cells. */
    private static final String RESOLVED = "hang: 20 s\nair: {block: 2}";

    private static final double VOXEL_M = 0.016;
    private static final int SIZES = 4;
    private static final int WINDOWS = 4;

    private final Arguments args;
    private final Page page;

    private Scale(Arguments args, Page page) {
        this.args = args;
        this.page = page;
    }

    static void main(Arguments args) throws IOException {
        Page page = new Page("Scale", "scale" + args.words());
        page.say(
                "%s. A wing box of 400 mm bays, 1 m chord, two stringers a skin, three holes a rib, a port and a drain a bay. Processor time of all threads.",
                Machine.words());
        Scale scale = new Scale(args, page);
        for (String part : args.texts("--part", "big,steps,bays,refine")) {
            System.err.println("measuring: " + part);
            switch (part) {
                case "big" -> scale.big(args.real("--cells", 30e6));
                case "steps" -> scale.steps();
                case "bays" -> scale.bays();
                case "refine" -> scale.refine();
                default -> throw new IllegalArgumentException("no part is named " + part);
            }
        }
        page.finish(args, "scale.md");
    }

    private static double processorS() {
        return 1e-9 * Triad.processorNs();
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    private void big(double cells) {
        BigRun.measure(page, cells, args.real("--draw", 20), args.real("--hang", 3));
    }

    /** A window of some steps for all cells alike: stirred fog in air that swirls through every bay. */
    private void steps() {
        List<String> rows = new ArrayList<>();
        double[] cells = args.has("--small") ? new double[] {1e5, 4e5} : new double[] {0.3e6, 0.75e6, 1.5e6, 3e6};
        double[] n = new double[cells.length];
        double[] stepS = new double[cells.length];
        try (Workers workers = new Workers(2)) {
            step(1e5, workers);
            for (int i = 0; i < cells.length; i++) {
                Step step = step(cells[i], workers);
                n[i] = step.cells;
                stepS[i] = step.processorS;
                rows.add(text(
                        "| %,d | %.0f | %.3f | %.1f | %.0f | %s |%n",
                        step.cells,
                        step.steps,
                        stepS[i],
                        1e9 * stepS[i] / n[i] / SIZES,
                        step.heldBytes / n[i],
                        i == 0 ? "" : text("%.2f", Power.between(n, stepS, i - 1, i))));
            }
        }
        page.say(
                "## One step of the fog%n%n%d sizes, as with a jet on, nearly every cell at one pace, set-up of the window included; two threads, best of %d windows. Held: the grid and its fog.",
                SIZES, WINDOWS);
        page.table(
                "| cells | steps | processor s a step | ns a cell and size | B a cell held | exponent from the row before |\n|---|---|---|---|---|---|\n",
                rows);
        page.say("Time of a step grows as cells^%.2f (goal: at most 1.05).", Power.fitted(n, stepS));
    }

    private record Step(int cells, double steps, double processorS, double heldBytes) {}

    private static Step step(double cells, Workers workers) {
        Scene scene = ManyBays.scene(16, 1, ManyBays.voxelM(16, cells), QUICK);
        VoxelGrid grid = Voxelizer.voxelize(CavityBuilder.build(scene), scene.voxel(), workers);
        FogStepper fog = fog(grid, workers);
        AirField air = drift(grid);
        double windowS = 20 * grid.sizeM().x() / 0.2;
        SprayHits jet = FogTransportRate.source(0, new double[] {1e-9, 1e-9, 1e-9, 1e-9});
        fog.advance(air, jet, windowS);
        double best = Double.POSITIVE_INFINITY;
        double steps = 0;
        for (int window = 0; window < WINDOWS; window++) {
            long before = fog.stats().updates();
            double start = processorS();
            fog.advance(air, jet, windowS);
            double seconds = processorS() - start;
            double both = grid.cellCount() + grid.faces().count();
            steps = (fog.stats().updates() - before) / both / fog.bins();
            best = Math.min(best, seconds / steps);
        }
        return new Step(grid.cellCount(), steps, best, PeakMemory.heldNowBytes());
    }

    private static FogStepper fog(VoxelGrid grid, Workers workers) {
        double[] diameter = new double[SIZES];
        Arrays.setAll(diameter, i -> 2e-6 * (i + 1));
        double[] share = new double[diameter.length];
        Arrays.fill(share, 1.0 / share.length);
        FogStepper fog = new FogStepper(
                grid,
                new SizeBins(diameter, share),
                880,
                Air.STANDARD,
                new Vec3(0, 0, -9.81),
                WallFinish.SMOOTH,
                Transport.AUTO,
                workers);
        fog.addUniform(1e-3);
        return fog;
    }

    /** Rows of air along x that run to and fro at 0.2 m/s: every cell has the same pace but those at walls. Fog heaps up at their ends; its time does not care. */
    private static AirField drift(VoxelGrid grid) {
        FaceSet faces = grid.faces();
        double[] flux = new double[faces.count()];
        for (int e = 0; e < flux.length; e++) {
            int c = faces.low()[e];
            flux[e] = faces.axis()[e] == 0 ? 0.2 * faces.areaM2()[e] * ((grid.j(c) + grid.k(c)) % 2 == 0 ? 1 : -1) : 0;
        }
        double[] mixing = new double[grid.cellCount()];
        Arrays.fill(mixing, 1e-5);
        int most = 0;
        for (int[] list : new int[][] {
            faces.opening(), faces.ventOpening(), grid.surfels().closure()
        }) {
            for (int opening : list) {
                most = Math.max(most, opening + 1);
            }
        }
        return new AirField(
                flux,
                new double[faces.vents()],
                new double[grid.cellCount()],
                0,
                mixing,
                new double[grid.surfels().count()],
                new double[most],
                0);
    }

    private void bays() throws IOException {
        int[] bays = args.has("--small") ? new int[] {2, 4} : new int[] {4, 8, 16, 32};
        String voxels = text(", voxels of %.0f mm", 1e3 * VOXEL_M);
        Growth growth = new Growth(page, 2);
        int[] few = Arrays.copyOf(bays, Math.min(3, bays.length));
        growth.table(
                "bays added, one bay sprayed, projected air" + voxels,
                bays,
                "bays",
                n -> ManyBays.scene(n, 1, VOXEL_M, QUICK),
                1.1);
        new Growth(page, 1)
                .table(
                        "bays added and every bay sprayed, so that the job grows too, projected air" + voxels,
                        few,
                        "bays",
                        n -> ManyBays.scene(n, n, VOXEL_M, QUICK),
                        0);
        growth.table(
                "bays added, one bay sprayed, air resolved in blocks of two voxels" + voxels,
                few,
                "bays",
                n -> ManyBays.scene(n, 1, VOXEL_M, RESOLVED),
                1.1);
    }

    private void refine() throws IOException {
        int[] mm = args.has("--small") ? new int[] {25, 20} : new int[] {20, 15, 12, 9};
        new Growth(page, 1)
                .table(
                        "voxels refined, four bays, one sprayed, projected air",
                        mm,
                        "mm",
                        v -> ManyBays.scene(4, 1, 1e-3 * v, QUICK),
                        0);
        page.say(
                "Under refinement the fog's steps shrink too: by cells^-0.33 if the pace of the air stays the same, by more where finer voxels hold more of the jet's pace.");
    }
}
