package baymist.run;

import baymist.numeric.Waiting;

/**
 * Memory that the runs of one program may take together: a run takes its share before it makes its arrays, and waits while others hold too much. Which
 * run waits never shows in a result. Threads may share one.
 */
public final class MemoryBudget {
    /** Share of Java's heap that arrays of runs may fill (ASSUMED: the collector needs room to work in). */
    private static final double SHARE = 0.85;

    /** Java's own share and that of sheets, trees and texts, bytes (ASSUMED). */
    private static final long APART = 40_000_000;

    private final long bytes;
    private long taken;

    /** @param bytes that runs may take together, at least 0 */
    public MemoryBudget(long bytes) {
        if (bytes < 0) {
            throw new IllegalArgumentException("a budget of " + bytes + " bytes");
        }
        this.bytes = bytes;
    }

    /** What Java's heap (-Xmx) leaves for runs. */
    public static MemoryBudget ofHeap() {
        return new MemoryBudget(
                Math.max(0, Math.round(SHARE * Runtime.getRuntime().maxMemory()) - APART));
    }

    /** Heap that leaves this much for runs, bytes. */
    static long heapFor(long bytes) {
        return Math.round((bytes + APART) / SHARE);
    }

    public long bytes() {
        return bytes;
    }

    /** A share that is yet to be taken. */
    public Lease lease() {
        return new Lease();
    }

    /** One run's share; closing gives it back. */
    public final class Lease implements AutoCloseable {
        private long mine;

        private Lease() {}

        /**
         * Takes a share, once; waits until the others leave enough.
         *
         * @param wanted bytes; more than the whole budget is the caller's to refuse, and counts as all of it
         */
        public void take(long wanted) {
            synchronized (MemoryBudget.this) {
                if (mine > 0) {
                    // whoever holds some and waits for more could wait for ever
                    throw new IllegalStateException("a share was taken already");
                }
                long share = Math.min(wanted, bytes);
                while (taken > 0 && taken + share > bytes) {
                    await();
                }
                taken += share;
                mine = share;
            }
        }

        private void await() {
            try {
                MemoryBudget.this.wait();
            } catch (InterruptedException e) {
                throw Waiting.broken("waiting for memory", e);
            }
        }

        @Override
        public void close() {
            synchronized (MemoryBudget.this) {
                taken -= mine;
                mine = 0;
                MemoryBudget.this.notifyAll();
            }
        }
    }
}
