package baymist.voxel;

/**
 * Which surfel carries which share of which piece of sheet, in the order of the triangles; one block's worth.
 *
 * <p>Targets below 0 are {@link #OUTSIDE} (seen from outside air only), {@link #HIDDEN} (inside, but no stored cell faces
 * it) and {@link #UNKNOWN}.
 */
final class AreaShares {
    static final int OUTSIDE = -1;
    static final int HIDDEN = -2;
    static final int UNKNOWN = -3;

    // pieces
    final IntList triangle = new IntList();
    final DoubleList x = new DoubleList();
    final DoubleList y = new DoubleList();
    final DoubleList z = new DoubleList();
    // shares
    final IntList piece = new IntList();
    /** 0 for the front (along the triangle's normal), 1 for the back. */
    final IntList side = new IntList();

    final IntList target = new IntList();
    /** View that takes an unknown share if it turns out to be interior, or -1. */
    final IntList standIn = new IntList();

    final DoubleList areaM2 = new DoubleList();

    int addPiece(int triangleIndex, double px, double py, double pz) {
        triangle.add(triangleIndex);
        x.add(px);
        y.add(py);
        z.add(pz);
        return triangle.size() - 1;
    }

    void addShare(int pieceIndex, int sideIndex, int targetIndex, double area) {
        addShare(pieceIndex, sideIndex, targetIndex, area, -1);
    }

    void addShare(int pieceIndex, int sideIndex, int targetIndex, double area, int standInView) {
        standIn.add(standInView);
        piece.add(pieceIndex);
        side.add(sideIndex);
        target.add(targetIndex);
        areaM2.add(area);
    }

    int shares() {
        return piece.size();
    }
}
