package baymist.study;

import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A comparison: rows best first, then those that were cut or can't be done, in the order of the candidates.
 *
 * <p>Better is: fewer protected items hit; then more reached and protected area together, to a tenth of a point; then more seams; then less
 * product, fewer holes, fewer panels; then the number.
 *
 * @param alike clock angles that were left out because the tip looks the same at them
 * @param full the best one at the scene's own resolution, or null
 */
public record Compared(Scene scene, Planning planning, List<CompareRow> rows, int alike, @Nullable StudyResult full) {
    /** A tenth of a point of coverage: differences below it don't rank. */
    private static final double STEP = 1e-3;

    private static final Comparator<CompareRow> BEST_FIRST = Comparator.comparing((CompareRow r) -> !r.ran())
            .thenComparingInt(r -> r.ran() ? r.outcome().items().size() : 0)
            .thenComparingDouble(r -> r.ran() ? -Math.rint(score(r.outcome()) / STEP) : 0)
            .thenComparingDouble(r -> r.ran() ? -Math.rint(r.outcome().seamsReached() / STEP) : 0)
            .thenComparingDouble(r -> r.ran() ? r.outcome().productM3() : 0)
            .thenComparingInt(r -> r.ran() ? r.candidate().holes().size() : 0)
            .thenComparingInt(r -> r.ran() ? r.candidate().panels().size() : 0)
            .thenComparing((CompareRow r) -> r.cut())
            .thenComparingInt(r -> r.candidate().number());

    public Compared {
        rows = List.copyOf(rows);
    }

    static Compared of(Scene scene, Planning planning, List<CompareRow> rows, int alike) {
        List<CompareRow> marked = new ArrayList<>();
        for (CompareRow r : rows) {
            marked.add(r.marked(r.ran() && rows.stream().noneMatch(o -> o.ran() && dominates(o, r))));
        }
        marked.sort(BEST_FIRST);
        return new Compared(scene, planning, marked, alike, null);
    }

    /** Reached and protected share, halves alike, 0..1: a surface that is protected counts whole, one that is thin counts half. */
    static double score(StudyResult r) {
        return 0.5 * (r.reached() + r.protectedShare());
    }

    /** The same with the best one run in full. */
    public Compared with(StudyResult fullRun) {
        return new Compared(scene, planning, rows, alike, fullRun);
    }

    /** The best row, or null if none could be run. */
    public @Nullable CompareRow best() {
        return rows.isEmpty() || !rows.get(0).ran() ? null : rows.get(0);
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

    /** More is better: coverage and seams to a tenth of a point, product to 0.1 mL, trigger time to 0.1 s, then what has to be opened, drilled, is hit. */
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
