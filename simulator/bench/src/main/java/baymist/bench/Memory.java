package baymist.bench;

import baymist.run.CheckResult;
import baymist.run.MemoryEstimate;
import baymist.run.RunEstimate;
import baymist.run.RunMoment;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Memory as it is said before a run, beside what the run holds: after each moment of the job everything is collected and what is left is counted. Hang times are cut to a second, since they
 * take time and no memory. Run from the project's folder:
 *
 * <p>{@code java -jar benchmarks.jar memory [--threads N] [--scenes a,b] [--mm 8] [--write FOLDER]}
 */
final class Memory {
    private Memory() {}

    static void main(Arguments args) throws IOException {
        int threads = args.number("--threads", 2);
        double mm = args.real("--mm", 0);
        List<String> rows = new ArrayList<>();
        for (String name : args.texts("--scenes", "control-surface-pin-forward,wing-box")) {
            System.err.println("running: " + name);
            Scene scene = SceneReader.read(Path.of("scenes", name + ".yaml")).withHangS(1);
            scene = scene.withPasses(scene.passes().subList(0, 1));
            rows.add(row(
                    name, mm > 0 ? scene.withVoxel(new VoxelSpec(1e-3 * mm, 1e-3 * mm, 1e-3 * mm)) : scene, threads));
        }
        Page page = new Page("Memory, said and held", "memory" + args.words());
        page.say("%s. %d threads; the first pass of each scene, hang times of a second.", Machine.words(), threads);
        page.table(
                "| scene | cells | said: grid MB | fog | air | in all with 40 for Java | held at most MB | held/said | B a cell held |\n|---|---|---|---|---|---|---|---|---|\n",
                rows);
        page.say(
                "Held: sheets, tree, Java's own and the result are in it, of which what was in use before is taken off.");
        page.finish(args, "memory.md");
    }

    private static String row(String name, Scene scene, int threads) {
        RunOptions options = new RunOptions(threads);
        CheckResult check = Simulation.check(scene, options, RunObserver.NONE);
        RunEstimate estimate = check.estimate();
        if (estimate == null) {
            throw new IllegalStateException(name + " can't be run: " + check.findings());
        }
        MemoryEstimate said = estimate.memory();
        int cells = check.grid().cellCount();
        check = null;
        long before = PeakMemory.heldNowBytes();
        PeakMemory peak = new PeakMemory();
        Simulation.run(scene, options, new RunObserver() {
            private long next;

            @Override
            public void stage(String stage) {}

            @Override
            public void progress(double done, double jobTimeS) {}

            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void moment(RunMoment now) {
                if (System.nanoTime() > next) {
                    peak.look();
                    next = System.nanoTime() + 200_000_000L;
                }
            }
        });
        double held = peak.heldBytes() - before;
        return String.format(
                Locale.ROOT,
                "| %s | %,d | %.0f | %.0f | %.0f | %.0f | %.0f | %.2f | %.0f |%n",
                name,
                cells,
                1e-6 * said.gridBytes(),
                1e-6 * said.fogBytes(),
                1e-6 * said.airBytes(),
                1e-6 * said.totalBytes() + 40,
                1e-6 * held,
                held / (said.totalBytes() + 40e6),
                held / cells);
    }
}
