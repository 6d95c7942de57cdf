package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.run.Confidence;
import baymist.run.Gate;
import baymist.scene.DropletSpec;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.SupplySpec;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;

class ConfidenceReportTest {
    private static final Confidence KNOWN = new Confidence(1.3, 0.71, 0.78, 0.42, 0.5, 0.012, 0.004);

    @Test
    void theSummarySaysHowSureItIs() {
        Page page = new Page();
        ConfidenceReport.text(page, KNOWN);
        String text = page.toString();
        assertTrue(text.contains("factor of 1.3: reached 71.0 % to 78.0 %, protected 42.0 % to 50.0 %"), text);
        assertTrue(text.contains("reached 1.2 points, protected 0.4 points"), text);
        text.lines().forEach(l -> assertTrue(l.length() <= Page.WIDTH, l));
        Page silent = new Page();
        ConfidenceReport.text(silent, Confidence.UNKNOWN);
        assertEquals("", silent.toString());
        Page exact = new Page();
        ConfidenceReport.text(exact, new Confidence(1, 0.7, 0.7, 0.4, 0.4, 0, 0));
        assertTrue(!exact.toString().contains("factor"), exact.toString());
    }

    @Test
    void theResultHoldsRangesAndGatesMetOrNot() {
        JsonNode c = ConfidenceReport.json(KNOWN);
        assertEquals(0.71, c.get("reached").get("low").asDouble());
        assertEquals(0.5, c.get("protected").get("high").asDouble());
        assertEquals(0.012, c.get("reached").get("rayError").asDouble());
        assertTrue(ConfidenceReport.json(Confidence.UNKNOWN)
                .get("reached")
                .get("low")
                .isNull());
        JsonNode gates = ConfidenceReport.gates(
                List.of(new Gate("mist", 6e-3, 5e-3, "kg/m3", "MIST-001"), new Gate("slump", 0.5, 1, "", "FOG-010")));
        assertTrue(gates.get(0).get("exceeded").asBoolean());
        assertTrue(!gates.get(1).get("exceeded").asBoolean());
        assertEquals("FOG-010", gates.get(1).get("finding").asText());
    }

    @Test
    void whatEachTipGetsIsTold() {
        Scene scene = SceneFixtures.minimal()
                .withSupply(new SupplySpec.Pressure(
                        500e3, 0.85, 3.7e-4, new DropletSpec.Tracer(), new SupplySpec.Feed(2e-3, 0, 0.024), List.of()))
                .build();
        JsonNode tip = ConfidenceReport.tips(scene).get(0);
        assertEquals("rod", tip.get("wand").asText());
        assertEquals(
                500e3, tip.get("gaugePa").asDouble() + tip.get("airBoreLossPa").asDouble(), 1e-3);
        assertEquals(3.7e-4, tip.get("liquidKgPerS").asDouble());
        assertTrue(
                tip.get("airLiquidRatio").asDouble() > 1 && tip.get("thrustN").asDouble() > 0);
        assertEquals(
                0,
                ConfidenceReport.tips(SceneFixtures.minimal().withPasses().build())
                        .size());
    }
}
