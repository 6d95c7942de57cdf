package baymist.voxel;

/**
 * Interior surface elements, structure of arrays; shapes [count] unless said otherwise.
 *
 * @param cell cavity cell that the surfel faces
 * @param direction side of the cell: 0 = -x, 1 = +x, 2 = -y, 3 = +y, 4 = -z, 5 = +z
 * @param part part index; for a closure the part that the opening is cut into
 * @param closure opening index if this is the closed-off area of an opening, else {@link #STRUCTURE} or, on a protected
 *     item (then {@code part} tells which), {@link #PROTECTED}
 * @param areaM2 true sheet area, m²
 * @param normalX,normalY,normalZ unit normal pointing into the air
 * @param centreX,centreY,centreZ centroid, m
 * @param neighbourStart [count + 1] offsets into {@code neighbour}
 * @param neighbour surfels that share an edge, ascending within each surfel; never across a sheet
 */
public record SurfelSet(
        int[] cell,
        byte[] direction,
        int[] part,
        int[] closure,
        double[] areaM2,
        double[] normalX,
        double[] normalY,
        double[] normalZ,
        double[] centreX,
        double[] centreY,
        double[] centreZ,
        int[] neighbourStart,
        int[] neighbour) {
    /** {@code closure} of structure that is to be treated. */
    public static final int STRUCTURE = -1;

    /** {@code closure} of a protected item's surface: no structure, film on it is dose. */
    public static final int PROTECTED = -2;

    /** Whether a surfel is structure to be treated: neither an opening's closure nor a protected item. */
    public boolean isStructure(int surfel) {
        return closure[surfel] == STRUCTURE;
    }

    public boolean isProtected(int surfel) {
        return closure[surfel] == PROTECTED;
    }

    public int count() {
        return cell.length;
    }
}
