package baymist.explain;

/** Why a place stays bare: the whole published list. Which one it is says {@link CauseRule}, by docs/theory/explain.md, section 4. */
public enum Cause {
    MASKED("masked", "A mask, tape or plug keeps the product off."),
    CLOSED_EARLY("closed early", "A panel is shut while fog still has to pass."),
    ACCESS("access", "The tip does not get near."),
    PATTERN("pattern", "The tip sees the place but the jets point elsewhere."),
    SHADOW("shadow", "Something stands between the tip and the place."),
    DISTANCE("distance", "The jets arrive too slow for their drops to land."),
    HOLE_TOO_SMALL("hole too small", "What fog has to pass is too small."),
    DEAD_END("dead end", "Air cannot leave, so no fog flows in."),
    SETTLING("settling", "The fog sinks before it gets there, or cannot stick where it does."),
    TIME("time", "Fog is still there when the job ends."),
    QUANTITY("quantity", "Too little product is sprayed.");

    private final String word;
    private final String sentence;

    Cause(String word, String sentence) {
        this.word = word;
        this.sentence = sentence;
    }

    /** As it is written in reports and JSON. */
    public String word() {
        return word;
    }

    /** What it means, in one sentence. */
    public String sentence() {
        return sentence;
    }
}
