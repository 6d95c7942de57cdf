package baymist.run;

import baymist.voxel.VoxelGrid;

/**
 * About how much memory a run needs, from the arrays that grow with the voxels. With L lattice cells (the ring round the
 * bounding box included), N cavity cells, F face entries, S surfels, B droplet bins, T threads and A air fields made ahead:
 *
 * <pre>
 *   grid  4 L + 40 N + 21 F + 105 S bytes
 *   fog   8 (B (N + S) + min(B, T) (19 N + 8 F + S) + 2 N + 2 F + 2 S)
 *   air   8 (A (F + 2 N + S) + 12 N)
 * </pre>
 *
 * The sheets, the tree over them and Java's own share come on top.
 *
 * @param gridBytes cells, faces and surfels
 * @param fogBytes suspended droplets
 * @param airBytes air fields and the pressure solver
 */
public record MemoryEstimate(long gridBytes, long fogBytes, long airBytes) {
    /** Threads that the estimate reckons with. */
    public static final int THREADS = 4;

    /**
     * The estimate for a grid.
     *
     * @param bins droplet size bins, at least 1
     */
    public static MemoryEstimate of(VoxelGrid grid, int bins) {
        long lattice = (long) grid.nx() * grid.ny() * grid.nz();
        long cells = grid.cellCount();
        long faces = (long) grid.faces().count() + grid.faces().vents();
        long surfels = grid.surfels().count();
        long working = Math.min(bins, THREADS);
        return new MemoryEstimate(
                4 * lattice + 40 * cells + 21 * faces + 105 * surfels,
                8
                        * (bins * (cells + surfels)
                                + working * (19 * cells + 8 * faces + surfels)
                                + 2 * (cells + faces + surfels)),
                8 * (Airing.AHEAD * (faces + 2 * cells + surfels) + 12 * cells));
    }

    public long totalBytes() {
        return gridBytes + fogBytes + airBytes;
    }
}
