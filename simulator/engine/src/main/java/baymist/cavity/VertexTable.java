package baymist.cavity;

import java.util.Arrays;

/** Numbers points in the order of their first appearance; points whose coordinates agree to the bit are one. */
final class VertexTable {
    private double[] xyz = new double[96];
    private int count;
    /** Vertex number + 1 at its hashed place, 0 = free; at most half full. */
    private int[] slots = new int[128];

    /** Number of the vertex at a place, new or known, m. */
    int number(double px, double py, double pz) {
        // adding zero turns -0.0 into 0.0, so that both are one place
        double x = px + 0.0;
        double y = py + 0.0;
        double z = pz + 0.0;
        int at = find(x, y, z);
        if (slots[at] != 0) {
            return slots[at] - 1;
        }
        if (3 * count + 3 > xyz.length) {
            xyz = Arrays.copyOf(xyz, 2 * xyz.length);
        }
        xyz[3 * count] = x;
        xyz[3 * count + 1] = y;
        xyz[3 * count + 2] = z;
        slots[at] = ++count;
        if (2 * count > slots.length) {
            grow();
        }
        return count - 1;
    }

    private int find(double x, double y, double z) {
        int at = hash(x, y, z) & (slots.length - 1);
        while (slots[at] != 0) {
            int v = 3 * (slots[at] - 1);
            if (xyz[v] == x && xyz[v + 1] == y && xyz[v + 2] == z) {
                return at;
            }
            at = (at + 1) & (slots.length - 1);
        }
        return at;
    }

    private void grow() {
        slots = new int[2 * slots.length];
        for (int v = 0; v < count; v++) {
            slots[find(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2])] = v + 1;
        }
    }

    /** Mixed so that lattices of round coordinates spread (finaliser of MurmurHash3, Appleby 2011). */
    private static int hash(double x, double y, double z) {
        long h = Double.doubleToLongBits(x);
        h = mixed(h) + Double.doubleToLongBits(y);
        h = mixed(h) + Double.doubleToLongBits(z);
        return (int) mixed(h);
    }

    private static long mixed(long h) {
        long k = h;
        k ^= k >>> 33;
        k *= 0xff51afd7ed558ccdL;
        k ^= k >>> 33;
        k *= 0xc4ceb9fe1a85ec53L;
        return k ^ k >>> 33;
    }

    int count() {
        return count;
    }

    double coordinate(int vertex, int axis) {
        return xyz[3 * vertex + axis];
    }

    /** Coordinates of all vertices, m, [3 * count]. */
    double[] toArray() {
        return Arrays.copyOf(xyz, 3 * count);
    }
}
