package baymist.voxel;

import baymist.geom.Box3;
import baymist.geom.Vec3;

/**
 * The lattice of cells over the bounding box and one ring of cells round it. Whole cells span the box, so sheets on the
 * bounding planes lie on lattice planes and never through centres. Index of a cell = i + nx * (j + ny * k); faces are
 * named by axis and low cell, key = axis * cells + low cell.
 */
final class Lattice {
    private final int[] counts;
    private final int[] stride;
    private final double[] origin;
    private final double[] pitchM;
    /** Lattice planes, [axis][n + 1], m. */
    private final double[][] planes;
    /** Centres, [axis][n], m. */
    private final double[][] centres;

    /** @param inner cells across the box along each axis, ring not counted */
    Lattice(Box3 box, int[] inner) {
        counts = new int[3];
        origin = new double[3];
        pitchM = new double[3];
        planes = new double[3][];
        centres = new double[3][];
        for (int a = 0; a < 3; a++) {
            double low = box.min().get(a);
            double high = box.max().get(a);
            counts[a] = inner[a] + 2;
            pitchM[a] = (high - low) / inner[a];
            origin[a] = low - pitchM[a];
            planes[a] = new double[counts[a] + 1];
            centres[a] = new double[counts[a]];
            for (int i = 0; i < counts[a]; i++) {
                planes[a][i] = i == 1 ? low : i == inner[a] + 1 ? high : origin[a] + i * pitchM[a];
                centres[a][i] = origin[a] + (i + 0.5) * pitchM[a];
            }
            planes[a][counts[a]] = origin[a] + counts[a] * pitchM[a];
        }
        stride = new int[] {1, counts[0], counts[0] * counts[1]};
    }

    int count(int axis) {
        return counts[axis];
    }

    int cells() {
        return counts[0] * counts[1] * counts[2];
    }

    int stride(int axis) {
        return stride[axis];
    }

    double pitchM(int axis) {
        return pitchM[axis];
    }

    double plane(int axis, int i) {
        return planes[axis][i];
    }

    double centre(int axis, int i) {
        return centres[axis][i];
    }

    Vec3 origin() {
        return new Vec3(origin[0], origin[1], origin[2]);
    }

    Vec3 pitch() {
        return new Vec3(pitchM[0], pitchM[1], pitchM[2]);
    }

    int index(int i, int j, int k) {
        return i + counts[0] * (j + counts[1] * k);
    }

    /** Position of a cell along one axis. */
    int at(int cell, int axis) {
        return axis == 0 ? cell % counts[0] : axis == 1 ? cell / counts[0] % counts[1] : cell / stride[2];
    }

    Vec3 centre(int cell) {
        return new Vec3(centres[0][at(cell, 0)], centres[1][at(cell, 1)], centres[2][at(cell, 2)]);
    }

    /** Area of a lattice face square to the axis, m². */
    double faceAreaM2(int axis) {
        return pitchM[(axis + 1) % 3] * pitchM[(axis + 2) % 3];
    }

    double cellVolumeM3() {
        return pitchM[0] * pitchM[1] * pitchM[2];
    }

    /** Cell along one axis that holds the coordinate (its low plane included), clamped to the lattice. */
    int locate(int axis, double x) {
        int i = (int) Math.floor((x - origin[axis]) / pitchM[axis]);
        i = Math.max(0, Math.min(counts[axis] - 1, i));
        while (i > 0 && x < planes[axis][i]) {
            i--;
        }
        while (i < counts[axis] - 1 && x >= planes[axis][i + 1]) {
            i++;
        }
        return i;
    }

    int cellHolding(double x, double y, double z) {
        return index(locate(0, x), locate(1, y), locate(2, z));
    }

    /** Whether the cell belongs to the ring outside the bounding box. */
    boolean inRing(int cell) {
        for (int a = 0; a < 3; a++) {
            int i = at(cell, a);
            if (i == 0 || i == counts[a] - 1) {
                return true;
            }
        }
        return false;
    }

    /** Key of the face on a side (0 = -x .. 5 = +z) of a cell, or -1 at the end of the lattice. */
    int faceKey(int cell, int direction) {
        int axis = direction >> 1;
        int i = at(cell, axis);
        if ((direction & 1) == 1) {
            return i == counts[axis] - 1 ? -1 : axis * cells() + cell;
        }
        return i == 0 ? -1 : axis * cells() + cell - stride[axis];
    }

    /** Cell behind a side; only to be asked where {@link #faceKey} is not -1. */
    int behind(int cell, int direction) {
        return (direction & 1) == 1 ? cell + stride[direction >> 1] : cell - stride[direction >> 1];
    }
}
