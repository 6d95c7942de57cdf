package baymist.access;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;

/**
 * First contact of a flat-nosed rod pushed along its axis with triangles, exact.
 *
 * <p>The nose at depth h touches a triangle when h reaches the least axial coordinate of the part of the triangle that lies within
 * the rod's radius of the axis. That part is convex and the coordinate linear, so the least value is at a corner within the
 * radius, where an edge pierces the rod's side, or at the extreme point of the ellipse in which the triangle's plane cuts the
 * rod, if that lies in the triangle. The largest value follows likewise.
 */
final class RodSweep {
    /** Share of the radius that counts as touching; a rod slides along a sheet that lies exactly at its radius. */
    private static final double GRAZING = 1 - 1e-9;

    private final Vec3 origin;
    private final Vec3 axis;
    private final double radiusM;
    private double least;
    private double most;

    RodSweep(Vec3 origin, Vec3 axis, double radiusM) {
        this.origin = origin;
        this.axis = axis;
        this.radiusM = radiusM;
    }

    /** Depth at which the nose, already at {@code fromM}, first touches the triangle, m; infinite if it never does. */
    double contactM(TriangleMesh mesh, int triangle, double fromM) {
        least = Double.POSITIVE_INFINITY;
        most = Double.NEGATIVE_INFINITY;
        Vec3[] p = new Vec3[3];
        double[] h = new double[3];
        for (int k = 0; k < 3; k++) {
            p[k] = mesh.point(triangle, k).minus(origin);
            h[k] = p[k].dot(axis);
        }
        if (Math.max(h[0], Math.max(h[1], h[2])) < fromM) {
            return Double.POSITIVE_INFINITY;
        }
        for (int k = 0; k < 3; k++) {
            if (p[k].plus(-h[k], axis).length() < radiusM * GRAZING) {
                take(h[k]);
            }
            edge(p[k], p[(k + 1) % 3]);
        }
        ellipse(p, mesh.normal(triangle));
        if (most < fromM) {
            return Double.POSITIVE_INFINITY;
        }
        return Math.max(least, fromM);
    }

    private void take(double h) {
        least = Math.min(least, h);
        most = Math.max(most, h);
    }

    /** Points where the segment a-b crosses the rod's side. */
    private void edge(Vec3 a, Vec3 b) {
        Vec3 d = b.minus(a);
        Vec3 dr = d.plus(-d.dot(axis), axis);
        Vec3 ar = a.plus(-a.dot(axis), axis);
        double qa = dr.dot(dr);
        double qb = ar.dot(dr);
        double qc = ar.dot(ar) - radiusM * radiusM * GRAZING * GRAZING;
        double root = qb * qb - qa * qc;
        if (qa <= 0 || root <= 0) {
            return;
        }
        double s = Math.sqrt(root);
        for (double t : new double[] {(-qb - s) / qa, (-qb + s) / qa}) {
            if (t >= 0 && t <= 1) {
                take(a.plus(t, d).dot(axis));
            }
        }
    }

    /** Lowest and highest point of the ellipse plane x rod, where they lie in the triangle. */
    private void ellipse(Vec3[] p, Vec3 normal) {
        double cos = normal.dot(axis);
        if (Math.abs(cos) < 1e-12) {
            return;
        }
        double hAxis = p[0].dot(normal) / cos;
        Vec3 across = normal.plus(-cos, axis);
        double tilt = across.length();
        double slope = tilt / Math.abs(cos);
        Vec3 side = tilt > 1e-12 ? across.times(1 / tilt) : axis.anyPerpendicular();
        // On the plane, h falls by n_r/cos for each metre along the radial direction r.
        double sign = cos > 0 ? 1 : -1;
        for (int s = -1; s <= 1; s++) {
            double h = hAxis - s * sign * radiusM * slope;
            Vec3 q = axis.times(h).plus(s * radiusM, side);
            if (inside(p, normal, q)) {
                take(h);
            }
        }
    }

    private static boolean inside(Vec3[] p, Vec3 normal, Vec3 q) {
        for (int k = 0; k < 3; k++) {
            Vec3 a = p[k];
            if (p[(k + 1) % 3].minus(a).cross(q.minus(a)).dot(normal) < 0) {
                return false;
            }
        }
        return true;
    }
}
