package baymist.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * docs/validation/cases.md holds the cases of the table. After a change of the table run {@code baymist verify --write docs/validation}, or this test with
 * {@code -Dbaymist.docs=write}.
 */
class ValidationPageTest {
    private static final Path DOCS = Path.of("../../docs/validation");

    /** Columns that do not depend on the digits found: case, quantity, inputs, expected, allowed, kind, known, source. */
    private static final int[] LASTING = {1, 2, 3, 4, 7, 8, 9, 10};

    @Test
    void pageHoldsTheTable() throws IOException {
        if ("write".equals(System.getProperty("baymist.docs"))) {
            ValidationFolder.write(
                    DOCS,
                    Verification.run(VerificationTest.FOLDER, "", new RunOptions(2), RunObserver.NONE),
                    OrderStudy.run());
        }
        List<Outcome> unevaluated = new ArrayList<>();
        for (VerificationCase c : CaseTable.read(VerificationTest.FOLDER.resolve("cases.csv"))) {
            unevaluated.add(new Outcome(c, c.expected(), ""));
        }
        List<String> wanted = lasting(ValidationFolder.cases(new VerificationReport(unevaluated)));
        List<String> found = lasting(Files.readString(DOCS.resolve("cases.md"), StandardCharsets.UTF_8));
        String hint = "write the pages anew: baymist verify --write docs/validation";
        for (int i = 0; i < Math.min(wanted.size(), found.size()); i++) {
            assertEquals(wanted.get(i), found.get(i), hint);
        }
        assertEquals(wanted.size(), found.size(), hint);
        for (String other : List.of("errors.svg", "order.md", "order.svg", "coverage.md")) {
            assertTrue(Files.exists(DOCS.resolve(other)), other);
        }
    }

    private static List<String> lasting(String tables) {
        List<String> rows = new ArrayList<>();
        for (String line : tables.lines().toList()) {
            String[] cells = line.split("(?<!\\\\)\\|", -1);
            StringBuilder row = new StringBuilder();
            for (int c : LASTING) {
                row.append(cells.length == 12 ? cells[c] : "").append('|');
            }
            rows.add(cells.length == 12 ? row.toString() : line);
        }
        return rows;
    }

    @Test
    void aPageShowsWhatMissedAndWhatBroke(@TempDir Path folder) {
        VerificationCase c = new VerificationCase(
                "a", "fog", "b", Inputs.parse("x=1 | 2", folder), 2e-7, 0.01, false, "exact", "s", "seen");
        String text = ValidationFolder.cases(
                new VerificationReport(List.of(new Outcome(c, 2.001e-7, ""), new Outcome(c, Double.NaN, "it broke"))));
        assertTrue(
                text.contains("| a | b | x=1 \\| 2 | 2e-7 | 2.001e-7 | 0.0500 % | 1.00 % | exact | seen | s |"), text);
        assertTrue(text.contains("| none: it broke | **NaN %** |"), text);
        assertTrue(text.contains("| fog | 2 | 1 | 1 | 1 |"), text);
    }

    @Test
    void aFolderThatCannotBeWrittenIsToldWithItsPage(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "x");
        SceneException e =
                assertThrows(SceneException.class, () -> ValidationFolder.write(file.resolve("a.md"), "text"));
        assertEquals("VER-006", e.findings().get(0).id());
    }
}
