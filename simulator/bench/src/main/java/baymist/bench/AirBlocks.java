package baymist.bench;

import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What a coarser grid of the air than the fog's does to coverage: one scene with blocks of several sizes, everything else the same, each held against the finest of them, and the finest again with other rays: what the rays alone leave open. Run
 * from the project's folder:
 *
 * <p>{@code java -jar benchmarks.jar airblocks [--scenes a,b] [--blocks 4,3,2] [--voxel 1.5] [--hang S] [--sizes N] [--rays N] [--threads N] [--write FOLDER]}
 *
 * <p>{@code --voxel} multiplies the voxel's sides, {@code --hang} is the longest hang in seconds. A cavity's grid is good enough for coverage if the reached share moves by less than {@value #BAR_POINTS}
 * points (ASSUMED bar: below what rays and voxels leave open, see docs/validation/coverage.md).
 */
final class AirBlocks {
    /** Bar for the reached share, points. */
    static final double BAR_POINTS = 1;

    private AirBlocks() {}

    /** A run and what it took, s of processors. */
    private record Trial(String block, RunResult result, double processorS) {
        double reached() {
            return 100 * result.coverage().total().reached();
        }

        double covered() {
            return 100 * result.coverage().total().protectedShare();
        }

        double meanUm() {
            SurfelSet surfels = result.grid().surfels();
            double sum = 0;
            double area = 0;
            for (int s = 0; s < surfels.count(); s++) {
                sum += result.filmM()[s] * surfels.areaM2()[s];
                area += surfels.areaM2()[s];
            }
            return 1e6 * sum / area;
        }
    }

    static void main(Arguments args) throws IOException {
        Page page = new Page("Blocks of the resolved air", "airblocks" + args.words());
        page.say(
                "%s, %d threads. Voxels' sides times %.2f, hang of at most %.0f s, %d sizes, %d rays a jet.",
                Machine.words(),
                args.number("--threads", 2),
                args.real("--voxel", 1),
                args.real("--hang", 1e9),
                args.number("--sizes", 5),
                args.number("--rays", 128));
        for (String name : args.texts("--scenes", "control-surface-pin-forward,wing-box").stream()
                .toList()) {
            page.say("## %s", name);
            scene(name, args, page);
        }
        page.finish(args, "air-blocks.md");
    }

    private static Scene read(String name, Arguments args) {
        Scene scene = SceneReader.read(Path.of("scenes", name + ".yaml"));
        double factor = args.real("--voxel", 1);
        try (Workers workers = new Workers(args.number("--threads", 2))) {
            VoxelGrid grid = Voxelizer.voxelize(CavityBuilder.build(scene), scene.voxel(), workers);
            VoxelSpec voxel = new VoxelSpec(
                    factor * grid.sizeM().x(),
                    factor * grid.sizeM().y(),
                    factor * grid.sizeM().z());
            return scene.withVoxel(voxel)
                    .withHangS(Math.min(scene.hangS(), args.real("--hang", 1e9)))
                    .withNumerics(args.number("--sizes", 5), args.number("--rays", 128));
        }
    }

    private static void scene(String name, Arguments args, Page page) {
        Scene scene = read(name, args);
        List<Trial> trials = new ArrayList<>();
        for (String block : args.texts("--blocks", "4,3,2")) {
            System.err.println("running: " + name + ", blocks of " + block);
            Scene one = scene.withAir(scene.air().withMode(AirSpec.Mode.RESOLVED, Integer.parseInt(block.strip())));
            trials.add(trial(one, block.strip(), args));
        }
        Trial finest = trials.get(trials.size() - 1);
        System.err.println("running: " + name + ", other rays");
        trials.add(
                trial(finest.result().scene().withRaySeed(scene.raySeed() + 1), finest.block() + ", other rays", args));
        List<String> rows = new ArrayList<>();
        for (Trial t : trials) {
            rows.add(row(t, finest));
        }
        page.say("%,d voxels.", finest.result().grid().cellCount());
        page.table("""
                | blocks | air cells | steps | reached % | protected % | mean film, um | film apart from the finest (L1), % | reached apart, points | below 1 point | whole run, processor s |
                |---|---|---|---|---|---|---|---|---|---|
                """, rows);
    }

    private static Trial trial(Scene scene, String name, Arguments args) {
        long processor = Triad.processorNs();
        RunResult result = Simulation.run(scene, new RunOptions(args.number("--threads", 2)), RunObserver.NONE);
        return new Trial(name, result, 1e-9 * (Triad.processorNs() - processor));
    }

    private static String row(Trial t, Trial finest) {
        Map<String, String> set = t.result().record().settings();
        double apart = t.reached() - finest.reached();
        return String.format(
                Locale.ROOT,
                "| %s | %s | %s | %.2f | %.2f | %.3f | %.2f | %+.2f | %s | %.1f |%n",
                t.block(),
                set.getOrDefault("air cells", "?"),
                set.getOrDefault("air steps", "?"),
                t.reached(),
                t.covered(),
                t.meanUm(),
                100 * filmApart(t.result(), finest.result()),
                apart,
                t.equals(finest) ? "" : Math.abs(apart) < BAR_POINTS ? "yes" : "no",
                t.processorS());
    }

    /** Area-weighted |difference| of two films over the second. */
    private static double filmApart(RunResult a, RunResult b) {
        double apart = 0;
        double all = 0;
        SurfelSet surfels = b.grid().surfels();
        for (int s = 0; s < surfels.count(); s++) {
            apart += Math.abs(a.filmM()[s] - b.filmM()[s]) * surfels.areaM2()[s];
            all += b.filmM()[s] * surfels.areaM2()[s];
        }
        return apart / all;
    }
}
