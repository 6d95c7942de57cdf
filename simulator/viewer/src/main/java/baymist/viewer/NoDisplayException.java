package baymist.viewer;

/** There is no display to open a window on. The message is one sentence for the user. */
public final class NoDisplayException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NoDisplayException(String message) {
        super(message);
    }
}
