package baymist.voxel;

import java.util.Collections;
import java.util.List;

/**
 * What a grid was taken from when it holds only some bays of a structure (docs/theory/voxels.md, 12).
 *
 * @param bays every bay of the whole, in its order
 * @param computed indices into {@code bays} of those that the grid holds, ascending; the grid's own bays in their order
 * @param cut openings of which one side is left out, ascending; their faces are vents of the grid
 * @param wholeCells cells of the whole
 */
public record PartOfWhole(List<Bay> bays, List<Integer> computed, List<Integer> cut, int wholeCells) {
    public PartOfWhole {
        bays = List.copyOf(bays);
        computed = List.copyOf(computed);
        cut = List.copyOf(cut);
    }

    /** Whether one side of an opening is left out. */
    public boolean isCut(int opening) {
        return Collections.binarySearch(cut, opening) >= 0;
    }

    /** Whether the grid holds a bay of the whole. */
    public boolean holds(int bay) {
        return Collections.binarySearch(computed, bay) >= 0;
    }
}
