package baymist.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/troubleshooting.md explains every message that the program can give, and no other. */
class MessageIdDocTest {
    private static final Pattern IN_CODE = Pattern.compile("\"([A-Z]{3,4}-\\d{3})\"");
    private static final Pattern IN_DOCS = Pattern.compile("^### ([A-Z]{3,4}-\\d{3}) ", Pattern.MULTILINE);

    @Test
    void everyIdInTheCodeIsExplained() throws IOException {
        SortedSet<String> code = new TreeSet<>();
        for (String module : List.of("../engine", "../picture", "../cli")) {
            try (Stream<Path> files = Files.walk(Path.of(module, "src/main/java"))) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".java")).toList()) {
                    collect(IN_CODE, Files.readString(file), code);
                }
            }
        }
        SortedSet<String> docs = new TreeSet<>();
        collect(IN_DOCS, Files.readString(Path.of("../../docs/troubleshooting.md")), docs);
        code.remove("SHA-256");
        assertTrue(code.size() > 50, code.toString());
        assertEquals(code, docs);
    }

    private static void collect(Pattern pattern, String text, SortedSet<String> into) {
        Matcher m = pattern.matcher(text);
        while (m.find()) {
            into.add(m.group(1));
        }
    }
}
