package baymist.bench;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import jdk.jfr.Recording;
import jdk.jfr.consumer.RecordedEvent;
import jdk.jfr.consumer.RecordedFrame;
import jdk.jfr.consumer.RecordingFile;

/**
 * Where the time of whole runs goes: Java's own recorder looks at all running threads every 10 ms, and each look counts for the innermost of our methods that it finds. Run from the
 * project's folder:
 *
 * <p>{@code java -jar benchmarks.jar profile [--threads N] [--scenes a,b] [--write FOLDER]}
 */
final class Profile {
    private static final String OURS = "baymist.";
    private static final int METHODS = 12;

    private Profile() {}

    static void main(Arguments args) throws IOException {
        int threads = args.number("--threads", 2);
        Page page = new Page("Where the time goes", "profile" + args.words());
        page.say(
                "%s. %d threads. Looks of Java's flight recorder at running threads, every 10 ms; a look counts for the innermost method of ours. The first run of a process is"
                        + " profiled, with all that Java takes to warm up.",
                Machine.words(), threads);
        for (String name : args.texts("--scenes", "control-surface-pin-forward,wing-box")) {
            System.err.println("profiling: " + name);
            scene(Path.of("scenes", name + ".yaml"), threads, page);
        }
        page.finish(args, "profile.md");
    }

    private static void scene(Path file, int threads, Page page) throws IOException {
        Scene scene = SceneReader.read(file);
        Path jfr = Files.createTempFile("profile", ".jfr");
        long processor = Triad.processorNs();
        long start = System.nanoTime();
        RunResult result;
        try (Recording recording = new Recording()) {
            recording.enable("jdk.ExecutionSample").withPeriod(Duration.ofMillis(10));
            recording.start();
            result = Simulation.run(scene, new RunOptions(threads), RunObserver.NONE);
            recording.stop();
            recording.dump(jfr);
        }
        double wallS = 1e-9 * (System.nanoTime() - start);
        double processorS = 1e-9 * (Triad.processorNs() - processor);
        Map<String, Integer> byPackage = new TreeMap<>();
        Map<String, Integer> byMethod = new TreeMap<>();
        int all = 0;
        for (RecordedEvent e : RecordingFile.readAllEvents(jfr)) {
            if (!e.getEventType().getName().equals("jdk.ExecutionSample") || e.getStackTrace() == null) {
                continue;
            }
            all++;
            String method = innermost(e);
            String of = method.isEmpty() ? "" : method.substring(0, method.indexOf(' '));
            byPackage.merge(of.isEmpty() ? "Java itself" : of, 1, Integer::sum);
            if (!method.isEmpty()) {
                byMethod.merge(method, 1, Integer::sum);
            }
        }
        Files.delete(jfr);
        page.say(
                "## %s%n%n%,d cells; %.0f s by the clock, %.0f s of processors, %,d looks. Stages by the clock: %s.",
                file.getFileName(), result.grid().cellCount(), wallS, processorS, all, stages(result));
        page.table("| package | looks | share |\n|---|---|---|\n", rows(byPackage, all, 99));
        page.table("| method | looks | share |\n|---|---|---|\n", rows(byMethod, all, METHODS));
    }

    /** Package, a space, class and method; empty if none is ours. */
    private static String innermost(RecordedEvent e) {
        for (RecordedFrame f : e.getStackTrace().getFrames()) {
            String type = f.isJavaFrame() ? f.getMethod().getType().getName() : "";
            if (type.startsWith(OURS)) {
                int dot = type.lastIndexOf('.');
                return type.substring(OURS.length(), dot) + " " + type.substring(dot + 1) + "."
                        + f.getMethod().getName();
            }
        }
        return "";
    }

    private static String stages(RunResult result) {
        Map<String, String> said = new LinkedHashMap<>();
        result.record().secondsByStage().forEach((k, v) -> said.put(k, String.format(Locale.ROOT, "%s %.1f s", k, v)));
        return String.join("; ", said.values());
    }

    private static List<String> rows(Map<String, Integer> looks, int all, int most) {
        List<String> rows = new ArrayList<>();
        looks.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<String, Integer> x) -> -x.getValue()))
                .limit(most)
                .forEach(x -> rows.add(String.format(
                        Locale.ROOT,
                        "| %s | %d | %.1f %% |%n",
                        x.getKey().replace(" ", ": "),
                        x.getValue(),
                        100.0 * x.getValue() / all)));
        return rows;
    }
}
