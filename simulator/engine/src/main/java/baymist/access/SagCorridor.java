package baymist.access;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * How far a straight rod may drop or rise, piece by piece, before it meets sheet.
 *
 * <p>Rod frame: s along the rod from its origin, z down (gravity made square to the rod), x across. A rod moved down by q touches the point
 * (x, z, s) of a sheet when {@code q = z - sqrt(r² - x²)}. On a triangle cut to |x| ≤ r and to a stretch of s that is a convex function on
 * a convex polygon and linear along any line x = const, so the least value lies on the polygon's rim; on an edge it is found in closed
 * form. Nothing is sampled. Rod and sheet are taken as they stand before it bends: what moves along s as the rod turns is of second
 * order in its slope.
 */
final class SagCorridor {
    private static final double WITHIN = 1 - 1e-9;

    private final Vec3 origin;
    private final Vec3 axis;
    private final Vec3 down;
    private final Vec3 across;
    private final double radiusM;
    private final List<Piece> pieces = new ArrayList<>();

    /**
     * A face this square to the rod holds its nose back but does not carry it: the least share of its normal along the rod (ASSUMED: 20
     * degrees, what a rod slides down on).
     */
    private static final double SQUARE = 0.94;

    /**
     * A triangle cut to the rod's width.
     *
     * @param corners {x, z, s}, m
     * @param below or above the rod
     * @param meetsM where a flat nose would meet the triangle's plane, m, if it stands square to the rod; else not a number
     */
    private record Piece(
            double[][] corners, boolean below, double fromM, double toM, double meetsM, String name, int part) {
        boolean square() {
            return !Double.isNaN(meetsM);
        }
    }

    /** What the rod meets first over a stretch: how far it may move, and where it touches then. */
    record Limit(double moveM, double atM, double acrossM, String name, int part) {}

    SagCorridor(Vec3 origin, Vec3 axis, Vec3 down, double radiusM) {
        this.origin = origin;
        this.axis = axis;
        this.down = down;
        this.across = axis.cross(down);
        this.radiusM = radiusM;
    }

    /**
     * Adds a triangle as an obstacle.
     *
     * @param fromM,toM stretch of the rod that it counts for, m
     * @param part number by which the caller knows it again
     */
    void add(TriangleMesh mesh, int triangle, double fromM, double toM, String name, int part) {
        double[][] corners = new double[3][];
        for (int k = 0; k < 3; k++) {
            Vec3 p = mesh.point(triangle, k).minus(origin);
            corners[k] = new double[] {p.dot(across), p.dot(down), p.dot(axis)};
        }
        double r = radiusM * WITHIN;
        if (beside(corners, 0, -r, r) || beside(corners, 2, fromM, toM)) {
            return;
        }
        double[][] cut = clip(clip(clip(clip(corners, 0, r, true), 0, -r, false), 2, toM, true), 2, fromM, false);
        if (cut.length == 0) {
            return;
        }
        double z = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double[] c : cut) {
            z += c[1];
            low = Math.min(low, c[2]);
            high = Math.max(high, c[2]);
        }
        pieces.add(new Piece(cut, z >= 0, low, high, meetsM(mesh, triangle), name, part));
    }

    private double meetsM(TriangleMesh mesh, int triangle) {
        Vec3 normal = mesh.normal(triangle);
        double cos = Math.abs(normal.dot(axis));
        if (!(cos > SQUARE)) {
            return Double.NaN;
        }
        double onAxis = mesh.point(triangle, 0).minus(origin).dot(normal) / normal.dot(axis);
        return onAxis - radiusM * Math.sqrt(Math.max(0, 1 - cos * cos)) / cos;
    }

    private static boolean beside(double[][] p, int coordinate, double low, double high) {
        double least = Math.min(p[0][coordinate], Math.min(p[1][coordinate], p[2][coordinate]));
        double most = Math.max(p[0][coordinate], Math.max(p[1][coordinate], p[2][coordinate]));
        return most < low || least > high;
    }

    /** Places along the rod where the edge of a sheet across it stands, such as a rib's hole; m, in no order. */
    List<Double> acrossM() {
        List<Double> places = new ArrayList<>();
        for (Piece p : pieces) {
            if (p.square()) {
                double[] nearest = p.corners[0];
                for (double[] c : p.corners) {
                    nearest = Math.abs(c[1]) < Math.abs(nearest[1]) ? c : nearest;
                }
                places.add(nearest[2]);
            }
        }
        return places;
    }

    /**
     * Nearest obstacle below (or above) over a stretch of the rod, or null where there is none. A face that stands square before the nose
     * does not count.
     */
    @org.jspecify.annotations.Nullable
    Limit limit(double fromM, double toM, double noseM, boolean below) {
        Limit best = null;
        for (Piece p : pieces) {
            boolean away = p.below != below || p.toM < fromM || p.fromM > toM;
            if (away || p.meetsM > noseM - 1e-6) {
                continue;
            }
            double[][] cut = clip(clip(p.corners, 2, toM, true), 2, fromM, false);
            for (int k = 0; k < cut.length; k++) {
                double[] q = touch(cut[k], cut[(k + 1) % cut.length], below ? 1 : -1);
                if (best == null || q[0] < best.moveM) {
                    best = new Limit(q[0], q[1], q[2], p.name, p.part);
                }
            }
        }
        return best;
    }

    /** Least move until an edge is touched, where along the rod and where across: {move, s, x}. */
    private double[] touch(double[] a, double[] b, int sign) {
        double dx = b[0] - a[0];
        double dz = sign * (b[1] - a[1]);
        double t = 0;
        if (dx != 0) {
            // d/dt (z - sqrt(r² - x²)) = 0 where x / sqrt(r² - x²) = -dz/dx
            double slope = -dz / dx;
            double x = radiusM * slope / Math.sqrt(1 + slope * slope);
            t = Math.max(0, Math.min(1, (x - a[0]) / dx));
        } else if (dz < 0) {
            t = 1;
        }
        double x = a[0] + t * dx;
        double z = sign * a[1] + t * dz;
        double move = z - Math.sqrt(Math.max(0, radiusM * radiusM - x * x));
        return new double[] {move, a[2] + t * (b[2] - a[2]), x};
    }

    /** The part of a convex polygon up to (or from) a value of one coordinate. */
    private static double[][] clip(double[][] polygon, int coordinate, double at, boolean upTo) {
        if (Double.isInfinite(at)) {
            return polygon;
        }
        List<double[]> kept = new ArrayList<>(polygon.length + 1);
        double sign = upTo ? 1 : -1;
        for (int k = 0; k < polygon.length; k++) {
            double[] p = polygon[k];
            double[] q = polygon[(k + 1) % polygon.length];
            double dp = sign * (at - p[coordinate]);
            double dq = sign * (at - q[coordinate]);
            if (dp >= 0) {
                kept.add(p);
            }
            if ((dp > 0 && dq < 0) || (dp < 0 && dq > 0)) {
                double t = dp / (dp - dq);
                double[] cut = new double[3];
                for (int c = 0; c < 3; c++) {
                    cut[c] = p[c] + t * (q[c] - p[c]);
                }
                cut[coordinate] = at;
                kept.add(cut);
            }
        }
        return kept.toArray(new double[0][]);
    }

    /** A place of the rod frame in structure axes, m. */
    Vec3 place(double alongM, double downM, double acrossM) {
        return origin.plus(alongM, axis).plus(downM, down).plus(acrossM, across);
    }
}
