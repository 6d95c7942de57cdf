package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Statements after the Wavefront OBJ specification, version 3.0 (Alias Wavefront, appendix B1), from memory. */
class ObjReaderTest {
    @TempDir
    Path dir;

    /** A box of 2 x 1 x 1: walls as quadrilaterals, in groups. */
    private static final String BOX = """
            # a box
            mtllib some.mtl
            o Left_Box
            v 0 0 0
            v 2 0 0
            v 2 1 0
            v 0 1 0
            v 0 0 1 1.0
            v 2 0 1 0.5 0.5 0.5
            v 2 1 1
            v 0 1 1
            vt 0.5 0.5
            vn 0 0 1
            g Floor
            usemtl grey
            s off
            f 4 3 2 1
            g Upper_SKIN
            f 5/1 6/1 7/1 8/1
            g walls
            f 1//1 2//1 6//1 5//1
            f 2/1/1 3/1/1 7/1/1 6/1/1
            f -6 -5 \\
              -1 -2
            f 4 1 5 8
            """;

    private Cavity build(String content) throws IOException {
        return CavityFixtures.build(MeshFiles.spec(MeshFiles.text(dir, "m.obj", content)));
    }

    @Test
    void groupsAreParts() throws IOException {
        Cavity cavity = build(BOX);
        assertEquals(
                List.of("floor", "upper skin", "walls"),
                cavity.parts().stream().map(Part::name).toList());
        assertEquals(PartKind.SKIN, cavity.parts().get(1).kind());
        CavityHealth health = CavityHealth.of(cavity);
        assertEquals(2, health.parts().get(0).wholeM2(), 1e-15);
        assertEquals(2, health.parts().get(1).wholeM2(), 1e-15);
        assertEquals(6, health.parts().get(2).wholeM2(), 1e-15);
        assertEquals(0, health.freeEdges());
        assertEquals(12, cavity.sheets().triangleCount());
    }

    @Test
    void objectsWithoutGroupsArePartsAndEqualGroupsOfTwoObjectsStayApart() throws IOException {
        Cavity objects = build(BOX.replaceAll("g (\\w+)", "o $1"));
        assertEquals("upper skin", objects.parts().get(1).name());
        Cavity two = build(BOX + "o other\ng walls\nf 1 2 7\n");
        assertEquals("walls (2)", two.parts().get(3).name());
        Cavity back = build(BOX + "g Floor\nf 1 2 7\n");
        assertEquals(3, back.parts().size());
    }

    @Test
    void concavePolygonsKeepTheirArea() throws IOException {
        // an L of 3 x 3 less 2 x 2, and a comb of two teeth
        Cavity cavity = build("""
                v 0 0 0
                v 3 0 0
                v 3 1 0
                v 1 1 0
                v 1 3 0
                v 0 3 0
                v 0 0 5
                v 5 0 5
                v 5 2 5
                v 4 2 5
                v 4 1 5
                v 3 1 5
                v 3 2 5
                v 2 2 5
                v 2 1 5
                v 1 1 5
                v 1 2 5
                v 0 2 5
                o ell
                f 1 2 3 4 5 6
                o comb
                f 7 8 9 10 11 12 13 14 15 16 17 18
                """);
        CavityHealth health = CavityHealth.of(cavity);
        assertEquals(5, health.parts().get(0).wholeM2(), 1e-14);
        assertEquals(8, health.parts().get(1).wholeM2(), 1e-14);
        assertEquals(4, health.parts().get(0).triangles());
        assertEquals(10, health.parts().get(1).triangles());
    }

    @Test
    void linesPointsAndCurvesAreCountedInARemark() throws IOException {
        String remarks = build(BOX + "l 1 2\nl 2 3\np 1\ncstype bezier\ncurv 0 1 1 2\nend\n")
                .remarks()
                .toString();
        assertTrue(remarks.contains("2 'l' statement(s)"), remarks);
        assertTrue(remarks.contains("1 'p' statement(s)"), remarks);
    }

    @Test
    void repeatedCornersMakeNoTriangleAndCrossedPolygonsAreTold() throws IOException {
        Cavity cavity = build(BOX + "f 1 2 2\nf 2 3 4 2\n");
        MeshImport imported = cavity.imported();
        assertEquals(1, imported.flat().count());
        assertEquals(1, imported.twice().count());
        String remarks = build("v 0 0 0\nv 1 0 0\nv 1 3 0\nv 0 2 0\nf 1 3 2 4\nf 1 2 3\n")
                .remarks()
                .toString();
        assertTrue(remarks.contains("cross themselves"), remarks);
    }

    @Test
    void brokenFilesEndInOneClearSentence() throws IOException {
        refused("MSH-014", BOX + "f 0 1 2\n");
        refused("MSH-014", BOX + "f 1 2 9\n");
        refused("MSH-014", BOX + "f -9 1 2\n");
        refused("MSH-008", BOX + "f 1 2\n");
        refused("MSH-008", BOX + "f 1 2 x\n");
        refused("MSH-008", BOX + "f 1 2 99999999999\n");
        refused("MSH-008", BOX + "f" + " 1 2 3".repeat(300) + "\n");
        refused("MSH-008", BOX + "v 1 2\n");
        refused("MSH-008", BOX + "v 1 2 three\n");
        refused("MSH-007", BOX + "v 1 2 NaN\n");
        refused("MSH-007", BOX + "v 1 2 1e400\n");
        refused("MSH-008", "<?xml version=\"1.0\"?>\n");
        refused("MSH-004", "v 1 2 3 \\\n".repeat(200));
        refused("MSH-003", "v 1 2 3\n");
    }

    @Test
    void bytesThatAreNoTextDoNoHarm() throws IOException {
        byte[] latin = BOX.replace("Floor", "Fl\u00f6r").getBytes(StandardCharsets.ISO_8859_1);
        Path file = Files.write(dir.resolve("latin.obj"), latin);
        assertEquals(
                "fl?r",
                CavityFixtures.build(MeshFiles.spec(file)).parts().get(0).name());
    }

    private void refused(String id, String content) throws IOException {
        Path file = MeshFiles.text(dir, "m.obj", content);
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(MeshFiles.spec(file)));
        assertEquals(id, e.findings().get(0).id(), e.getMessage());
        assertEquals(1, e.findings().size());
        assertTrue(e.getMessage().length() < 300, e.getMessage());
    }
}
