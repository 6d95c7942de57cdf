package baymist.geom;

import java.math.BigDecimal;

/**
 * Signs of orientation determinants, exact for every finite input.
 *
 * <p>A floating-point evaluation decides whenever its magnitude exceeds a bound on its own rounding error; the rest is
 * evaluated with {@link BigDecimal}, which holds every double and every sum and product of them exactly. Bounds: Shewchuk
 * (1997), Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates, Discrete Comput. Geom. 18,
 * 305-363, section 4.3 and 4.4: (3 + 16 e) e for the planar and (7 + 56 e) e for the spatial determinant, e = 2^-53, valid
 * where nothing overflows or underflows; sizes at which either could happen go straight to the exact evaluation.
 */
public final class Predicates {
    private static final double EPS = 0x1p-53;
    private static final double BOUND_2D = (3 + 16 * EPS) * EPS;
    private static final double BOUND_3D = (7 + 56 * EPS) * EPS;
    /** Below this the products of the determinant may have lost bits to underflow. */
    private static final double SMALL = 1e-250;

    private static final double LARGE = 1e300;

    private Predicates() {}

    /**
     * Side of point c seen along the line from a to b.
     *
     * @return 1 if a, b, c turn counter-clockwise, -1 if clockwise, 0 if they lie on one line
     * @throws IllegalArgumentException if a coordinate is not finite
     */
    public static int orient2d(double ax, double ay, double bx, double by, double cx, double cy) {
        double left = (ax - cx) * (by - cy);
        double right = (ay - cy) * (bx - cx);
        double det = left - right;
        double size = Math.abs(left) + Math.abs(right);
        if (size > SMALL && size < LARGE && Math.abs(det) > BOUND_2D * size) {
            return det > 0 ? 1 : -1;
        }
        return exact2d(ax, ay, bx, by, cx, cy);
    }

    /**
     * Side of point d of the plane through a, b, c.
     *
     * @return sign of the determinant with rows a-d, b-d, c-d: 1 if d lies below the plane, where "above" is the side from
     *     which a, b, c turn counter-clockwise; -1 above; 0 in the plane
     * @throws IllegalArgumentException if a coordinate is not finite
     */
    public static int orient3d(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
        return orient3d(a.x(), a.y(), a.z(), b.x(), b.y(), b.z(), c.x(), c.y(), c.z(), d.x(), d.y(), d.z());
    }

    /** As {@link #orient3d(Vec3, Vec3, Vec3, Vec3)}, free of allocation unless the exact evaluation is needed. */
    public static int orient3d(
            double ax,
            double ay,
            double az,
            double bx,
            double by,
            double bz,
            double cx,
            double cy,
            double cz,
            double dx,
            double dy,
            double dz) {
        double adx = ax - dx;
        double ady = ay - dy;
        double adz = az - dz;
        double bdx = bx - dx;
        double bdy = by - dy;
        double bdz = bz - dz;
        double cdx = cx - dx;
        double cdy = cy - dy;
        double cdz = cz - dz;
        double bc = bdx * cdy;
        double cb = cdx * bdy;
        double ca = cdx * ady;
        double ac = adx * cdy;
        double ab = adx * bdy;
        double ba = bdx * ady;
        double det = adz * (bc - cb) + bdz * (ca - ac) + cdz * (ab - ba);
        double size = (Math.abs(bc) + Math.abs(cb)) * Math.abs(adz)
                + (Math.abs(ca) + Math.abs(ac)) * Math.abs(bdz)
                + (Math.abs(ab) + Math.abs(ba)) * Math.abs(cdz);
        if (size > SMALL && size < LARGE && Math.abs(det) > BOUND_3D * size) {
            return det > 0 ? 1 : -1;
        }
        return exact3d(new double[] {ax, ay, az, bx, by, bz, cx, cy, cz, dx, dy, dz});
    }

    private static int exact2d(double ax, double ay, double bx, double by, double cx, double cy) {
        BigDecimal left = difference(ax, cx).multiply(difference(by, cy));
        BigDecimal right = difference(ay, cy).multiply(difference(bx, cx));
        return left.compareTo(right);
    }

    /** Exact sign for rows a, b, c, d of three coordinates each. */
    static int exact3d(double[] p) {
        BigDecimal[] m = new BigDecimal[9];
        for (int row = 0; row < 3; row++) {
            for (int k = 0; k < 3; k++) {
                m[3 * row + k] = difference(p[3 * row + k], p[9 + k]);
            }
        }
        BigDecimal first = m[2].multiply(minor(m[3], m[7], m[6], m[4]));
        BigDecimal second = m[5].multiply(minor(m[6], m[1], m[0], m[7]));
        BigDecimal third = m[8].multiply(minor(m[0], m[4], m[3], m[1]));
        return first.add(second).add(third).signum();
    }

    private static BigDecimal minor(BigDecimal a, BigDecimal b, BigDecimal c, BigDecimal d) {
        return a.multiply(b).subtract(c.multiply(d));
    }

    private static BigDecimal difference(double a, double b) {
        if (!Double.isFinite(a) || !Double.isFinite(b)) {
            throw new IllegalArgumentException("coordinate " + a + " or " + b + " is not finite");
        }
        return new BigDecimal(a).subtract(new BigDecimal(b));
    }
}
