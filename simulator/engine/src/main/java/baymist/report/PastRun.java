package baymist.report;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * An earlier result, read back for comparison.
 *
 * @param file its result.json as the user named it
 * @param title title of its scene
 * @param film its film on every surfel
 * @param regionsM2 its bare places by label, m²
 * @param seams reached share of its seams by "part: name", "bay: name" and "all"
 * @param seamLengthM length of its seams, m
 */
public record PastRun(
        String file,
        String title,
        String stateHash,
        FilmTable film,
        Map<String, Double> regionsM2,
        Map<String, Double> seams,
        double seamLengthM) {
    /**
     * Reads a result and the film table beside it.
     *
     * @param path result.json or the folder that holds it
     * @throws SceneException CMP-001 if there is no such result; CMP-002 if its film table is missing or was changed
     */
    public static PastRun read(Path path) {
        Path file = Files.isDirectory(path) ? path.resolve("result.json") : path;
        JsonNode root = json(file);
        Path table = file.resolveSibling(FilmTable.FILE);
        String text;
        try {
            text = FilmTable.unpack(table);
        } catch (IOException e) {
            throw refused(
                    "CMP-002",
                    table,
                    "the film of the earlier run can't be read (" + e.getMessage() + "); " + FilmTable.FILE
                            + " as `baymist run` writes it beside result.json would be right");
        }
        String hash = root.path("film").path("sha256").asText();
        if (!FilmTable.sha256(text).equals(hash)) {
            throw refused(
                    "CMP-002",
                    table,
                    "the film table is not the one of this result (SHA-256 differs); the one written with it would be right");
        }
        try {
            return of(file, root, FilmTable.parse(text));
        } catch (IllegalArgumentException e) {
            throw refused("CMP-002", table, "the film table can't be read: " + e.getMessage());
        }
    }

    private static JsonNode json(Path file) {
        JsonNode root;
        try {
            root = new ObjectMapper().readTree(Files.readString(file));
        } catch (IOException e) {
            throw refused("CMP-001", file, "no result to compare with can be read here (" + reason(e) + ")");
        }
        if (root == null || root.path("baymist").asInt() != ResultJson.FORMAT || !root.has("coverage")) {
            throw refused(
                    "CMP-001",
                    file,
                    "this is not a result of format " + ResultJson.FORMAT
                            + "; result.json of an earlier run would be right");
        }
        if (!root.has("film")) {
            throw refused(
                    "CMP-001",
                    file,
                    "this result comes from a version that kept no film table; run its scene again to compare with it");
        }
        return root;
    }

    private static String reason(IOException e) {
        return e instanceof java.nio.file.NoSuchFileException
                ? "no such file"
                : String.valueOf(e.getMessage()).lines().findFirst().orElse("unreadable");
    }

    private static PastRun of(Path file, JsonNode root, FilmTable film) {
        Map<String, Double> regions = new LinkedHashMap<>();
        for (JsonNode r : root.path("unreached")) {
            regions.put(r.path("label").asText(), r.path("areaM2").asDouble());
        }
        JsonNode seams = root.path("coverage").path("seams");
        Map<String, Double> reached = new LinkedHashMap<>();
        reached.put("all", seams.path("reached").asDouble());
        for (JsonNode s : seams.path("byPart")) {
            reached.put("part: " + s.path("name").asText(), s.path("reached").asDouble());
        }
        for (JsonNode s : seams.path("byBay")) {
            reached.put("bay: " + s.path("name").asText(), s.path("reached").asDouble());
        }
        return new PastRun(
                file.toString(),
                root.path("scene").path("title").asText(),
                root.path("stateHash").asText(),
                film,
                regions,
                reached,
                seams.path("lengthM").asDouble());
    }

    private static SceneException refused(String id, Path file, String text) {
        return new SceneException(id, SourcePlace.of(file.toString()), text);
    }
}
