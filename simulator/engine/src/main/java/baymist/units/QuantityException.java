package baymist.units;

/** Stand-in to be dropped at merge. */
public final class QuantityException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    QuantityException(String message) {
        super(message);
    }
}
