package baymist.coverage;

import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;

/** The structure's surfels bay by bay, ascending, so that a look at one bay does not go through all. Immutable. */
final class BaySurfels {
    private final int[] start;
    private final int[] list;

    BaySurfels(VoxelGrid grid) {
        SurfelSet surfels = grid.surfels();
        start = new int[grid.bays().size() + 1];
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                start[grid.bayOfCell(surfels.cell()[s]) + 1]++;
            }
        }
        for (int b = 1; b < start.length; b++) {
            start[b] += start[b - 1];
        }
        list = new int[start[start.length - 1]];
        int[] next = start.clone();
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                list[next[grid.bayOfCell(surfels.cell()[s])]++] = s;
            }
        }
    }

    /** Index of a bay's first surfel in the list. */
    int start(int bay) {
        return start[bay];
    }

    /** One after the index of its last. */
    int end(int bay) {
        return start[bay + 1];
    }

    /** Surfel at an index. */
    int at(int index) {
        return list[index];
    }
}
