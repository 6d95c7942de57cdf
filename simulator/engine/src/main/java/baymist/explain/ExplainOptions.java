package baymist.explain;

import baymist.geom.Vec3;
import baymist.scene.WandSpec;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is asked.
 *
 * @param region number (1 = largest) or label of a bare region; "" = by {@code atM}, or the largest
 * @param atM a place, m, or null
 * @param hand further wands at hand
 * @param runs most runs with a change
 * @param seconds wall time after which no further run is begun, s; infinite = no limit. It never changes a run, but how many there are
 * @param all run every change that comes to mind, even where one of those that the facts speak for is enough
 * @param cells cells that a planning run should not exceed by much
 */
public record ExplainOptions(
        String region, @Nullable Vec3 atM, List<WandSpec> hand, int runs, double seconds, boolean all, int cells) {
    /** Enough for every kind of change that a usual scene allows. */
    public static final int RUNS = 18;

    /** Cells of a planning run that takes seconds. ASSUMED. */
    public static final int CELLS = 6_000;

    public static final ExplainOptions DEFAULT =
            new ExplainOptions("", null, List.of(), RUNS, Double.POSITIVE_INFINITY, false, CELLS);

    public ExplainOptions {
        hand = List.copyOf(hand);
        if (runs < 0 || !(seconds > 0) || cells < 100) {
            throw new IllegalArgumentException("runs " + runs + ", seconds " + seconds + ", cells " + cells);
        }
    }

    /** About the surface at a place, m. */
    public ExplainOptions about(Vec3 placeM) {
        return new ExplainOptions("", placeM, hand, runs, seconds, all, cells);
    }

    /** About a bare region by number or label. */
    public ExplainOptions about(String otherRegion) {
        return new ExplainOptions(otherRegion, null, hand, runs, seconds, all, cells);
    }

    /** With every change run, or only until one of those that the facts speak for is enough. */
    public ExplainOptions all(boolean every) {
        return new ExplainOptions(region, atM, hand, runs, seconds, every, cells);
    }

    /** With another bound on the number of runs with a change. */
    public ExplainOptions runs(int most) {
        return new ExplainOptions(region, atM, hand, most, seconds, all, cells);
    }

    /** With other planning voxels. */
    public ExplainOptions cells(int most) {
        return new ExplainOptions(region, atM, hand, runs, seconds, all, most);
    }
}
