package baymist.fog;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * The grid's face entries merged to one link for each pair of cells, and the links chained to lines along each axis.
 * Immutable after construction.
 */
final class FogLinks {
    /** Cells of a link, low and high side of its axis, [links]. */
    final int[] low;

    final int[] high;

    /** Axis of a link, [links]. */
    final byte[] axis;

    /** Link that carries an entry of the FaceSet, [faces]. */
    final int[] linkOfEntry;

    /**
     * Cell behind the low cell, away from the high one, [links]; -1 where a wall, a link through a sheet or an opening, or the edge
     * leaves none: there the flux stays of first order.
     */
    final int[] behindLow;

    /** The same behind the high cell, [links]. */
    final int[] behindHigh;

    /** Lines along each axis, [3]. */
    final FogLines[] lines;

    /** Whether the links of every axis form lines; false where a cell has two links on one side (merged cells). */
    final boolean chained;

    FogLinks(VoxelGrid grid) {
        FaceSet faces = grid.faces();
        int entries = faces.count();
        int[] lowOf = new int[entries];
        int[] highOf = new int[entries];
        byte[] axisOf = new byte[entries];
        linkOfEntry = new int[entries];
        int links = 0;
        for (int e = 0; e < entries; e++) {
            boolean same = links > 0
                    && lowOf[links - 1] == faces.low()[e]
                    && highOf[links - 1] == faces.high()[e]
                    && axisOf[links - 1] == faces.axis()[e];
            if (!same) {
                lowOf[links] = faces.low()[e];
                highOf[links] = faces.high()[e];
                axisOf[links] = faces.axis()[e];
                links++;
            }
            linkOfEntry[e] = links - 1;
        }
        low = Arrays.copyOf(lowOf, links);
        high = Arrays.copyOf(highOf, links);
        axis = Arrays.copyOf(axisOf, links);
        behindLow = new int[links];
        behindHigh = new int[links];
        findBehind(grid, faces);
        lines = new FogLines[3];
        boolean all = true;
        for (int a = 0; a < 3; a++) {
            lines[a] = FogLines.of(this, a, grid.cellCount());
            all &= lines[a].valid();
        }
        chained = all;
    }

    private void findBehind(VoxelGrid grid, FaceSet faces) {
        boolean[] sheet = new boolean[low.length];
        for (int e = 0; e < linkOfEntry.length; e++) {
            sheet[linkOfEntry[e]] |= faces.opening()[e] >= 0;
        }
        for (int l = 0; l < low.length; l++) {
            int towards = 2 * axis[l] + 1;
            boolean open = !sheet[l]
                    && grid.neighbour(low[l], towards) == high[l]
                    && grid.neighbour(high[l], towards - 1) == low[l];
            behindLow[l] = open ? grid.neighbour(low[l], towards - 1) : -1;
            behindHigh[l] = open ? grid.neighbour(high[l], towards) : -1;
        }
    }

    int count() {
        return low.length;
    }
}
