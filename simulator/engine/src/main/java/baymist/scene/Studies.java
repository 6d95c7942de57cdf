package baymist.scene;

import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * What studies over a scene try; a run does not look at it.
 *
 * @param drilling where access holes may be thought of; null = nowhere
 * @param card what the work card is told beside the job
 */
public record Studies(CompareSpec compare, @Nullable DrillingSpec drilling, CardSpec card) {
    /** The usual card. */
    public Studies(CompareSpec compare, @Nullable DrillingSpec drilling) {
        this(compare, drilling, CardSpec.USUAL);
    }

    /** The usual comparison, no drilling. */
    public static final Studies USUAL = new Studies(CompareSpec.usual(SourcePlace.of("")), null);
}
