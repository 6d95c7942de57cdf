package baymist.cavity;

import baymist.geom.Outline;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The inner outline of a ring frame: all points of a polygon that lie at least the depth inside its sides.
 *
 * <p>A convex polygon is clipped by its own sides moved inward, which is exact. In any other polygon the corners move along
 * their bisectors; if a side turns round thereby, the ring is deeper than the hollow there, and there is no outline.
 */
final class RingOffset {
    private static final double SAME_POINT_M = 1e-9;

    private RingOffset() {}

    /**
     * The inner polygon, or null if nothing (or no simple polygon) is left.
     *
     * @param polygon counter-clockwise points {u, v}, m
     */
    static @Nullable List<double[]> inward(List<double[]> polygon, double depthM) {
        List<double[]> points = distinct(polygon);
        List<double[]> inner = isConvex(points) ? clipped(points, depthM) : moved(points, depthM);
        if (inner == null) {
            return null;
        }
        inner = distinct(inner);
        boolean some = inner.size() >= 3 && new Outline.Polygon(inner).areaM2() > 1e-8;
        return some ? inner : null;
    }

    private static List<double[]> clipped(List<double[]> points, double depthM) {
        List<double[]> rest = points;
        for (int i = 0; i < points.size() && rest.size() >= 3; i++) {
            double[] a = points.get(i);
            double[] n = inwardNormal(a, points.get((i + 1) % points.size()));
            rest = half(rest, n, n[0] * a[0] + n[1] * a[1] + depthM);
        }
        return rest;
    }

    /** Part of a convex polygon with n . p >= offset (Sutherland and Hodgman 1974). */
    private static List<double[]> half(List<double[]> polygon, double[] n, double offset) {
        List<double[]> kept = new ArrayList<>();
        for (int i = 0; i < polygon.size(); i++) {
            double[] p = polygon.get(i);
            double[] q = polygon.get((i + 1) % polygon.size());
            double dp = n[0] * p[0] + n[1] * p[1] - offset;
            double dq = n[0] * q[0] + n[1] * q[1] - offset;
            if (dp >= 0) {
                kept.add(p);
            }
            if (dp * dq < 0) {
                double s = dp / (dp - dq);
                kept.add(new double[] {p[0] + s * (q[0] - p[0]), p[1] + s * (q[1] - p[1])});
            }
        }
        return kept;
    }

    private static @Nullable List<double[]> moved(List<double[]> points, double depthM) {
        int n = points.size();
        List<double[]> inner = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double[] before = inwardNormal(points.get((i + n - 1) % n), points.get(i));
            double[] after = inwardNormal(points.get(i), points.get((i + 1) % n));
            double s = depthM / (1 + before[0] * after[0] + before[1] * after[1]);
            inner.add(new double[] {
                points.get(i)[0] + s * (before[0] + after[0]), points.get(i)[1] + s * (before[1] + after[1])
            });
        }
        for (int i = 0; i < n; i++) {
            double[] was = side(points, i);
            double[] is = side(inner, i);
            if (!(was[0] * is[0] + was[1] * is[1] > 0)) {
                return null;
            }
        }
        Outline.Polygon outer = new Outline.Polygon(points);
        for (double[] p : inner) {
            // sides that meet across a waist leave a corner nearer than the depth to the far one
            if (outer.clearanceM(p[0], p[1]) < depthM * (1 - 1e-6)) {
                return null;
            }
        }
        return inner;
    }

    private static double[] side(List<double[]> p, int i) {
        double[] a = p.get(i);
        double[] b = p.get((i + 1) % p.size());
        return new double[] {b[0] - a[0], b[1] - a[1]};
    }

    private static double[] inwardNormal(double[] a, double[] b) {
        double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
        return new double[] {-(b[1] - a[1]) / length, (b[0] - a[0]) / length};
    }

    private static boolean isConvex(List<double[]> p) {
        for (int i = 0; i < p.size(); i++) {
            double[] a = side(p, i);
            double[] b = side(p, (i + 1) % p.size());
            if (a[0] * b[1] - a[1] * b[0] < -1e-12 * Math.hypot(a[0], a[1]) * Math.hypot(b[0], b[1])) {
                return false;
            }
        }
        return true;
    }

    /** Without points that repeat the one before. */
    static List<double[]> distinct(List<double[]> polygon) {
        List<double[]> points = new ArrayList<>();
        for (double[] p : polygon) {
            if (points.isEmpty() || !same(points.get(points.size() - 1), p)) {
                points.add(p);
            }
        }
        while (points.size() > 1 && same(points.get(0), points.get(points.size() - 1))) {
            points.remove(points.size() - 1);
        }
        return points;
    }

    private static boolean same(double[] p, double[] q) {
        return Math.hypot(p[0] - q[0], p[1] - q[1]) < SAME_POINT_M;
    }
}
