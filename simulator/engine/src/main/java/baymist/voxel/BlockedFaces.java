package baymist.voxel;

/**
 * Lattice faces that sheets block, in ascending key order; a slot is a position in this order.
 *
 * <p>A view is one side of a blocked face: view = 2 * slot for the sheet that the low cell sees, 2 * slot + 1 for the one
 * that the high cell sees. They differ where several sheets lie between the two centres.
 */
final class BlockedFaces {
    private final int cells;
    /** Slot of each face key, or -1, [3 * cells]. */
    private final int[] slotOfKey;
    /** [slots] */
    private final int[] key;
    /** Sheet triangle that a view sees, [2 * slots]. */
    private final int[] triangle;
    /** Distance of the sheet from the low centre in pitches, 0..1, [2 * slots]. */
    private final double[] position;
    /** Whether all sheets through the face belong to one part, [slots]. */
    private final boolean[] onePart;

    BlockedFaces(int cells, int[] slotOfKey, int[] key, int[] triangle, double[] position, boolean[] onePart) {
        this.cells = cells;
        this.slotOfKey = slotOfKey;
        this.key = key;
        this.triangle = triangle;
        this.position = position;
        this.onePart = onePart;
    }

    int count() {
        return key.length;
    }

    /** Slot of a face, or -1 if no sheet blocks it or the key is -1. */
    int slot(int faceKey) {
        return faceKey < 0 ? -1 : slotOfKey[faceKey];
    }

    int axis(int slot) {
        return key[slot] / cells;
    }

    int lowCell(int slot) {
        return key[slot] % cells;
    }

    int triangle(int view) {
        return triangle[view];
    }

    /** Distance of the seen sheet from the low centre in pitches, 0..1. */
    double position(int view) {
        return position[view];
    }

    boolean onePart(int slot) {
        return onePart[slot];
    }
}
