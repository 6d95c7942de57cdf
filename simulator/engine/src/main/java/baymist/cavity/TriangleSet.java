package baymist.cavity;

import java.util.Arrays;

/** Remembers triangles by their three vertices, whatever their order. */
final class TriangleSet {
    /** Vertices of each triangle kept, ascending, [3 * count]. */
    private int[] corners = new int[96];

    private int count;
    private int[] slots = new int[128];

    /** Adds a triangle; false if it is there already. */
    boolean add(int a, int b, int c) {
        int low = Math.min(a, Math.min(b, c));
        int high = Math.max(a, Math.max(b, c));
        int middle = (a ^ b ^ c) ^ low ^ high;
        int at = find(low, middle, high);
        if (slots[at] != 0) {
            return false;
        }
        if (3 * count + 3 > corners.length) {
            corners = Arrays.copyOf(corners, 2 * corners.length);
        }
        corners[3 * count] = low;
        corners[3 * count + 1] = middle;
        corners[3 * count + 2] = high;
        slots[at] = ++count;
        if (2 * count > slots.length) {
            slots = new int[2 * slots.length];
            for (int t = 0; t < count; t++) {
                slots[find(corners[3 * t], corners[3 * t + 1], corners[3 * t + 2])] = t + 1;
            }
        }
        return true;
    }

    private int find(int low, int middle, int high) {
        long h = (low * 0x9E3779B97F4A7C15L + middle) * 0xC2B2AE3D27D4EB4FL + high;
        h ^= h >>> 32;
        h *= 0xff51afd7ed558ccdL;
        int at = (int) (h >>> 33) & (slots.length - 1);
        while (slots[at] != 0) {
            int t = 3 * (slots[at] - 1);
            if (corners[t] == low && corners[t + 1] == middle && corners[t + 2] == high) {
                return at;
            }
            at = (at + 1) & (slots.length - 1);
        }
        return at;
    }
}
