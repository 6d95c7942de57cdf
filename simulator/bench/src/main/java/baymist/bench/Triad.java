package baymist.bench;

import baymist.numeric.Workers;
import java.lang.management.ManagementFactory;
import java.util.Arrays;

/** What this machine's memory carries, the measure that kernels are held against: McCalpin's triad (STREAM), 24 bytes an element. */
final class Triad {
    /** Three arrays of this many doubles, 192 MB together, are far beyond any cache. */
    private static final int ELEMENTS = 8_000_000;

    private static final int ROUNDS = 10;

    private Triad() {}

    /** Bytes a second, best of ten, by the clock of {@link #clockNs}. */
    static double bytesPerS(Workers workers) {
        int threads = workers.threads();
        double[] a = new double[ELEMENTS];
        double[] b = new double[ELEMENTS];
        double[] c = new double[ELEMENTS];
        Arrays.fill(b, 1);
        Arrays.fill(c, 2);
        double best = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long start = clockNs(threads);
            workers.forBlocks(ELEMENTS, ELEMENTS / threads, (from, to) -> {
                for (int i = from; i < to; i++) {
                    a[i] = b[i] + 3 * c[i];
                }
            });
            best = Math.max(best, 24.0 * ELEMENTS / (clockNs(threads) - start) * 1e9);
        }
        if (a[ELEMENTS / 2] != 7) {
            throw new IllegalStateException("triad");
        }
        return best;
    }

    /** Nanoseconds: with one thread those of its own processor time, which other programs don't lengthen, else those of the clock. */
    static long clockNs(int threads) {
        return threads == 1 ? ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() : System.nanoTime();
    }

    /** Processor time of all threads of this process, ns. */
    static long processorNs() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof com.sun.management.OperatingSystemMXBean os
                ? os.getProcessCpuTime()
                : 0;
    }
}
