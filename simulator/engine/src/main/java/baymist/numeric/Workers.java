package baymist.numeric;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;

/**
 * A fixed team of threads for independent pieces of work. Which thread does a piece never shows in the result: pieces
 * write to places of their own, and whatever is summed is summed afterwards in the order of the pieces.
 */
public final class Workers implements AutoCloseable {
    private final int threads;
    private final ExecutorService pool;

    /** @param threads at least 1 */
    public Workers(int threads) {
        if (threads < 1) {
            throw new IllegalArgumentException("threads " + threads + ", at least 1 expected");
        }
        this.threads = threads;
        this.pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "baymist-worker");
            thread.setDaemon(true);
            return thread;
        });
    }

    public int threads() {
        return threads;
    }

    /** Runs {@code work} for 0..pieces-1, each exactly once, and waits. The first failure (lowest piece) is rethrown. */
    public void forEach(int pieces, IntConsumer work) {
        if (threads == 1 || pieces <= 1) {
            for (int i = 0; i < pieces; i++) {
                work.accept(i);
            }
            return;
        }
        AtomicInteger next = new AtomicInteger();
        RuntimeException[] failure = new RuntimeException[pieces];
        List<Future<?>> running = new ArrayList<>();
        for (int t = 0; t < Math.min(threads, pieces); t++) {
            running.add(pool.submit(() -> {
                for (int i = next.getAndIncrement(); i < pieces; i = next.getAndIncrement()) {
                    try {
                        work.accept(i);
                    } catch (RuntimeException e) {
                        failure[i] = e;
                    }
                }
            }));
        }
        for (Future<?> f : running) {
            await(f);
        }
        for (RuntimeException e : failure) {
            if (e != null) {
                throw e;
            }
        }
    }

    /** Splits 0..count-1 into blocks of fixed size (independent of the thread count): {@code work(from, to)}. */
    public void forBlocks(int count, int blockSize, Block work) {
        int blocks = (count + blockSize - 1) / blockSize;
        forEach(blocks, b -> work.run(b * blockSize, Math.min(count, (b + 1) * blockSize)));
    }

    /** A half-open range of indices. */
    @FunctionalInterface
    public interface Block {
        void run(int from, int to);
    }

    private static void await(Future<?> f) {
        try {
            f.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while computing", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
