package baymist.bench;

import baymist.airflow.AirField;
import baymist.cavity.CavityBuilder;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
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
 *   <li>{@code steps}: time of one step of the fog against cells, from 0.6 to 3 million (more does not fit into 10 GB).
 *   <li>{@code bays}: a whole run with bays added, voxels and job the same; and with every bay sprayed.
 *   <li>{@code refine}: a whole run with finer voxels.
 * </ul>
 */
final class Scale {
    private static final String QUICK = "hang: 20 s\nair: projected";

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

    /** A window of some steps of donor cells at a time for all cells alike: stirred fog in air that swirls through every bay. */
    private void steps() {
        List<String> rows = new ArrayList<>();
        double[] cells = args.has("--small") ? new double[] {1e5, 4e5} : new double[] {0.6e6, 1.2e6, 3e6};
        double[] n = new double[cells.length];
        double[] stepS = new double[cells.length];
        try (Workers workers = new Workers(2)) {
            for (int i = 0; i < cells.length; i++) {
                Scene scene = ManyBays.scene(16, 1, ManyBays.voxelM(16, cells[i]), QUICK);
                VoxelGrid grid = Voxelizer.voxelize(CavityBuilder.build(scene), scene.voxel(), workers);
                FogStepper fog = fog(grid, workers);
                AirField air = drift(grid);
                double windowS = 20 * grid.sizeM().x() / 0.2;
                SprayHits jet = FogTransportRate.source(0, new double[] {1e-9, 1e-9, 1e-9, 1e-9});
                fog.advance(air, jet, windowS);
                long before = fog.stats().updates();
                double start = processorS();
                fog.advance(air, jet, windowS);
                double seconds = processorS() - start;
                double both = grid.cellCount() + grid.faces().count();
                double steps = (fog.stats().updates() - before) / both / fog.bins();
                n[i] = grid.cellCount();
                stepS[i] = seconds / steps;
                double held = PeakMemory.heldNowBytes() / n[i];
                rows.add(text(
                        "| %,d | %.0f | %.3f | %.1f | %.0f |%n",
                        grid.cellCount(), steps, stepS[i], 1e9 * stepS[i] / n[i] / fog.bins(), held));
            }
        }
        page.say(
                "## One step of the fog%n%n%d sizes, as with a jet on, nearly every cell at one pace, set-up of the window included; two threads. Held: the grid and its fog.",
                4);
        page.table(
                "| cells | steps | processor s a step | ns a cell and size | B a cell held |\n|---|---|---|---|---|\n",
                rows);
        page.say("Time of a step grows as cells^%.2f (goal: at most 1.05).", exponent(n, stepS));
    }

    /** Exponent between the first and the last. */
    private static double exponent(double[] n, double[] time) {
        int last = n.length - 1;
        return Math.log(time[last] / time[0]) / Math.log(n[last] / n[0]);
    }

    private static FogStepper fog(VoxelGrid grid, Workers workers) {
        double[] diameter = {2e-6, 4e-6, 6e-6, 8e-6};
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

    private void bays() {
        int[] bays = args.has("--small") ? new int[] {2, 4} : new int[] {4, 8, 16, 32};
        growth("bays added, one bay sprayed", bays, true, false);
        growth("bays added, every bay sprayed", Arrays.copyOf(bays, Math.min(3, bays.length)), true, true);
    }

    private void refine() {
        growth("voxels refined, four bays, one sprayed", new int[] {20, 15, 12}, false, false);
    }

    /** Whole runs; {@code sizes} are bays, or voxels in mm. */
    private void growth(String what, int[] sizes, boolean bays, boolean all) {
        List<String> rows = new ArrayList<>();
        double[] n = new double[sizes.length];
        double[] time = new double[sizes.length];
        run(4, 1, 0.025);
        for (int i = 0; i < sizes.length; i++) {
            int count = bays ? sizes[i] : 4;
            double start = processorS();
            RunResult r = run(count, all ? count : 1, bays ? 0.016 : 1e-3 * sizes[i]);
            time[i] = processorS() - start;
            n[i] = r.grid().cellCount();
            rows.add(text(
                    "| %d | %,d | %.1f | %.1f |%n", sizes[i], r.grid().cellCount(), time[i], 1e6 * time[i] / n[i]));
        }
        page.say(
                "## Whole runs: %s%n%nProjected air, 20 s of hang, two threads%s.",
                what, bays ? ", voxels of 16 mm" : "");
        page.table(
                (bays ? "| bays" : "| voxel mm") + " | cells | processor s | us a cell |\n|---|---|---|---|\n", rows);
        page.say("Time grows as cells^%.2f%s.", exponent(n, time), bays && !all ? " (goal: at most 1.1)" : "");
    }

    private static RunResult run(int bays, int sprayed, double voxelM) {
        return Simulation.run(ManyBays.scene(bays, sprayed, voxelM, QUICK), new RunOptions(2), RunObserver.NONE);
    }
}
