package baymist.voxel;

/** Air volume of each cavity cell. */
final class CellVolumes {
    /** No cell is emptier than this share of a voxel (ASSUMED: keeps time steps bounded). */
    private static final double LEAST_SHARE = 0.05;

    /**
     * The boundary cells may be stretched or shrunk by at most this share to meet the exact volume (ASSUMED: what lies in
     * edges too thin for the voxels goes to the cells beside them; beyond a half the voxels are no picture of the cavity).
     */
    private static final double MOST_STRETCH = 0.5;

    private CellVolumes() {}

    /**
     * Volume by the distance of the sheets on the six sides, docs/theory/voxels.md equation (4):
     * V = hx hy hz prod_axis (1 + sum_sides n_e² (s - 1/2)), s = distance from the centre in pitches. Exact for planes
     * along the lattice; of zero mean error for planes that cross it obliquely.
     */
    static double[] bySides(Lattice lattice, BlockedFaces blocked, CavityCells cells, SheetOrientation sheets) {
        double[] volume = new double[cells.count()];
        for (int cell = 0; cell < volume.length; cell++) {
            double share = 1;
            for (int axis = 0; axis < 3; axis++) {
                double extent = 1;
                for (int d = 2 * axis; d <= 2 * axis + 1; d++) {
                    int slot = blocked.slot(lattice.faceKey(cells.latticeOf(cell), d));
                    if (slot >= 0) {
                        boolean high = (d & 1) == 0;
                        int view = high ? 2 * slot + 1 : 2 * slot;
                        double s = high ? 1 - blocked.position(view) : blocked.position(view);
                        double n = sheets.normal(blocked.triangle(view), axis);
                        extent += n * n * (s - 0.5);
                    }
                }
                share *= extent;
            }
            volume[cell] = lattice.cellVolumeM3() * Math.max(LEAST_SHARE, share);
        }
        return volume;
    }

    /**
     * Stretches the boundary cells by one common factor so that all cells together hold the exact volume; leaves them
     * alone if that volume isn't known or the factor would be out of reason.
     *
     * @param exactM3 volume inside the interior surface, or NaN
     */
    static void matchTotal(double[] volume, Lattice lattice, BlockedFaces blocked, CavityCells cells, double exactM3) {
        double total = 0;
        double boundary = 0;
        for (int cell = 0; cell < volume.length; cell++) {
            total += volume[cell];
            boundary += isBoundary(lattice, blocked, cells, cell) ? volume[cell] : 0;
        }
        double stretch = boundary > 0 ? (exactM3 - total) / boundary : Double.NaN;
        if (!(Math.abs(stretch) <= MOST_STRETCH)) {
            return;
        }
        for (int cell = 0; cell < volume.length; cell++) {
            if (isBoundary(lattice, blocked, cells, cell)) {
                volume[cell] *= 1 + stretch;
            }
        }
    }

    private static boolean isBoundary(Lattice lattice, BlockedFaces blocked, CavityCells cells, int cell) {
        for (int d = 0; d < 6; d++) {
            if (blocked.slot(lattice.faceKey(cells.latticeOf(cell), d)) >= 0) {
                return true;
            }
        }
        return false;
    }
}
