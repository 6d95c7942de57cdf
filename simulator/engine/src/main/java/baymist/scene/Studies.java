package baymist.scene;

import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * What studies over a scene try; a run does not look at it.
 *
 * @param plan limits of a plan of passes
 * @param drilling where access holes may be thought of; null = nowhere
 */
public record Studies(CompareSpec compare, @Nullable DrillingSpec drilling, PlanSpec plan) {
    /** The usual comparison, no drilling, a plan's usual limits. */
    public static final Studies USUAL =
            new Studies(CompareSpec.usual(SourcePlace.of("")), null, PlanSpec.usual(SourcePlace.of("")));
}
