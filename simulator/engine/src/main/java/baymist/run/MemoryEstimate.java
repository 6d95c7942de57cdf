package baymist.run;

import baymist.airflow.ResolvedCost;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/**
 * About how much memory a run needs, from the arrays that grow with the voxels. With L lattice cells (the ring round the
 * bounding box included), N cavity cells, F face entries, S surfels, B droplet bins in G groups of eight, and A air fields
 * made ahead:
 *
 * <pre>
 *   grid  4 L + 40 N + 21 F + 105 S bytes
 *   fog   N (560 + 256 G + 18 B); measured, with film and hits (docs/benchmarks/memory.md)
 *   air   8 (A (F + 2 N + S) + 12 N) if projected; if resolved with M cells in blocks of n voxels each
 *         8 (2 (F + 2 N + S) + 4 N) + 1900 M + 8 n N (the last where n is above 1, for cells of blocks at sheets: refinement inside blocks, which all differ there)
 * </pre>
 *
 * The sheets, the tree over them and Java's own share, some 40 MB, come on top.
 *
 * @param gridBytes cells, faces and surfels
 * @param fogBytes suspended droplets
 * @param airBytes air fields and the pressure solver
 */
public record MemoryEstimate(long gridBytes, long fogBytes, long airBytes) {
    /** Bytes a cell for the fog whatever its sizes, for each group of sizes that are stepped side by side, and for each size; measured. */
    private static final long FOG_CELL = 560;

    private static final long FOG_GROUP = 256;

    private static final long FOG_BIN = 18;

    private static final int GROUP = 8;

    /**
     * The estimate for a grid.
     *
     * @param bins droplet size bins, at least 1
     */
    public static MemoryEstimate of(VoxelGrid grid, int bins) {
        return of(grid, bins, null);
    }

    /** The same with resolved air, if its cost is given. */
    public static MemoryEstimate of(VoxelGrid grid, int bins, @Nullable ResolvedCost resolved) {
        long lattice = (long) grid.nx() * grid.ny() * grid.nz();
        long cells = grid.cellCount();
        long faces = (long) grid.faces().count() + grid.faces().vents();
        long surfels = grid.surfels().count();
        int groups = (bins + GROUP - 1) / GROUP;
        return new MemoryEstimate(
                4 * lattice + 40 * cells + 21 * faces + 105 * surfels,
                cells * (FOG_CELL + FOG_GROUP * groups + FOG_BIN * bins),
                resolved == null
                        ? 8 * (Airing.AHEAD * (faces + 2 * cells + surfels) + 12 * cells)
                        : 8 * (2 * (faces + 2 * cells + surfels) + 4 * cells) + resolved.bytes(grid));
    }

    public long totalBytes() {
        return gridBytes + fogBytes + airBytes;
    }
}
