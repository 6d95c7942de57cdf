package baymist.run;

/**
 * How a run is computed. Threads never change what comes out of it, nor does memory as long as every bay is computed.
 *
 * @param threads worker threads, at least 1
 * @param memory what the run takes its memory from; a run that needs more is refused (RUN-008)
 * @param part which bays may be left out
 */
public record RunOptions(int threads, MemoryBudget memory, PartRule part) {
    public RunOptions {
        if (threads < 1) {
            throw new IllegalArgumentException("threads " + threads + ", at least 1 expected");
        }
    }

    /** With every bay. */
    public RunOptions(int threads, MemoryBudget memory) {
        this(threads, memory, PartRule.WHOLE);
    }

    /** With all of Java's heap. */
    public RunOptions(int threads) {
        this(threads, MemoryBudget.ofHeap());
    }

    /** The same memory, shared with others, for another number of threads. */
    public RunOptions withThreads(int others) {
        return new RunOptions(others, memory, part);
    }

    /** The same with another rule on what may be left out. */
    public RunOptions withPart(PartRule rule) {
        return new RunOptions(threads, memory, rule);
    }
}
