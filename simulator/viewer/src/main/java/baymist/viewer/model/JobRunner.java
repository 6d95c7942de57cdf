package baymist.viewer.model;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Does background work on one thread of its own, the newest first of all: a new job cancels the one before it. */
public final class JobRunner implements AutoCloseable {
    /** How long closing waits for a job to stop, s. */
    private static final long PATIENCE_S = 10;

    private final ExecutorService worker = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "baymist work");
        thread.setDaemon(true);
        return thread;
    });

    private @Nullable Job<?> current;

    /**
     * Begins a job; the one before it is cancelled and ends first.
     *
     * @param listener called on the worker thread at every change
     * @throws IllegalStateException after {@link #close}
     */
    public synchronized <T> Job<T> start(String title, Work<T> work, Consumer<Job<T>> listener) {
        cancel();
        Job<T> job = new Job<>(title, work, listener);
        try {
            worker.execute(job::run);
        } catch (RejectedExecutionException e) {
            throw new IllegalStateException("the runner has been closed", e);
        }
        current = job;
        return job;
    }

    /** Cancels what runs or waits. */
    public synchronized void cancel() {
        Job<?> job = current;
        if (job != null) {
            job.cancel();
        }
    }

    /** Whether a job runs or waits. */
    public synchronized boolean busy() {
        Job<?> job = current;
        return job != null && !job.ended();
    }

    /** Cancels what runs and waits for it to stop, up to ten seconds. */
    @Override
    public void close() {
        cancel();
        worker.shutdown();
        try {
            if (!worker.awaitTermination(PATIENCE_S, TimeUnit.SECONDS)) {
                worker.shutdownNow();
            }
        } catch (InterruptedException e) {
            worker.shutdownNow();
            Thread.currentThread().interrupt();
        }
    }
}
