package baymist.scene;

/** States of an opening while spraying, while the fog hangs and afterwards (close-up). */
public record PhaseStates(OpeningState pass, OpeningState hang, OpeningState after) {
    public static final PhaseStates ALWAYS_OPEN =
            new PhaseStates(OpeningState.OPEN, OpeningState.OPEN, OpeningState.OPEN);
}
