package baymist.voxel;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import java.util.Collections;
import java.util.List;
import java.util.function.IntPredicate;

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

    /** Whether a point lies nearer to a bay that the grid holds than to any other; a tie, such as on a rib, counts. */
    public boolean isNear(Vec3 pointM) {
        return near(bays, this::holds, pointM);
    }

    static boolean near(List<Bay> bays, IntPredicate kept, Vec3 point) {
        double mine = Double.POSITIVE_INFINITY;
        double other = Double.POSITIVE_INFINITY;
        for (int b = 0; b < bays.size(); b++) {
            double gap = gap2(bays.get(b).bounds(), point);
            if (kept.test(b)) {
                mine = Math.min(mine, gap);
            } else {
                other = Math.min(other, gap);
            }
        }
        return mine <= other;
    }

    /** Square of the distance of a point from a box, 0 inside, m². */
    private static double gap2(Box3 box, Vec3 p) {
        double sum = 0;
        for (int axis = 0; axis < 3; axis++) {
            double gap = Math.max(
                    0,
                    Math.max(
                            box.min().get(axis) - p.get(axis),
                            p.get(axis) - box.max().get(axis)));
            sum += gap * gap;
        }
        return sum;
    }
}
