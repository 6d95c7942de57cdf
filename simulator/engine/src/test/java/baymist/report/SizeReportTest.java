package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.size.SampleSize;
import baymist.size.SizeRequest;
import baymist.size.SizeResult;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class SizeReportTest {
    private static final SizeResult MET = SampleSize.result(SizeRequest.of(SampleSize.scene()), true);
    private static final SizeResult MISSED = SampleSize.result(SizeRequest.of(SampleSize.scene()), false);

    @Test
    void textKeepsToTheColumnsAndToAscii() {
        for (SizeResult r : new SizeResult[] {MET, MISSED}) {
            String text = SizeReport.text(r);
            text.lines().forEach(l -> assertTrue(l.length() <= 100, l.length() + ": " + l));
            assertTrue(text.chars().allMatch(c -> c < 127), text);
        }
    }

    @Test
    void theChosenWandAndTheReasonsOfTheOthersAreSaid() {
        String text = SizeReport.text(MET);
        assertTrue(text.contains("Make: "), text);
        assertTrue(text.lines().anyMatch(l -> l.startsWith("* ") && l.contains("straight")), text);
        assertTrue(SizeReport.text(MISSED).contains("No wand of those tried meets the goal"), SizeReport.text(MISSED));
        assertTrue(SizeReport.text(MISSED).contains("reaches 60.0 % at most"), SizeReport.text(MISSED));
        assertTrue(text.contains("Pressure: use tube and fittings"), text);
    }

    @Test
    void jsonNamesTheShortestOfItsSweep() throws IOException {
        JsonNode root = json(MET);
        JsonNode shortest = root.get("shortest");
        double least = Double.POSITIVE_INFINITY;
        for (JsonNode c : root.get("sweep")) {
            for (String key : new String[] {
                "lengthM", "outerM", "pattern", "reached", "sagM", "liquidMlPerMin", "holeM", "filledKg"
            }) {
                assertTrue(c.has(key), key);
            }
            least = c.get("meets").asBoolean()
                    ? Math.min(least, c.get("lengthM").asDouble())
                    : least;
        }
        assertEquals(least, shortest.get("lengthM").asDouble(), 1e-12);
        assertEquals(40, shortest.get("liquidMlPerMin").asDouble(), 1e-6); // as the scene states it
        assertEquals(root.get("designs").size(), MET.designs().size());
        assertTrue(json(MISSED).get("shortest").isNull());
    }

    private static JsonNode json(SizeResult r) throws IOException {
        StringWriter out = new StringWriter();
        SizeReport.json(r, out);
        return new ObjectMapper().readTree(out.toString());
    }
}
