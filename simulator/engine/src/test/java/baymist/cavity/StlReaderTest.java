package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.TriangleMesh;
import baymist.problem.SceneException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StlReaderTest {
    @TempDir
    Path dir;

    private static final double AREA = 2 * (0.5 * 0.25 + 0.5 * 0.125 + 0.25 * 0.125);

    @Test
    void asciiAndBinaryGiveTheSameSheets() throws IOException {
        Path a = MeshFiles.text(dir, "a.stl", MeshFiles.ascii(MeshFiles.blockMesh(), "Left_Box"));
        Path b = Files.write(dir.resolve("b.STL"), MeshFiles.binary(MeshFiles.blockMesh(), "plain"));
        // a binary header may well begin with "solid": the size decides
        Path c = Files.write(dir.resolve("c.stl"), MeshFiles.binary(MeshFiles.blockMesh(), "solid made by a modeller"));
        for (Path file : new Path[] {a, b, c}) {
            Cavity cavity = CavityFixtures.build(MeshFiles.spec(file));
            assertEquals(12, cavity.sheets().triangleCount());
            assertEquals(8, cavity.sheets().vertexCount());
            assertEquals(AREA, CavityFixtures.area(cavity.sheets()), 1e-12);
            assertEquals(0, cavity.openings().size());
            assertTrue(cavity.remarks().isEmpty());
        }
        assertEquals(
                "left box",
                CavityFixtures.build(MeshFiles.spec(a)).parts().get(0).name());
    }

    @Test
    void openMeshIsCappedAndTheCapKnowsItsGap() throws IOException {
        TriangleMesh block = MeshFiles.blockMesh();
        int[] corners = new int[30];
        for (int i = 0; i < 30; i++) {
            corners[i] = block.corner(i / 3, i % 3);
        }
        double[] xyz = new double[24];
        for (int i = 0; i < 24; i++) {
            xyz[i] = block.coordinate(i / 3, i % 3);
        }
        // the last two triangles are the ceiling
        Path a = MeshFiles.text(dir, "a.stl", MeshFiles.ascii(new TriangleMesh(xyz, corners), "x"));
        Cavity cavity = CavityFixtures.build(MeshFiles.spec(a));
        Opening gap = cavity.openings().get(0);
        assertEquals("gap 1 (top)", gap.name());
        assertEquals(Opening.Kind.GAP, gap.kind());
        assertEquals(0.5 * 0.25, gap.areaM2(), 1e-12);
        assertTrue(gap.exterior());
        assertEquals(AREA, CavityFixtures.area(cavity.sheets()), 1e-12);
        assertEquals(AREA - 0.125, CavityFixtures.area(cavity.cutSheets()), 1e-12);
        assertEquals(0.125, CavityFixtures.area(cavity.closures()), 1e-12);
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            assertEquals(cavity.partOfSheet(t) < 0 ? 0 : -1, cavity.gapOfSheet(t));
        }
        CavityHealth health = CavityHealth.of(cavity);
        assertEquals(0, health.freeEdges());
        assertEquals(1, health.gaps());
        assertEquals(0.125, health.closuresM2(), 1e-12);
    }

    @Test
    void unitScalesTheFile() throws IOException {
        Path a = MeshFiles.text(dir, "a.stl", MeshFiles.ascii(MeshFiles.blockMesh(), "x"));
        Cavity cavity = CavityFixtures.build(MeshFiles.spec(a, 0.0254));
        assertEquals(AREA * 0.0254 * 0.0254, CavityFixtures.area(cavity.sheets()), 1e-15);
    }

    @Test
    void eachSolidIsAPartWithANameOfItsOwn() throws IOException {
        String one = MeshFiles.ascii(MeshFiles.blockMesh(), "Upper_SKIN  panel");
        Path a = MeshFiles.text(dir, "a.stl", one + one.replace("0.5", "0.75").replace("vertex 0.0", "vertex 0.625"));
        Cavity cavity = CavityFixtures.build(MeshFiles.spec(a));
        assertEquals("upper skin panel", cavity.parts().get(0).name());
        assertEquals("upper skin panel (2)", cavity.parts().get(1).name());
        assertEquals(PartKind.SKIN, cavity.parts().get(1).kind());
    }

    @Test
    void hostileFilesEndInOneClearSentence() throws IOException {
        byte[] good = MeshFiles.binary(MeshFiles.blockMesh(), "x");
        refused("MSH-002", write("empty.stl", new byte[0]));
        refused("MSH-006", write("short.stl", Arrays.copyOf(good, good.length - 7)));
        refused("MSH-006", write("long.stl", Arrays.copyOf(good, good.length + 50)));
        refused("MSH-006", write("tiny.stl", new byte[] {1, 2, 3}));
        refused(
                "MSH-006",
                write("noise.stl", Arrays.copyOf("PK\u0003\u0004 an archive".getBytes(StandardCharsets.UTF_8), 300)));
        refused("MSH-006", write("giant count.stl", with(good, 80, 0xFFFFFFFF)));
        refused("MSH-006", write("2^31.stl", with(good, 80, 0x80000000)));
        refused("MSH-007", write("nan.stl", with(good, 96, Float.floatToIntBits(Float.NaN))));
        refused("MSH-007", write("infinite.stl", with(good, 100, Float.floatToIntBits(Float.NEGATIVE_INFINITY))));
        refused("MSH-015", write("huge.stl", with(good, 96, Float.floatToIntBits(3e38f))));
        refused("MSH-003", write("no triangles.stl", Arrays.copyOf(with(good, 80, 0), 84)));
        byte[] flat = new byte[84 + 50];
        flat[80] = 1;
        refused("MSH-015", write("point.stl", flat));
        ByteBuffer.wrap(flat)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putFloat(84 + 12, 1)
                .putFloat(84 + 24, 2);
        refused("MSH-003", write("needle.stl", flat));
    }

    @Test
    void hostileTextEndsInOneClearSentence() throws IOException {
        String good = MeshFiles.ascii(MeshFiles.blockMesh(), "x");
        refused("MSH-006", MeshFiles.text(dir, "pretender.stl", "solid \u0000\u0001 binary\nabc def\n"));
        refused("MSH-008", MeshFiles.text(dir, "number.stl", good.replaceFirst("vertex [0-9.]+", "vertex 1,5")));
        refused("MSH-008", MeshFiles.text(dir, "two.stl", good.replaceFirst("vertex [0-9.]+ ", "vertex ")));
        refused("MSH-007", MeshFiles.text(dir, "nan.stl", good.replaceFirst("vertex [0-9.]+", "vertex NaN")));
        refused("MSH-007", MeshFiles.text(dir, "inf.stl", good.replaceFirst("vertex [0-9.]+", "vertex 1e999")));
        refused("MSH-006", MeshFiles.text(dir, "cut.stl", good.substring(0, good.length() - 12)));
        refused("MSH-008", MeshFiles.text(dir, "missing.stl", good.replaceFirst(" *vertex.*\n", "")));
        refused("MSH-008", MeshFiles.text(dir, "stray.stl", "solid x\nvertex 1 2 3\n"));
        refused("MSH-003", MeshFiles.text(dir, "none.stl", "solid x\nendsolid x\n"));
        refused("MSH-004", MeshFiles.text(dir, "long.stl", "solid x\n" + "9".repeat(20_000)));
        refused("MSH-005", MeshFiles.text(dir, "mesh.step", "ISO-10303-21;"));
        refused("MSH-001", dir.resolve("nowhere.stl"));
        refused("MSH-001", dir);
    }

    @Test
    void namesThatAreNoTextDoNoHarm() throws IOException {
        byte[] text = MeshFiles.ascii(MeshFiles.blockMesh(), "\u00e9\u0007_B").getBytes(StandardCharsets.ISO_8859_1);
        Cavity cavity = CavityFixtures.build(MeshFiles.spec(write("latin.stl", text)));
        assertEquals("?? b", cavity.parts().get(0).name());
    }

    private Path write(String name, byte[] bytes) throws IOException {
        return Files.write(dir.resolve(name), bytes);
    }

    private static byte[] with(byte[] bytes, int at, int value) {
        byte[] copy = bytes.clone();
        ByteBuffer.wrap(copy).order(ByteOrder.LITTLE_ENDIAN).putInt(at, value);
        return copy;
    }

    private static void refused(String id, Path file) {
        SceneException e =
                assertThrows(SceneException.class, () -> CavityFixtures.build(MeshFiles.spec(file)), file.toString());
        assertEquals(1, e.findings().size());
        assertEquals(id, e.findings().get(0).id(), e.getMessage());
        assertTrue(e.getMessage().length() < 400, e.getMessage());
    }
}
