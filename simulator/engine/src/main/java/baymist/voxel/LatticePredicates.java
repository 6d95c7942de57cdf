package baymist.voxel;

import java.math.BigDecimal;

/**
 * Exact signs for lattice points against triangles; the whole lattice counts as shifted by (e1, e2, e3) with
 * e1 much larger than e2 much larger than e3, all positive and smaller than any coordinate difference.
 *
 * <p>One shift, used in the plane and in space alike, makes every lattice point lie strictly on one side of every
 * triangle's plane and every lattice line strictly inside or outside every triangle's outline. A line through a shared
 * edge then belongs to exactly one of two triangles, so nothing leaks and nothing blocks twice (Edelsbrunner and Mücke,
 * 1990, Simulation of Simplicity; here the tests are linear in the shift, so first-order terms decide). Signs come from
 * doubles where Shewchuk's (1997) static error bound allows, else from exact decimal arithmetic.
 */
final class LatticePredicates {
    private static final double EPS = Math.ulp(0.5);
    /** Shewchuk (1997), ccwerrboundA and o3derrboundA. */
    private static final double BOUND_2 = (3 + 16 * EPS) * EPS;

    private static final double BOUND_3 = (7 + 56 * EPS) * EPS;

    private LatticePredicates() {}

    /**
     * Side of the shifted point p of the directed line u to v in the plane of two axes b below c: +1 left, -1 right, 0
     * only if u equals v.
     */
    static int side2(double ub, double uc, double vb, double vc, double pb, double pc) {
        int sign = orient2(ub, uc, vb, vc, pb, pc);
        if (sign != 0) {
            return sign;
        }
        // derivative along b first, since its shift is the larger one
        int alongB = compare(uc, vc);
        return alongB != 0 ? alongB : compare(vb, ub);
    }

    /** Exact sign of (v - u) x (p - u), nothing shifted. */
    static int orient2(double ub, double uc, double vb, double vc, double pb, double pc) {
        double left = (vb - ub) * (pc - uc);
        double right = (vc - uc) * (pb - ub);
        double det = left - right;
        if (left == 0 || right == 0 || Math.abs(det) > BOUND_2 * (Math.abs(left) + Math.abs(right))) {
            return det > 0 ? 1 : det < 0 ? -1 : 0;
        }
        return exact2(ub, uc, vb, vc, pb, pc);
    }

    private static int exact2(double ub, double uc, double vb, double vc, double pb, double pc) {
        BigDecimal b = big(ub);
        BigDecimal c = big(uc);
        return big(vb).subtract(b)
                .multiply(big(pc).subtract(c))
                .compareTo(big(vc).subtract(c).multiply(big(pb).subtract(b)));
    }

    /**
     * Side of the shifted point (x, y, z) of the plane through a triangle's corners t[0..8] = x y z x y z x y z: +1 on
     * the side of the right-hand normal, -1 on the other, 0 only for a triangle without area.
     */
    static int side3(double[] t, double x, double y, double z) {
        double ux = t[3] - t[0];
        double uy = t[4] - t[1];
        double uz = t[5] - t[2];
        double vx = t[6] - t[0];
        double vy = t[7] - t[1];
        double vz = t[8] - t[2];
        double px = x - t[0];
        double py = y - t[1];
        double pz = z - t[2];
        double det = px * (uy * vz - uz * vy) + py * (uz * vx - ux * vz) + pz * (ux * vy - uy * vx);
        double permanent = Math.abs(px) * (Math.abs(uy * vz) + Math.abs(uz * vy))
                + Math.abs(py) * (Math.abs(uz * vx) + Math.abs(ux * vz))
                + Math.abs(pz) * (Math.abs(ux * vy) + Math.abs(uy * vx));
        // the bound is doubled because the sum above is ordered otherwise than Shewchuk's
        if (Math.abs(det) > 2 * BOUND_3 * permanent) {
            return det > 0 ? 1 : -1;
        }
        int sign = permanent == 0 ? 0 : exact3(t, x, y, z);
        return sign != 0 ? sign : sideByShift(t);
    }

    private static int sideByShift(double[] t) {
        int sign = orient2(t[1], t[2], t[4], t[5], t[7], t[8]);
        if (sign == 0) {
            sign = orient2(t[2], t[0], t[5], t[3], t[8], t[6]);
        }
        return sign != 0 ? sign : orient2(t[0], t[1], t[3], t[4], t[6], t[7]);
    }

    private static int exact3(double[] t, double x, double y, double z) {
        BigDecimal[] d = new BigDecimal[9];
        for (int k = 0; k < 3; k++) {
            BigDecimal base = big(t[k]);
            d[k] = big(t[3 + k]).subtract(base);
            d[3 + k] = big(t[6 + k]).subtract(base);
            d[6 + k] = big(k == 0 ? x : k == 1 ? y : z).subtract(base);
        }
        BigDecimal nx = d[1].multiply(d[5]).subtract(d[2].multiply(d[4]));
        BigDecimal ny = d[2].multiply(d[3]).subtract(d[0].multiply(d[5]));
        BigDecimal nz = d[0].multiply(d[4]).subtract(d[1].multiply(d[3]));
        return d[6].multiply(nx).add(d[7].multiply(ny)).add(d[8].multiply(nz)).signum();
    }

    private static int compare(double a, double b) {
        return a < b ? -1 : a > b ? 1 : 0;
    }

    private static BigDecimal big(double value) {
        return new BigDecimal(value);
    }
}
