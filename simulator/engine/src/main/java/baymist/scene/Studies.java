package baymist.scene;

import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * What studies over a scene try; a run does not look at it.
 *
 * @param drilling where access holes may be thought of; null = nowhere
 */
public record Studies(CompareSpec compare, @Nullable DrillingSpec drilling) {
    /** The usual comparison, no drilling. */
    public static final Studies USUAL = new Studies(CompareSpec.usual(SourcePlace.of("")), null);
}
