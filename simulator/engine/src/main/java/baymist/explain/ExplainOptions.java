package baymist.explain;

import baymist.geom.Vec3;
import baymist.scene.WandSpec;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is asked.
 *
 * @param region number of a bare region, 1 = largest; 0 = by {@code atM}, or the largest
 * @param atM a place, m, or null
 * @param hand further wands at hand
 * @param runs most runs with a change
 * @param seconds wall time after which no further run is begun, s; infinite = no limit. It never changes a run, but how many there are
 */
public record ExplainOptions(int region, @Nullable Vec3 atM, List<WandSpec> hand, int runs, double seconds) {
    /** Enough for every kind of change that a usual scene allows. */
    public static final int RUNS = 18;

    public static final ExplainOptions DEFAULT =
            new ExplainOptions(0, null, List.of(), RUNS, Double.POSITIVE_INFINITY);

    public ExplainOptions {
        hand = List.copyOf(hand);
        if (region < 0 || runs < 0 || !(seconds > 0)) {
            throw new IllegalArgumentException("region " + region + ", runs " + runs + ", seconds " + seconds);
        }
    }

    public ExplainOptions about(Vec3 placeM) {
        return new ExplainOptions(0, placeM, hand, runs, seconds);
    }

    public ExplainOptions about(int otherRegion) {
        return new ExplainOptions(otherRegion, null, hand, runs, seconds);
    }
}
