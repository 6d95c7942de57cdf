package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every broken file fails with the expected ids, lines, values and remedies, and with nothing else. */
class BrokenScenesTest {
    private static final Path FOLDER = Path.of("src/test/resources/broken");

    /** A row of cases.csv. */
    record Expected(String scene, String file, int line, String field, String id, String value, String remedy) {}

    static Map<String, List<Expected>> table() throws IOException {
        Map<String, List<Expected>> cases = new LinkedHashMap<>();
        for (String row : Files.readAllLines(FOLDER.resolve("cases.csv"))) {
            if (row.isBlank() || row.startsWith("#")) {
                continue;
            }
            String[] c = row.split("\\|", -1);
            assertEquals(7, c.length, row);
            cases.computeIfAbsent(c[0], k -> new ArrayList<>())
                    .add(new Expected(c[0], c[1], Integer.parseInt(c[2]), c[3], c[4], c[5], c[6]));
        }
        return cases;
    }

    static Stream<String> scenes() throws IOException {
        return table().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void eachFaultIsToldWithPlaceValueAndRemedy(String scene) throws IOException {
        List<Expected> expected = table().get(scene);
        SceneException e = assertThrows(SceneException.class, () -> SceneReader.read(FOLDER.resolve(scene)));
        assertEquals(expected.size(), e.findings().size(), e.getMessage());
        for (int i = 0; i < expected.size(); i++) {
            Finding found = e.findings().get(i);
            Expected want = expected.get(i);
            assertEquals(want.id(), found.id(), found.toString());
            assertEquals(FOLDER.resolve(want.file()).toString(), found.place().file(), found.toString());
            assertEquals(want.line(), found.place().line(), found.toString());
            assertEquals(want.field(), found.place().field(), found.toString());
            assertEquals(Severity.ERROR, found.severity());
            assertTrue(found.text().contains(want.value()), found + " lacks the value " + want.value());
            assertTrue(found.text().contains(want.remedy()), found + " lacks the remedy " + want.remedy());
            assertTrue(found.text().length() < 420, "too long: " + found);
            assertTrue(found.text().lines().count() == 1, "one sentence on one line: " + found);
        }
    }

    @Test
    void everyBrokenFileHasItsRow() throws IOException {
        TreeSet<String> files = new TreeSet<>();
        try (Stream<Path> list = Files.list(FOLDER)) {
            list.map(p -> p.getFileName().toString())
                    .filter(n -> n.endsWith(".yaml") && !n.equals("whole.yaml"))
                    .forEach(files::add);
        }
        assertEquals(files, new TreeSet<>(table().keySet()));
    }

    @Test
    void theFileThatTheyWereBrokenFromIsWhole() {
        assertEquals(
                "broken on purpose",
                SceneReader.read(FOLDER.resolve("whole.yaml")).title());
    }

    @Test
    void everyIdIsMetByACaseOrByATestOfFiles() throws IOException {
        TreeSet<String> met = new TreeSet<>();
        table().values().forEach(rows -> rows.forEach(r -> met.add(r.id())));
        for (SceneProblem p : SceneProblem.values()) {
            boolean ofFiles = p == SceneProblem.TOO_BIG || p == SceneProblem.UNREADABLE;
            assertTrue(ofFiles || met.contains(p.id()), p + " " + p.id() + " is tested nowhere");
        }
    }
}
