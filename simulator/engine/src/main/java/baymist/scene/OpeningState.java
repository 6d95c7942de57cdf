package baymist.scene;

/** State of an opening in one phase; everything but {@code OPEN} holds air and fog back and catches product. */
public enum OpeningState {
    OPEN,
    CLOSED,
    TAPED,
    PLUGGED
}
