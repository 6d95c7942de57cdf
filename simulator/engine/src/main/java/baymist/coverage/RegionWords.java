package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.voxel.VoxelGrid;

/** Says where any set of surfels lies, in structure words, as it is said of bare regions. */
public final class RegionWords {
    private RegionWords() {}

    /**
     * The place of some surfels.
     *
     * @param surfels not empty, of structure, ascending
     */
    public static String of(Cavity cavity, VoxelGrid grid, int[] surfels) {
        return new RegionDescriber(cavity, grid).describe(surfels);
    }
}
