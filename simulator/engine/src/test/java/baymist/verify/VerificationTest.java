package baymist.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole table of published and exact values: every row is a test of its own. */
class VerificationTest {
    static final Path FOLDER = Path.of("../../scenes/verification");

    private static final Set<String> STAGES =
            Set.of("scene", "geometry", "voxels", "access", "spray", "air", "fog", "film", "coverage");

    private static List<VerificationCase> table() {
        return CaseTable.read(FOLDER.resolve("cases.csv"));
    }

    @TestFactory
    Stream<DynamicTest> everyRow() {
        VerificationReport report = Verification.run(FOLDER, "", new RunOptions(2), RunObserver.NONE);
        assertEquals(table().size(), report.outcomes().size());
        return report.outcomes().stream()
                .map(o -> DynamicTest.dynamicTest(
                        o.verificationCase().id(), () -> assertTrue(o.passed(), () -> explain(o))));
    }

    private static String explain(Outcome o) {
        VerificationCase c = o.verificationCase();
        return c.quantity() + " (" + c.inputs() + ") expected " + c.expected() + ", found " + o.value() + " "
                + o.failure() + "; " + c.source();
    }

    /** The promise of the project: six published or exact quantities a stage; a table of one quantity counts once. */
    @Test
    void everyStageIsCheckedBySixDifferentQuantities() {
        Map<String, Set<String>> quantities = table().stream()
                .filter(c -> !c.kind().equals("practice"))
                .collect(Collectors.groupingBy(
                        VerificationCase::stage, Collectors.mapping(VerificationCase::quantity, Collectors.toSet())));
        assertEquals(STAGES, quantities.keySet());
        quantities.forEach((stage, names) -> assertTrue(names.size() >= 6, stage + " has only " + names));
    }

    @Test
    void everyRowSaysWhereItsValueComesFrom() {
        for (VerificationCase c : table()) {
            assertFalse(c.source().isBlank(), c.id());
            assertTrue(Set.of("seen", "derived", "memory").contains(c.known()), c.id());
            assertTrue(Set.of("exact", "published", "practice").contains(c.kind()), c.id());
            assertTrue(c.tolerance() >= 0 && c.tolerance() <= 0.5 && Double.isFinite(c.expected()), c.id());
        }
    }

    @Test
    void idsAreUniqueAndTheTableIsLong() {
        List<VerificationCase> all = table();
        assertEquals(
                all.size(), all.stream().map(VerificationCase::id).distinct().count());
        assertTrue(all.size() >= 100);
    }

    @Test
    void everyQuantityIsUsedByARow() {
        Set<String> known = new TreeSet<>(new FormulaQuantities().names());
        known.addAll(new SceneQuantities(new RunOptions(1)).names());
        assertEquals(
                known, table().stream().map(VerificationCase::quantity).collect(Collectors.toCollection(TreeSet::new)));
    }

    /** The tables print ids of up to 26 characters and quantities of up to 24. */
    @Test
    void namesFitTheTable() {
        for (VerificationCase c : table()) {
            assertTrue(c.id().length() <= 26 && c.quantity().length() <= 24, c.id() + " " + c.quantity());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"SL-01", "GE-02-drill-30", "turned-box-floor", "FD-06-100-s", "box-protected"})
    void aWrongExpectedValueFails(String id, @TempDir Path folder) throws IOException {
        assertTrue(one(id, "1", folder).passed());
        VerificationReport wrong = one(id, "1.5", folder);
        assertFalse(wrong.passed());
        assertTrue(wrong.table().contains("! " + id) && wrong.table().contains("0 of 1 values"), wrong.table());
    }

    /** One row of the table, its expected value times a factor; scenes stay where they are. */
    private static VerificationReport one(String id, String factor, Path folder) throws IOException {
        VerificationCase c =
                table().stream().filter(k -> k.id().equals(id)).findFirst().orElseThrow();
        String scenes = FOLDER.toAbsolutePath().normalize().toString() + "/";
        String inputs = c.inputs().toString().replace("scene=", "scene=" + scenes);
        double expected = c.expected() * Double.parseDouble(factor);
        String tolerance = c.absolute() ? "abs " + c.tolerance() : String.valueOf(c.tolerance());
        Files.writeString(
                folder.resolve("cases.csv"),
                String.join(",", CaseTable.COLUMNS) + "\n"
                        + String.join(
                                ",",
                                id,
                                c.stage(),
                                c.quantity(),
                                inputs,
                                String.valueOf(expected),
                                tolerance,
                                "exact",
                                "s",
                                "seen")
                        + "\n");
        return Verification.run(folder, id, new RunOptions(1), RunObserver.NONE);
    }
}
