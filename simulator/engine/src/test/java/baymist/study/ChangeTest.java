package baymist.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import baymist.scene.io.SceneReader;
import baymist.scene.io.SceneWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChangeTest {
    @TempDir
    Path folder;

    private static final List<Change> CHANGES = List.of(
            new Change.Clock("rear line", Math.PI / 2),
            new Change.Depth(null, Double.POSITIVE_INFINITY, 0.1),
            new Change.Depth("front line", 1.2, 0.1),
            new Change.DrawBack(null, 0.05),
            new Change.Hold("middle line", 3),
            new Change.TriggerTime(null, 2),
            new Change.Liquid(0.5),
            new Change.Entry("rear line", "root front hole"),
            new Change.Hang(null, 600),
            new Change.Hang("rear line", 60),
            Change.Nozzle.FINER,
            new Change.Vent("bay 4 port", PhaseStates.Phase.PASS, OpeningState.TAPED),
            new Change.Vent("bay 1 drain", PhaseStates.Phase.HANG, OpeningState.PLUGGED),
            new Change.RoundHole("new hole", "lower skin", new Vec3(0.4, 0.2, -0.05), 0.0033));

    @Test
    void everyChangeChangesTheJobSaysSoAndCanBeWritten() throws IOException {
        Scene scene = wingBox();
        for (Change c : CHANGES) {
            Scene changed = c.apply(scene);
            assertNotEquals(SceneContent.hash(scene), SceneContent.hash(changed), c.words());
            assertEquals(SceneContent.hash(changed), SceneContent.hash(c.apply(scene)), c.words());
            assertFalse(c.words().isBlank() || c.words().endsWith("."), c.words());
            SceneWriter.write(changed, folder.resolve("changed.yaml"));
        }
    }

    @Test
    void aChangeOfOnePassLeavesTheOthersAlone() {
        Scene scene = wingBox();
        Scene changed = new Change.Clock("middle line", 1).apply(scene);
        for (int p = 0; p < 3; p++) {
            PassSpec before = scene.passes().get(p);
            PassSpec after = changed.passes().get(p);
            assertEquals(before.name().equals("middle line"), !SceneContent.same(before, after), before.name());
        }
    }

    @Test
    void twiceTheTriggerTimeIsHalfTheDrawBack() {
        Scene changed = new Change.TriggerTime(null, 2).apply(wingBox());
        assertEquals(0.0375, changed.passes().get(0).drawBackMPerS(), 1e-15);
    }

    @Test
    void aClockAngleIsTakenWithinATurn() {
        Scene changed = new Change.Clock(null, -Math.PI / 2).apply(wingBox());
        assertEquals(1.5 * Math.PI, changed.passes().get(0).clockRad(), 1e-15);
        assertTrue(new Change.Clock(null, -Math.PI / 2).words().contains("270 deg (left)"));
    }

    @Test
    void aVentKeepsItsOtherPhases() {
        Scene changed = new Change.Vent("bay 4 port", PhaseStates.Phase.PASS, OpeningState.TAPED).apply(wingBox());
        assertEquals(
                new PhaseStates(OpeningState.TAPED, OpeningState.TAPED, OpeningState.CLOSED),
                changed.states().get("bay 4 port"));
    }

    @Test
    void whatIsNotThereIsRefused() {
        Scene scene = wingBox();
        assertThrows(IllegalArgumentException.class, () -> new Change.Clock("no pass", 0).apply(scene));
        assertThrows(IllegalArgumentException.class, () -> new Change.Wand(null, "no wand").apply(scene));
        assertThrows(IllegalArgumentException.class, () -> new Change.Entry(null, "no entry").apply(scene));
        assertThrows(IllegalArgumentException.class, () -> new Change.Unmask("no item").apply(scene));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Change.Vent("no opening", PhaseStates.Phase.PASS, OpeningState.OPEN).apply(scene));
    }

    private static Scene wingBox() {
        Path at = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(at.resolve("scenes"))) {
            at = java.util.Objects.requireNonNull(at.getParent());
        }
        return SceneReader.read(at.resolve("scenes/wing-box.yaml"));
    }
}
