package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import baymist.scene.MeshPose;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GapCloserTest {
    @TempDir
    Path dir;

    private static final double GAP_M = 1.5e-3;

    /** Tube along x in two halves a gap apart, with so many panels along x in each half and both ends closed. */
    private static List<Vec3[]> halves(int lower, int upper) {
        List<Vec3[]> triangles = new ArrayList<>();
        half(triangles, lower, 0, 1);
        half(triangles, upper, GAP_M, -1);
        return triangles;
    }

    /** One half of a box of 1 x 0.4 x 0.4 m, split at mid height; its rim stands off by {@code offM}. */
    private static void half(List<Vec3[]> t, int panels, double offM, int sign) {
        double rim = 0.2 + (sign > 0 ? 0 : offM);
        double far = sign > 0 ? 0 : 0.4 + offM;
        for (int i = 0; i < panels; i++) {
            double a = (double) i / panels;
            double b = (i + 1.0) / panels;
            quad(t, new Vec3(a, 0, far), new Vec3(b, 0, far), new Vec3(b, 0.4, far), new Vec3(a, 0.4, far));
            for (double y : new double[] {0, 0.4}) {
                quad(t, new Vec3(a, y, far), new Vec3(b, y, far), new Vec3(b, y, rim), new Vec3(a, y, rim));
            }
        }
        for (double x : new double[] {0, 1}) {
            quad(t, new Vec3(x, 0, far), new Vec3(x, 0.4, far), new Vec3(x, 0.4, rim), new Vec3(x, 0, rim));
        }
    }

    private static void quad(List<Vec3[]> t, Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
        t.add(new Vec3[] {a, b, c});
        t.add(new Vec3[] {a, c, d});
    }

    private Cavity build(List<Vec3[]> triangles, double closeM) throws IOException {
        double[] xyz = new double[9 * triangles.size()];
        int[] corners = new int[3 * triangles.size()];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = i;
            for (int axis = 0; axis < 3; axis++) {
                xyz[3 * i + axis] = triangles.get(i / 3)[i % 3].get(axis);
            }
        }
        Path file = MeshFiles.text(dir, "m.stl", MeshFiles.ascii(new TriangleMesh(xyz, corners), "m"));
        return CavityFixtures.build(new CavitySpec.Mesh(
                "mesh", file, 1, null, 1e-3, List.of(), CavityFixtures.PLACE, MeshPose.AS_IS, closeM));
    }

    @Test
    void equalRimsAreWeldedAndTheBoxIsClosed() throws IOException {
        Cavity open = build(halves(4, 4), 0);
        assertTrue(MeshHealth.of(open).freeEdges() > 0);
        assertEquals(2, MeshHealth.of(open).bodies().size());
        Cavity closed = build(halves(4, 4), 2e-3);
        MeshHealth health = MeshHealth.of(closed);
        assertEquals(0, health.freeEdges());
        assertEquals(0, health.gaps());
        assertEquals(1, health.bodies().size());
        assertEquals(10, health.imported().welded());
        assertEquals(GAP_M, health.imported().widestM(), 1e-12);
        // both rims, each 2 x 1 m and 2 x 0.4 m
        assertEquals(2 * 2.8, health.imported().closedM(), 1e-6);
        assertTrue(
                closed.remarks().toString().contains("close_gaps joined 10 vertices"),
                closed.remarks().toString());
    }

    @Test
    void unequalRimsAreZipped() throws IOException {
        for (int[] panels : new int[][] {{1, 4}, {3, 5}, {7, 2}}) {
            MeshHealth health = MeshHealth.of(build(halves(panels[0], panels[1]), 2e-3));
            assertEquals(0, health.freeEdges(), panels[0] + " against " + panels[1]);
            assertEquals(0, health.gaps());
            assertTrue(health.imported().zipped() > 0);
        }
    }

    @Test
    void widerGapsStayAndAreRemarked() throws IOException {
        Cavity cavity = build(halves(4, 4), 1e-3);
        assertTrue(MeshHealth.of(cavity).freeEdges() > 0);
        assertTrue(cavity.remarks().toString().contains("close_gaps closed nothing"));
    }

    @Test
    void rimsFinerThanTheWidthAreNotCrumpled() throws IOException {
        // panels of 5 mm against a width of 12 mm: every rim vertex has neighbours along the rim within the width
        Cavity open = build(halves(200, 200), 0);
        Cavity cavity = build(halves(200, 200), 12e-3);
        MeshHealth health = MeshHealth.of(cavity);
        assertEquals(0, health.freeEdges());
        assertEquals(
                MeshHealth.of(open).imported().triangles(), health.imported().triangles());
        double area = CavityFixtures.area(cavity.sheets());
        assertEquals(2 * (0.4 * 0.4 + 0.8), area, 0.01);
    }

    @Test
    void tJointsOfZeroWidthAreZippedToo() throws IOException {
        List<Vec3[]> t = new ArrayList<>();
        half(t, 1, 0, 1);
        half(t, 4, 0, -1);
        MeshHealth before = MeshHealth.of(build(t, 0));
        assertEquals(6, before.edgeJoints().count());
        assertTrue(before.freeEdges() > 0);
        MeshHealth after = MeshHealth.of(build(t, 1e-4));
        assertEquals(0, after.freeEdges());
        assertEquals(0, after.edgeJoints().count());
        assertEquals(6, after.imported().zipped());
    }
}
