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
 */
public record ExplainOptions(String region, @Nullable Vec3 atM, List<WandSpec> hand, int runs, double seconds) {
    /** Enough for every kind of change that a usual scene allows. */
    public static final int RUNS = 18;

    public static final ExplainOptions DEFAULT =
            new ExplainOptions("", null, List.of(), RUNS, Double.POSITIVE_INFINITY);

    public ExplainOptions {
        hand = List.copyOf(hand);
        if (runs < 0 || !(seconds > 0)) {
            throw new IllegalArgumentException("runs " + runs + ", seconds " + seconds);
        }
    }

    public ExplainOptions about(Vec3 placeM) {
        return new ExplainOptions("", placeM, hand, runs, seconds);
    }

    public ExplainOptions about(String otherRegion) {
        return new ExplainOptions(otherRegion, null, hand, runs, seconds);
    }
}
