package baymist.study;

import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A comparison: rows best first, then those that were cut or can't be done, in the order of the candidates. Finalists, which were
 * run in full, stand
 * before the others and are ranked by their full runs.
 *
 * <p>Better is: fewer protected items hit; then more reached and protected area together, to a tenth of a point; then more seams; then less
 * product, fewer holes, fewer panels; then the number.
 *
 * @param alike clock angles that were left out because the tip looks the same at them
 * @param shut bays that none of the candidates that can be done gets into
 * @param own the best one as it stands in the scene, its own air included; null where it was not run so
 */
public record Compared(
        Scene scene,
        Planning planning,
        List<CompareRow> rows,
        int alike,
        List<ShutBay> shut,
        @Nullable StudyResult own) {
    /** A tenth of a point of coverage: differences below it don't rank. */
    private static final double STEP = 1e-3;

    /** How far a planning run's score may mislead, 0..1 (docs/theory/planning.md). */
    public static final double MARGIN = 0.06;

    private static final Comparator<CompareRow> BEST_FIRST = Comparator.comparing((CompareRow r) -> !r.ran())
            .thenComparing((CompareRow r) -> r.full() == null)
            .thenComparingInt(r -> r.ran() ? r.judged().items().size() : 0)
            .thenComparingDouble(r -> r.ran() ? -Math.rint(score(r.judged()) / STEP) : 0)
            .thenComparingDouble(r -> r.ran() ? -Math.rint(r.judged().seamsReached() / STEP) : 0)
            .thenComparingDouble(r -> r.ran() ? r.judged().productM3() : 0)
            .thenComparingInt(r -> r.ran() ? r.candidate().holes().size() : 0)
            .thenComparingInt(r -> r.ran() ? r.candidate().panels().size() : 0)
            .thenComparing((CompareRow r) -> r.cut())
            .thenComparingInt(r -> r.candidate().number());

    public Compared {
        rows = List.copyOf(rows);
        shut = List.copyOf(shut);
    }

    static Compared of(Scene scene, Planning planning, List<CompareRow> rows, int alike, List<ShutBay> shut) {
        List<CompareRow> marked = new ArrayList<>();
        for (CompareRow r : rows) {
            marked.add(r.marked(r.ran() && rows.stream().noneMatch(o -> o.ran() && dominates(o, r))));
        }
        marked.sort(BEST_FIRST);
        return new Compared(scene, planning, marked, alike, shut, null);
    }

    /** Reached and protected share, halves alike, 0..1: a surface that is protected counts whole, one that is thin counts half. */
    static double score(StudyResult r) {
        return 0.5 * (r.reached() + r.protectedShare());
    }

    /**
     * Rows that may be the best although others look better at planning resolution: the first ones, as long as they hit no more
     * items and score within
     * {@link #MARGIN} of the first.
     *
     * @param most of them, 0 or more
     */
    public List<CompareRow> finalists(int most) {
        CompareRow best = best();
        if (best == null) {
            return List.of();
        }
        return rows.stream()
                .filter(r -> r.ran()
                        && r.outcome().items().size() <= best.outcome().items().size()
                        && score(r.outcome()) >= score(best.outcome()) - MARGIN)
                .limit(most)
                .toList();
    }

    /** The same with the best one run as it stands in the scene. */
    public Compared withOwn(@Nullable StudyResult result) {
        return new Compared(scene, planning, rows, alike, shut, result);
    }

    /** The same with full runs of some rows, by the candidates' numbers; ranked anew. */
    Compared with(Map<Integer, StudyResult> full) {
        List<CompareRow> all = new ArrayList<>();
        for (CompareRow r : rows) {
            StudyResult f = full.get(r.candidate().number());
            all.add(f != null && f.done() ? r.inFull(f) : r);
        }
        all.sort(BEST_FIRST);
        return new Compared(scene, planning, all, alike, shut, own);
    }

    /** The best row, or null if none could be run. */
    public @Nullable CompareRow best() {
        return rows.isEmpty() || !rows.get(0).ran() ? null : rows.get(0);
    }

    /** How far planning scores of finalists were off at most, 0..1; 0 if none was run in full. */
    public double worstMiss() {
        return rows.stream()
                .filter(r -> r.full() != null)
                .mapToDouble(r -> Math.abs(score(r.judged()) - score(r.outcome())))
                .max()
                .orElse(0);
    }

    /** The row of this place in the ranking, from 1. */
    public CompareRow row(int place) {
        return rows.get(place - 1);
    }

    private static boolean dominates(CompareRow a, CompareRow b) {
        double[] x = merits(a);
        double[] y = merits(b);
        boolean better = false;
        for (int i = 0; i < x.length; i++) {
            if (x[i] < y[i]) {
                return false;
            }
            better |= x[i] > y[i];
        }
        return better;
    }

    /**
     * More is better: coverage and seams to a tenth of a point, product to 0.1 mL, trigger time to 0.1 s, then what has to be
     * opened, drilled, is hit.
     */
    private static double[] merits(CompareRow row) {
        StudyResult r = row.outcome();
        return new double[] {
            Math.rint(r.reached() / STEP),
            Math.rint(r.protectedShare() / STEP),
            Math.rint(r.seamsReached() / STEP),
            -Math.rint(r.productM3() / 1e-7),
            -Math.rint(r.triggerS() / 0.1),
            -row.candidate().panels().size(),
            -row.candidate().holes().size(),
            -r.items().size()
        };
    }
}
