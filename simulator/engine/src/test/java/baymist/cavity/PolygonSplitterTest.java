package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PolygonSplitterTest {
    /** Sum of the triangles' area vectors and of their areas. */
    private static void check(List<Vec3> polygon) {
        PolygonSplitter.Split split = PolygonSplitter.split(polygon);
        assertTrue(split.sound());
        assertEquals(polygon.size() - 2, split.triangles().size());
        Vec3 whole = SheetCutter.areaVector(polygon);
        double sum = 0;
        for (int[] t : split.triangles()) {
            Vec3 area = SheetCutter.areaVector(List.of(polygon.get(t[0]), polygon.get(t[1]), polygon.get(t[2])));
            assertTrue(area.dot(whole) >= -1e-15 * whole.dot(whole), "a triangle faces the other way");
            sum += area.length();
        }
        assertEquals(whole.length(), sum, 1e-12 * whole.length());
    }

    @Test
    void starShapedPolygonsInAnyPlaneSplitIntoTheirArea() {
        Random random = new Random(20261124);
        for (int draw = 0; draw < 300; draw++) {
            int n = 4 + random.nextInt(40);
            Vec3 normal = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
            Vec3 u = normal.anyPerpendicular();
            Vec3 v = normal.cross(u);
            List<Vec3> polygon = new ArrayList<>();
            for (int k = 0; k < n; k++) {
                double r = 0.1 + random.nextDouble();
                double angle = 2 * Math.PI * (k + 0.8 * random.nextDouble()) / n;
                polygon.add(u.times(r * Math.cos(angle)).plus(r * Math.sin(angle), v));
            }
            check(polygon);
        }
    }

    @Test
    void cornersInLineStayCorners() {
        List<Vec3> polygon = List.of(
                new Vec3(0, 0, 0),
                new Vec3(1, 0, 0),
                new Vec3(2, 0, 0),
                new Vec3(2, 1, 0),
                new Vec3(1, 1, 0),
                new Vec3(0, 1, 0));
        check(polygon);
        boolean[] used = new boolean[6];
        PolygonSplitter.split(polygon).triangles().forEach(t -> {
            for (int k : t) {
                used[k] = true;
            }
        });
        for (boolean u : used) {
            assertTrue(u);
        }
    }

    @Test
    void spiralsSplit() {
        List<Vec3> out = new ArrayList<>();
        List<Vec3> back = new ArrayList<>();
        for (int k = 0; k < 60; k++) {
            double angle = 0.2 * k;
            out.add(new Vec3((1 + 0.05 * k) * Math.cos(angle), (1 + 0.05 * k) * Math.sin(angle), 0));
            back.add(0, new Vec3((1.2 + 0.05 * k) * Math.cos(angle), (1.2 + 0.05 * k) * Math.sin(angle), 0));
        }
        out.addAll(back);
        check(out);
    }

    @Test
    void concaveQuadrilateralsSplitAlongTheInnerDiagonal() {
        // a dart whose shorter diagonal lies outside
        List<Vec3> dart = List.of(new Vec3(-1, 0, 0), new Vec3(0, 5, 0), new Vec3(1, 0, 0), new Vec3(0, 4, 0));
        check(dart);
    }
}
