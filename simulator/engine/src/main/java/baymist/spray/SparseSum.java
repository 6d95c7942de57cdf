package baymist.spray;

import java.util.Arrays;

/**
 * Sums of a few numbers under non-negative keys, kept sparse: an open-addressed table. Values are added in the order of the
 * calls and read in ascending order of the keys, so the result depends on nothing else.
 */
final class SparseSum {
    private final int width;
    private long[] table = new long[256];
    private int[] slotAt = new int[256];
    private long[] key = new long[64];
    private double[] value;
    private int count;

    /** @param width numbers under each key */
    SparseSum(int width) {
        this.width = width;
        this.value = new double[64 * width];
        Arrays.fill(table, -1);
    }

    int count() {
        return count;
    }

    /** Position of a key's first number, made on first use; add with {@link #add(int, double)}. */
    int slot(long k) {
        int i = find(table, k);
        if (table[i] == k) {
            return slotAt[i];
        }
        if (2 * (count + 1) > table.length) {
            grow();
            i = find(table, k);
        }
        if (count == key.length) {
            key = Arrays.copyOf(key, 2 * count);
            value = Arrays.copyOf(value, 2 * count * width);
        }
        table[i] = k;
        slotAt[i] = count * width;
        key[count++] = k;
        return slotAt[i];
    }

    void add(int position, double amount) {
        value[position] += amount;
    }

    /** Keys in ascending order. */
    long[] keys() {
        long[] sorted = Arrays.copyOf(key, count);
        Arrays.sort(sorted);
        return sorted;
    }

    /** Number {@code column} under each key, in the order of {@link #keys}. */
    double[] column(int column) {
        long[] keys = keys();
        double[] out = new double[count];
        for (int n = 0; n < count; n++) {
            out[n] = value[slotAt[find(table, keys[n])] + column];
        }
        return out;
    }

    /** All numbers, key after key, in the order of {@link #keys}. */
    double[] all() {
        long[] keys = keys();
        double[] out = new double[count * width];
        for (int n = 0; n < count; n++) {
            System.arraycopy(value, slotAt[find(table, keys[n])], out, n * width, width);
        }
        return out;
    }

    private void grow() {
        long[] old = table;
        int[] oldSlot = slotAt;
        table = new long[2 * old.length];
        slotAt = new int[2 * old.length];
        Arrays.fill(table, -1);
        for (int i = 0; i < old.length; i++) {
            if (old[i] >= 0) {
                int at = find(table, old[i]);
                table[at] = old[i];
                slotAt[at] = oldSlot[i];
            }
        }
    }

    private static int find(long[] table, long k) {
        int mask = table.length - 1;
        long h = k * 0x9E3779B97F4A7C15L;
        int i = (int) (h >>> 32) & mask;
        while (table[i] != -1 && table[i] != k) {
            i = (i + 1) & mask;
        }
        return i;
    }
}
