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
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import jdk.jfr.Recording;
import jdk.jfr.consumer.RecordedEvent;
import jdk.jfr.consumer.RecordedFrame;
import jdk.jfr.consumer.RecordingFile;

/**
 * Where the time of whole runs and of previews goes: Java's own recorder looks at all running threads every 10 ms, and each look counts for the innermost of our methods that
 * it finds. Each in a Java of its own. Run from the project's folder:
 *
 * <p>{@code java -jar benchmarks.jar profile [--threads N] [--scenes a,b] [--write FOLDER]}
 */
final class Profile {
    private static final String OURS = "baymist.";
    private static final int METHODS = 15;
    private static final int PACKAGES_OF_STAGE = 4;

    private Profile() {}

    static void main(Arguments args) throws IOException, InterruptedException {
        int threads = args.number("--threads", 2);
        if (args.has("--one")) {
            one(args.text("--one", ""), args.has("--preview"), threads);
            return;
        }
        Page page = new Page("Where the time goes", "profile" + args.words());
        page.say(
                "%s. %d threads. Looks of Java's flight recorder at running threads, every 10 ms; a look counts for the innermost method of ours. Each in a Java of its own, cold,"
                        + " with all that Java takes to warm up: where processor time is more than the looks tell, Java compiled or collected.",
                Machine.words(), threads);
        for (String name : args.texts("--scenes", "control-surface-pin-forward,wing-box")) {
            for (String kind : List.of("--preview", "--run")) {
                System.err.println("profiling: " + name + " " + kind);
                page.say(
                        "%s",
                        OwnJava.printed(
                                        args.text("--heap", "3g"),
                                        List.of("profile", "--one", name, kind, "--threads", String.valueOf(threads)))
                                .strip());
            }
        }
        page.finish(args, "profile.md");
    }

    /** A look: the stage that it fell into, and the package and method of ours, empty where Java was by itself. */
    private record Look(String stage, String inPackage, String method) {}

    private static void one(String name, boolean asPreview, int threads) throws IOException {
        Scene scene = SceneReader.read(Path.of("scenes", name + ".yaml"));
        RunOptions options = new RunOptions(threads);
        Preview preview = null;
        if (asPreview) {
            double volumeM3 =
                    Simulation.check(scene, options, RunObserver.NONE).grid().totalVolumeM3();
            preview = Preview.of(scene, CavityBuilder.build(scene), volumeM3);
        }
        Path jfr = Files.createTempFile("profile", ".jfr");
        RunResult result;
        StageTimes times;
        List<StageTimes.Stretch> stretches;
        try (Recording recording = new Recording()) {
            recording.enable("jdk.ExecutionSample").withPeriod(Duration.ofMillis(10));
            recording.start();
            times = new StageTimes();
            result = preview == null
                    ? Simulation.run(scene, options, times)
                    : preview.run(options, times, LiveFilm.NONE).result();
            stretches = times.end();
            recording.stop();
            recording.dump(jfr);
        }
        List<Look> looks = looks(jfr, stretches);
        Files.delete(jfr);
        System.out.printf(
                Locale.ROOT,
                "## %s, %s%n%n%,d cells; %.1f s by the clock, %.1f s of processors, %,d looks.%n%n",
                name,
                asPreview ? "preview" : "the scene as it stands",
                result.grid().cellCount(),
                stretches.stream().mapToDouble(StageTimes.Stretch::clockS).sum(),
                stretches.stream().mapToDouble(StageTimes.Stretch::processorS).sum(),
                looks.size());
        printStages(stretches, looks);
        printRows("package", looks.stream().collect(counted(Look::inPackage)), looks.size(), Integer.MAX_VALUE);
        printRows(
                "method",
                looks.stream().filter(l -> !l.method.isEmpty()).collect(counted(Look::method)),
                looks.size(),
                METHODS);
    }

    private static java.util.stream.Collector<Look, ?, Map<String, Integer>> counted(
            java.util.function.Function<Look, String> by) {
        return Collectors.toMap(by, l -> 1, Integer::sum, HashMap::new);
    }

    private static List<Look> looks(Path jfr, List<StageTimes.Stretch> stretches) throws IOException {
        List<Look> looks = new ArrayList<>();
        for (RecordedEvent e : RecordingFile.readAllEvents(jfr)) {
            if (e.getEventType().getName().equals("jdk.ExecutionSample") && e.getStackTrace() != null) {
                String[] frame = innermost(e);
                looks.add(new Look(stage(e.getStartTime(), stretches), frame[0], frame[1]));
            }
        }
        return looks;
    }

    private static String stage(Instant at, List<StageTimes.Stretch> stretches) {
        for (StageTimes.Stretch s : stretches) {
            if (!at.isBefore(s.from()) && at.isBefore(s.to())) {
                return s.stage();
            }
        }
        return "";
    }

    /** Package, and class and method, of the innermost frame of ours. */
    private static String[] innermost(RecordedEvent e) {
        for (RecordedFrame f : e.getStackTrace().getFrames()) {
            String type = f.isJavaFrame() ? f.getMethod().getType().getName() : "";
            // classes that Java makes for lambdas only hand on to a method of ours
            if (type.startsWith(OURS) && !type.contains("$$")) {
                int dot = type.lastIndexOf('.');
                String inPackage = type.substring(OURS.length(), Math.max(dot, OURS.length()));
                return new String[] {
                    inPackage,
                    inPackage + "." + type.substring(dot + 1).replace('$', '.') + "."
                            + method(f.getMethod().getName())
                };
            }
        }
        return new String[] {"Java itself", ""};
    }

    /** {@code lambda$advance$3} is a part of {@code advance}. */
    private static String method(String name) {
        if (name.startsWith("lambda$")) {
            return name.substring("lambda$".length(), name.lastIndexOf('$')).replace("new", "its constructor");
        }
        return name.replace("<init>", "its constructor").replace("<clinit>", "its constants");
    }

    private static void printStages(List<StageTimes.Stretch> stretches, List<Look> looks) {
        Map<String, double[]> byStage = new LinkedHashMap<>();
        for (StageTimes.Stretch s : stretches) {
            double[] sum = byStage.computeIfAbsent(s.stage(), k -> new double[2]);
            sum[0] += s.clockS();
            sum[1] += s.processorS();
        }
        System.out.println("| stage | clock s | processor s | looks | most of them in |\n|---|---|---|---|---|");
        byStage.forEach((stage, seconds) -> {
            List<Look> here = looks.stream().filter(l -> l.stage.equals(stage)).toList();
            String most = sorted(here.stream().collect(counted(Look::inPackage))).stream()
                    .limit(PACKAGES_OF_STAGE)
                    .map(x -> String.format(Locale.ROOT, "%s %.0f %%", x.getKey(), 100.0 * x.getValue() / here.size()))
                    .collect(Collectors.joining(", "));
            System.out.printf(
                    Locale.ROOT, "| %s | %.2f | %.2f | %d | %s |%n", stage, seconds[0], seconds[1], here.size(), most);
        });
        System.out.println();
    }

    private static List<Map.Entry<String, Integer>> sorted(Map<String, Integer> looks) {
        return looks.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<String, Integer> x) -> -x.getValue())
                        .thenComparing(Map.Entry::getKey))
                .toList();
    }

    private static void printRows(String what, Map<String, Integer> looks, int all, int most) {
        System.out.println("| " + what + " | looks | share |\n|---|---|---|");
        sorted(looks).stream()
                .limit(most)
                .forEach(x -> System.out.printf(
                        Locale.ROOT, "| %s | %d | %.1f %% |%n", x.getKey(), x.getValue(), 100.0 * x.getValue() / all));
        System.out.println();
    }
}
