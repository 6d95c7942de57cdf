package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.field.FieldOptions;
import baymist.field.ReachField;
import baymist.field.ReachFields;
import baymist.field.RegionChoice;
import baymist.geom.Vec3;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.SceneFixtures;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Text and JSON of a reach field of a block. */
class FieldReportTest {
    private static ReachField field;
    private static JsonNode json;

    @BeforeAll
    static void compute() throws IOException {
        RegionChoice spot = new RegionChoice.At(new Vec3(0.5, 0.1, 0), 0.06);
        field = ReachFields.of(
                SceneFixtures.minimal()
                        .withVoxel(0.025, 0.025, 0.025)
                        .withHangS(20)
                        .withPasses()
                        .build(),
                new FieldOptions(spot, true),
                new RunOptions(2),
                RunObserver.NONE);
        StringWriter out = new StringWriter();
        FieldReport.json(field, out);
        json = new ObjectMapper().readTree(out.toString());
    }

    @Test
    void everyKeyIsDocumented() throws IOException {
        String doc = Files.readString(Path.of("../../docs/formats/field.md"));
        json.fieldNames().forEachRemaining(k -> assertTrue(doc.contains("`" + k + "`"), k));
        for (String node : new String[] {"confirmed", "pass", "region", "bestJet", "cells"}) {
            json.get(node).fieldNames().forEachRemaining(k -> assertTrue(doc.contains("`" + k + "`"), k));
        }
        json.get("poses").get(0).fieldNames().forEachRemaining(k -> assertTrue(doc.contains("`" + k + "`"), k));
    }

    @Test
    void textAndJsonTellTheSamePose() {
        String text = FieldReport.text(field);
        JsonNode best = json.get("poses").get(0);
        assertEquals(
                best.get("direct").asDouble() + best.get("fog").asDouble(),
                best.get("share").asDouble(),
                1e-15);
        Matcher m = Pattern.compile("Best pose: 'rod' at 'aft'.* at (\\d+) mm, clock (\\d+)\\s+deg", Pattern.DOTALL)
                .matcher(text);
        assertTrue(m.find(), text);
        assertEquals(1e3 * best.get("depthM").asDouble(), Double.parseDouble(m.group(1)), 0.5);
        assertEquals(Math.toDegrees(best.get("clockRad").asDouble()), Double.parseDouble(m.group(2)), 0.5);
    }

    @Test
    void everyOutputSaysThatTheAirIsFrozen() {
        assertTrue(FieldReport.text(field).replaceAll("\\s+", " ").contains(ReachField.FROZEN));
        assertEquals(ReachField.FROZEN, json.get("air").asText());
    }

    @Test
    void linesFitAHundredColumns() {
        FieldReport.text(field).lines().forEach(l -> assertTrue(l.length() <= Page.WIDTH, l));
        assertFalse(FieldReport.text(field).contains("NaN"));
    }

    @Test
    void theBestCellHasTheLargestShare() {
        double most = 0;
        for (JsonNode share : json.get("cells").get("jet")) {
            most = Math.max(most, share.asDouble());
        }
        assertEquals(most, json.get("bestJet").get("share").asDouble(), 1e-5);
        assertEquals(
                field.grid().cellCount(), json.get("cells").get("centreM").size());
    }
}
