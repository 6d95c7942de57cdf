package baymist.run;

/**
 * What may change how a run is computed but never what comes out of it.
 *
 * @param threads worker threads, at least 1
 * @param memory what the run takes its memory from; a run that needs more is refused (RUN-008)
 */
public record RunOptions(int threads, MemoryBudget memory) {
    public RunOptions {
        if (threads < 1) {
            throw new IllegalArgumentException("threads " + threads + ", at least 1 expected");
        }
    }

    /** With all of Java's heap. */
    public RunOptions(int threads) {
        this(threads, MemoryBudget.ofHeap());
    }

    /** The same memory, shared with others, for another number of threads. */
    public RunOptions withThreads(int others) {
        return new RunOptions(others, memory);
    }
}
