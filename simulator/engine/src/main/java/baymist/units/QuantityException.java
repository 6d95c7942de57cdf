package baymist.units;

/**
 * A text that is not a quantity of the wanted dimension. The message is one sentence without the place, fit to follow "file:
 * line: ".
 */
public final class QuantityException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** What is wrong with the text. */
    public enum Kind {
        /** A number stands alone. */
        MISSING_UNIT,
        /** The unit is in no table. */
        UNKNOWN_UNIT,
        /** The unit measures something else. */
        WRONG_UNIT,
        /** The number can't be read. */
        BAD_NUMBER
    }

    private final Kind kind;

    QuantityException(Kind kind, String message) {
        super(message);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }
}
