package baymist.voxel;

/**
 * Interior surface elements, structure of arrays; shapes [count] unless said otherwise.
 *
 * @param cell cavity cell that the surfel faces
 * @param direction side of the cell: 0 = -x, 1 = +x, 2 = -y, 3 = +y, 4 = -z, 5 = +z
 * @param part part index; for a closure the part that the opening is cut into
 * @param closure opening index if this is the closed-off area of an opening, else -1
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
    public int count() {
        return cell.length;
    }
}
