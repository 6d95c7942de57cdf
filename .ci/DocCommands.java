import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Runs every command that README and docs show, in the order of the page, in a scratch copy of the project: {@code java
 * .ci/DocCommands.java [--list] [PAGE...]}. A command is a line of a fenced block that starts with {@code baymist} or with {@code
 * java -jar simulator/cli/target/baymist.jar}. Commands that take {@code --voxel} and do not state it get a coarse one, so that all of
 * them end in minutes; nothing else is changed. A window is given some seconds: it has passed if it is still open then. Where there is no
 * screen, windows and their pictures get one in memory (xvfb-run). Ends with 1 if a command ends with anything but 0.
 */
final class DocCommands {
    private static final String JAR = "simulator/cli/target/baymist.jar";
    private static final Pattern COMMAND = Pattern.compile("^(?:\\$ )?(java -jar " + Pattern.quote(JAR) + "|baymist)(\\s.*)$");
    private static final String COARSE = System.getenv().getOrDefault("DOC_VOXEL", "24 mm");
    private static final int LIMIT_S = Integer.parseInt(System.getenv().getOrDefault("DOC_LIMIT_S", "300"));

    private static final int WINDOW_S = Integer.parseInt(System.getenv().getOrDefault("DOC_WINDOW_S", "25"));
    private static final String SCREEN = "xvfb-run -a -s '-screen 0 1400x900x24 +extension GLX' ";

    /** Seconds after which no further command is begun; 0 = all are run. */
    private static final double BUDGET_S = Double.parseDouble(System.getenv().getOrDefault("DOC_BUDGET_S", "0"));

    private final Path root = Path.of("").toAbsolutePath();
    private final Map<String, Boolean> takesVoxel = new TreeMap<>();

    record Shown(Path page, int line, String command) {}

    public static void main(String[] args) throws Exception {
        List<String> pages = new ArrayList<>(List.of(args));
        boolean list = pages.remove("--list");
        System.exit(new DocCommands().run(pages, list));
    }

    private int run(List<String> pages, boolean list) throws Exception {
        List<Shown> all = new ArrayList<>();
        for (Path page : pages.isEmpty() ? turned(everyPage()) : pages.stream().map(Path::of).toList()) {
            all.addAll(shown(page));
        }
        if (list) {
            all.forEach(s -> System.out.println(s.page + ":" + s.line + ": " + s.command));
            return 0;
        }
        if (!Files.exists(root.resolve(JAR))) {
            System.err.println(JAR + " is missing: mvn package first.");
            return 1;
        }
        Path scratch = scratch();
        List<Shown> failed = new ArrayList<>();
        long start = System.nanoTime();
        Set<String> done = new HashSet<>();
        List<Shown> left = new ArrayList<>();
        for (Shown s : all) {
            if (BUDGET_S > 0 && System.nanoTime() - start > BUDGET_S * 1e9) {
                left.add(s);
                continue;
            }
            if (!done.add(COMMAND.matcher(s.command).replaceFirst("$2").strip().replaceAll("\\s+", " "))) {
                continue; // another page shows it, too
            }
            long t = System.nanoTime();
            int code = call(s, scratch);
            System.out.printf("%-6s %5.1f s  %s:%d: %s%n", code == 0 ? "ok" : "FAILED", (System.nanoTime() - t) * 1e-9, s.page, s.line, s.command);
            if (code != 0) {
                System.out.println(Files.readString(scratch.resolve("doc-command.log")).lines().map(l -> "       | " + l)
                        .limit(30).reduce("", (a, b) -> a + b + "\n"));
                failed.add(s);
            }
        }
        System.out.printf("%d commands of the documentation run in %.0f s, %d failed%n", done.size(), (System.nanoTime() - start) * 1e-9, failed.size());
        if (!left.isEmpty()) {
            System.out.printf("%d more commands were not run: the budget of %.0f s was used up%n", left.size(), BUDGET_S);
            left.forEach(s -> System.out.println("not run  " + s.page + ":" + s.line + ": " + s.command));
        }
        return failed.isEmpty() && !all.isEmpty() ? 0 : 1;
    }

    /** With a budget the pages begin elsewhere each day, so that over some days every page has its turn. */
    private static List<Path> turned(List<Path> pages) {
        List<Path> turned = new ArrayList<>(pages);
        if (BUDGET_S > 0) {
            Collections.rotate(turned, -(int) (LocalDate.now().toEpochDay() * 7 % pages.size()));
        }
        return turned;
    }

    private List<Path> everyPage() throws IOException {
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

    private Path scratch() throws IOException, InterruptedException {
        Path scratch = Files.createTempDirectory("doc-commands");
        for (String part : List.of("scenes", "models", "docs")) {
            must(new ProcessBuilder("cp", "-r", root.resolve(part).toString(), scratch.resolve(part).toString()));
        }
        Files.createDirectories(scratch.resolve(JAR).getParent());
        Files.createSymbolicLink(scratch.resolve(JAR), root.resolve(JAR));
        Files.createDirectories(scratch.resolve("out"));
        return scratch;
    }

    private static void must(ProcessBuilder call) throws IOException, InterruptedException {
        if (call.inheritIO().start().waitFor() != 0) {
            throw new IOException("failed: " + call.command());
        }
    }

    private int call(Shown s, Path scratch) throws IOException, InterruptedException {
        Matcher m = COMMAND.matcher(s.command);
        if (!m.matches()) {
            throw new IOException("no command: " + s.command);
        }
        String rest = m.group(2).strip();
        String word = rest.split("\\s+", 2)[0];
        boolean coarse = !rest.contains("--voxel") && takesVoxel.computeIfAbsent(word, this::takesVoxel);
        boolean view = word.equals("view");
        boolean window = view && !rest.contains("--picture");
        String screen = view && System.getenv("DISPLAY") == null ? SCREEN : "";
        Path file = scratch.resolve("doc-command.sh");
        // The word of the shell stands for the installed program in both spellings.
        String script = "set -o pipefail\nbaymist() { command=$1; shift; " + screen + "\"${JAVA:-java}\" -jar " + JAR + " \"$command\" \"$@\"" + (coarse ? " --voxel \"" + COARSE + "\"" : "")
                + "; }\nbaymist " + rest + "\n";
        Files.writeString(file, script);
        Process process = new ProcessBuilder("bash", file.toString())
                .directory(scratch.toFile())
                .redirectErrorStream(true)
                .redirectOutput(scratch.resolve("doc-command.log").toFile())
                .start();
        if (!process.waitFor(window ? WINDOW_S : LIMIT_S, TimeUnit.SECONDS)) {
            process.descendants().forEach(ProcessHandle::destroy); // an orderly end, so that a screen in memory goes with it
            process.destroy();
            if (!process.waitFor(5, TimeUnit.SECONDS)) {
                process.descendants().forEach(ProcessHandle::destroyForcibly);
                process.destroyForcibly();
            }
            return window ? 0 : 124;
        }
        return window ? 1 : process.exitValue(); // nobody closed the window
    }

    private boolean takesVoxel(String word) {
        try {
            Process help = new ProcessBuilder("java", "-jar", root.resolve(JAR).toString(), word, "--help").redirectErrorStream(true).start();
            return new String(help.getInputStream().readAllBytes()).contains("--voxel");
        } catch (IOException e) {
            return false;
        }
    }
}
