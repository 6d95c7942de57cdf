package baymist.study;

import baymist.numeric.Workers;
import baymist.run.RunCancelledException;
import baymist.run.Structures;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Compares candidates: each is judged by its {@link Bound} and run at planning resolution, the promising ones first; one whose bound lies below
 * the best score of those at least {@link #AHEAD} places before it is cut. What counts is the place and not the moment, so the outcome is the same for any number of
 * jobs at once, and no thread waits for a round to end.
 */
public final class Comparison {
    /** Places between a job and the last one whose outcome it must know; no more jobs than this run side by side. */
    static final int AHEAD = 8;

    private final PlanningRun runs;
    private final int atOnce;

    /** @param atOnce jobs side by side, one thread each, at least 1 */
    public Comparison(PlanningRun runs, int atOnce) {
        this.runs = runs;
        this.atOnce = atOnce;
    }

    /** Hears how a comparison gets on; calls come one at a time. */
    public interface Watch {
        Watch NONE = new Watch() {};

        /** Shares of the work are done, 0..1, with the latest in words. */
        default void progress(double done, String latest) {}

        default boolean cancelled() {
            return false;
        }
    }

    /** Compares the candidates of a scene, errors as {@link Candidates#of} and {@link PlanningRun#runAll}. */
    public Compared run(Scene scene, Watch watch) {
        Candidates.All all = Candidates.of(scene);
        return run(scene, all.list(), all.alike(), watch);
    }

    /** Compares candidates that are listed already. */
    public Compared run(Scene scene, List<Candidate> list, int alike, Watch watch) {
        Planning planning = runs.planning();
        Bound[] bounds = bounds(list, planning, watch);
        CompareRow[] rows = new CompareRow[list.size()];
        List<Integer> open = new ArrayList<>();
        for (int i = 0; i < rows.length; i++) {
            String refused = bounds[i].refused();
            if (refused != null) {
                rows[i] = CompareRow.refused(list.get(i), refused);
            } else {
                open.add(i);
            }
        }
        open.sort(
                Comparator.comparingDouble((Integer i) -> -bounds[i].reached()).thenComparingInt(i -> i));
        new CompareQueue(runs, list, bounds, rows).run(open, atOnce, watch);
        return Compared.of(scene, planning, Arrays.asList(rows), alike, shut(bounds));
    }

    /**
     * Runs the finalists at the scene's own resolution with projected air, and ranks them by that.
     *
     * @param most finalists; see {@link Compared#finalists}
     */
    public Compared runOff(Compared compared, int most, Watch watch) {
        List<CompareRow> finalists = compared.finalists(most);
        PlanningRun own = runs.at(Planning.FULL);
        List<StudyResult> results = own.runAll(
                finalists.stream().map(r -> r.candidate().scene()).toList(), atOnce, new PlanningRun.Watch() {
                    @Override
                    public void done(int index, StudyResult r, int ended) {
                        String words = finalists.get(index).candidate().words();
                        watch.progress(
                                ended / (double) finalists.size(),
                                String.format(Locale.ROOT, "in full, %s: reached %.1f %%", words, 100 * r.reached()));
                    }

                    @Override
                    public boolean cancelled() {
                        return watch.cancelled();
                    }
                });
        Map<Integer, StudyResult> full = new HashMap<>();
        for (int i = 0; i < results.size(); i++) {
            full.put(finalists.get(i).candidate().number(), results.get(i));
        }
        return compared.with(full);
    }

    /** The best one as it stands in the scene, its own air included; null if there is none. */
    public @Nullable StudyResult best(Compared compared) {
        CompareRow best = compared.best();
        return best == null ? null : runs.at(Planning.OWN).run(best.candidate().scene(), atOnce);
    }

    private Bound[] bounds(List<Candidate> list, Planning planning, Watch watch) {
        @Nullable Bound[] bounds = new Bound[list.size()];
        Structures shared = runs.structures();
        // Clock angles of one wand in one entry share their bound, unless the wand itself is bent.
        int[] first =
                IntStream.range(0, list.size()).map(i -> firstAlike(list, i)).toArray();
        try (Workers workers = new Workers(atOnce)) {
            workers.forEach(bounds.length, i -> {
                RunCancelledException.throwIf(watch.cancelled());
                Scene s = list.get(i).scene();
                bounds[i] = first[i] == i ? Bound.of(planning.of(s, shared.cavity(s)), shared) : null;
            });
        }
        Bound[] all = new Bound[bounds.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = java.util.Objects.requireNonNull(bounds[first[i]]);
        }
        return all;
    }

    private static int firstAlike(List<Candidate> list, int i) {
        Candidate c = list.get(i);
        for (int k = 0; k < i; k++) {
            Candidate o = list.get(k);
            boolean straight =
                    java.util.Objects.requireNonNull(c.scene().wands().get(c.wand()))
                                    .madeBendRad()
                            == 0;
            if (straight
                    && o.entry().equals(c.entry())
                    && o.wand().equals(c.wand())
                    && o.holes().equals(c.holes())) {
                return k;
            }
        }
        return i;
    }

    /** Bays that every candidate which can be done leaves shut. */
    private static List<ShutBay> shut(Bound[] bounds) {
        List<Bound> done =
                Arrays.stream(bounds).filter(b -> b.refused() == null).toList();
        return done.isEmpty()
                ? List.of()
                : done.get(0).shut().stream()
                        .filter(bay -> done.stream()
                                .allMatch(b ->
                                        b.shut().stream().anyMatch(o -> o.name().equals(bay.name()))))
                        .toList();
    }
}
