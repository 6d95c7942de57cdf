package baymist.geom;

import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** One push of a flat-nosed rod; collects the nearest contact. Not for sharing between threads. */
final class Sweep {
    /** Share of the radius from which on touching is no contact. */
    private static final double GRAZING = 1 - 1e-10;

    private final Vec3 origin;
    private final Vec3 along;
    private final Vec3 across1;
    private final Vec3 across2;
    private final double r2;
    private final double radius;
    private final IntToDoubleFunction startOf;
    private final TriangleMesh mesh;
    /** Corner coordinates in the rod's frame: two across, one along, [3][3]. */
    private final double[][] p = new double[3][3];
    /** Lowest and highest point of a triangle in the rod: two across, one along, [3]. */
    private final double[] low = new double[3];

    private final double[] high = new double[3];
    private double depth;
    private int triangle = -1;
    private Vec3 place = Vec3.ZERO;

    Sweep(Vec3 origin, Vec3 along, double radius, IntToDoubleFunction startOf, double max, TriangleMesh mesh) {
        this.origin = origin;
        this.along = along;
        this.across1 = along.anyPerpendicular();
        this.across2 = along.cross(across1);
        this.r2 = radius * radius * GRAZING * GRAZING;
        this.radius = radius;
        this.startOf = startOf;
        this.depth = max;
        this.mesh = mesh;
    }

    RodClearance.@Nullable Contact contact() {
        return triangle < 0 ? null : new RodClearance.Contact(depth, triangle, place);
    }

    void visit(int t) {
        for (int k = 0; k < 3; k++) {
            int vertex = mesh.corner(t, k);
            double x = mesh.coordinate(vertex, 0) - origin.x();
            double y = mesh.coordinate(vertex, 1) - origin.y();
            double z = mesh.coordinate(vertex, 2) - origin.z();
            p[k][0] = x * across1.x() + y * across1.y() + z * across1.z();
            p[k][1] = x * across2.x() + y * across2.y() + z * across2.z();
            p[k][2] = x * along.x() + y * along.y() + z * along.z();
        }
        double start = startOf.applyAsDouble(t);
        if (Math.min(p[0][2], Math.min(p[1][2], p[2][2])) > depth
                || Math.max(p[0][2], Math.max(p[1][2], p[2][2])) < start) {
            return;
        }
        low[2] = Double.POSITIVE_INFINITY;
        high[2] = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            edge(p[k], p[(k + 1) % 3]);
        }
        plane();
        if (high[2] < start || low[2] == Double.POSITIVE_INFINITY) {
            return;
        }
        double contact = Math.max(low[2], start);
        if (contact < depth || (contact == depth && triangle >= 0 && t < triangle)) {
            depth = contact;
            triangle = t;
            place = placeAt(contact);
        }
    }

    /** Point of the triangle at a depth, between its lowest and highest point in the rod. */
    private Vec3 placeAt(double contact) {
        double s = high[2] > low[2] ? Math.min(1, Math.max(0, (contact - low[2]) / (high[2] - low[2]))) : 0;
        return origin.plus(low[0] + s * (high[0] - low[0]), across1)
                .plus(low[1] + s * (high[1] - low[1]), across2)
                .plus(contact, along);
    }

    private void take(double x, double y, double t) {
        if (t < low[2]) {
            low[0] = x;
            low[1] = y;
            low[2] = t;
        }
        if (t > high[2]) {
            high[0] = x;
            high[1] = y;
            high[2] = t;
        }
    }

    /** Corner and edge of the triangle: the part of the edge inside the cylinder. */
    private void edge(double[] a, double[] b) {
        double dx = b[0] - a[0];
        double dy = b[1] - a[1];
        double l2 = dx * dx + dy * dy;
        if (!(l2 > 0)) {
            if (a[0] * a[0] + a[1] * a[1] < r2) {
                take(a[0], a[1], a[2]);
                take(b[0], b[1], b[2]);
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
            take(a[0] + s0 * dx, a[1] + s0 * dy, a[2] + s0 * (b[2] - a[2]));
            take(a[0] + s1 * dx, a[1] + s1 * dy, a[2] + s1 * (b[2] - a[2]));
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
            // the middle (sign 0) catches a square-on triangle that covers the axis only; a point just short of the rim
            // must be covered, so that a sheet along the rod at its radius is none in its way
            double x = sign * radius * ex;
            double y = sign * radius * ey;
            if (coversPoint(GRAZING * x, GRAZING * y, det)) {
                take(x, y, p[0][2] + slopeX * (x - p[0][0]) + slopeY * (y - p[0][1]));
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
