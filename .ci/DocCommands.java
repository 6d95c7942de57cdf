import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Runs every command that README and docs show: {@code java .ci/DocCommands.java [--list] [PAGE...]}. A command is a line of a fenced block
 * that starts with {@code baymist} or with {@code java -jar simulator/cli/target/baymist.jar}; blocks marked as text are left alone.
 *
 * <p>The commands of a page run in its order in a scratch copy of scenes, models and docs; pages run two at a time, each lane in a copy of
 * its own. So that all of them end in minutes the scenes of a copy are made quick: coarse voxels, projected air, few rays and droplet sizes, short
 * waits.
 * {@code DOC_FULL=1} leaves them as they are. The first job of the guide keeps its air. Commands without operators of the shell share
 * one Java machine a lane; all others go through bash. A window is given some seconds: it has passed if it is still open then. Where there
 * is no screen, windows and their pictures get one in memory (xvfb-run). Ends with 1 if a command ends with anything but 0; on quick scenes
 * 4 will do, which says that all was done and that a goal stated in the call was missed.
 */
final class DocCommands {
    private static final String JAR = "simulator/cli/target/baymist.jar";
    private static final Pattern COMMAND = Pattern.compile("^(?:\\$ )?(java -jar " + Pattern.quote(JAR) + "|baymist)(\\s.*)$");
    private static final Pattern SHELL = Pattern.compile("[|&;<>$*`]");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|(\\S+)");

    /** Voxels of the quick scenes by the beginning of their names; what is not named here gets the last. */
    private static final Map<String, String> VOXELS = new LinkedHashMap<>();

    static {
        VOXELS.put("tail-cone", "50 mm"); // studies double it, and the bilges must stay apart
        VOXELS.put("wing-box", "80 mm");
        VOXELS.put("open-", "90 mm");
        VOXELS.put("", "25 mm");
    }

    private static final int LIMIT_S = Integer.parseInt(setting("DOC_LIMIT_S", "300"));
    private static final int WINDOW_S = Integer.parseInt(setting("DOC_WINDOW_S", "15"));
    private static final int LANES = Integer.parseInt(setting("DOC_LANES", "2"));
    private static final boolean FULL = setting("DOC_FULL", "").equals("1");

    /** These programs are short: the first compiler is enough, and the simplest collector. */
    private static final List<String> QUICK_JAVA = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx2g");

    /** Of the guide's first job the reader sees the figures, so its air stays as it is. */
    private static final Set<String> AS_THEY_ARE = Set.of("first-job.yaml", "second-job.yaml");

    private static final String SCREEN = "xvfb-run -a -s '-screen 0 1400x900x24 +extension GLX' ";

    /** Exit code of a command that is done but misses a stated goal. */
    private static final int GOAL_MISSED = 4;

    private static final Path ROOT = Path.of("").toAbsolutePath();

    record Shown(Path page, int line, String command) {}

    record Ran(Shown shown, int code, double seconds, double processorS, String log) {
        boolean good() {
            return code == 0 || !FULL && code == GOAL_MISSED;
        }
    }

    public static void main(String[] args) throws Exception {
        List<String> pages = new ArrayList<>(List.of(args));
        boolean list = pages.remove("--list");
        System.exit(run(pages.isEmpty() ? everyPage() : pages.stream().map(Path::of).toList(), list));
    }

    private static String setting(String name, String otherwise) {
        return System.getenv().getOrDefault(name, otherwise);
    }

    private static int run(List<Path> pages, boolean list) throws Exception {
        Map<Path, List<Shown>> all = new TreeMap<>();
        for (Path page : pages) {
            List<Shown> shown = shown(page);
            if (!shown.isEmpty()) {
                all.put(page, shown);
            }
        }
        if (list) {
            all.values().forEach(l -> l.forEach(s -> System.out.println(s.page + ":" + s.line + ": " + s.command)));
            return 0;
        }
        if (!Files.exists(ROOT.resolve(JAR))) {
            System.err.println(JAR + " is missing: mvn package first.");
            return 1;
        }
        // long pages first, so that the lanes end together
        Queue<List<Shown>> queue = new ConcurrentLinkedQueue<>(all.values().stream()
                .sorted((a, b) -> Integer.compare(b.size(), a.size()))
                .toList());
        List<Ran> ran = Collections.synchronizedList(new ArrayList<>());
        long start = System.nanoTime();
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < LANES; i++) {
            Thread t = new Thread(() -> lane(queue, ran));
            t.start();
            threads.add(t);
        }
        for (Thread t : threads) {
            t.join();
        }
        long shown = all.values().stream().mapToInt(List::size).sum();
        long failed = ran.stream().filter(r -> !r.good()).count();
        System.out.printf(
                "%d commands of the documentation, %d of them run in %.0f s (the others stand twice), %d failed%n",
                shown, ran.size(), (System.nanoTime() - start) * 1e-9, failed);
        return failed == 0 && !ran.isEmpty() && queue.isEmpty() ? 0 : 1;
    }

    private static void lane(Queue<List<Shown>> queue, List<Ran> ran) {
        try (Lane lane = new Lane(scratch())) {
            Set<String> done = new HashSet<>();
            for (List<Shown> page = queue.poll(); page != null; page = queue.poll()) {
                for (Shown s : page) {
                    // another page shows it, too
                    if (done.add(COMMAND.matcher(s.command).replaceFirst("$2").strip().replaceAll("\\s+", " "))) {
                        ran.add(told(lane.call(s)));
                    }
                }
            }
        } catch (IOException | InterruptedException e) {
            e.printStackTrace();
            ran.add(new Ran(new Shown(Path.of("."), 0, "lane"), 1, 0, 0, e.toString()));
        }
    }

    private static synchronized Ran told(Ran r) {
        String cpu = Double.isNaN(r.processorS) ? "             " : String.format("(%5.1f s cpu)", r.processorS);
        System.out.printf("%-6s %5.1f s %s  %s:%d: %s%n", r.good() ? "ok" : "FAILED", r.seconds, cpu, r.shown.page, r.shown.line, r.shown.command);
        if (!r.good()) {
            System.out.print("       | ended with " + r.code + "\n"
                    + r.log.lines().limit(30).map(l -> "       | " + l + "\n").collect(Collectors.joining()));
        }
        return r;
    }

    private static List<Path> everyPage() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
        try (Stream<Path> walk = Files.walk(Path.of("docs"))) {
            walk.filter(p -> p.toString().endsWith(".md") && !p.startsWith(Path.of("docs", "changes"))).sorted().forEach(pages::add);
        }
        return pages;
    }

    private static List<Shown> shown(Path page) throws IOException {
        List<Shown> found = new ArrayList<>();
        boolean inside = false;
        boolean runs = true; // blocks marked as text show what is typed elsewhere, such as on another machine
        StringBuilder command = new StringBuilder();
        int number = 0;
        for (String line : Files.readAllLines(page)) {
            number++;
            if (line.strip().startsWith("```")) {
                inside = !inside;
                runs = !line.strip().equals("```text");
                command.setLength(0);
                continue;
            }
            String text = line.strip();
            if (!inside || !runs || command.isEmpty() && !COMMAND.matcher(text).matches()) {
                continue;
            }
            if (text.endsWith("\\")) {
                command.append(text, 0, text.length() - 1);
                continue;
            }
            command.append(text);
            found.add(new Shown(page, number, withoutRemark(command.toString()).replaceFirst("^\\$ ", "")));
            command.setLength(0);
        }
        return found;
    }

    /** Without what stands behind a hash sign that follows two blanks. */
    private static String withoutRemark(String command) {
        return command.replaceFirst("\\s\\s*#\\s.*$", "").stripTrailing();
    }

    private static Path scratch() throws IOException, InterruptedException {
        Path scratch = Files.createTempDirectory("doc-commands");
        for (String part : List.of("scenes", "models", "docs")) {
            if (new ProcessBuilder("cp", "-r", ROOT.resolve(part).toString(), scratch.resolve(part).toString()).inheritIO().start().waitFor() != 0) {
                throw new IOException("could not copy " + part);
            }
        }
        Files.createDirectories(scratch.resolve(JAR).getParent());
        Files.createSymbolicLink(scratch.resolve(JAR), ROOT.resolve(JAR));
        Files.createDirectories(scratch.resolve("out"));
        if (!FULL) {
            try (Stream<Path> scenes = Files.list(scratch.resolve("scenes"))) {
                for (Path scene : scenes.filter(p -> p.toString().endsWith(".yaml")).toList()) {
                    makeQuick(scene);
                }
            }
        }
        return scratch;
    }

    /** What a scene computes gets coarse; what it says stays. */
    private static void makeQuick(Path scene) throws IOException {
        String text = Files.readAllLines(scene).stream()
                .filter(l -> !l.startsWith("voxel:") && !l.startsWith("air:") && !l.startsWith("numerics:"))
                .map(l -> l + "\n")
                .collect(Collectors.joining());
        String name = scene.getFileName().toString();
        String voxel = VOXELS.entrySet().stream().filter(e -> name.startsWith(e.getKey())).findFirst().orElseThrow().getValue();
        if (AS_THEY_ARE.contains(name)) {
            Files.writeString(scene, text + "voxel: " + voxel + "\n");
            return;
        }
        String shorter = text.replaceFirst("(?m)^hang: .*", "hang: 1 min").replaceAll("hang: \\d+ s\\}", "hang: 2 s}");
        Files.writeString(scene, shorter + "voxel: " + voxel + "\nair: projected\nnumerics: {rays_per_jet: 16, size_bins: 2, fog: first_order}\n");
    }

    /** A scratch copy with a Java machine that runs commands there. */
    private static final class Lane implements AutoCloseable {
        private final Path scratch;
        private final Path log;
        private Process worker;
        private BufferedReader answers;
        private PrintStream orders;
        private double processorS;

        Lane(Path scratch) throws IOException {
            this.scratch = scratch;
            this.log = scratch.resolve("doc-command.log");
            hire();
        }

        private void hire() throws IOException {
            List<String> call = new ArrayList<>(List.of(java()));
            call.addAll(List.of("-XX:+UseSerialGC", "-Xmx2g", "-cp", ROOT.resolve(JAR).toString(), ROOT.resolve(".ci/DocWorker.java").toString()));
            worker = new ProcessBuilder(call).directory(scratch.toFile()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
            answers = worker.inputReader(StandardCharsets.UTF_8);
            orders = new PrintStream(worker.getOutputStream(), true, StandardCharsets.UTF_8);
        }

        private static String java() {
            return System.getenv().getOrDefault("JAVA", "java");
        }

        Ran call(Shown s) throws IOException, InterruptedException {
            Matcher m = COMMAND.matcher(s.command);
            if (!m.matches()) {
                throw new IOException("no command: " + s.command);
            }
            String rest = m.group(2).strip();
            long t = System.nanoTime();
            processorS = Double.NaN;
            boolean plain = !SHELL.matcher(rest).find() && !rest.startsWith("view");
            int code = plain ? here(rest) : inShell(rest);
            return new Ran(s, code, (System.nanoTime() - t) * 1e-9, processorS, Files.exists(log) ? Files.readString(log) : "");
        }

        private int here(String rest) throws IOException, InterruptedException {
            List<String> parts = new ArrayList<>(List.of(log.toString()));
            for (Matcher w = WORD.matcher(rest); w.find(); ) {
                parts.add(w.group(1) != null ? w.group(1) : w.group(2) != null ? w.group(2) : w.group(3));
            }
            orders.println(String.join("\t", parts));
            for (long until = System.nanoTime() + LIMIT_S * 1_000_000_000L; System.nanoTime() < until; ) {
                if (answers.ready()) {
                    String[] answer = answers.readLine().split(" ");
                    processorS = Double.parseDouble(answer[1]);
                    return Integer.parseInt(answer[0]);
                }
                if (!worker.isAlive()) {
                    break;
                }
                Thread.sleep(20);
            }
            int code = worker.isAlive() ? 124 : worker.exitValue();
            worker.destroyForcibly().waitFor();
            hire();
            return code == 0 ? 1 : code;
        }

        private int inShell(String rest) throws IOException, InterruptedException {
            boolean view = rest.startsWith("view");
            boolean window = view && !rest.contains("--picture");
            String screen = view && System.getenv("DISPLAY") == null ? SCREEN : "";
            // The word of the shell stands for the installed program in both spellings.
            String script = "set -o pipefail\nbaymist() { " + screen + java() + " " + String.join(" ", QUICK_JAVA) + " -jar " + JAR + " \"$@\"; }\nbaymist " + rest + "\n";
            Path file = scratch.resolve("doc-command.sh");
            Files.writeString(file, script);
            Process process = new ProcessBuilder("bash", file.toString())
                    .directory(scratch.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
            if (process.waitFor(window ? WINDOW_S : LIMIT_S, TimeUnit.SECONDS)) {
                return window ? 1 : process.exitValue(); // nobody closed the window
            }
            process.descendants().forEach(ProcessHandle::destroy); // an orderly end, so that a screen in memory goes with it
            process.destroy();
            if (!process.waitFor(5, TimeUnit.SECONDS)) {
                process.descendants().forEach(ProcessHandle::destroyForcibly);
                process.destroyForcibly();
            }
            return window ? 0 : 124;
        }

        @Override
        public void close() throws IOException {
            orders.close();
            try {
                if (!worker.waitFor(10, TimeUnit.SECONDS)) {
                    worker.destroyForcibly();
                }
                new ProcessBuilder("rm", "-rf", scratch.toString()).start().waitFor();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
