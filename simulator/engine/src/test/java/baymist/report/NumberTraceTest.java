package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.VoxelStudy;
import baymist.scene.BodySpec;
import baymist.scene.ProtectedItem;
import baymist.scene.SceneFixtures;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every number of a result is traced to a page, section and equation by docs/theory/numbers.md. */
class NumberTraceTest {
    private static final Pattern ROW = Pattern.compile("\\| `([^`]+)` \\| (\\S+\\.md) \\| (\\d+|-) \\| (\\w+|-) \\|");

    /** Numbers that a result has only in other scenes: with a hinge line, with a bare region. */
    private static final Set<String> ONLY_ELSEWHERE = Set.of("consequences.hinge.*");

    /** Groups that are null where there is nothing to tell. */
    private static final Set<String> ABSENT = Set.of("convergence", "consequences.hinge");

    private static final BodySpec PUMP =
            new BodySpec.Cuboid(new Vec3(0.4, 0.05, 0.05), new Vec3(0.12, 0.05, 0.06), Vec3.X, Vec3.Y, Vec3.Z);

    private record Row(String number, String page, String section, String equation) {
        boolean matches(String path) {
            String[] own = number.split("\\.", -1);
            String[] other = path.split("\\.", own.length);
            boolean same = own.length == other.length;
            for (int i = 0; same && i < own.length; i++) {
                boolean last = i == own.length - 1;
                String pattern = own[i].startsWith("*") ? own[i].substring(1) : own[i];
                boolean list = other[i].endsWith("[]");
                same = own[i].startsWith("*")
                        ? other[i].endsWith(pattern) && (last || pattern.equals("[]") == list)
                        : own[i].equals(other[i]);
            }
            return same;
        }
    }

    private static Path theory() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("docs/theory"))) {
            folder = folder.getParent();
        }
        return folder.resolve("docs/theory");
    }

    private static List<Row> rows() throws IOException {
        List<Row> rows = new ArrayList<>();
        for (String line : Files.readAllLines(theory().resolve("numbers.md"))) {
            Matcher m = ROW.matcher(line);
            if (m.matches()) {
                rows.add(new Row(m.group(1), m.group(2), m.group(3), m.group(4)));
            } else {
                assertFalse(line.startsWith("| `"), "a row that is not understood: " + line);
            }
        }
        return rows;
    }

    /** Places of all numbers; a number that is not finite stands as null. */
    private static void walk(JsonNode node, String path, Set<String> into) {
        if (node.isObject()) {
            node.properties()
                    .forEach(e -> walk(e.getValue(), path.isEmpty() ? e.getKey() : path + "." + e.getKey(), into));
        } else if (node.isArray()) {
            node.forEach(child -> walk(child, path + "[]", into));
        } else if (node.isNumber() || (node.isNull() && !ABSENT.contains(path))) {
            into.add(path);
        }
    }

    private static Set<String> numbersOfARun() throws IOException {
        RunResult r = VoxelStudy.run(
                SceneFixtures.minimal()
                        .withVoxel(0.05, 0.05, 0.05)
                        .withNumerics(3, 24)
                        .withHangS(3)
                        .withProtected(new ProtectedItem(
                                "pump", PUMP, null, 50e-6, ProtectedItem.Mask.NONE, SceneFixtures.HERE))
                        .build(),
                1.5,
                new RunOptions(2),
                RunObserver.NONE);
        StringWriter out = new StringWriter();
        ResultJson.write(r, out);
        Set<String> paths = new TreeSet<>();
        walk(new ObjectMapper().readTree(out.toString()), "", paths);
        return paths;
    }

    @Test
    void everyNumberOfAResultHasItsPageAndEveryRowItsNumber() throws IOException {
        List<Row> rows = rows();
        Set<String> numbers = numbersOfARun();
        assertTrue(numbers.size() > 100, "a whole result: " + numbers.size());
        List<String> missing = numbers.stream()
                .filter(number -> rows.stream().noneMatch(r -> r.matches(number)))
                .toList();
        assertEquals(List.of(), missing, "numbers without a row in docs/theory/numbers.md");
        List<String> idle = rows.stream()
                .filter(row -> !ONLY_ELSEWHERE.contains(row.number())
                        && numbers.stream().noneMatch(row::matches))
                .map(Row::number)
                .toList();
        assertEquals(List.of(), idle, "rows of docs/theory/numbers.md without a number");
    }

    @Test
    void everyPageSectionAndEquationExists() throws IOException {
        for (Row row : rows()) {
            String text = Files.readString(theory().resolve(row.page()));
            if (row.section().equals("-")) {
                assertEquals("-", row.equation(), row.number());
                continue;
            }
            String head = "\n## " + row.section() + ".";
            assertTrue(text.contains(head), row.number() + ": " + row.page() + " has no section " + row.section());
            int from = text.indexOf(head) + head.length();
            int to = text.indexOf("\n## ", from);
            String section = text.substring(from, to < 0 ? text.length() : to);
            assertTrue(
                    row.equation().equals("-")
                            || Pattern.compile("\\(" + row.equation() + "\\)\\s*$", Pattern.MULTILINE)
                                    .matcher(section)
                                    .find(),
                    row.number() + ": section " + row.section() + " of " + row.page() + " has no equation ("
                            + row.equation() + ")");
        }
    }
}
