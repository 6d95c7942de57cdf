package baymist.run;

import baymist.geom.Vec3;
import baymist.spray.SurfelFinder;
import baymist.voxel.SurfelLocator;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Finds voxel elements for the spray. Where the voxels hold no surfel of the sheet that is struck (a trailing edge thinner than a
 * voxel), what lands there is given to the largest surfel round the nearest cavity cell: it is film, not fog, and it stays at
 * the place.
 */
final class VoxelFinder implements SurfelFinder {
    /** Cells looked at round a point before giving up, enough for a ring of three voxels. */
    private static final int MOST_CELLS = 128;

    private final VoxelGrid grid;
    private final SurfelLocator locator;

    /** Largest structure surfel of each cell or -1, [cells]. */
    private final int[] largest;

    VoxelFinder(VoxelGrid grid, SurfelLocator locator) {
        this.grid = grid;
        this.locator = locator;
        this.largest = new int[grid.cellCount()];
        Arrays.fill(largest, -1);
        SurfelSet surfels = grid.surfels();
        for (int s = 0; s < surfels.count(); s++) {
            int c = surfels.cell()[s];
            if (surfels.closure()[s] < 0 && (largest[c] < 0 || surfels.areaM2()[s] > surfels.areaM2()[largest[c]])) {
                largest[c] = s;
            }
        }
    }

    @Override
    public int surfelNear(Vec3 pointM, int part, Vec3 towardsAir) {
        int surfel = locator.surfelNear(pointM, part, towardsAir);
        return surfel >= 0 ? surfel : anySurfel(locator.cellNear(pointM, towardsAir));
    }

    /** Breadth first through open sides: the first cell with a surfel. */
    private int anySurfel(int start) {
        if (start < 0) {
            return -1;
        }
        int[] queue = new int[MOST_CELLS];
        int size = 1;
        queue[0] = start;
        for (int head = 0; head < size; head++) {
            int cell = queue[head];
            if (largest[cell] >= 0) {
                return largest[cell];
            }
            for (int d = 0; d < 6 && size < MOST_CELLS; d++) {
                int next = grid.neighbour(cell, d);
                if (next >= 0 && !holds(queue, size, next)) {
                    queue[size++] = next;
                }
            }
        }
        return -1;
    }

    private static boolean holds(int[] queue, int size, int cell) {
        for (int i = 0; i < size; i++) {
            if (queue[i] == cell) {
                return true;
            }
        }
        return false;
    }

    @Override
    public int closureNear(Vec3 pointM, int opening, Vec3 towardsAir) {
        return locator.closureNear(pointM, opening, towardsAir);
    }

    @Override
    public int cellNear(Vec3 pointM, Vec3 towardsAir) {
        return locator.cellNear(pointM, towardsAir);
    }
}
