package baymist.geom;

/**
 * Least distance from a line to the parts of triangles that lie between two planes square to it, exact: a triangle is cut by both
 * planes (Sutherland and Hodgman 1974) and what is left is seen along the line, where it is a convex polygon; its distance from the line's
 * point is 0 if it covers it, otherwise that of its nearest side. Not for sharing between threads.
 */
final class AxisDistance {
    private final Vec3 origin;
    private final Vec3 along;
    private final Vec3 across1;
    private final Vec3 across2;
    private final double to;
    private final TriangleMesh mesh;
    /** Corners of the piece that is left, two across and one along, [5][3]; two arrays take turns. */
    private double[][] piece = new double[5][3];

    private double[][] next = new double[5][3];
    private int corners;
    private double least;

    AxisDistance(Vec3 origin, Vec3 along, double toM, double withinM, TriangleMesh mesh) {
        this.origin = origin;
        this.along = along;
        this.across1 = along.anyPerpendicular();
        this.across2 = along.cross(across1);
        this.to = toM;
        this.least = withinM;
        this.mesh = mesh;
    }

    double leastM() {
        return least;
    }

    void visit(int t, double from) {
        for (int k = 0; k < 3; k++) {
            int vertex = mesh.corner(t, k);
            double x = mesh.coordinate(vertex, 0) - origin.x();
            double y = mesh.coordinate(vertex, 1) - origin.y();
            double z = mesh.coordinate(vertex, 2) - origin.z();
            piece[k][0] = x * across1.x() + y * across1.y() + z * across1.z();
            piece[k][1] = x * across2.x() + y * across2.y() + z * across2.z();
            piece[k][2] = x * along.x() + y * along.y() + z * along.z();
        }
        corners = 3;
        cut(1, from);
        cut(-1, -to);
        if (corners > 0) {
            least = Math.min(least, seen());
        }
    }

    /** Keeps what has {@code sign * along >= level}. */
    private void cut(double sign, double level) {
        int n = 0;
        for (int k = 0; k < corners; k++) {
            double[] a = piece[k];
            double[] b = piece[(k + 1) % corners];
            double ha = sign * a[2] - level;
            double hb = sign * b[2] - level;
            if (ha >= 0) {
                copy(a, next[n++]);
            }
            if ((ha > 0 && hb < 0) || (ha < 0 && hb > 0)) {
                double s = ha / (ha - hb);
                for (int i = 0; i < 3; i++) {
                    next[n][i] = a[i] + s * (b[i] - a[i]);
                }
                n++;
            }
        }
        double[][] swap = piece;
        piece = next;
        next = swap;
        corners = n;
    }

    private static void copy(double[] from, double[] to) {
        System.arraycopy(from, 0, to, 0, 3);
    }

    /** Distance of the line's point from the piece as seen along the line. */
    private double seen() {
        boolean left = false;
        boolean right = false;
        double best = Double.POSITIVE_INFINITY;
        for (int k = 0; k < corners; k++) {
            double[] a = piece[k];
            double[] b = piece[(k + 1) % corners];
            double cross = a[0] * b[1] - a[1] * b[0];
            left |= cross > 0;
            right |= cross < 0;
            double dx = b[0] - a[0];
            double dy = b[1] - a[1];
            double l2 = dx * dx + dy * dy;
            double s = l2 > 0 ? Math.min(1, Math.max(0, -(a[0] * dx + a[1] * dy) / l2)) : 0;
            best = Math.min(best, Math.hypot(a[0] + s * dx, a[1] + s * dy));
        }
        return left != right ? 0 : best;
    }
}
