package baymist.fog;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The grid's face entries merged to one link for each pair of cells, and the links chained to lines along each axis.
 * Immutable after construction.
 */
final class FogLinks {
    /** Cells, links or entries in a piece of parallel work; no result depends on it but sums, whose order it fixes. */
    static final int BLOCK = 4096;

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

    /** First entry of the FaceSet of each link, [links + 1]. */
    final int[] entryStart;

    /** Link on each side of a cell, side 2 * axis, one more towards high, or -1, [6 * cells]. */
    final int[] side;

    /** Cell beyond that link, or the cell itself, [6 * cells]. */
    final int[] beside;

    /** Whether a side that a link should stand at was taken by another (merged cells), [links]. */
    final boolean[] extra;

    /** Those links. */
    final int[] extras;

    /** Links of each cell, twice their number, one more where the cell is the high one; first of each cell, [cells + 1]. */
    final int[] ofCell;

    final int[] cellStart;

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
        entryStart = new int[links + 1];
        for (int e = entries - 1; e >= 0; e--) {
            entryStart[linkOfEntry[e]] = e;
        }
        entryStart[links] = entries;
        extra = new boolean[links];
        side = sides(grid.cellCount());
        beside = new int[side.length];
        for (int i = 0; i < side.length; i++) {
            beside[i] = side[i] < 0 ? i / 6 : (i & 1) != 0 ? high[side[i]] : low[side[i]];
        }
        extras = IntStream.range(0, links).filter(l -> extra[l]).toArray();
        cellStart = new int[grid.cellCount() + 1];
        ofCell = byCell();
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

    private int[] sides(int cells) {
        int[] found = new int[6 * cells];
        Arrays.fill(found, -1);
        for (int l = 0; l < low.length; l++) {
            int a = 6 * low[l] + 2 * axis[l] + 1;
            int b = 6 * high[l] + 2 * axis[l];
            extra[l] = found[a] >= 0 || found[b] >= 0;
            if (!extra[l]) {
                found[a] = l;
                found[b] = l;
            }
        }
        return found;
    }

    private int[] byCell() {
        for (int l = 0; l < low.length; l++) {
            cellStart[low[l] + 1]++;
            cellStart[high[l] + 1]++;
        }
        for (int c = 0; c + 1 < cellStart.length; c++) {
            cellStart[c + 1] += cellStart[c];
        }
        int[] next = cellStart.clone();
        int[] found = new int[2 * low.length];
        for (int l = 0; l < low.length; l++) {
            found[next[low[l]]++] = 2 * l;
            found[next[high[l]]++] = 2 * l + 1;
        }
        return found;
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
