package baymist.voxel;

import java.util.Arrays;

/** Growable run of ints without boxing. */
final class IntList {
    private int[] items = new int[16];
    private int size;

    void add(int value) {
        if (size == items.length) {
            items = Arrays.copyOf(items, 2 * size);
        }
        items[size++] = value;
    }

    int get(int i) {
        return items[i];
    }

    int size() {
        return size;
    }

    int[] toArray() {
        return Arrays.copyOf(items, size);
    }
}
