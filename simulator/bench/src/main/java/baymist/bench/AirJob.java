package baymist.bench;

import baymist.access.Insertion;
import baymist.access.PassPlan;
import baymist.access.Station;
import baymist.access.Stations;
import baymist.airflow.AirField;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.airflow.ResolvedAir;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.StateHash;
import baymist.run.Approach;
import baymist.run.Nozzles;
import baymist.run.Spraying;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneReader;
import baymist.spray.DropletBins;
import baymist.spray.SprayCaster;
import baymist.voxel.VoxelGrid;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The resolved air of a whole job alone, on one thread by its own processor time: jets, supply and vents as in the run, no fog (clear air is weighed all the same). Best of
 * several rounds in one process. Run from the project's folder:
 *
 * <p>{@code java -jar benchmarks.jar airjob [--scenes a,b] [--blocks 4] [--hang S] [--rounds N] [--write FOLDER]}
 */
final class AirJob {
    private AirJob() {}

    static void main(Arguments args) throws IOException {
        Page page = new Page("Resolved air of whole jobs", "airjob" + args.words());
        page.say(
                "%s. One thread, processor time, best of %d. No fog. Blocks of %d voxels, hang of %.0f s.",
                Machine.words(), args.number("--rounds", 3), args.number("--blocks", 4), args.real("--hang", 20));
        List<String> rows = new ArrayList<>();
        for (String name : args.texts("--scenes", "control-surface-pin-forward,wing-box")) {
            rows.add(job(name, args));
        }
        page.table(
                "| scene | voxels | air cells | steps | windows | processor s | us a cell and step | hash of the last field |\n|---|---|---|---|---|---|---|---|\n",
                rows);
        page.finish(args, "air-job.md");
    }

    private static String job(String name, Arguments args) {
        Scene scene = SceneReader.read(Path.of("scenes", name + ".yaml"));
        Cavity cavity = CavityBuilder.build(scene);
        VoxelGrid grid = AirRate.grid(cavity, scene.voxel());
        List<AirWindow> windows = windows(scene, cavity, grid, args.real("--hang", 20));
        double[] areas = OpenFractions.areasM2(cavity.openings());
        AirStage plan = AirStage.plan(AirSettings.of(scene, scene.ambient()), areas, grid, windows);
        double best = Double.POSITIVE_INFINITY;
        Done done = new Done(0, 0, 0, "");
        for (int n = 0; n < args.number("--rounds", 3); n++) {
            long start = Triad.clockNs(1);
            done = advance(windows, ResolvedAir.of(plan, grid, areas, args.number("--blocks", 4)), grid);
            best = Math.min(best, 1e-9 * (Triad.clockNs(1) - start));
        }
        return String.format(
                Locale.ROOT,
                "| %s | %,d | %d | %d | %d | %.2f | %.3f | %s |%n",
                name,
                grid.cellCount(),
                done.cells(),
                done.steps(),
                done.windows(),
                best,
                1e6 * best / done.steps() / done.cells(),
                done.hash());
    }

    private record Done(int cells, long steps, int windows, String hash) {}

    private static Done advance(List<AirWindow> windows, ResolvedAir air, VoxelGrid grid) {
        double[] clear = new double[grid.cellCount()];
        AirField field = null;
        int count = 0;
        for (int w = 0; w < windows.size(); w++) {
            double left = windows.get(w).durationS();
            while (left > 1e-9) {
                double length = left / Math.ceil(left / air.windowS() - 1e-9);
                field = air.advance(w, length, clear);
                left -= length;
                count++;
            }
        }
        String hash =
                field == null ? "" : new StateHash().add(field.faceFluxM3PerS()).hex();
        return new Done(air.cells(), air.steps(), count, hash);
    }

    /** The job's stations with the trigger held, one hang after the other. */
    private static List<AirWindow> windows(Scene scene, Cavity cavity, VoxelGrid grid, double hangS) {
        List<Insertion> insertions = Approach.ways(scene, cavity).insertions();
        PassPlan stations = Stations.plan(scene, insertions);
        SprayCaster caster = Spraying.caster(
                scene, cavity, grid, DropletBins.of(Nozzles.sizes(scene), scene.sizeBins()), scene.raysPerJet());
        List<AirWindow> windows = new ArrayList<>();
        double time = 0;
        for (int p = 0; p < scene.passes().size(); p++) {
            WandSpec wand = Approach.wand(scene, scene.passes().get(p));
            double[] open =
                    OpenFractions.pass(cavity.openings(), insertions.get(p).openingIndex(), wand.outerM());
            for (Station s : stations.stations()) {
                if (s.pass() == p) {
                    windows.add(AirWindow.spray(
                            s, caster.castWithDetail(s, wand, open).hits(), open));
                    time = s.startS() + s.durationS();
                }
            }
            double hang = p == scene.passes().size() - 1
                    ? hangS
                    : scene.passes().get(p).hangS();
            windows.add(AirWindow.quiet(time, hang, OpenFractions.hang(cavity.openings())));
            time += hang;
        }
        return windows;
    }
}
