package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.ParameterException;

/** The manual says what is so: its files, its links and its commands are those of the project as it stands. */
class ManualTest {
    private static final Path ROOT = Path.of("../..").toAbsolutePath().normalize();
    private static final Path FIRST_JOB = ROOT.resolve("docs/guide/first-job.md");
    private static final Pattern LINK = Pattern.compile("!?\\[[^\\]]*\\]\\(([^)\\s]+)\\)");
    private static final Pattern CODE = Pattern.compile("`[^`]*`");
    private static final Pattern COMMAND =
            Pattern.compile("^(?:\\$ )?(?:java -jar simulator/cli/target/baymist\\.jar|baymist)\\s+(.*)$");
    private static final Pattern INLINE = Pattern.compile("`baymist ([a-z]+(?: [^`]*)?)`");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|(\\S+)");

    private final PrintWriter nowhere = new PrintWriter(new StringWriter());
    private final CommandLine line = Cli.line(new Console(nowhere, nowhere, false), Stages.ENGINE);

    @Test
    void firstJobShowsItsTwoFilesWordByWord() throws IOException {
        List<String> blocks = blocks(Files.readString(FIRST_JOB), "yaml");
        for (String file : List.of("models/cavities/pipit-flap.yaml", "scenes/first-job.yaml")) {
            String text = Files.readString(ROOT.resolve(file)).strip();
            assertTrue(blocks.contains(text), file + " is not shown in first-job.md as it stands");
        }
    }

    @Test
    void findingsPageShowsItsFile() throws IOException {
        String text =
                Files.readString(ROOT.resolve("scenes/findings/wing-box.yaml")).strip();
        assertTrue(blocks(Files.readString(ROOT.resolve("docs/guide/findings.md")), "yaml")
                .contains(text));
    }

    @Test
    void everyRelativeLinkLeadsSomewhere() throws IOException {
        List<String> broken = new ArrayList<>();
        int links = 0;
        for (Path page : pages()) {
            String prose = CODE.matcher(withoutBlocks(Files.readString(page))).replaceAll("");
            Matcher m = LINK.matcher(prose.replaceAll("\\n", " "));
            while (m.find()) {
                if (!m.group(1).matches("[a-z]+:.*")) {
                    links++;
                    check(page, m.group(1), broken);
                }
            }
        }
        assertTrue(links > 100, "only " + links + " links found");
        assertEquals(List.of(), broken);
    }

    @Test
    void everyCommandShownIsUnderstood() throws IOException {
        List<String> wrong = new ArrayList<>();
        int commands = 0;
        for (Path page : pages()) {
            String text = Files.readString(page);
            for (String call : calls(text)) {
                commands++;
                understand(page, call, false, wrong);
            }
            for (String call : mentions(text)) {
                understand(page, call, true, wrong);
            }
        }
        assertTrue(commands > 80, "only " + commands + " commands found");
        assertEquals(List.of(), wrong);
    }

    /** A mention in running text may leave out the scene or an option's value. */
    private void understand(Path page, String call, boolean shortened, List<String> wrong) {
        try {
            line.parseArgs(words(call));
        } catch (ParameterException e) {
            if (!shortened || !(e instanceof MissingParameterException)) {
                wrong.add(ROOT.relativize(page) + ": baymist " + call + ": " + e.getMessage());
            }
        }
    }

    /** Whole commands of fenced blocks. */
    private static List<String> calls(String text) {
        List<String> calls = new ArrayList<>();
        for (String block : blocks(text, null)) {
            for (String line : block.replaceAll("\\\\\\n\\s*", " ").split("\\n")) {
                for (String part : line.strip().split("\\s+(?:&&|\\|\\||\\||>)\\s+")) {
                    Matcher m = COMMAND.matcher(part);
                    if (m.matches()) {
                        calls.add(m.group(1).replaceFirst("\\s+#\\s.*$", ""));
                    }
                }
            }
        }
        return calls;
    }

    /** Commands within running text. */
    private static List<String> mentions(String text) {
        List<String> mentions = new ArrayList<>();
        Matcher m = INLINE.matcher(withoutBlocks(text).replaceAll("\\n", " "));
        while (m.find()) {
            mentions.add(m.group(1).replaceFirst("\\s>\\s.*$", "").strip());
        }
        return mentions;
    }

    private static String[] words(String call) {
        List<String> words = new ArrayList<>();
        Matcher m = WORD.matcher(call);
        while (m.find()) {
            words.add(m.group(1) != null ? m.group(1) : m.group(2) != null ? m.group(2) : m.group(3));
        }
        return words.toArray(String[]::new);
    }

    private static void check(Path page, String link, List<String> broken) throws IOException {
        int hash = link.indexOf('#');
        String file = hash < 0 ? link : link.substring(0, hash);
        Path target = file.isEmpty() ? page : page.resolveSibling(file).normalize();
        if (!Files.exists(target)) {
            broken.add(ROOT.relativize(page) + ": " + link);
        } else if (hash >= 0 && !anchors(Files.readString(target)).contains(link.substring(hash + 1))) {
            broken.add(ROOT.relativize(page) + ": no heading " + link);
        }
    }

    /** Names under which headings can be linked to, as hosts of such pages make them. */
    private static Set<String> anchors(String text) {
        Set<String> anchors = new HashSet<>();
        for (String line : withoutBlocks(text).split("\\n")) {
            if (line.matches("#{1,6} .*")) {
                String name = line.replaceFirst("#+ ", "").strip().toLowerCase(Locale.ROOT);
                anchors.add(name.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'));
            }
        }
        return anchors;
    }

    private static List<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")));
        try (Stream<Path> walk = Files.walk(ROOT.resolve("docs"))) {
            walk.filter(p -> p.toString().endsWith(".md") && !p.startsWith(ROOT.resolve("docs/changes")))
                    .sorted()
                    .forEach(pages::add);
        }
        return pages;
    }

    /** Contents of the fenced blocks, of one language or of all. */
    private static List<String> blocks(String text, @org.jspecify.annotations.Nullable String language) {
        List<String> blocks = new ArrayList<>();
        Matcher m = Pattern.compile("(?ms)^```(\\w*)\\n(.*?)^```$").matcher(text);
        while (m.find()) {
            if (language == null || language.equals(m.group(1))) {
                blocks.add(m.group(2).strip());
            }
        }
        return blocks;
    }

    private static String withoutBlocks(String text) {
        return text.replaceAll("(?ms)^```.*?^```$", "");
    }
}
