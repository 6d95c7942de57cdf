package baymist.voxel;

import java.util.List;

/**
 * Which blocked faces each opening overlaps, and with how much area; sorted by slot, then opening.
 *
 * @param start first entry of each slot, [slots + 1]
 * @param slot blocked face, [entries]
 * @param opening opening index, [entries]
 * @param areaM2 flow area, m²; the entries of an opening add up to its outline's area, [entries]
 * @param leaks openings whose sides are not what they were stated to be
 */
record OpeningFaces(int[] start, int[] slot, int[] opening, double[] areaM2, List<Leak> leaks) {
    int count() {
        return slot.length;
    }
}
