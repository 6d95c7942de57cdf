package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.run.CheckResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.CavitySpec;
import baymist.scene.MeshPose;
import baymist.scene.SceneFixtures;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MeshReportTest {
    @TempDir
    Path dir;

    /** A box whose lid lies 1 mm above its walls, one wall twice, another wound the other way, a fin on its floor. */
    private static final String FAULTY = """
            v 0 0 0
            v 2 0 0
            v 2 1 0
            v 0 1 0
            v 0 0 1
            v 2 0 1
            v 2 1 1
            v 0 1 1
            v 0 0 1.001
            v 2 0 1.001
            v 2 1 1.001
            v 0 1 1.001
            v 1 0.2 0
            v 1 0.8 0
            v 1 0.5 0.5
            g box
            f 4 3 2 1
            f 9 10 11 12
            f 1 2 6 5
            f 2 3 7 6
            f 8 7 3 4
            f 3 4 8 7
            f 8 5 1 4
            f 1 2 2
            g fin
            f 13 14 15
            """;

    private CheckResult check(double closeM) throws IOException {
        Path file = Files.writeString(dir.resolve("m.obj"), FAULTY);
        CavitySpec mesh =
                new CavitySpec.Mesh("box", file, 1, null, 1e-3, List.of(), SceneFixtures.HERE, MeshPose.AS_IS, closeM);
        return Simulation.check(
                SceneFixtures.minimal()
                        .withCavity(mesh)
                        .withCuts()
                        .withEntries()
                        .withPasses()
                        .withVoxel(0.1, 0.1, 0.1)
                        .build(),
                new RunOptions(1),
                RunObserver.NONE);
    }

    @Test
    void everyFaultIsSaidInWordsAndInJson() throws IOException {
        CheckResult open = check(0);
        String text = CheckReport.text(open);
        assertTrue(text.contains("1 triangle without area left out"), text);
        assertTrue(text.contains("2 triangles given twice"), text);
        assertTrue(text.contains("face opposite ways: harmless"), text);
        assertTrue(text.contains("2 vertices of free edges stand on another sheet's face"), text);
        assertTrue(text.contains("3 bodies that share no vertex"), text);
        assertTrue(text.lines().allMatch(l -> l.length() <= 100), text);
        StringWriter out = new StringWriter();
        CheckReport.json(open, out);
        JsonNode mesh = new ObjectMapper().readTree(out.toString()).get("mesh");
        assertEquals(13, mesh.get("triangles").asInt());
        assertEquals(2, mesh.get("twice").get("count").asInt());
        assertEquals(2, mesh.get("faceJoints").get("count").asInt());
        assertEquals(3, mesh.get("bodies").size());
        assertEquals(11, mesh.get("freeEdges").asInt());
    }

    @Test
    void closedGapsAreSaid() throws IOException {
        String text = CheckReport.text(check(2e-3));
        assertTrue(text.contains("gaps closed: 4 vertices joined and 0 set into edges, up to 1 mm apart"), text);
        assertTrue(text.contains("2 bodies"), text);
        assertFalse(text.contains("gap 1"), text);
    }
}
