package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.coverage.Fractions;
import baymist.fog.Exposure;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.run.RunResult;
import baymist.voxel.Leak;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportTest {
    @TempDir
    Path folder;

    private static JsonNode json(RunResult r) throws IOException {
        StringWriter out = new StringWriter();
        ResultJson.write(r, out);
        return new ObjectMapper().readTree(out.toString());
    }

    private static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    @Test
    void jsonHasTheKeysThatOthersRelyOn() throws IOException {
        JsonNode root = json(SampleRun.wedge());
        assertEquals(1, root.get("baymist").asInt());
        assertTrue(keys(root.get("grid"))
                .containsAll(List.of("cells", "voxelM", "volumeM3", "areaM2", "unresolvedAreaM2")));
        assertEquals(3, root.get("grid").get("voxelM").size());
        assertEquals(
                List.of(
                        "sprayedKg",
                        "filmKg",
                        "airborneKg",
                        "oversprayKg",
                        "drippedKg",
                        "maskedKg",
                        "closure",
                        "auditedKg"),
                keys(root.get("ledger")));
        assertTrue(keys(root.get("coverage"))
                .containsAll(List.of("reached", "protected", "thin", "excess", "byPart", "byBay")));
        for (String table : List.of("byPart", "byBay", "byFacing")) {
            for (JsonNode row : root.get("coverage").get(table)) {
                assertEquals(
                        List.of("name", "areaM2", "reached", "protected", "thin", "excess", "meanFilmUm"), keys(row));
            }
        }
        assertEquals(
                List.of(
                        "id",
                        "label",
                        "areaM2",
                        "centroidM",
                        "where",
                        "parts",
                        "bays",
                        "extentMinM",
                        "extentMaxM",
                        "seamM",
                        "entry",
                        "depthM"),
                keys(root.get("unreached").get(0)));
        assertTrue(keys(root)
                .containsAll(List.of(
                        "engineVersion",
                        "scene",
                        "thresholds",
                        "job",
                        "bays",
                        "openings",
                        "insertions",
                        "history",
                        "findings",
                        "cautions",
                        "run",
                        "stateHash")));
        assertEquals(List.of("title", "file", "hash"), keys(root.get("scene")));
    }

    @Test
    void jsonFiguresAreThoseOfTheResult() throws IOException {
        RunResult r = SampleRun.wedge();
        JsonNode root = json(r);
        assertEquals(
                r.coverage().total().reached(),
                root.get("coverage").get("reached").asDouble());
        assertEquals(
                r.coverage().total().areaM2(), root.get("grid").get("areaM2").asDouble());
        double bare = 0;
        for (JsonNode u : root.get("unreached")) {
            bare += u.get("areaM2").asDouble();
        }
        double area = root.get("grid").get("areaM2").asDouble();
        assertEquals((1 - r.coverage().total().reached()) * area, bare, 1e-12);
        // volume = mass over density: the definition of density
        assertEquals(
                r.ledger().sprayedKg() / 880 * 1e6,
                root.get("job").get("productMl").asDouble(),
                1e-12);
        assertEquals(13, root.get("job").get("triggerS").asDouble());
        double film = 0;
        for (JsonNode row : root.get("coverage").get("byPart")) {
            film += row.get("areaM2").asDouble() * row.get("meanFilmUm").asDouble() * 1e-6 * 880;
        }
        assertEquals(r.ledger().filmKg(), film, 1e-12);
    }

    @Test
    void numbersThatJsonCannotHoldAreNull() throws IOException {
        RunResult r = SampleRun.wedge();
        List<baymist.run.TimePoint> odd =
                List.of(new baymist.run.TimePoint(0, Double.NaN, 0, 0, 0, Double.POSITIVE_INFINITY));
        RunResult with = new RunResult(
                r.scene(),
                r.cavity(),
                r.grid(),
                r.ledger(),
                r.coverage(),
                r.filmM(),
                r.directKg(),
                r.fogKg(),
                r.findings(),
                r.record(),
                odd,
                r.insertions(),
                r.stations(),
                r.confidence(),
                r.gates(),
                r.outlook(),
                r.convergence());
        assertTrue(json(with).get("history").get(0).get("airborneKg").isNull());
    }

    @Test
    void fileIsWrittenWholeOrNotAtAll() throws IOException {
        Path file = folder.resolve("deep/er/result.json");
        ResultJson.write(SampleRun.tank(), file);
        String first = Files.readString(file);
        assertTrue(first.endsWith("}\n"));
        assertThrows(
                IOException.class,
                () -> AtomicFile.writeText(file, out -> {
                    out.write("half a fi");
                    throw new IOException("disk full");
                }));
        assertEquals(first, Files.readString(file));
        try (Stream<Path> left = Files.list(file.getParent())) {
            assertEquals(1, left.count());
        }
    }

    @Test
    void textFitsAHundredColumnsAndIsPlainAscii() {
        for (RunResult r : List.of(SampleRun.wedge(), SampleRun.tank())) {
            assertFits(TextReport.of(r));
        }
        assertFits(CheckReport.text(SampleRun.check()));
        assertFits(CheckReport.text(troubled()));
    }

    private static void assertFits(String text) {
        for (String line : text.split("\n", -1)) {
            assertTrue(line.length() <= 100, line.length() + " columns: " + line);
            assertEquals(line.stripTrailing(), line);
        }
        assertTrue(StandardCharsets.US_ASCII.newEncoder().canEncode(text));
        assertTrue(text.endsWith("\n"));
    }

    @Test
    void textTellsCoverageLedgerRegionsFindingsAndCautions() throws IOException {
        RunResult r = SampleRun.wedge();
        String text = TextReport.of(r);
        Files.createDirectories(Path.of("target/samples"));
        Files.writeString(Path.of("target/samples/wedge.txt"), text);
        Files.writeString(Path.of("target/samples/check.txt"), CheckReport.text(troubled()));
        assertTrue(text.contains("upper skin"));
        assertTrue(text.contains(r.coverage().unreached().get(0).where().substring(0, 30)));
        assertTrue(text.contains("[RES-004]"));
        assertTrue(text.contains("29 CFR 1910.1000"));
        assertTrue(text.contains("Local rules"));
        assertTrue(text.contains("sprayed") && text.contains("100.0 %"));
        assertTrue(text.contains("10 um (0.39 mil)"), text);
    }

    /** 25.4 um = 1 mil exactly (international inch, 1959). */
    @Test
    void aMilIsTwentyFivePointFourMicrometres() {
        assertEquals("25.4 um (1 mil)", TextReport.film(25.4e-6));
        assertEquals("50.8 um (2 mil)", TextReport.film(50.8e-6));
    }

    @Test
    void barsShowWhatIsThereAndNothingElse() {
        assertEquals("##############", TextReport.bar(new Fractions("", 1, 1, 1, 0, 0, 0)));
        assertEquals("..............", TextReport.bar(new Fractions("", 1, 0, 0, 0, 0, 0)));
        assertEquals("#######++++...", TextReport.bar(new Fractions("", 1, 0.75, 0.5, 0.25, 0, 0)));
        assertEquals("#+............", TextReport.bar(new Fractions("", 1, 2e-3, 1e-3, 1e-3, 0, 0)));
        assertEquals("#############.", TextReport.bar(new Fractions("", 1, 0.999, 0.999, 0, 0, 0)));
    }

    @Test
    void percentagesNeverRoundToAllOrNothing() {
        assertEquals("100.0 %", TextReport.percent(1));
        assertEquals("99.9 %", TextReport.percent(0.99999));
        assertEquals("<0.1 %", TextReport.percent(1e-9));
        assertEquals("0.0 %", TextReport.percent(0));
        assertEquals("12.3 %", TextReport.percent(0.1234));
    }

    @Test
    void checkNamesLeaksUnresolvedPlacesOpeningsAndWands() throws IOException {
        CheckResult c = troubled();
        String text = CheckReport.text(c);
        assertTrue(text.contains("gap at the tip at [10, 20, 30] mm"), text);
        assertTrue(text.contains("lower skin: sheets closer than the voxels, x 290, y 400, z 0 mm"), text);
        assertTrue(text.contains("root port"));
        assertTrue(text.contains("open/taped/plugged"));
        assertTrue(text.contains("six-foot wand in root: goes in 1200 mm, stopped by rib 5"));
        StringWriter out = new StringWriter();
        CheckReport.json(c, out);
        JsonNode root = new ObjectMapper().readTree(out.toString());
        assertEquals(1, root.get("leaks").size());
        assertEquals(0.002, root.get("unresolved").get(0).get("areaM2").asDouble());
        assertEquals(4, root.get("bays").size());
        assertEquals(
                "between rib 1 and rib 2", root.get("bays").get(0).get("where").asText());
        double area = 0;
        for (JsonNode bay : root.get("bays")) {
            for (JsonNode part : bay.get("areaM2ByPart")) {
                area += part.asDouble();
            }
        }
        assertEquals(root.get("grid").get("areaM2").asDouble(), area, 1e-12);
        assertEquals("root port", root.get("insertions").get(0).get("opening").asText());
        String good = CheckReport.text(SampleRun.check());
        assertTrue(good.contains("No leaks") && good.contains("is resolved"));
        assertFalse(good.contains("too narrow"));
    }

    /** Hydraulic diameter 4 A / P: that of a circle is its diameter, that of a square its side (any fluids handbook). */
    @Test
    void effectiveDiameterOfACircleIsItsDiameter() {
        for (baymist.cavity.Opening o : SampleRun.check().cavity().openings()) {
            if (o.place().outline() instanceof baymist.geom.Outline.Circle circle) {
                assertEquals(2 * circle.radiusM(), CheckTables.hydraulicM(o), 1e-12);
            }
        }
        assertEquals("7.857", TextReport.millimetresDown(0.055 / 7));
        assertEquals("10", TextReport.millimetresDown(0.01));
        assertEquals("6.779", TextReport.millimetresDown(0.0067799));
    }

    @Test
    void memoryEstimateGrowsWithCellsAndSizes() {
        VoxelGrid g = SampleRun.check().grid();
        baymist.run.MemoryEstimate few = baymist.run.MemoryEstimate.of(g, 4);
        baymist.run.MemoryEstimate many = baymist.run.MemoryEstimate.of(g, 12);
        // eight more sizes hold a double of mass for each cell at least
        assertTrue(many.fogBytes() - few.fogBytes() >= 8L * 8 * g.cellCount());
        assertEquals(few.gridBytes(), many.gridBytes());
        assertEquals(few.gridBytes() + few.fogBytes() + few.airBytes(), few.totalBytes());
        assertTrue(few.gridBytes() > 40L * g.cellCount());
    }

    @Test
    void longWordsAreCutAndRowsNeverOverflow() {
        for (String row : Page.wrap("x".repeat(30) + " yy " + "z".repeat(17) + " w", 10)) {
            assertTrue(row.length() <= 10, row);
        }
        assertEquals(List.of("aa bb", "cc"), Page.wrap("aa bb cc", 6));
    }

    /** The 10 % line of a 50 g/m3 limit is 5 g/m3, a thousand times the 5 mg/m3 limit (29 CFR 1910.1000, .146). */
    @Test
    void flammableLineIsAThousandTimesTheExposureLimit() {
        assertEquals(1000, Exposure.TENTH_OF_FLAMMABLE_KG_PER_M3 / Cautions.OIL_MIST_LIMIT_KG_PER_M3, 1e-9);
        assertTrue(Cautions.of(SampleRun.tank()).stream().anyMatch(c -> c.contains("Oxygen")));
    }

    private static CheckResult troubled() {
        CheckResult c = SampleRun.check();
        VoxelGrid g = c.grid();
        int cells = g.cellCount();
        int[] lattice = new int[cells];
        int[] of = new int[g.nx() * g.ny() * g.nz()];
        double[] volume = new double[cells];
        int[] neighbour = new int[6 * cells];
        int[] bay = new int[cells];
        for (int i = 0; i < cells; i++) {
            lattice[i] = g.latticeOfCell(i);
            of[lattice[i]] = i;
            volume[i] = g.volumeM3(i);
            bay[i] = g.bayOfCell(i);
        }
        VoxelGrid leaky = new VoxelGrid(
                g.nx(),
                g.ny(),
                g.nz(),
                g.origin(),
                g.sizeM(),
                lattice,
                of,
                volume,
                neighbour,
                bay,
                g.faces(),
                g.surfels(),
                g.bays(),
                List.of(new Leak(new Vec3(0.01, 0.02, 0.03), "gap at the tip")),
                List.of(new UnresolvedArea(1, 0.002, new Vec3(0.29, 0.4, 0))));
        return new CheckResult(c.scene(), c.cavity(), leaky, c.insertions(), c.findings());
    }
}
