package baymist.geom;

/** Squared distance of a point from a triangle without objects: regions of Ericson (2005), Real-Time Collision Detection, 5.1.5. */
final class PointTriangle {
    private PointTriangle() {}

    /** @param c nine coordinates of the corners a, b, c from {@code i} on, m */
    static double square(double[] c, int i, double px, double py, double pz) {
        double abx = c[i + 3] - c[i];
        double aby = c[i + 4] - c[i + 1];
        double abz = c[i + 5] - c[i + 2];
        double acx = c[i + 6] - c[i];
        double acy = c[i + 7] - c[i + 1];
        double acz = c[i + 8] - c[i + 2];
        double apx = px - c[i];
        double apy = py - c[i + 1];
        double apz = pz - c[i + 2];
        double d1 = abx * apx + aby * apy + abz * apz;
        double d2 = acx * apx + acy * apy + acz * apz;
        if (d1 <= 0 && d2 <= 0) {
            return apx * apx + apy * apy + apz * apz;
        }
        double ab2 = abx * abx + aby * aby + abz * abz;
        double ac2 = acx * acx + acy * acy + acz * acz;
        double abac = abx * acx + aby * acy + abz * acz;
        double d3 = d1 - ab2;
        double d4 = d2 - abac;
        if (d3 >= 0 && d4 <= d3) {
            return offset(apx, apy, apz, abx, aby, abz, 1, acx, acy, acz, 0);
        }
        double d5 = d1 - abac;
        double d6 = d2 - ac2;
        if (d6 >= 0 && d5 <= d6) {
            return offset(apx, apy, apz, abx, aby, abz, 0, acx, acy, acz, 1);
        }
        double vc = d1 * d4 - d3 * d2;
        if (vc <= 0 && d1 >= 0 && d3 <= 0) {
            return offset(apx, apy, apz, abx, aby, abz, d1 / (d1 - d3), acx, acy, acz, 0);
        }
        double vb = d5 * d2 - d1 * d6;
        if (vb <= 0 && d2 >= 0 && d6 <= 0) {
            return offset(apx, apy, apz, abx, aby, abz, 0, acx, acy, acz, d2 / (d2 - d6));
        }
        double va = d3 * d6 - d5 * d4;
        if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
            double w = (d4 - d3) / (d4 - d3 + (d5 - d6));
            return offset(apx, apy, apz, abx, aby, abz, 1 - w, acx, acy, acz, w);
        }
        double sum = va + vb + vc;
        if (!(sum > 0)) {
            // no area: one of its sides is nearest
            return Math.min(
                    side(apx, apy, apz, abx, aby, abz),
                    Math.min(
                            side(apx, apy, apz, acx, acy, acz),
                            side(apx - abx, apy - aby, apz - abz, acx - abx, acy - aby, acz - abz)));
        }
        return offset(apx, apy, apz, abx, aby, abz, vb / sum, acx, acy, acz, vc / sum);
    }

    private static double offset(
            double px,
            double py,
            double pz,
            double ux,
            double uy,
            double uz,
            double s,
            double vx,
            double vy,
            double vz,
            double t) {
        double dx = px - s * ux - t * vx;
        double dy = py - s * uy - t * vy;
        double dz = pz - s * uz - t * vz;
        return dx * dx + dy * dy + dz * dz;
    }

    private static double side(double px, double py, double pz, double ux, double uy, double uz) {
        double l2 = ux * ux + uy * uy + uz * uz;
        double s = l2 > 0 ? Math.max(0, Math.min(1, (px * ux + py * uy + pz * uz) / l2)) : 0;
        return offset(px, py, pz, ux, uy, uz, s, 0, 0, 0, 0);
    }
}
