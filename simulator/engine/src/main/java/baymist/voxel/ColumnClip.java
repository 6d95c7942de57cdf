package baymist.voxel;

/** Area of a plane polygon over the cells of a 2-D lattice, by clipping (Sutherland and Hodgman, 1974). */
final class ColumnClip {
    private ColumnClip() {}

    /**
     * The part of a polygon between two parallel lines. A polygon that isn't convex may come back with coincident
     * bridging edges; they carry no area.
     *
     * @param xy corners x y x y ...
     * @param axis 0 to cut at x, 1 at y
     */
    static double[] slab(double[] xy, int axis, double low, double high) {
        return half(half(xy, axis, low, 1), axis, high, -1);
    }

    /** Keeps what lies at or beyond the line in the direction of {@code sign}. */
    private static double[] half(double[] xy, int axis, double at, int sign) {
        if (Double.isInfinite(at)) {
            return xy;
        }
        DoubleList out = new DoubleList();
        int n = xy.length / 2;
        for (int p = 0; p < n; p++) {
            int q = (p + 1) % n;
            double dp = sign * (xy[2 * p + axis] - at);
            double dq = sign * (xy[2 * q + axis] - at);
            if (dp >= 0) {
                out.add(xy[2 * p]);
                out.add(xy[2 * p + 1]);
            }
            if ((dp > 0 && dq < 0) || (dp < 0 && dq > 0)) {
                double t = dp / (dp - dq);
                double other = xy[2 * p + 1 - axis] + t * (xy[2 * q + 1 - axis] - xy[2 * p + 1 - axis]);
                out.add(axis == 0 ? at : other);
                out.add(axis == 0 ? other : at);
            }
        }
        return out.toArray();
    }

    /** Signed area, positive counter-clockwise. */
    static double area(double[] xy) {
        double twice = 0;
        for (int p = 2; p + 3 < xy.length; p += 2) {
            twice += (xy[p] - xy[0]) * (xy[p + 3] - xy[1]) - (xy[p + 2] - xy[0]) * (xy[p + 1] - xy[1]);
        }
        return 0.5 * twice;
    }
}
