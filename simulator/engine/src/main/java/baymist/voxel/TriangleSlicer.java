package baymist.voxel;

import baymist.geom.Vec3;

/**
 * Cuts a triangle along the lattice planes; the pieces' areas add up to the triangle's to rounding.
 *
 * <p>The polygon is split at one plane after another along x, then y, then z; each cut point is computed once and used on
 * both sides. A polygon that lies in a lattice plane goes to the cell above it. One slicer serves one thread.
 */
final class TriangleSlicer {
    /** Receives a piece: lattice cell, area m², centroid m. */
    @FunctionalInterface
    interface Sink {
        void piece(int latticeCell, double areaM2, double x, double y, double z);
    }

    /** A triangle cut by six planes has at most nine corners. */
    private static final int ROOM = 3 * 12;

    private final Lattice lattice;
    /** Buffers for what is left, what is cut off and what remains next, for each axis. */
    private final double[][] rest = new double[3][ROOM];

    private final double[][] off = new double[3][ROOM];
    private final double[][] next = new double[3][ROOM];
    private final double[] start = new double[ROOM];
    private final int[] at = new int[3];
    private int offCount;
    private int nextCount;
    /** Pieces below rounding of a lattice face have no meaningful centroid and are passed over, m². */
    private final double leastArea;

    private double nx;
    private double ny;
    private double nz;

    TriangleSlicer(Lattice lattice) {
        this.lattice = lattice;
        double face = Math.min(lattice.faceAreaM2(0), Math.min(lattice.faceAreaM2(1), lattice.faceAreaM2(2)));
        leastArea = 1e-16 * face;
    }

    /**
     * @param corners x y z of three corners
     * @param n unit normal; areas are measured along it
     */
    void slice(double[] corners, Vec3 n, Sink sink) {
        System.arraycopy(corners, 0, start, 0, 9);
        nx = n.x();
        ny = n.y();
        nz = n.z();
        along(0, start, 3, sink);
    }

    private void along(int axis, double[] polygon, int count, Sink sink) {
        if (axis == 3) {
            emit(polygon, count, sink);
            return;
        }
        double low = polygon[axis];
        double high = low;
        for (int p = 1; p < count; p++) {
            low = Math.min(low, polygon[3 * p + axis]);
            high = Math.max(high, polygon[3 * p + axis]);
        }
        int last = lattice.count(axis) - 1;
        int i = lattice.locate(axis, low);
        System.arraycopy(polygon, 0, rest[axis], 0, 3 * count);
        int left = count;
        while (i < last && high > lattice.plane(axis, i + 1)) {
            split(axis, left, lattice.plane(axis, i + 1));
            at[axis] = i;
            int kept = nextCount;
            if (offCount >= 3) {
                along(axis + 1, off[axis], offCount, sink);
            }
            double[] swap = rest[axis];
            rest[axis] = next[axis];
            next[axis] = swap;
            left = kept;
            i++;
        }
        at[axis] = i;
        if (left >= 3) {
            along(axis + 1, rest[axis], left, sink);
        }
    }

    /** Splits {@code rest} into what lies below the plane ({@code off}) and above ({@code next}). */
    private void split(int axis, int count, double plane) {
        double[] from = rest[axis];
        offCount = 0;
        nextCount = 0;
        for (int p = 0; p < count; p++) {
            int q = p + 1 == count ? 0 : p + 1;
            double dp = from[3 * p + axis] - plane;
            double dq = from[3 * q + axis] - plane;
            if (dp <= 0) {
                System.arraycopy(from, 3 * p, off[axis], 3 * offCount++, 3);
            }
            if (dp >= 0) {
                System.arraycopy(from, 3 * p, next[axis], 3 * nextCount++, 3);
            }
            if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
                double t = dp / (dp - dq);
                for (int k = 0; k < 3; k++) {
                    double x = k == axis ? plane : from[3 * p + k] + t * (from[3 * q + k] - from[3 * p + k]);
                    off[axis][3 * offCount + k] = x;
                    next[axis][3 * nextCount + k] = x;
                }
                offCount++;
                nextCount++;
            }
        }
    }

    private void emit(double[] polygon, int count, Sink sink) {
        double area = 0;
        double x = 0;
        double y = 0;
        double z = 0;
        for (int p = 1; p + 1 < count; p++) {
            int a = 3 * p;
            double ux = polygon[a] - polygon[0];
            double uy = polygon[a + 1] - polygon[1];
            double uz = polygon[a + 2] - polygon[2];
            double vx = polygon[a + 3] - polygon[0];
            double vy = polygon[a + 4] - polygon[1];
            double vz = polygon[a + 5] - polygon[2];
            double w = 0.5 * (nx * (uy * vz - uz * vy) + ny * (uz * vx - ux * vz) + nz * (ux * vy - uy * vx));
            area += w;
            x += w * (ux + vx);
            y += w * (uy + vy);
            z += w * (uz + vz);
        }
        if (area > leastArea) {
            double third = 1 / (3 * area);
            sink.piece(
                    lattice.index(at[0], at[1], at[2]),
                    area,
                    polygon[0] + x * third,
                    polygon[1] + y * third,
                    polygon[2] + z * third);
        }
    }
}
