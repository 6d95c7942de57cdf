package baymist.airflow;

import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * What resolved air would take, before it is begun.
 *
 * @param factor fog cells along each side of a block
 * @param cells of the air's grid
 * @param steps about, from the jets' cap, the blocks and the times
 */
public record ResolvedCost(int factor, long cells, long steps) {
    /** Steps times cells that a run takes on by itself (ASSUMED: about a minute on one core of a desk computer). */
    public static final double AFFORDABLE = 6e7;

    /** Speed that the fast cells settle at, over the cap, and the number of directions that share a face's exchange. */
    private static final double SPEED_SHARE = 0.8;

    /** Speed of the quiet phase that the estimate reckons with, m/s: a front of dense fog. */
    private static final double QUIET_M_PER_S = 0.1;

    /** Cost of one block size. */
    public static ResolvedCost of(VoxelGrid grid, List<AirWindow> windows, int factor) {
        double h = factor
                * Math.min(
                        grid.sizeM().x(),
                        Math.min(grid.sizeM().y(), grid.sizeM().z()));
        double steps = 0;
        for (AirWindow w : windows) {
            double speed = w.hits() == null ? QUIET_M_PER_S : SPEED_SHARE * StartField.SPEED_CAP_M_PER_S;
            steps += w.durationS() * speed / (FlowSettings.COURANT * h);
        }
        return new ResolvedCost(factor, FlowGrid.cellCount(grid, factor), Math.round(Math.ceil(steps)));
    }

    /** The finest blocks that are affordable, or the coarsest. */
    public static ResolvedCost affordable(VoxelGrid grid, List<AirWindow> windows) {
        ResolvedCost cost = of(grid, windows, 1);
        for (int factor = 2; factor <= 4 && !cost.isAffordable(); factor *= 2) {
            cost = of(grid, windows, factor);
        }
        return cost;
    }

    public double work() {
        return (double) cells * steps;
    }

    public boolean isAffordable() {
        return work() <= AFFORDABLE;
    }
}
