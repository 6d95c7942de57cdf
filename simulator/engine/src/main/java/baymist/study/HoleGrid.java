package baymist.study;

import baymist.cavity.Cavity;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** Places on a sheet on a square grid, seen along the axis that the sheet looks along most. */
final class HoleGrid {
    private HoleGrid() {}

    /** A place with the normal of its triangle. */
    record Place(Vec3 pointM, Vec3 normal) {}

    /** Places of a part, row by row; the grid starts half a spacing from the part's corner. */
    static List<Place> of(TriangleMesh sheets, Cavity cavity, int part, double spacingM) {
        double[] looks = new double[3];
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        List<Integer> own = new ArrayList<>();
        for (int t = 0; t < sheets.triangleCount(); t++) {
            if (cavity.partOfSheet(t) == part) {
                own.add(t);
                for (int a = 0; a < 3; a++) {
                    looks[a] += Math.abs(sheets.doubleAreaVector(t).get(a));
                    for (int k = 0; k < 3; k++) {
                        low[a] = Math.min(low[a], sheets.point(t, k).get(a));
                        high[a] = Math.max(high[a], sheets.point(t, k).get(a));
                    }
                }
            }
        }
        int axis = looks[2] >= looks[0] && looks[2] >= looks[1] ? 2 : looks[0] >= looks[1] ? 0 : 1;
        int u = axis == 0 ? 1 : 0;
        int v = axis == 2 ? 1 : 2;
        List<Place> places = new ArrayList<>();
        for (double pv = low[v] + spacingM / 2; pv < high[v]; pv += spacingM) {
            for (double pu = low[u] + spacingM / 2; pu < high[u]; pu += spacingM) {
                for (int t : own) {
                    Vec3 p = on(sheets, t, axis, u, v, pu, pv);
                    if (p != null) {
                        places.add(new Place(p, sheets.normal(t)));
                    }
                }
            }
        }
        return places;
    }

    /** The point of a triangle with these two coordinates, or null if it has none. */
    private static @org.jspecify.annotations.Nullable Vec3 on(
            TriangleMesh m, int t, int axis, int u, int v, double pu, double pv) {
        Vec3 a = m.point(t, 0);
        Vec3 b = m.point(t, 1);
        Vec3 c = m.point(t, 2);
        double area = cross(b, c, a.get(u), a.get(v), u, v);
        if (Math.abs(area) < 1e-14) {
            return null;
        }
        double wa = cross(b, c, pu, pv, u, v) / area;
        double wb = cross(c, a, pu, pv, u, v) / area;
        double wc = 1 - wa - wb;
        // half-open, so that a place on an edge that two triangles share counts once, save for rounding
        if (wa < 0 || wb < 0 || wc <= 0) {
            return null;
        }
        double[] p = new double[3];
        p[u] = pu;
        p[v] = pv;
        p[axis] = wa * a.get(axis) + wb * b.get(axis) + wc * c.get(axis);
        return new Vec3(p[0], p[1], p[2]);
    }

    /** Twice the signed area of (a, b, p) on the page. */
    private static double cross(Vec3 a, Vec3 b, double pu, double pv, int u, int v) {
        return (a.get(u) - pu) * (b.get(v) - pv) - (b.get(u) - pu) * (a.get(v) - pv);
    }
}
