package baymist.voxel;

/**
 * Faces between cavity cells that air can cross, and faces to the outside through openings. Structure of arrays.
 *
 * <p>An unobstructed face has one entry with {@code opening} -1. A face in a sheet has one entry for each opening that
 * overlaps it, with the overlapped area only. Entries are sorted by low cell, axis, opening.
 *
 * @param low cell on the low side of the axis, [faces]
 * @param high cell on the high side, [faces]
 * @param axis 0, 1, 2, [faces]
 * @param areaM2 open area with the opening fully open, m², [faces]
 * @param opening opening index or -1, [faces]
 * @param ventCell cavity cell at an outside opening, [vents]
 * @param ventAxis axis of the vent face, [vents]
 * @param ventSign +1 if outside lies in + direction, -1 otherwise, [vents]
 * @param ventAreaM2 overlapped area, m², [vents]
 * @param ventOpening opening index, [vents]
 */
public record FaceSet(
        int[] low,
        int[] high,
        byte[] axis,
        double[] areaM2,
        int[] opening,
        int[] ventCell,
        byte[] ventAxis,
        byte[] ventSign,
        double[] ventAreaM2,
        int[] ventOpening) {
    public int count() {
        return low.length;
    }

    public int vents() {
        return ventCell.length;
    }
}
