package baymist.bench;

import baymist.cavity.CavityBuilder;
import baymist.recording.LiveFilm;
import baymist.recording.Preview;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.surface.Surface;
import baymist.surface.SurfaceOptions;
import java.io.IOException;
import java.lang.management.CompilationMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * How soon a changed job shows film: each demonstration scene in a Java of its own, cold and once more. Run from the project's folder:
 *
 * <p>{@code java -jar benchmarks.jar preview [--threads N] [--scenes a,b] [--write FOLDER]}
 */
final class PreviewRate {
    private static final double GOAL_S = 3;
    private static final String ROW = "row ";

    private PreviewRate() {}

    static void main(Arguments args) throws IOException, InterruptedException {
        int threads = args.number("--threads", 2);
        if (args.has("--one")) {
            one(args.text("--one", ""), threads);
            return;
        }
        Page page = new Page("Previews: how soon a changed job shows film", "preview" + args.words());
        page.say(
                "%s. Projected air, about 4,000 cells, %d threads; what else is coarse: [display](../theory/display.md), section 3."
                        + " Each scene in a Java of its own. Ready: Java started, scene read, structure looked at at the scene's own voxels,"
                        + " as before any preview. Then seconds by the clock, and in brackets of processors, of all threads:"
                        + " from the edit to film on a surface after the first moment; to the end of the preview with its verdicts; and for the surface as triangles to draw.",
                Machine.words(), threads);
        List<String> rows = new ArrayList<>();
        String wanted = args.text("--scenes", "");
        for (String name : Demos.names()) {
            if (wanted.isEmpty() || List.of(wanted.split(",")).contains(name)) {
                System.err.println("previewing: " + name);
                String said = OwnJava.printed(
                        args.text("--heap", "3g"),
                        List.of("preview", "--one", name, "--threads", String.valueOf(threads)));
                said.lines().filter(l -> l.startsWith(ROW)).forEach(l -> rows.add(l.substring(ROW.length()) + "\n"));
            }
        }
        page.table(
                "| scene | cells | ready | first film, cold | whole preview, cold | surface, cold | first film, again"
                        + " | whole preview, again | surface, again | compiled, cold | classes loaded | largest stages again, processor s |\n|---|---|---|---|---|---|---|---|---|---|---|---|\n",
                rows);
        page.say(
                "Goal: a whole preview in less than %.0f s. A preview comes again with every edit; only the first after the program's"
                        + " start is cold: Java then compiles what runs (seconds of its compilers stand in a column of their own),"
                        + " beside it on another processor where one is free.",
                GOAL_S);
        page.finish(args, "preview.md");
    }

    private static void one(String name, int threads) {
        Scene scene = SceneReader.read(Path.of("scenes", name + ".yaml"));
        RunOptions options = new RunOptions(threads);
        double volumeM3 =
                Simulation.check(scene, options, RunObserver.NONE).grid().totalVolumeM3();
        StringBuilder row = new StringBuilder();
        long started = ManagementFactory.getRuntimeMXBean().getStartTime();
        String ready = pair(1e-3 * (System.currentTimeMillis() - started), 1e-9 * Triad.processorNs());
        int cells = 0;
        String stages = "";
        String compiled = "";
        for (int round = 0; round < 2; round++) {
            long compiledMs = compiledMs();
            StageTimes times = new StageTimes();
            Preview preview = Preview.of(scene, CavityBuilder.build(scene), volumeM3);
            RunResult result = preview.run(options, times, LiveFilm.NONE).result();
            stages = largest(times);
            double clock = times.clockS();
            double processor = times.allProcessorS();
            double compiledS = 1e-3 * (compiledMs() - compiledMs);
            compiled = round == 0 ? String.format(Locale.ROOT, " %.1f |", compiledS) : compiled;
            row.append(pair(times.filmS(), times.filmProcessorS())).append(pair(clock, processor));
            Surface.of(result.cavity(), result.grid(), SurfaceOptions.DEFAULT.withMaxTriangles(60_000));
            row.append(pair(times.clockS() - clock, times.allProcessorS() - processor));
            cells = result.grid().cellCount();
        }
        System.out.printf(
                Locale.ROOT,
                "%s| %s | %,d |%s%s%s %,d | %s |%n",
                ROW,
                name,
                cells,
                ready,
                row,
                compiled,
                ManagementFactory.getClassLoadingMXBean().getLoadedClassCount(),
                stages);
    }

    /** What Java's compilers took up to now, about, ms. */
    private static long compiledMs() {
        CompilationMXBean compiler = ManagementFactory.getCompilationMXBean();
        return compiler == null ? 0 : compiler.getTotalCompilationTime();
    }

    private static String pair(double clockS, double processorS) {
        return String.format(Locale.ROOT, " %.1f (%.1f) |", clockS, processorS);
    }

    private static String largest(StageTimes times) {
        List<String> said = times.processorS().entrySet().stream()
                .filter(e -> e.getValue() >= 0.1)
                .map(e -> String.format(Locale.ROOT, "%s %.1f", e.getKey().replace(",", ""), e.getValue()))
                .toList();
        return String.join(", ", said);
    }
}
