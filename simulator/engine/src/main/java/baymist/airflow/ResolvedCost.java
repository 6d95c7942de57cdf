package baymist.airflow;

import baymist.voxel.VoxelGrid;
import java.util.BitSet;

/**
 * What resolved air would take, before it is begun. Steps are held to be right within a factor of two (a test compares the
 * demonstration scenes' estimate with their count).
 *
 * @param factor fog cells along each side of a block
 * @param cells of the air's grid
 * @param steps about, from the jets' cap, the blocks and the times
 */
public record ResolvedCost(int factor, long cells, long steps) {
    /** Steps times cells up to which finer blocks are taken by themselves (ASSUMED: some ten seconds of one core of a desk computer). */
    public static final double AFFORDABLE = 2e7;

    /** Steps times cells that {@code auto} takes on even with the coarsest blocks (ASSUMED: about a minute of one core). */
    public static final double BEARABLE = 1.2e8;

    /** Coarsest blocks, voxels a side. */
    private static final int COARSEST = 4;

    /**
     * Speed whose Courant number the steps settle at while a jet blows, over the cap: a face exchanges air with its
     * neighbours on three axes.
     */
    private static final double SPEED_SHARE = 0.8;

    /** Speed of the quiet phase that the estimate reckons with, m/s: a front of dense fog. */
    private static final double QUIET_M_PER_S = 0.1;

    /**
     * Cost of one block size.
     *
     * @param sprayS seconds with the trigger held
     * @param quietS seconds without
     */
    public static ResolvedCost of(VoxelGrid grid, double sprayS, double quietS, int factor) {
        double h = factor
                * Math.min(
                        grid.sizeM().x(),
                        Math.min(grid.sizeM().y(), grid.sizeM().z()));
        double spraying = sprayS * SPEED_SHARE * StartField.SPEED_CAP_M_PER_S / (FlowSettings.COURANT * h);
        double quiet = quietS * Math.max(QUIET_M_PER_S / (FlowSettings.COURANT * h), 1 / FlowSettings.LARGEST_STEP_S);
        return new ResolvedCost(factor, FlowGrid.cellCount(grid, factor), Math.round(Math.ceil(spraying + quiet)));
    }

    /** The finest blocks that are affordable, or the coarsest. */
    public static ResolvedCost affordable(VoxelGrid grid, double sprayS, double quietS) {
        ResolvedCost cost = of(grid, sprayS, quietS, 1);
        for (int factor = 2; factor <= COARSEST && !cost.isAffordable(); factor++) {
            cost = of(grid, sprayS, quietS, factor);
        }
        return cost;
    }

    /** Cells times steps. */
    public double work() {
        return (double) cells * steps;
    }

    public boolean isAffordable() {
        return work() <= AFFORDABLE;
    }

    public boolean isBearable() {
        return work() <= BEARABLE;
    }

    /**
     * About what the solver of this grid holds, bytes: some 1900 a cell, and the refinement's bands, a block's side squared twice a voxel. Blocks away from sheets look alike and
     * share one.
     */
    public long bytes(VoxelGrid grid) {
        long band = (long) factor * factor + 3;
        return 1900 * cells + (factor == 1 ? 0 : 2 * 8 * band * cellsInBlocksAtSheets(grid));
    }

    private long cellsInBlocksAtSheets(VoxelGrid grid) {
        BitSet atSheets = new BitSet();
        for (int cell : grid.surfels().cell()) {
            atSheets.set(block(grid, cell));
        }
        long count = 0;
        for (int c = 0; c < grid.cellCount(); c++) {
            count += atSheets.get(block(grid, c)) ? 1 : 0;
        }
        return count;
    }

    private int block(VoxelGrid grid, int cell) {
        int across = grid.nx() / factor + 1;
        int along = grid.ny() / factor + 1;
        return grid.i(cell) / factor + across * (grid.j(cell) / factor + along * (grid.k(cell) / factor));
    }
}
