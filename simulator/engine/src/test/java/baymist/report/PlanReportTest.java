package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.plan.DoseSettings;
import baymist.plan.DoseStore;
import baymist.plan.PlanOptions;
import baymist.plan.PlanResult;
import baymist.plan.Planner;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.study.Planning;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Text and JSON of a plan of a small block. */
class PlanReportTest {
    private static PlanResult plan;
    private static JsonNode json;

    @BeforeAll
    static void compute() throws IOException {
        Scene scene = SceneFixtures.minimal()
                .withCavity(SceneFixtures.block(new Vec3(0.4, 0.2, 0.15)))
                .withCuts(SceneFixtures.round("hole", "aft wall", 0.03, new Vec3(0.4, 0.1, 0.075)))
                .withVoxel(0.04, 0.04, 0.0375)
                .withHangS(10)
                .withPasses()
                .build();
        DoseSettings few = new DoseSettings(new Planning(1, 4, 64, 1), 0.1, 8, 8, 1, 1);
        plan = Planner.plan(
                scene, new PlanOptions(few, DoseStore.none(), 8, Double.NaN, 3, 6, true, false), new RunOptions(2), RunObserver.NONE);
        StringWriter out = new StringWriter();
        PlanReport.json(plan, out);
        json = new ObjectMapper().readTree(out.toString());
    }

    @Test
    void everyKeyIsDocumented() throws IOException {
        String doc = Files.readString(Path.of("../../docs/formats/plan.md"));
        json.fieldNames().forEachRemaining(k -> assertTrue(doc.contains("`" + k + "`"), k));
        for (String node : new String[] {"verified", "predicted", "limits", "hands"}) {
            json.get(node).fieldNames().forEachRemaining(k -> assertTrue(doc.contains("`" + k + "`"), k));
        }
        json.get("passes").get(0).fieldNames().forEachRemaining(k -> assertTrue(doc.contains("`" + k + "`"), k));
    }

    @Test
    void whatIsSaidFirstIsWhatTheRunFound() {
        String text = PlanReport.text(plan).replaceAll("\\s+", " ");
        double reached = json.get("verified").get("reached").asDouble();
        assertEquals(plan.verified().coverage().total().reached(), reached);
        assertTrue(
                text.contains(String.format(
                        java.util.Locale.ROOT,
                        "%d passes reach %.1f %% of the inside",
                        plan.planned().passes().size(),
                        100 * reached)),
                text);
        assertTrue(text.contains("verified by a full run"), text);
        assertTrue(text.contains("only proposes; runs decide"), text);
    }

    @Test
    void productIsTheRateTimesTheTrigger() {
        // 3.7e-4 kg/s of 880 kg/m³
        double ml = 3.7e-4 * json.get("checked").get("triggerS").asDouble() / 880 * 1e6;
        assertEquals(ml, json.get("verified").get("productMl").asDouble(), 1e-6 * ml);
        assertTrue(json.get("checked").get("triggerS").asDouble() <= 8 * 1.001);
    }

    @Test
    void linesFitAHundredColumns() {
        PlanReport.text(plan).lines().forEach(l -> assertTrue(l.length() <= Page.WIDTH, l));
    }
}
