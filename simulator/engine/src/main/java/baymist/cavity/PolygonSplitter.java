package baymist.cavity;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * Splits a polygon in space into triangles by cutting off ears (Meisters 1975, Polygons have ears), seen along its area
 * vector (Newell's normal). A convex quadrilateral is split along its shorter diagonal. Corners in line with their
 * neighbours stay corners, so that a finer neighbour meets no T-joint.
 */
final class PolygonSplitter {
    private final List<Vec3> corners;
    private final double[] u;
    private final double[] v;
    private boolean sound = true;

    private PolygonSplitter(List<Vec3> corners) {
        this.corners = corners;
        u = new double[corners.size()];
        v = new double[corners.size()];
    }

    /**
     * Corner numbers of the triangles.
     *
     * @param sound false if the polygon crosses itself and the split is only a guess
     */
    record Split(List<int[]> triangles, boolean sound) {}

    static Split split(List<Vec3> corners) {
        if (corners.size() == 3) {
            return new Split(List.of(new int[] {0, 1, 2}), true);
        }
        PolygonSplitter s = new PolygonSplitter(corners);
        Vec3 area = SheetCutter.areaVector(corners);
        if (!(area.length() > 0)) {
            return new Split(List.of(), true);
        }
        s.project(area.unit());
        return new Split(s.clip(), s.sound);
    }

    private void project(Vec3 normal) {
        Vec3 a = normal.anyPerpendicular().unit();
        Vec3 b = normal.cross(a);
        for (int i = 0; i < u.length; i++) {
            Vec3 d = corners.get(i).minus(corners.get(0));
            u[i] = d.dot(a);
            v[i] = d.dot(b);
        }
    }

    private List<int[]> clip() {
        List<Integer> rest = new ArrayList<>();
        for (int i = 0; i < u.length; i++) {
            rest.add(i);
        }
        List<int[]> triangles = new ArrayList<>();
        while (rest.size() > 3) {
            int ear = ear(rest);
            if (ear < 0) {
                sound = false;
                ear = 0;
            }
            int n = rest.size();
            triangles.add(new int[] {rest.get((ear + n - 1) % n), rest.get(ear), rest.get((ear + 1) % n)});
            rest.remove(ear);
        }
        triangles.add(new int[] {rest.get(0), rest.get(1), rest.get(2)});
        for (int[] t : triangles) {
            sound &= turn(t[0], t[1], t[2]) >= 0;
        }
        return triangles;
    }

    /** Of all ears the one with the shortest new side; the first of equals, counted from the second corner; -1 if there is none. */
    private int ear(List<Integer> rest) {
        int n = rest.size();
        int best = -1;
        double shortest = Double.POSITIVE_INFINITY;
        for (int k = 1; k <= n; k++) {
            int i = k % n;
            int p = rest.get((i + n - 1) % n);
            int q = rest.get((i + 1) % n);
            double length = corners.get(p).distance(corners.get(q));
            if (length < shortest && isEar(rest, p, rest.get(i), q)) {
                shortest = length;
                best = i;
            }
        }
        return best;
    }

    private boolean isEar(List<Integer> rest, int p, int i, int q) {
        if (!(turn(p, i, q) > 0)) {
            return false;
        }
        for (int k : rest) {
            boolean own = same(k, p) || same(k, i) || same(k, q);
            if (!own && turn(p, i, k) >= 0 && turn(i, q, k) >= 0 && turn(q, p, k) >= 0) {
                return false;
            }
        }
        return true;
    }

    private boolean same(int a, int b) {
        return u[a] == u[b] && v[a] == v[b];
    }

    private double turn(int a, int b, int c) {
        return (u[b] - u[a]) * (v[c] - v[a]) - (v[b] - v[a]) * (u[c] - u[a]);
    }
}
