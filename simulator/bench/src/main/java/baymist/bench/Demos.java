package baymist.bench;

import baymist.problem.SceneException;
import baymist.run.CheckResult;
import baymist.run.RunCost;
import baymist.run.RunEstimate;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All demonstration scenes as they stand, each in a Java of its own as a user has it: cells, the time that was said beforehand and the time that was taken. Run from the
 * project's folder:
 *
 * <p>{@code java -jar benchmarks.jar demos [--threads N] [--scenes a,b] [--heap 3g] [--write FOLDER]}
 */
final class Demos {
    private static final String ROW = "row ";

    private Demos() {}

    static void main(Arguments args) throws IOException, InterruptedException {
        if (args.has("--one")) {
            one(Path.of(args.text("--one", "")), args.number("--threads", 2));
            return;
        }
        List<Path> files = files();
        String wanted = args.text("--scenes", "");
        List<String> rows = new ArrayList<>();
        List<String> shares = new ArrayList<>();
        for (Path file : files) {
            if (wanted.isEmpty() || List.of(wanted.split(",")).contains(name(file))) {
                System.err.println("running: " + name(file));
                child(file, args, rows, shares);
            }
        }
        Page page = new Page("Demonstration scenes", "demos" + args.words());
        page.say(
                "%s. Scenes as they stand, %d threads, each in a Java of its own, its start included. Said: what `check` says, by the clock on two cores, and of processors. The clock's time is lengthened by whatever else the machine does; the processor's is not, much.",
                Machine.words(), args.number("--threads", 2));
        page.table(
                "| scene | cells | said, clock s | taken, clock s | taken/said | said, processor s | taken, processor s | taken/said | reached % | protected % |\n|---|---|---|---|---|---|---|---|---|---|\n",
                rows);
        page.say("Where the time was said to go, processor seconds, and what was counted and measured:");
        page.table(
                "| scene | said: fog | air | rays | rest | counted: 10^9 fog updates | air cells x steps, 10^6 | measured by the clock: stages s |\n|---|---|---|---|---|---|---|---|\n",
                shares);
        page.finish(args, "demos.md");
    }

    private static List<Path> files() throws IOException {
        try (Stream<Path> all = Files.list(Path.of("scenes"))) {
            return all.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
        }
    }

    /** Names of all demonstration scenes in alphabetical order. */
    static List<String> names() throws IOException {
        return files().stream().map(Demos::name).toList();
    }

    private static String name(Path scene) {
        return scene.getFileName().toString().replace(".yaml", "");
    }

    private static void child(Path file, Arguments args, List<String> rows, List<String> shares)
            throws IOException, InterruptedException {
        List<String> call = new ArrayList<>(List.of(
                System.getProperty("java.home") + "/bin/java",
                "-Xmx" + args.text("--heap", "3g"),
                "-Djava.awt.headless=true"));
        if (Machine.vectors()) {
            call.addAll(List.of("--add-modules", "jdk.incubator.vector"));
        }
        call.addAll(List.of("-cp", System.getProperty("java.class.path"), Bench.class.getName()));
        call.addAll(
                List.of("demos", "--one", file.toString(), "--threads", String.valueOf(args.number("--threads", 2))));
        long start = System.nanoTime();
        Process process = new ProcessBuilder(call)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        List<String> said;
        try (BufferedReader in =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            said = in.lines().filter(l -> l.startsWith(ROW)).toList();
        }
        process.waitFor();
        double wallS = 1e-9 * (System.nanoTime() - start);
        if (said.size() != 1) {
            rows.add("| " + name(file) + " | not run | | | | | | | | |\n");
            return;
        }
        // cells; said clock, said processor, taken processor, reached, protected, check's clock and processor; shares
        String[] f = said.get(0).substring(ROW.length()).split(";", -1);
        double looked = Double.parseDouble(f[6]);
        double takenS = wallS - looked;
        double processorS = Double.parseDouble(f[3]) - Double.parseDouble(f[7]);
        double saidS = Double.parseDouble(f[1]);
        double saidProcessorS = Double.parseDouble(f[2]);
        rows.add(String.format(
                Locale.ROOT,
                "| %s | %s | %.0f | %.0f | %.2f | %.0f | %.0f | %.2f | %s | %s |%n",
                name(file),
                f[0],
                saidS,
                takenS,
                takenS / saidS,
                saidProcessorS,
                processorS,
                processorS / saidProcessorS,
                f[4],
                f[5]));
        shares.add("| " + name(file) + " | " + f[8].replace(",", " | ") + " |\n");
    }

    /** One scene in this process: a look first, which is taken off again, then the run. */
    private static void one(Path file, int threads) {
        Scene scene = SceneReader.read(file);
        RunOptions options = new RunOptions(threads);
        long start = System.nanoTime();
        long processor = Triad.processorNs();
        CheckResult check = Simulation.check(scene, options, RunObserver.NONE);
        double lookedS = 1e-9 * (System.nanoTime() - start);
        double lookedProcessorS = 1e-9 * (Triad.processorNs() - processor);
        RunEstimate estimate = check.estimate();
        if (estimate == null) {
            System.err.println("not to be run: " + check.findings());
            return;
        }
        RunResult r;
        try {
            r = Simulation.run(scene, options, RunObserver.NONE);
        } catch (SceneException e) {
            System.err.println(e.getMessage());
            return;
        }
        System.out.println(ROW
                + String.format(
                        Locale.ROOT,
                        "%,d;%.3f;%.3f;%.3f;%.1f;%.1f;%.3f;%.3f;%s",
                        r.grid().cellCount(),
                        estimate.cost().seconds(),
                        estimate.cost().processorS(),
                        1e-9 * Triad.processorNs(),
                        100 * r.coverage().total().reached(),
                        100 * r.coverage().total().protectedShare(),
                        lookedS,
                        lookedProcessorS,
                        shares(estimate.cost(), r)));
    }

    private static String shares(RunCost cost, RunResult r) {
        Map<String, String> set = r.record().settings();
        double updates = 1e-9 * Double.parseDouble(set.getOrDefault("fog cell updates", "0"));
        double air = 1e-6
                * Double.parseDouble(set.getOrDefault("air cells", "0"))
                * Double.parseDouble(set.getOrDefault("air steps", "0"));
        String stages = r.record().secondsByStage().entrySet().stream()
                .map(e -> String.format(Locale.ROOT, "%s %.1f", e.getKey().replace(",", ""), e.getValue()))
                .collect(Collectors.joining("; "))
                .replace(';', '/');
        return String.format(
                Locale.ROOT,
                "%.1f,%.1f,%.1f,%.1f,%.2f,%.1f,%s",
                cost.fogS(),
                cost.airS(),
                cost.raysS(),
                cost.restS(),
                updates,
                air,
                stages);
    }
}
