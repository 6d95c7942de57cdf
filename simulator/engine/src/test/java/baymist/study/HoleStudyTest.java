package baymist.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.report.HoleReport;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class HoleStudyTest {
    /** The demo's promise: its blind bay is opened up by holes that keep every rule, and the job then reaches 95 % of the inside. */
    @Test
    void aBlindBayIsLiftedAboveNinetyFivePercent() throws IOException {
        Scene scene = read("blind-bay-drill.yaml").withVoxel(new VoxelSpec(0.01, 0.01, 0.01));
        PlanningRun runs = new PlanningRun(new Planning(1, 4, 24, 8), StudyStore.none());
        HoleStudy.Holes holes = new HoleStudy(runs, 2).run(scene, Comparison.Watch.NONE);
        assertTrue(holes.before().reached() < 0.6, "before: " + holes.before().reached());
        assertTrue(holes.after().reached() > 0.95, "after: " + holes.after().reached());
        for (HoleStudy.Chosen c : holes.chosen()) {
            assertFalse(c.site().part().equals("right wall"), "the right wall is primary structure");
            assertTrue(c.gain() >= 0.02, c.site().words() + " gains " + c.gain());
        }
        assertEquals(
                scene.passes().size() + holes.chosen().size(),
                holes.job().passes().size());
        assertTrue(
                holes.chosen().size() == 2 || holes.stop().contains("less than 2.0 %"),
                "it ended because " + holes.stop());
        StringWriter json = new StringWriter();
        HoleReport.json(holes, json);
        assertTrue(json.toString().contains("needs approved data and a licensed person"), json.toString());
        String text = HoleReport.text(holes);
        assertTrue(text.replaceAll("\\s+", " ").contains("needs approved data and a licensed person"), text);
        assertTrue(text.lines().allMatch(l -> l.length() <= 100), text);
    }

    @Test
    void nothingIsProposedWhereTheSceneAllowsNoDrilling() {
        PlanningRun runs = new PlanningRun(Planning.DEFAULT, StudyStore.none());
        SceneException e = assertThrows(
                SceneException.class, () -> new HoleStudy(runs, 1).run(read("wing-box.yaml"), Comparison.Watch.NONE));
        assertEquals("DRL-002", e.findings().get(0).id());
    }

    private static Scene read(String name) {
        Path at = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(at.resolve("scenes"))) {
            at = java.util.Objects.requireNonNull(at.getParent());
        }
        return SceneReader.read(at.resolve("scenes").resolve(name));
    }
}
