package baymist.seam;

import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Lines where triangles of two parts pass through each other's inside (plane against plane, cut to both triangles). */
final class CrossingLines {
    private final Cavity cavity;
    private final TriangleMesh mesh;
    private final Bvh tree;
    private final double toleranceM;

    CrossingLines(Cavity cavity, Bvh tree, double toleranceM) {
        this.cavity = cavity;
        this.mesh = cavity.cutSheets();
        this.tree = tree;
        this.toleranceM = toleranceM;
    }

    /** Both ends of each line, in the order of the triangles. */
    List<Vec3[]> find() {
        List<Vec3[]> lines = new ArrayList<>();
        boolean[] counts = new boolean[mesh.triangleCount()];
        for (int t = 0; t < counts.length; t++) {
            counts[t] = MeshEdges.counts(cavity, t);
        }
        for (int t = 0; t < counts.length; t++) {
            if (!counts[t]) {
                continue;
            }
            Box3 box = Box3.EMPTY
                    .including(mesh.point(t, 0))
                    .including(mesh.point(t, 1))
                    .including(mesh.point(t, 2));
            List<Integer> near = new ArrayList<>();
            tree.forEachNear(box, near::add);
            near.sort(null);
            for (int o : near) {
                if (o > t && cavity.partOfCut(o) != cavity.partOfCut(t) && counts[o]) {
                    Vec3[] line = cross(t, o);
                    if (line != null) {
                        lines.add(line);
                    }
                }
            }
        }
        return lines;
    }

    private Vec3 @Nullable [] cross(int t, int o) {
        double[] ofT = heights(t, o);
        if (!straddles(ofT)) {
            return null;
        }
        double[] ofO = heights(o, t);
        if (!straddles(ofO)) {
            return null;
        }
        Vec3 direction = mesh.normal(t).cross(mesh.normal(o));
        if (direction.length() < 1e-6) {
            return null;
        }
        Vec3 unit = direction.unit();
        Vec3[] a = chord(t, ofT, unit);
        Vec3[] b = chord(o, ofO, unit);
        double from = Math.max(a[0].dot(unit), b[0].dot(unit));
        double to = Math.min(a[1].dot(unit), b[1].dot(unit));
        if (!(to - from > toleranceM)) {
            return null;
        }
        double at = a[0].dot(unit);
        return new Vec3[] {a[0].plus(from - at, unit), a[0].plus(to - at, unit)};
    }

    /** Heights of a triangle's corners over the plane of another, m. */
    private double[] heights(int t, int over) {
        double[] h = new double[3];
        for (int k = 0; k < 3; k++) {
            h[k] = mesh.point(t, k).minus(mesh.point(over, 0)).dot(mesh.normal(over));
            h[k] = Math.abs(h[k]) <= toleranceM ? 0 : h[k];
        }
        return h;
    }

    private static boolean straddles(double[] h) {
        return Math.min(h[0], Math.min(h[1], h[2])) < 0 && Math.max(h[0], Math.max(h[1], h[2])) > 0;
    }

    /** Where the plane cuts the triangle's rim, in the order of the line. */
    private Vec3[] chord(int t, double[] h, Vec3 unit) {
        List<Vec3> ends = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            int l = (k + 1) % 3;
            if (h[k] == 0) {
                ends.add(mesh.point(t, k));
            }
            if (h[k] * h[l] < 0) {
                Vec3 a = mesh.point(t, k);
                ends.add(a.plus(h[k] / (h[k] - h[l]), mesh.point(t, l).minus(a)));
            }
        }
        Vec3 a = ends.get(0);
        Vec3 b = ends.get(1);
        return a.dot(unit) <= b.dot(unit) ? new Vec3[] {a, b} : new Vec3[] {b, a};
    }
}
