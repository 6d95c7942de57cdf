package baymist.viewer.model;

import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * One piece of background work as it gets on. Any thread may ask; changes come from the worker alone, in the order waiting, running, then
 * one of done, failed, cancelled, which stays.
 */
public final class Job<T> {
    /** Where a job stands. */
    public enum State {
        WAITING,
        RUNNING,
        DONE,
        FAILED,
        CANCELLED
    }

    private final String title;
    private final Work<T> work;
    private final Consumer<Job<T>> listener;
    private final AtomicBoolean cancel = new AtomicBoolean();
    private volatile Now<T> now = new Now<>(State.WAITING, 0, 0, "", null, "");

    /** A state at one time, exchanged as a whole. */
    private record Now<T>(
            State state,
            double done,
            double jobTimeS,
            String stage,
            @Nullable T result,
            String sentence) {}

    Job(String title, Work<T> work, Consumer<Job<T>> listener) {
        this.title = title;
        this.work = work;
        this.listener = listener;
    }

    public String title() {
        return title;
    }

    public State state() {
        return now.state();
    }

    /** Whether it will change no more. */
    public boolean ended() {
        State state = now.state();
        return state != State.WAITING && state != State.RUNNING;
    }

    /** Share that is done, 0..1, never falling. */
    public double done() {
        return now.done();
    }

    /** Simulated time reached, s. */
    public double jobTimeS() {
        return now.jobTimeS();
    }

    /** What it is at, in the words of the user. */
    public String stage() {
        return now.stage();
    }

    /** What came of it; null unless {@link State#DONE}. */
    public @Nullable T result() {
        return now.result();
    }

    /** Why it failed, for the user; "" otherwise. */
    public String sentence() {
        return now.sentence();
    }

    /** Asks it to stop; it does so at its next step. A job that has ended stays as it is. */
    public void cancel() {
        cancel.set(true);
    }

    /** Does the work on the calling thread and never throws but for errors of the machine itself. */
    void run() {
        if (cancel.get()) {
            set(new Now<>(State.CANCELLED, 0, 0, "", null, ""));
            return;
        }
        set(new Now<>(State.RUNNING, 0, 0, "", null, ""));
        try {
            T result = work.run(new Observer());
            if (cancel.get()) {
                set(ended(State.CANCELLED, null, ""));
            } else {
                set(ended(State.DONE, result, ""));
            }
        } catch (RunCancelledException e) {
            set(ended(State.CANCELLED, null, ""));
        } catch (Exception | OutOfMemoryError e) {
            set(cancel.get() ? ended(State.CANCELLED, null, "") : ended(State.FAILED, null, Sentences.of(e)));
        }
    }

    private Now<T> ended(State state, @Nullable T result, String sentence) {
        Now<T> last = now;
        return new Now<>(state, state == State.DONE ? 1 : last.done(), last.jobTimeS(), last.stage(), result, sentence);
    }

    private void set(Now<T> next) {
        now = next;
        listener.accept(this);
    }

    private final class Observer implements RunObserver {
        @Override
        public void stage(String name) {
            Now<T> last = now;
            set(new Now<>(State.RUNNING, last.done(), last.jobTimeS(), name, null, ""));
        }

        @Override
        public void progress(double done, double jobTimeS) {
            Now<T> last = now;
            double share = Math.max(last.done(), Math.min(1, done));
            set(new Now<>(State.RUNNING, share, jobTimeS, last.stage(), null, ""));
        }

        @Override
        public boolean cancelled() {
            return cancel.get();
        }
    }
}
