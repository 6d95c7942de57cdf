package baymist.run;

/** The user asked for an end; nothing was written. */
public final class RunCancelledException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public RunCancelledException() {
        super("the run was cancelled");
    }

    /** Stops here if asked to. */
    public static void throwIf(boolean cancelled) {
        if (cancelled) {
            throw new RunCancelledException();
        }
    }
}
