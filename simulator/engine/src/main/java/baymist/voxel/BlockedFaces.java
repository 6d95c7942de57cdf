package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;

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

    BlockedFaces(int cells, int[] slotOfKey, int[] key, int[] triangle, double[] position) {
        this.cells = cells;
        this.slotOfKey = slotOfKey;
        this.key = key;
        this.triangle = triangle;
        this.position = position;
    }

    /** Sheets closer than this count as lying on each other, m; above rounding, far below any gauge. */
    static final double TOUCHING_M = 1e-6;

    /**
     * The same faces with laps put in order. Where two sheets lie on each other between outside and inside, position
     * doesn't tell which is the outer one; outside then sees the skin and the cavity what is fastened to it.
     */
    BlockedFaces withSkinsOutside(Cavity cavity, Lattice lattice, Enclosure enclosure) {
        int[] ordered = triangle.clone();
        for (int slot = 0; slot < key.length; slot++) {
            boolean lowInside = enclosure.encloses(lowCell(slot));
            boolean highInside = enclosure.encloses(lowCell(slot) + lattice.stride(axis(slot)));
            int outer = lowInside ? 2 * slot + 1 : 2 * slot;
            if (lowInside != highInside
                    && spread(slot) * lattice.pitchM(axis(slot)) <= TOUCHING_M
                    && isSkin(cavity, triangle[outer ^ 1])
                    && !isSkin(cavity, triangle[outer])) {
                ordered[outer] = triangle[outer ^ 1];
                ordered[outer ^ 1] = triangle[outer];
            }
        }
        return new BlockedFaces(cells, slotOfKey, key, ordered, position);
    }

    private static boolean isSkin(Cavity cavity, int triangleIndex) {
        int part = cavity.partOfSheet(triangleIndex);
        return part >= 0 && cavity.parts().get(part).kind() == PartKind.SKIN;
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

    /** Distance between the first and the last sheet through the face in pitches, 0..1. */
    double spread(int slot) {
        return position[2 * slot + 1] - position[2 * slot];
    }
}
