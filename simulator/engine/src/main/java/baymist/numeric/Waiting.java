package baymist.numeric;

/** What a wait that was broken off has to do. */
public final class Waiting {
    private Waiting() {}

    /** Marks the thread as interrupted again, for those above, and makes the error to throw: "interrupted while ...". */
    public static IllegalStateException broken(String waitingFor, InterruptedException e) {
        Thread.currentThread().interrupt();
        return new IllegalStateException("interrupted while " + waitingFor, e);
    }
}
