package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.CavitySpec;
import baymist.scene.MeshPose;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MeshHealthTest {
    @TempDir
    Path dir;

    private static final String BOX = """
            v 0 0 0
            v 2 0 0
            v 2 1 0
            v 0 1 0
            v 0 0 1
            v 2 0 1
            v 2 1 1
            v 0 1 1
            o box
            f 4 3 2 1
            f 5 6 7 8
            f 1 2 6 5
            f 2 3 7 6
            f 3 4 8 7
            f 4 1 5 8
            """;

    private Path file(String content) throws IOException {
        return MeshFiles.text(dir, "m.obj", content);
    }

    private MeshHealth health(String content) throws IOException {
        return MeshHealth.of(CavityFixtures.build(MeshFiles.spec(file(content))));
    }

    @Test
    void aSoundMeshHasNothing() throws IOException {
        MeshHealth h = health(BOX);
        assertEquals(0, h.freeEdges() + h.branchEdges() + h.gaps());
        assertEquals(
                0, h.opposed().count() + h.edgeJoints().count() + h.faceJoints().count());
        assertEquals(1, h.bodies().size());
        assertEquals(10, h.bodies().get(0).areaM2(), 1e-14);
        assertEquals(12, h.imported().triangles());
        assertNull(MeshHealth.of(CavityFixtures.wedge()));
    }

    @Test
    void eachFaultIsCountedAtItsPlace() throws IOException {
        // one wall given twice, one triangle without area
        MeshHealth twice = health(BOX + "f 4 1 5 8\nf 1 2 2\n");
        assertEquals(2, twice.imported().twice().count());
        assertEquals(1, twice.imported().flat().count());
        assertTrue(twice.imported().twice().places().get(0).x() < 1e-12);
        // one wall wound the other way: its four outer edges run as their neighbours' do
        MeshHealth turned = health(BOX.replace("f 5 6 7 8", "f 8 7 6 5"));
        assertEquals(4, turned.opposed().count());
        // a second box apart
        MeshHealth two = health(
                BOX + BOX.replaceAll("v (\\d)", "v 1$1").replaceAll("f (\\d) (\\d) (\\d) (\\d)", "f -$1 -$2 -$3 -$4"));
        assertEquals(2, two.bodies().size());
        // a fin in the middle of the box that stands on floor and ceiling without sharing vertices
        MeshHealth fin = health(BOX + "v 1 0.2 0\nv 1 0.8 0\nv 1 0.8 1\nv 1 0.2 1\no fin\nf -4 -3 -2 -1\n");
        assertEquals(4, fin.faceJoints().count());
        assertEquals(4, fin.freeEdges());
        assertEquals(2, fin.bodies().size());
        assertEquals("fin", fin.bodies().get(1).part());
        // a rib across: on an edge of the floor, one of the ceiling, and the diagonal along which one wall is split
        assertEquals(3, health(BOX + "o rib\nf 1 2 7 8\n").branchEdges());
    }

    @Test
    void aVertexBesideACornerIsNearAndOneOnAnEdgeIsAJoint() throws IOException {
        String open = BOX.replace("f 5 6 7 8\n", "");
        MeshHealth near = health(open + "v 0 0 1.00005\nv 2 0 1.00005\nv 2 1 1.00005\nv 0 1 1.00005\nf -4 -3 -2 -1\n");
        assertEquals(8, near.nearJoints().count());
        assertEquals(5e-5, near.nearJoints().widestM(), 1e-9);
        MeshHealth edge = health(open + "v 1 0 1\nv 1 1 1\nf 5 9 10 8\nf 9 6 7 10\n");
        assertEquals(2, edge.edgeJoints().count());
        assertEquals(1, edge.edgeJoints().places().get(0).x(), 1e-12);
    }

    @Test
    void aMeshIsLaidIntoStructureAxes() throws IOException {
        // file x to the left, y up, z forward, turned by 90 degrees about x, moved; in inches at half scale
        MeshPose pose = new MeshPose(
                new Vec3(0, -1, 0), Vec3.Z, new Vec3(-1, 0, 0), new Vec3(90, 0, 0), new Vec3(10, 20, 30), 0.5);
        Cavity c = CavityFixtures.build(
                new CavitySpec.Mesh("m", file(BOX), 0.0254, null, 1e-3, List.of(), CavityFixtures.PLACE, pose, 0));
        double in = 0.5 * 0.0254;
        Box3 b = c.sheets().bounds();
        // (x, y, z) of the file = (-z, -x, y) laid, then (-z, -y, -x) turned about x
        assertEquals(10 - in, b.min().x(), 1e-12);
        assertEquals(10, b.max().x(), 1e-12);
        assertEquals(20 - in, b.min().y(), 1e-12);
        assertEquals(30 - 2 * in, b.min().z(), 1e-12);
        assertEquals(10 * in * in, CavityFixtures.area(c.sheets()), 1e-15);
    }

    @Test
    void aMissingUnitIsAskedForWithTheLengthThatEachWouldGive() throws IOException {
        CavitySpec.Mesh spec = MeshFiles.spec(file(BOX), Double.NaN);
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(spec));
        assertEquals("MSH-016", e.findings().get(0).id());
        assertTrue(
                e.getMessage().contains("m = 2 m, cm = 20 mm, mm = 2 mm, in = 50.8 mm, ft = 609.6 mm"), e.getMessage());
    }
}
