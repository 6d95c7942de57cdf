package baymist.scene;

import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * What studies over a scene try; a run does not look at it.
 *
 * @param drilling where access holes may be thought of; null = nowhere
 * @param plan limits of a plan of passes
 * @param card what the work card is told beside the job
 */
public record Studies(CompareSpec compare, @Nullable DrillingSpec drilling, PlanSpec plan, CardSpec card) {
    /** The usual card. */
    public Studies(CompareSpec compare, @Nullable DrillingSpec drilling, PlanSpec plan) {
        this(compare, drilling, plan, CardSpec.USUAL);
    }

    /** The usual comparison, no drilling, a plan's usual limits. */
    public static final Studies USUAL =
            new Studies(CompareSpec.usual(SourcePlace.of("")), null, PlanSpec.usual(SourcePlace.of("")));
}
