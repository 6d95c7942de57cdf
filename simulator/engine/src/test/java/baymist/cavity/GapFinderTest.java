package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

class GapFinderTest {
    /** Block 2 x 1 x 1 without its forward (x = 0) wall. */
    private static SheetModel openBox() {
        SheetModel model = new SheetModel();
        int part = model.part("shell", PartKind.SKIN, 0.001);
        Vec3[] c = corners();
        int[][] sides = {{1, 3, 7, 5}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}};
        for (int[] s : sides) {
            model.quad(part, c[s[0]], c[s[1]], c[s[2]], c[s[3]]);
        }
        return model;
    }

    private static Vec3[] corners() {
        Vec3[] c = new Vec3[8];
        for (int i = 0; i < 8; i++) {
            c[i] = new Vec3(2 * (i & 1), i >> 1 & 1, i >> 2 & 1);
        }
        return c;
    }

    @Test
    void openEndBecomesOneGapThatClosesTheSheet() {
        SheetModel model = openBox();
        new GapFinder(model).find();
        assertEquals(1, model.gaps.size());
        SheetModel.Gap gap = model.gaps.get(0);
        assertEquals("gap 1 (forward end)", gap.name());
        assertEquals(1, gap.place().outline().areaM2(), 1e-15);
        assertEquals(0, gap.place().normal().distance(Vec3.X), 1e-15);
        assertTrue(model.remarks.get(0).contains("1.000 m²"), model.remarks.toString());
        for (Vec3[] t : gap.cap()) {
            model.triangle(-1, t[0], t[1], t[2]);
        }
        EdgeTable edges = new EdgeTable(model.mesh());
        for (int e = 0; e < edges.count(); e++) {
            assertEquals(2, edges.uses(e));
        }
    }

    @Test
    void twoGapsAreOrderedByArea() {
        SheetModel model = new SheetModel();
        int part = model.part("shell", PartKind.SKIN, 0.001);
        Vec3[] c = corners();
        // forward wall (1 m²) and floor (2 m²) missing, but joined along one edge they make one bent loop; so leave the
        // aft
        // wall and the forward wall out instead, and shrink the aft one by a frame
        int[][] sides = {{0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}};
        for (int[] s : sides) {
            model.quad(part, c[s[0]], c[s[1]], c[s[2]], c[s[3]]);
        }
        Vec3 middle = new Vec3(2, 0.5, 0.5);
        int[] rim = {1, 3, 7, 5};
        for (int k = 0; k < 4; k++) {
            Vec3 a = c[rim[k]];
            Vec3 b = c[rim[(k + 1) % 4]];
            model.quad(part, a, b, middle.plus(0.5, b.minus(middle)), middle.plus(0.5, a.minus(middle)));
        }
        new GapFinder(model).find();
        assertEquals(
                List.of("gap 1 (forward end)", "gap 2 (aft end)"),
                model.gaps.stream().map(SheetModel.Gap::name).toList());
        assertEquals(0.25, model.gaps.get(1).place().outline().areaM2(), 1e-15);
        assertEquals(0, model.gaps.get(1).place().normal().distance(Vec3.X.negate()), 1e-15);
    }

    @Test
    void floorAcrossAnOpenEndMakesTwoGaps() {
        // the floor's own end edge runs across the open end, from wall to wall: a net of two loops
        SheetModel model = new SheetModel();
        int shell = model.part("shell", PartKind.SKIN, 0.001);
        int floor = model.part("floor", PartKind.WALL, 0.001);
        Vec3[][] rows = new Vec3[2][];
        for (int x = 0; x < 2; x++) {
            rows[x] = new Vec3[] {
                new Vec3(2 * x, 0, 0), new Vec3(2 * x, 1, 0), new Vec3(2 * x, 1, 0.25),
                new Vec3(2 * x, 1, 1), new Vec3(2 * x, 0, 1), new Vec3(2 * x, 0, 0.25)
            };
        }
        for (int k = 0; k < 6; k++) {
            int n = (k + 1) % 6;
            model.quad(shell, rows[0][k], rows[0][n], rows[1][n], rows[1][k]);
        }
        model.quad(floor, rows[0][5], rows[0][2], rows[1][2], rows[1][5]);
        new GapFinder(model).find();
        assertEquals(4, model.gaps.size());
        assertEquals(0.75, model.gaps.get(0).place().outline().areaM2(), 1e-12);
        assertEquals(0.75, model.gaps.get(1).place().outline().areaM2(), 1e-12);
        assertEquals(0.25, model.gaps.get(2).place().outline().areaM2(), 1e-12);
        assertEquals(0.25, model.gaps.get(3).place().outline().areaM2(), 1e-12);
    }

    @Test
    void bladesAndLoosePlatesAreNoGaps() {
        SheetModel model = openBox();
        int blade = model.part("blade", PartKind.STRINGER, 0.001);
        Vec3[] c = corners();
        // a blade on the rear lower edge, and a plate floating inside
        model.quad(blade, c[1], c[3], c[3].plus(new Vec3(-0.1, 0, 0.1)), c[1].plus(new Vec3(-0.1, 0, 0.1)));
        model.quad(
                blade, new Vec3(0.5, 0.3, 0.5), new Vec3(1, 0.3, 0.5), new Vec3(1, 0.6, 0.5), new Vec3(0.5, 0.6, 0.5));
        new GapFinder(model).find();
        assertEquals(1, model.gaps.size());
        assertTrue(model.remarks.stream().anyMatch(r -> r.contains("bound no opening")), model.remarks.toString());
        assertTrue(
                model.remarks.stream().anyMatch(r -> r.contains("flat sheet of 0.150 m²")), model.remarks.toString());
    }

    @Test
    void fittedPlaneOfTiltedPointsIsTheirPlane() {
        Vec3 n = new Vec3(0.3, -0.5, 0.8).unit();
        Vec3 u = n.anyPerpendicular();
        Vec3 v = n.cross(u);
        List<Vec3> points = new java.util.ArrayList<>();
        for (int k = 0; k < 7; k++) {
            points.add(new Vec3(5, 6, 7).plus(Math.cos(k), u).plus(2 * Math.sin(k * k), v));
        }
        assertEquals(1, Math.abs(PlaneFit.normal(points).dot(n)), 1e-12);
    }

    @Test
    void concaveRimGivesAConcaveOutline() {
        // an L-shaped duct, open at x = 0
        double[][] l = {{0, 0}, {1, 0}, {1, 0.4}, {0.4, 0.4}, {0.4, 1}, {0, 1}};
        SheetModel model = new SheetModel();
        int part = model.part("duct", PartKind.WALL, 0.001);
        for (int k = 0; k < 6; k++) {
            double[] a = l[k];
            double[] b = l[(k + 1) % 6];
            model.quad(
                    part,
                    new Vec3(0, a[0], a[1]),
                    new Vec3(0, b[0], b[1]),
                    new Vec3(1, b[0], b[1]),
                    new Vec3(1, a[0], a[1]));
        }
        new GapFinder(model).find();
        assertEquals(2, model.gaps.size());
        Outline outline = model.gaps.get(0).place().outline();
        assertEquals(0.64, outline.areaM2(), 1e-12);
        assertEquals(6, ((Outline.Polygon) outline).points().size());
    }
}
