package baymist.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * docs/validation.md holds the cases of the table. After a change of the table run this test with
 * {@code -Dbaymist.docs=write} to write its tables anew.
 */
class ValidationPageTest {
    private static final Path PAGE = Path.of("../../docs/validation.md");

    /** Columns that do not depend on the digits found: case, quantity, inputs, expected, allowed, kind, known, source. */
    private static final int[] LASTING = {1, 2, 3, 4, 7, 8, 9, 10};

    @Test
    void pageHoldsTheTable() {
        if ("write".equals(System.getProperty("baymist.docs"))) {
            ValidationPage.write(
                    PAGE, Verification.run(VerificationTest.FOLDER, "", new RunOptions(2), RunObserver.NONE));
        }
        List<Outcome> unevaluated = new ArrayList<>();
        for (VerificationCase c : CaseTable.read(VerificationTest.FOLDER.resolve("cases.csv"))) {
            unevaluated.add(new Outcome(c, c.expected(), ""));
        }
        List<String> wanted = lasting(new VerificationReport(unevaluated).markdown());
        List<String> found = lasting(ValidationPage.tables(PAGE));
        for (int i = 0; i < Math.min(wanted.size(), found.size()); i++) {
            assertEquals(wanted.get(i), found.get(i), "write the page anew: -Dbaymist.docs=write");
        }
        assertEquals(wanted.size(), found.size(), "write the page anew: -Dbaymist.docs=write");
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
    void onlyTheTablesOfAPageAreReplaced(@TempDir Path folder) throws IOException {
        Path page = Files.writeString(
                folder.resolve("page.md"),
                "# Above\n\n" + ValidationPage.BEGIN + "old\n" + ValidationPage.END + "\nbelow\n");
        VerificationCase c = new VerificationCase(
                "a", "fog", "b", Inputs.parse("x=1 | 2", folder), 2e-7, 0.01, false, "exact", "s", "seen");
        VerificationReport report =
                new VerificationReport(List.of(new Outcome(c, 2.001e-7, ""), new Outcome(c, Double.NaN, "it broke")));
        ValidationPage.write(page, report);
        String text = Files.readString(page);
        assertTrue(text.startsWith("# Above\n\n") && text.endsWith(ValidationPage.END + "\nbelow\n"), text);
        assertTrue(
                text.contains("| a | b | x=1 \\| 2 | 2e-7 | 2.001e-7 | 0.0500 % | 1.00 % | exact | seen | s |"), text);
        assertTrue(text.contains("| none: it broke | **NaN %** |"), text);
        assertTrue(text.contains("| fog | 2 | 1 | 1 | 1 |"), text);
        ValidationPage.write(page, report);
        assertEquals(text, Files.readString(page));
    }

    @Test
    void aPageWithoutPlaceForTheTablesIsRefused(@TempDir Path folder) throws IOException {
        VerificationReport report = new VerificationReport(List.of());
        Path bare = Files.writeString(folder.resolve("bare.md"), "no marks\n");
        SceneException e = assertThrows(SceneException.class, () -> ValidationPage.write(bare, report));
        assertTrue(e.getMessage() != null && e.getMessage().contains("cases begin"), e.getMessage());
        assertThrows(SceneException.class, () -> ValidationPage.write(folder.resolve("none.md"), report));
        assertEquals("no marks\n", Files.readString(bare));
    }
}
