package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.scene.BayLabel;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.voxel.Bay;
import baymist.voxel.VoxelGrid;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class BayNamingTest {
    private static final Path TAIL_CONE = Path.of("../../scenes/tail-cone.yaml");

    private static VoxelGrid check(BayLabel... labels) {
        Scene scene = SceneReader.read(TAIL_CONE).withBayLabels(List.of(labels));
        return Simulation.check(scene, new RunOptions(2), RunObserver.NONE).grid();
    }

    private static BayLabel label(String name, double x, double z) {
        return new BayLabel(name, new Vec3(x, 0.04, z), new baymist.problem.SourcePlace("scene.yaml", 7, "bays[1]"));
    }

    @Test
    void aBayGetsTheNameOfThePointInItsAir() {
        VoxelGrid grid = check(label("bilge", 0.3, -0.33), label("end", 2.3, 0.2));
        assertEquals(
                List.of("bilge", "bay 2", "bay 3", "bay 4", "bay 5", "bay 6", "end"),
                grid.bays().stream().map(Bay::name).toList());
    }

    @Test
    void theDemoSceneNamesAllItsBays() {
        VoxelGrid grid = Simulation.check(SceneReader.read(TAIL_CONE), new RunOptions(2), RunObserver.NONE)
                .grid();
        assertTrue(grid.bays().stream().noneMatch(bay -> bay.name().startsWith("bay ")));
    }

    @Test
    void namesThatFitNoBayAreRefusedTogether() {
        SceneException refused = assertThrows(
                SceneException.class,
                () -> check(
                        label("outside", 0.3, 2),
                        label("end", 2.3, 0.2),
                        label("end again", 2.32, 0.2),
                        label("bay 2", 1.8, 0.15)));
        assertEquals(
                List.of("GEO-004", "GEO-004", "GEO-004"),
                refused.findings().stream().map(Finding::id).toList());
        String text = refused.getMessage();
        assertTrue(text.contains("the point of bay 'outside' (300.0, 40.0, 2000.0) mm lies in no bay"), text);
        assertTrue(text.contains("is called 'end' already"), text);
        assertTrue(text.contains("the name of another one"), text);
    }
}
