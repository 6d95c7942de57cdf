package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.TriangleMesh;
import baymist.numeric.Workers;
import java.util.ArrayList;
import java.util.List;

/** Finds every lattice face whose centre-to-centre segment crosses a sheet. */
final class SheetCrossings {
    private static final int TRIANGLES_PER_BLOCK = 16;

    private final Lattice lattice;
    private final TriangleMesh mesh;

    private SheetCrossings(Lattice lattice, TriangleMesh mesh) {
        this.lattice = lattice;
        this.mesh = mesh;
    }

    /** Crossings of one block of triangles. */
    private static final class Found {
        final IntList key = new IntList();
        final IntList triangle = new IntList();
        final DoubleList position = new DoubleList();
    }

    static BlockedFaces find(Cavity cavity, Lattice lattice, Workers workers) {
        TriangleMesh mesh = cavity.sheets();
        SheetCrossings search = new SheetCrossings(lattice, mesh);
        int blocks = (mesh.triangleCount() + TRIANGLES_PER_BLOCK - 1) / TRIANGLES_PER_BLOCK;
        Found[] found = new Found[blocks];
        workers.forBlocks(mesh.triangleCount(), TRIANGLES_PER_BLOCK, (from, to) -> {
            Found mine = new Found();
            double[] t = new double[9];
            for (int triangle = from; triangle < to; triangle++) {
                for (int axis = 0; axis < 3; axis++) {
                    search.cross(triangle, axis, t, mine);
                }
            }
            found[from / TRIANGLES_PER_BLOCK] = mine;
        });
        return gather(lattice, new ArrayList<>(List.of(found)));
    }

    /** All lattice lines along {@code axis} that pass through one triangle. */
    private void cross(int triangle, int axis, double[] t, Found found) {
        for (int k = 0; k < 9; k++) {
            t[k] = mesh.coordinate(mesh.corner(triangle, k / 3), k % 3);
        }
        int b = axis == 0 ? 1 : 0;
        int c = axis == 2 ? 1 : 2;
        double lowC = Math.min(t[c], Math.min(t[3 + c], t[6 + c]));
        double highC = Math.max(t[c], Math.max(t[3 + c], t[6 + c]));
        int rowEnd = Math.min(lattice.count(c) - 1, lattice.locate(c, highC) + 1);
        for (int row = Math.max(0, lattice.locate(c, lowC) - 1); row <= rowEnd; row++) {
            double pc = lattice.centre(c, row);
            if (pc < lowC || pc > highC) {
                continue;
            }
            double from = Double.POSITIVE_INFINITY;
            double to = Double.NEGATIVE_INFINITY;
            for (int e = 0; e < 3; e++) {
                int u = 3 * e;
                int v = 3 * ((e + 1) % 3);
                if (Math.min(t[u + c], t[v + c]) <= pc && pc <= Math.max(t[u + c], t[v + c])) {
                    double span = t[v + c] - t[u + c];
                    double at = span == 0 ? t[u + b] : t[u + b] + (pc - t[u + c]) / span * (t[v + b] - t[u + b]);
                    double other = span == 0 ? t[v + b] : at;
                    from = Math.min(from, Math.min(at, other));
                    to = Math.max(to, Math.max(at, other));
                }
            }
            // one line more on either side than rounding could need
            int end = Math.min(lattice.count(b) - 1, lattice.locate(b, to) + 1);
            for (int col = Math.max(0, lattice.locate(b, from) - 1); col <= end; col++) {
                int facing = insideOutline(t, b, c, lattice.centre(b, col), pc);
                if (facing != 0) {
                    add(triangle, axis, t, col, row, axis == 1 ? -facing : facing, found);
                }
            }
        }
    }

    /** 0 if the lattice line misses the triangle, else the sign of the projected triangle's orientation. */
    private static int insideOutline(double[] t, int b, int c, double pb, double pc) {
        int s = LatticePredicates.side2(t[b], t[c], t[3 + b], t[3 + c], pb, pc);
        if (s == 0
                || LatticePredicates.side2(t[3 + b], t[3 + c], t[6 + b], t[6 + c], pb, pc) != s
                || LatticePredicates.side2(t[6 + b], t[6 + c], t[b], t[c], pb, pc) != s) {
            return 0;
        }
        return s;
    }

    /** @param facing sign of the normal's component along the axis */
    private void add(int triangle, int axis, double[] t, int col, int row, int facing, Found found) {
        int b = axis == 0 ? 1 : 0;
        int c = axis == 2 ? 1 : 2;
        double pb = lattice.centre(b, col);
        double pc = lattice.centre(c, row);
        double low = Math.min(t[axis], Math.min(t[3 + axis], t[6 + axis]));
        double high = Math.max(t[axis], Math.max(t[3 + axis], t[6 + axis]));
        double at = Math.min(high, Math.max(low, height(t, axis, b, c, pb, pc)));
        int above = lattice.locate(axis, at);
        while (above > 0 && isAbove(t, axis, above - 1, pb, pc, facing)) {
            above--;
        }
        while (!isAbove(t, axis, above, pb, pc, facing)) {
            above++;
        }
        int lowIndex = above - 1;
        int cell = axis == 0
                ? lattice.index(lowIndex, col, row)
                : axis == 1 ? lattice.index(col, lowIndex, row) : lattice.index(col, row, lowIndex);
        double s = (at - lattice.centre(axis, lowIndex)) / lattice.pitchM(axis);
        found.key.add(axis * lattice.cells() + cell);
        found.triangle.add(triangle);
        found.position.add(Math.min(1, Math.max(0, s)));
    }

    /** Where the line meets the plane, by doubles; for a triangle nearly edge-on only a first guess. */
    private static double height(double[] t, int axis, int b, int c, double pb, double pc) {
        double ub = t[3 + b] - t[b];
        double uc = t[3 + c] - t[c];
        double vb = t[6 + b] - t[b];
        double vc = t[6 + c] - t[c];
        double det = ub * vc - uc * vb;
        if (det == 0) {
            return t[axis];
        }
        double p = ((pb - t[b]) * vc - (pc - t[c]) * vb) / det;
        double q = (ub * (pc - t[c]) - uc * (pb - t[b])) / det;
        double at = t[axis] + p * (t[3 + axis] - t[axis]) + q * (t[6 + axis] - t[axis]);
        return Double.isNaN(at) ? t[axis] : at;
    }

    private boolean isAbove(double[] t, int axis, int i, double pb, double pc, int facing) {
        double p = lattice.centre(axis, i);
        int side = axis == 0
                ? LatticePredicates.side3(t, p, pb, pc)
                : axis == 1 ? LatticePredicates.side3(t, pb, p, pc) : LatticePredicates.side3(t, pb, pc, p);
        return side == facing;
    }

    /** Orders the crossings by face, then along the segment, then by triangle. */
    private static BlockedFaces gather(Lattice lattice, List<Found> found) {
        int[] slotOfKey = new int[3 * lattice.cells()];
        int total = 0;
        for (Found f : found) {
            total += f.key.size();
            for (int i = 0; i < f.key.size(); i++) {
                slotOfKey[f.key.get(i)]++;
            }
        }
        IntList keys = new IntList();
        IntList starts = new IntList();
        int running = 0;
        for (int key = 0; key < slotOfKey.length; key++) {
            int here = slotOfKey[key];
            slotOfKey[key] = here > 0 ? keys.size() : -1;
            if (here > 0) {
                keys.add(key);
                starts.add(running);
                running += here;
            }
        }
        starts.add(running);
        int[] triangle = new int[total];
        double[] position = new double[total];
        int[] filled = new int[keys.size()];
        for (Found f : found) {
            for (int i = 0; i < f.key.size(); i++) {
                int slot = slotOfKey[f.key.get(i)];
                insert(triangle, position, starts.get(slot), filled[slot]++, f.triangle.get(i), f.position.get(i));
            }
        }
        return nearest(lattice, slotOfKey, keys.toArray(), starts.toArray(), triangle, position);
    }

    /** Keeps a face's crossings sorted; triangles arrive in ascending order, so equal positions stay in that order. */
    private static void insert(int[] triangle, double[] position, int start, int filled, int t, double s) {
        int at = start + filled;
        while (at > start && position[at - 1] > s) {
            position[at] = position[at - 1];
            triangle[at] = triangle[at - 1];
            at--;
        }
        position[at] = s;
        triangle[at] = t;
    }

    private static BlockedFaces nearest(
            Lattice lattice, int[] slotOfKey, int[] keys, int[] starts, int[] triangle, double[] position) {
        int[] seen = new int[2 * keys.length];
        double[] at = new double[2 * keys.length];
        for (int slot = 0; slot < keys.length; slot++) {
            int first = starts[slot];
            int last = starts[slot + 1] - 1;
            seen[2 * slot] = triangle[first];
            at[2 * slot] = position[first];
            seen[2 * slot + 1] = triangle[last];
            at[2 * slot + 1] = position[last];
        }
        return new BlockedFaces(lattice.cells(), slotOfKey, keys, seen, at);
    }
}
