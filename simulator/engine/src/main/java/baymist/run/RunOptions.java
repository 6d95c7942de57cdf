package baymist.run;

/**
 * What may change how a run is computed but never what comes out of it.
 *
 * @param threads worker threads, at least 1
 */
public record RunOptions(int threads) {
    public RunOptions {
        if (threads < 1) {
            throw new IllegalArgumentException("threads " + threads + ", at least 1 expected");
        }
    }
}
