package baymist.voxel;

import java.util.Arrays;

/** Growable run of doubles without boxing. */
final class DoubleList {
    private double[] items = new double[16];
    private int size;

    void add(double value) {
        if (size == items.length) {
            items = Arrays.copyOf(items, 2 * size);
        }
        items[size++] = value;
    }

    double get(int i) {
        return items[i];
    }

    int size() {
        return size;
    }

    double[] toArray() {
        return Arrays.copyOf(items, size);
    }
}
