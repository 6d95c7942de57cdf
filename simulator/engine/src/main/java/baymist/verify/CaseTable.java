package baymist.verify;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads {@code cases.csv}: header row, then one case a row; columns are those of {@link #COLUMNS}. */
final class CaseTable {
    static final List<String> COLUMNS =
            List.of("case", "stage", "quantity", "inputs", "expected", "tolerance", "kind", "source", "known");

    private CaseTable() {}

    /** All cases in file order; {@link SceneException} with every faulty row. */
    static List<VerificationCase> read(Path file) {
        List<Finding> findings = new ArrayList<>();
        List<VerificationCase> cases = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .setTrim(true)
                .get();
        try (CSVParser parser = format.parse(Files.newBufferedReader(file, StandardCharsets.UTF_8))) {
            if (!parser.getHeaderNames().equals(COLUMNS)) {
                throw new SceneException(
                        "VER-001",
                        new SourcePlace(file.toString(), 1, ""),
                        "the header reads " + parser.getHeaderNames() + ", " + COLUMNS + " expected");
            }
            for (CSVRecord row : parser) {
                SourcePlace place = new SourcePlace(file.toString(), (int) parser.getCurrentLineNumber(), "");
                try {
                    VerificationCase c = parse(row, file);
                    if (!ids.add(c.id())) {
                        throw new IllegalArgumentException("case \"" + c.id() + "\" stands twice");
                    }
                    cases.add(c);
                } catch (IllegalArgumentException e) {
                    findings.add(new Finding("VER-002", Severity.ERROR, place, String.valueOf(e.getMessage())));
                }
            }
        } catch (IOException e) {
            throw new SceneException(
                    "VER-003", SourcePlace.of(file.toString()), "the table of cases can't be read: " + e.getMessage());
        }
        if (!findings.isEmpty()) {
            throw new SceneException(findings);
        }
        return cases;
    }

    private static VerificationCase parse(CSVRecord row, Path file) {
        if (!row.isConsistent()) {
            throw new IllegalArgumentException(row.size() + " columns, " + COLUMNS.size() + " expected");
        }
        String tolerance = row.get("tolerance");
        boolean absolute = tolerance.startsWith("abs ");
        return new VerificationCase(
                row.get("case"),
                row.get("stage"),
                row.get("quantity"),
                Inputs.parse(row.get("inputs"), file),
                number(row.get("expected"), "expected"),
                number(absolute ? tolerance.substring(4) : tolerance, "tolerance"),
                absolute,
                row.get("kind"),
                row.get("source"),
                row.get("known"));
    }

    private static double number(String text, String column) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(column + " reads \"" + text + "\", a number expected", e);
        }
    }
}
