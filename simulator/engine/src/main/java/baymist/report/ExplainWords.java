package baymist.report;

import baymist.explain.Explanation;

/** An explanation in one paragraph, to be read aloud. */
public final class ExplainWords {
    private ExplainWords() {}

    /** {@link Explanation#sentences()} in a row. */
    public static String summary(Explanation e) {
        return String.join(" ", e.sentences());
    }
}
