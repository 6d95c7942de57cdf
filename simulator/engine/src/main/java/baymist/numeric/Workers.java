package baymist.numeric;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

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
        CountDownLatch left = new CountDownLatch(pieces);
        @Nullable Throwable[] failure = new Throwable[pieces];
        for (int t = 0; t < Math.min(threads, pieces); t++) {
            pool.execute(() -> {
                for (int i = next.getAndIncrement(); i < pieces; i = next.getAndIncrement()) {
                    try {
                        work.accept(i);
                    } catch (RuntimeException | Error e) {
                        failure[i] = e;
                    } finally {
                        left.countDown();
                    }
                }
            });
        }
        // Pieces are waited for, not threads: one of those may be busy with what was begun beside.
        await(left);
        for (@Nullable Throwable e : failure) {
            rethrow(e);
        }
    }

    /**
     * Begins a piece of work that goes on beside what the caller does next, {@link #forEach} included. With one thread it is done when it
     * is asked for.
     *
     * @return its result, to be asked for once by the caller; waits and rethrows the failure, if there was one
     */
    public <T> Supplier<T> beside(Supplier<T> work) {
        if (threads == 1) {
            return work;
        }
        FutureTask<T> task = new FutureTask<>(work::get);
        pool.execute(task);
        return () -> {
            try {
                return task.get();
            } catch (InterruptedException e) {
                throw Waiting.broken("computing", e);
            } catch (ExecutionException e) {
                rethrow(e.getCause());
                throw new IllegalStateException(e.getCause());
            }
        };
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

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw Waiting.broken("computing", e);
        }
    }

    private static void rethrow(@Nullable Throwable e) {
        if (e instanceof Error error) {
            throw error;
        }
        if (e instanceof RuntimeException failure) {
            throw failure;
        }
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
