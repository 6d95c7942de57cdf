package baymist.geom;

import org.jspecify.annotations.Nullable;

/**
 * Clearance of a straight round rod against triangles, in closed form.
 *
 * <p>First contact of a flat-nosed rod pushed along its axis: in rod coordinates (two across, one along) it is the smallest
 * along-coordinate over the points of a triangle less than one radius off the axis. Triangle and cylinder are convex, so the
 * extremes of the linear coordinate lie at a corner inside the cylinder, where an edge passes through the cylinder's
 * surface, or, if the triangle's inside cuts right across, on the ellipse in which its plane meets the cylinder. Touching at
 * exactly one radius (to 1e-12 relative) is not a contact: a rod fits a hole of its own size.
 */
public final class RodClearance {
    private static final double GRAZING = 1 - 1e-12;

    private RodClearance() {}

    /**
     * Where a rod is stopped.
     *
     * @param depthM distance of the nose from the origin along the axis, m
     */
    public record Contact(double depthM, int triangle) {}

    /**
     * Depth at which a rod that is pushed forward from the origin first touches a triangle, m; {@code maxDepthM} or more
     * never comes back: infinity if nothing is touched up to there.
     *
     * @param axis direction of the push, not zero
     * @param radiusM radius of the rod, m, positive
     */
    public static double firstContact(
            Vec3 origin, Vec3 axis, double radiusM, double maxDepthM, TriangleMesh mesh, Bvh bvh) {
        Contact contact = firstContact(origin, axis, radiusM, 0, maxDepthM, mesh, bvh);
        return contact == null ? Double.POSITIVE_INFINITY : contact.depthM();
    }

    /**
     * As above with a start depth: what lies in the rod's way before {@code startM} alone is ignored; a triangle that reaches
     * from before the start into the swept space is touched at the start.
     *
     * @return the contact (lowest triangle among equals), or null if the nose reaches {@code maxDepthM} free
     */
    public static @Nullable Contact firstContact(
            Vec3 origin, Vec3 axis, double radiusM, double startM, double maxDepthM, TriangleMesh mesh, Bvh bvh) {
        if (!(radiusM > 0) || !(maxDepthM >= startM)) {
            throw new IllegalArgumentException("radius " + radiusM + " m from " + startM + " m to " + maxDepthM
                    + " m: a thick forward rod expected");
        }
        if (mesh != bvh.mesh()) {
            throw new IllegalArgumentException("the tree belongs to another mesh");
        }
        Vec3 along = axis.unit();
        Sweep sweep = new Sweep(origin, along, radiusM, startM, maxDepthM, mesh);
        bvh.forEachNearSegment(origin.plus(startM, along), origin.plus(maxDepthM, along), radiusM, sweep::visit);
        return sweep.triangle < 0 ? null : new Contact(sweep.depth, sweep.triangle);
    }

    /** Smallest distance of the mesh from the segment from a to b, m, or {@code withinM} if all of it is farther away. */
    public static double clearanceM(Vec3 a, Vec3 b, double withinM, TriangleMesh mesh, Bvh bvh) {
        double[] best = {withinM};
        bvh.forEachNearSegment(a, b, withinM, t -> {
            double d = TriangleDistance.segmentTriangleM(a, b, mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2));
            best[0] = Math.min(best[0], d);
        });
        return best[0];
    }

    /** One push; collects the nearest contact. */
    private static final class Sweep {
        private final Vec3 origin;
        private final Vec3 along;
        private final Vec3 across1;
        private final Vec3 across2;
        private final double r2;
        private final double radius;
        private final double start;
        private final TriangleMesh mesh;
        /** Corner coordinates in the rod's frame: two across, one along, [3][3]. */
        private final double[][] p = new double[3][3];

        private double low;
        private double high;
        private double depth;
        private int triangle = -1;

        Sweep(Vec3 origin, Vec3 along, double radius, double start, double max, TriangleMesh mesh) {
            this.origin = origin;
            this.along = along;
            this.across1 = along.anyPerpendicular();
            this.across2 = along.cross(across1);
            this.r2 = radius * radius * GRAZING;
            this.radius = Math.sqrt(r2);
            this.start = start;
            this.depth = max;
            this.mesh = mesh;
        }

        void visit(int t) {
            for (int k = 0; k < 3; k++) {
                Vec3 d = mesh.point(t, k).minus(origin);
                p[k][0] = d.dot(across1);
                p[k][1] = d.dot(across2);
                p[k][2] = d.dot(along);
            }
            low = Double.POSITIVE_INFINITY;
            high = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
                edge(p[k], p[(k + 1) % 3]);
            }
            plane();
            if (high < start || low == Double.POSITIVE_INFINITY) {
                return;
            }
            double contact = Math.max(low, start);
            if (contact < depth || (contact == depth && triangle >= 0 && t < triangle)) {
                depth = contact;
                triangle = t;
            }
        }

        private void take(double t) {
            low = Math.min(low, t);
            high = Math.max(high, t);
        }

        /** Corner and edge of the triangle: the part of the edge inside the cylinder. */
        private void edge(double[] a, double[] b) {
            double dx = b[0] - a[0];
            double dy = b[1] - a[1];
            double l2 = dx * dx + dy * dy;
            if (!(l2 > 0)) {
                if (a[0] * a[0] + a[1] * a[1] < r2) {
                    take(a[2]);
                    take(b[2]);
                }
                return;
            }
            // distance of the edge's line from the axis by the cross product, which stays accurate for long edges
            double off = (a[0] * b[1] - a[1] * b[0]) / Math.sqrt(l2);
            double middle = -(a[0] * dx + a[1] * dy) / l2;
            double room = r2 - off * off;
            if (room <= 0) {
                return;
            }
            double half = Math.sqrt(room / l2);
            double s0 = Math.max(0, middle - half);
            double s1 = Math.min(1, middle + half);
            if (s0 < s1) {
                take(a[2] + s0 * (b[2] - a[2]));
                take(a[2] + s1 * (b[2] - a[2]));
            }
        }

        /** Highest and lowest point of the ellipse in which the triangle's plane meets the cylinder, if on the triangle. */
        private void plane() {
            double ux = p[1][0] - p[0][0];
            double uy = p[1][1] - p[0][1];
            double vx = p[2][0] - p[0][0];
            double vy = p[2][1] - p[0][1];
            double det = ux * vy - uy * vx;
            if (det == 0) {
                return;
            }
            double ut = p[1][2] - p[0][2];
            double vt = p[2][2] - p[0][2];
            double slopeX = (ut * vy - vt * uy) / det;
            double slopeY = (vt * ux - ut * vx) / det;
            double slope = Math.hypot(slopeX, slopeY);
            double ex = slope > 0 ? slopeX / slope : 1;
            double ey = slope > 0 ? slopeY / slope : 0;
            for (int sign = -1; sign <= 1; sign++) {
                // the middle (sign 0) catches a square-on triangle that covers the axis only
                double x = sign * radius * ex;
                double y = sign * radius * ey;
                if (coversPoint(x, y, det)) {
                    take(p[0][2] + slopeX * (x - p[0][0]) + slopeY * (y - p[0][1]));
                }
            }
        }

        private boolean coversPoint(double x, double y, double det) {
            double s = det > 0 ? 1 : -1;
            for (int k = 0; k < 3; k++) {
                double[] a = p[k];
                double[] b = p[(k + 1) % 3];
                if (s * ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) < 0) {
                    return false;
                }
            }
            return true;
        }
    }
}
