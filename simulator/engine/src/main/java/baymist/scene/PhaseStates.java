package baymist.scene;

/** States of an opening while spraying, while the fog hangs and afterwards (close-up). */
public record PhaseStates(OpeningState pass, OpeningState hang, OpeningState after) {
    public static final PhaseStates ALWAYS_OPEN =
            new PhaseStates(OpeningState.OPEN, OpeningState.OPEN, OpeningState.OPEN);

    /** When an opening is in a state. */
    public enum Phase {
        PASS,
        HANG,
        AFTER
    }

    /** The same with another state in one phase. */
    public PhaseStates with(Phase phase, OpeningState state) {
        return switch (phase) {
            case PASS -> new PhaseStates(state, hang, after);
            case HANG -> new PhaseStates(pass, state, after);
            case AFTER -> new PhaseStates(pass, hang, state);
        };
    }
}
