package baymist.study;

import baymist.numeric.Waiting;
import baymist.numeric.Workers;
import baymist.run.RunCancelledException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Candidates in the order of their bounds, taken one after the other by whichever thread is free; see {@link Comparison}. */
final class CompareQueue {
    private final PlanningRun runs;
    private final List<Candidate> list;
    private final Bound[] bounds;
    private final @Nullable CompareRow[] rows;

    /** Score of each place in the queue once it is known, -1 where it was cut or refused; NaN before. */
    private double[] score = {};

    /** Places that failed or were cancelled: nobody waits for them any more. */
    private boolean[] broken = {};

    private int told;

    /** @param rows of the candidates; those of the queue are put in */
    CompareQueue(PlanningRun runs, List<Candidate> list, Bound[] bounds, @Nullable CompareRow[] rows) {
        this.runs = runs;
        this.list = list;
        this.bounds = bounds;
        this.rows = rows;
    }

    /**
     * Runs or cuts them all.
     *
     * @param order candidates, highest bound first
     */
    void run(List<Integer> order, int atOnce, Comparison.Watch watch) {
        score = new double[order.size()];
        Arrays.fill(score, Double.NaN);
        broken = new boolean[score.length];
        told = rows.length - order.size();
        PlanningRun.Watch stop = new PlanningRun.Watch() {
            @Override
            public boolean cancelled() {
                return watch.cancelled();
            }
        };
        // Places are handed out in their order, so those that a thread waits for are done, or are being done by others.
        try (Workers workers = new Workers(atOnce)) {
            workers.forEach(score.length, place -> {
                try {
                    one(order.get(place), place, watch, stop);
                } catch (RuntimeException e) {
                    broken(place);
                    throw e;
                }
            });
        }
    }

    private void one(int i, int place, Comparison.Watch watch, PlanningRun.Watch stop) {
        double best = bestBefore(place - Comparison.AHEAD);
        RunCancelledException.throwIf(watch.cancelled());
        Candidate c = list.get(i);
        if (bounds[i].reached() < best) {
            rows[i] = CompareRow.cut(c, cutWords(bounds[i], best));
            tell(place, -1, c.words() + ": cut", watch);
            return;
        }
        StudyResult r = runs.runAll(List.of(c.scene()), 1, stop).get(0);
        String refused = r.refused();
        rows[i] = refused == null ? CompareRow.run(c, r) : CompareRow.refused(c, refused);
        tell(
                place,
                refused == null ? Compared.score(r) : -1,
                c.words() + ": "
                        + (refused == null
                                ? String.format(Locale.ROOT, "reached %.1f %%", 100 * r.reached())
                                : "can't be done"),
                watch);
    }

    /** Best score of the places up to one, once all of these are known. */
    private synchronized double bestBefore(int last) {
        double best = 0;
        for (int p = 0; p <= last; p++) {
            while (Double.isNaN(score[p])) {
                RunCancelledException.throwIf(broken[p]);
                try {
                    wait();
                } catch (InterruptedException e) {
                    throw Waiting.broken("comparing", e);
                }
            }
            best = Math.max(best, score[p]);
        }
        return best;
    }

    private synchronized void broken(int place) {
        broken[place] = true;
        notifyAll();
    }

    private synchronized void tell(int place, double found, String words, Comparison.Watch watch) {
        score[place] = found;
        told++;
        notifyAll();
        watch.progress(told / (double) rows.length, words);
    }

    private static String cutWords(Bound bound, double best) {
        return String.format(
                Locale.ROOT,
                "can't win: it reaches %.1f %% at most (%s), and the best so far scores %.1f %% (half reached, half protected)",
                100 * bound.reached(),
                bound.why(),
                100 * best);
    }
}
