package baymist.report;

import baymist.access.Insertion;
import baymist.access.Stations;
import baymist.card.CardSource;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.coverage.CoverageAssessor;
import baymist.numeric.Workers;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.run.Approach;
import baymist.run.BayNaming;
import baymist.run.Confidence;
import baymist.run.RunRecord;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * A run that was kept in a folder, taken up again without spraying anew: geometry, voxels and ways are worked out from the scene, film and
 * sums are read. It is refused unless it is a run of this very scene.
 */
public final class KeptRun {
    private KeptRun() {}

    /**
     * Reads a kept run of a scene.
     *
     * @param folder where {@code baymist run} wrote result.json and film.csv.gz
     * @throws SceneException KPT-001 if there is no result or it can't be read; KPT-002 if it is not a run of this scene
     */
    public static CardSource read(Scene scene, Path folder, int threads) {
        Path file = folder.resolve("result.json");
        JsonNode root = json(file);
        String hash = root.path("scene").path("hash").asText();
        if (!hash.equals(scene.hash())) {
            throw refused(
                    "KPT-002",
                    file,
                    "this is a run of another scene, or the scene was changed since (SHA-256 " + brief(hash)
                            + ", the scene has " + brief(scene.hash()) + "); a run of " + scene.file()
                            + " as it stands would be right");
        }
        Columns film = film(folder.resolve(FilmTable.FILE), root);
        try (Workers workers = new Workers(threads)) {
            Cavity cavity = CavityBuilder.build(scene);
            VoxelGrid grid = ComputedReport.part(grid(scene, cavity, root, workers), root);
            double[] filmM = spread(grid.surfels(), film.filmM(), film.areaM2(), file);
            double[] direct = spread(grid.surfels(), film.directKg(), film.areaM2(), file);
            List<Insertion> ways = Approach.ways(scene, cavity).insertions();
            return new CardSource(
                    scene,
                    cavity,
                    grid,
                    ways,
                    Stations.plan(scene, ways),
                    CoverageAssessor.assess(scene, cavity, grid, filmM),
                    filmM,
                    direct,
                    figures(root),
                    record(root),
                    findings(root));
        }
    }

    /** What the run remarked; a severity that is not known counts as a note. */
    private static List<Finding> findings(JsonNode root) {
        List<Finding> all = new ArrayList<>();
        for (JsonNode f : root.path("findings")) {
            Severity severity = Arrays.stream(Severity.values())
                    .filter(s -> ResultJson.word(s).equals(f.path("severity").asText()))
                    .findFirst()
                    .orElse(Severity.NOTE);
            SourcePlace place = new SourcePlace(
                    f.path("file").asText(),
                    f.path("line").asInt(),
                    f.path("field").asText());
            all.add(new Finding(
                    f.path("id").asText(), severity, place, f.path("text").asText()));
        }
        return all;
    }

    private static String brief(String hash) {
        return hash.isEmpty() ? "none" : hash.substring(0, Math.min(12, hash.length()));
    }

    private static VoxelGrid grid(Scene scene, Cavity cavity, JsonNode root, Workers workers) {
        VoxelGrid own = BayNaming.named(Voxelizer.voxelize(cavity, scene.voxel(), workers), scene.bayLabels());
        JsonNode size = root.path("grid").path("voxelM");
        double[] m = {
            size.path(0).asDouble(), size.path(1).asDouble(), size.path(2).asDouble()
        };
        boolean same = true;
        for (int a = 0; a < 3; a++) {
            same &= Math.abs(own.sizeM().get(a) - m[a]) <= 1e-9;
        }
        if (same) {
            return own;
        }
        return BayNaming.named(Voxelizer.voxelize(cavity, new VoxelSpec(m[0], m[1], m[2]), workers), scene.bayLabels());
    }

    /** Values of structure surfels in their places; everything else has none. */
    private static double[] spread(SurfelSet surfels, double[] values, double[] areas, Path file) {
        double[] all = new double[surfels.count()];
        int row = 0;
        for (int s = 0; s < all.length; s++) {
            if (surfels.isStructure(s)) {
                if (row >= values.length || Math.abs(areas[row] - surfels.areaM2()[s]) > 1e-9 * areas[row]) {
                    row = -1;
                    break;
                }
                all[s] = values[row++];
            }
        }
        if (row != values.length) {
            throw refused(
                    "KPT-002",
                    file,
                    "its film lies on other surface elements than this version makes of the scene; run the scene again");
        }
        return all;
    }

    /** Columns of the film table, one value for each surface element of the structure. */
    private record Columns(double[] areaM2, double[] filmM, double[] directKg) {
        static Columns of(List<double[]> rows) {
            return new Columns(column(rows, 0), column(rows, 1), column(rows, 2));
        }

        private static double[] column(List<double[]> rows, int c) {
            return rows.stream().mapToDouble(r -> r[c]).toArray();
        }
    }

    private static Columns film(Path table, JsonNode root) {
        String text;
        try {
            text = FilmTable.unpack(table);
        } catch (IOException e) {
            throw refused(
                    "KPT-001",
                    table,
                    "the film of the run can't be read; " + FilmTable.FILE
                            + " as `baymist run` writes it would be right");
        }
        if (!FilmTable.sha256(text).equals(root.path("film").path("sha256").asText())) {
            throw refused(
                    "KPT-001",
                    table,
                    "the film table is not the one of this result (SHA-256 differs); the one written with it would be right");
        }
        List<double[]> rows = new ArrayList<>();
        try (BufferedReader in = new BufferedReader(new StringReader(text))) {
            CSVFormat format = CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get();
            for (CSVRecord r : format.parse(in)) {
                rows.add(new double[] {
                    Double.parseDouble(r.get("area_m2")),
                    Double.parseDouble(r.get("film_m")),
                    Double.parseDouble(r.get("jets_kg"))
                });
            }
        } catch (IOException | IllegalArgumentException e) {
            throw refused("KPT-001", table, "the film table can't be read: " + e.getMessage());
        }
        return Columns.of(rows);
    }

    private static CardSource.Figures figures(JsonNode root) {
        JsonNode ledger = root.path("ledger");
        JsonNode outlook = root.path("outlook");
        Map<String, Double> fog = new LinkedHashMap<>();
        outlook.path("releases")
                .forEach(r ->
                        fog.merge(r.path("opening").asText(), r.path("fogKg").asDouble(), Double::sum));
        JsonNode consequences = root.path("consequences");
        JsonNode hinge = consequences.path("hinge");
        JsonNode confidence = root.path("confidence");
        JsonNode oil = consequences.path("oil");
        return new CardSource.Figures(
                ledger.path("sprayedKg").asDouble()
                        - root.path("job").path("initialFogKg").asDouble(),
                ledger.path("oversprayKg").asDouble(),
                ledger.path("drippedKg").asDouble(),
                outlook.path("drippedLaterKg").asDouble(),
                root.path("job").path("peakMeanFogKgPerM3").asDouble(),
                outlook.path("closedShare").asDouble(),
                fog,
                oil.isEmpty() ? 0 : oil.get(oil.size() - 1).path("massKg").asDouble(),
                hinge.path("armM").asDouble(Double.NaN),
                hinge.path("momentNm").asDouble(Double.NaN),
                new Confidence(
                        confidence.path("dv50Factor").asDouble(1),
                        confidence.path("reached").path("low").asDouble(Double.NaN),
                        confidence.path("reached").path("high").asDouble(Double.NaN),
                        confidence.path("protected").path("low").asDouble(Double.NaN),
                        confidence.path("protected").path("high").asDouble(Double.NaN),
                        confidence.path("reached").path("rayError").asDouble(Double.NaN),
                        confidence.path("protected").path("rayError").asDouble(Double.NaN)));
    }

    private static RunRecord record(JsonNode root) {
        Map<String, String> settings = new LinkedHashMap<>();
        root.path("run")
                .path("settings")
                .properties()
                .forEach(e -> settings.put(e.getKey(), e.getValue().asText()));
        return new RunRecord(
                root.path("engineVersion").asText(),
                root.path("scene").path("hash").asText(),
                root.path("run").path("threads").asInt(),
                Map.of(),
                settings,
                root.path("stateHash").asText());
    }

    private static JsonNode json(Path file) {
        JsonNode root;
        try {
            root = new ObjectMapper().readTree(Files.readString(file));
        } catch (IOException e) {
            throw refused(
                    "KPT-001",
                    file,
                    "no kept run can be read here; the folder that `baymist run --out` wrote would be right");
        }
        if (root == null || root.path("baymist").asInt() != ResultJson.FORMAT || !root.has("film")) {
            throw refused(
                    "KPT-001",
                    file,
                    "this is not a result of format " + ResultJson.FORMAT + " with a film table; run the scene again");
        }
        return root;
    }

    private static SceneException refused(String id, Path file, String text) {
        return new SceneException(id, SourcePlace.of(file.toString()), text);
    }
}
