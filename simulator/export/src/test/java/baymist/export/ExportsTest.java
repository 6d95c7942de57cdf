package baymist.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.export.Exports.Kind;
import baymist.run.RunResult;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExportsTest {
    @TempDir
    Path folder;

    private List<String> files() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void onlyTheKindsAskedForAreWritten() throws IOException {
        QuickRun run = QuickRun.get();
        List<String> names = Exports.write(run.result(), run.watch(), EnumSet.of(Kind.CSV), folder);
        assertEquals(names.stream().sorted().toList(), files());
        assertTrue(files().stream().allMatch(n -> n.endsWith(".csv")), files().toString());
    }

    @Test
    void allFilesAppearOrNone() throws IOException {
        QuickRun run = QuickRun.get();
        Files.createDirectory(folder.resolve("seams.vtp"));
        Files.writeString(folder.resolve("ledger.csv"), "mine");
        assertThrows(
                IOException.class, () -> Exports.write(run.result(), run.watch(), EnumSet.allOf(Kind.class), folder));
        assertEquals(List.of("ledger.csv", "seams.vtp"), files());
        assertEquals("mine", Files.readString(folder.resolve("ledger.csv")));
        Path fresh = folder.resolve("fresh");
        assertThrows(IOException.class, () -> {
            try (Batch batch = new Batch(fresh)) {
                Files.writeString(batch.file("one"), "1");
                batch.file("two");
                batch.done();
            }
        });
        assertFalse(Files.exists(fresh), "neither the files nor the folder");
    }

    @Test
    void anExportReplacesWhatAnEarlierOneLeft() throws IOException {
        QuickRun run = QuickRun.get();
        Files.writeString(folder.resolve("surfels.csv"), "old");
        Files.writeString(folder.resolve("notes.txt"), "mine");
        Exports.write(run.result(), run.watch(), EnumSet.of(Kind.CSV), folder);
        try (CSVParser csv = read(Files.readString(folder.resolve("surfels.csv")))) {
            assertEquals(run.result().grid().surfels().count(), csv.getRecords().size());
        }
        assertEquals("mine", Files.readString(folder.resolve("notes.txt")));
    }

    /** RFC 4180: a field with a comma, a quotation mark or a line feed stands in quotation marks; inner ones are doubled. */
    @Test
    void wordsWithCommasStayOneField() throws IOException {
        RunResult r = QuickRun.get().result();
        StringWriter out = new StringWriter();
        CsvFiles.regions(r, out);
        assertTrue(
                r.coverage().unreached().stream().anyMatch(u -> u.where().contains(",")),
                "some place has a comma in it");
        try (CSVParser csv = read(out.toString())) {
            List<CSVRecord> rows = csv.getRecords();
            for (int i = 0; i < rows.size(); i++) {
                assertEquals(
                        r.coverage().unreached().get(i).where(), rows.get(i).get("where"));
                assertEquals(
                        r.coverage().unreached().get(i).areaM2(),
                        Double.parseDouble(rows.get(i).get("area_m2")));
            }
        }
    }

    @Test
    void ledgerTableClosesAsTheLedgerDoes() throws IOException {
        RunResult r = QuickRun.get().result();
        StringWriter out = new StringWriter();
        CsvFiles.ledger(r, out);
        try (CSVParser csv = read(out.toString())) {
            double sprayed = 0;
            double found = 0;
            for (CSVRecord row : csv) {
                double kg = Double.parseDouble(row.get("mass_kg"));
                sprayed += row.get("where").equals("sprayed") ? kg : 0;
                found += row.get("where").equals("sprayed") ? 0 : kg;
            }
            assertTrue(sprayed > 0);
            assertEquals(sprayed, found, 1e-9 * sprayed);
        }
    }

    @Test
    void namesOfArraysEndInTheirUnits() {
        FogSnapshot at = QuickRun.get().watch().snapshots().get(0);
        List<String> bare = List.of("vtkGhostType", "bay");
        for (VtkArray a : VtkFiles.fog(QuickRun.get().result(), at).cellData()) {
            assertTrue(bare.contains(a.name()) || a.name().matches(".*_(kg_per_m3|m_per_s|m2_per_s|m3)"), a.name());
        }
        assertFalse(at.words().isEmpty());
    }

    private static CSVParser read(String text) throws IOException {
        return CSVParser.parse(
                text,
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get());
    }

    /** Each array and column has its row in the page that explains the format. */
    @Test
    void everyArrayAndColumnIsExplained() throws IOException {
        QuickRun run = QuickRun.get();
        Exports.write(run.result(), run.watch(), EnumSet.of(Kind.VTK, Kind.CSV), folder);
        String vtk = Files.readString(Path.of("../../docs/formats/vtk.md"));
        String csv = Files.readString(Path.of("../../docs/formats/csv.md"));
        int names = 0;
        for (String file : files()) {
            String text = Files.readString(folder.resolve(file));
            if (file.endsWith(".csv")) {
                for (String column : text.substring(0, text.indexOf('\n')).split(",")) {
                    assertTrue(
                            csv.contains("`" + column + "`") || column.matches("(min|max)_[xyz]_m"),
                            file + ": " + column);
                    names++;
                }
            } else {
                var arrays =
                        java.util.regex.Pattern.compile("Name=\"([^\"]*)\"").matcher(text);
                while (arrays.find()) {
                    String name = arrays.group(1);
                    assertTrue(
                            vtk.contains("`" + name + "`")
                                    || List.of("Points", "connectivity", "offsets")
                                            .contains(name),
                            file + ": " + name);
                    names++;
                }
            }
        }
        assertTrue(names > 100, names + " names");
    }
}
