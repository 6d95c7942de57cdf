package baymist.size;

import baymist.study.StudyResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Finds the shortest length of one design that meets the goal, in rounds of runs.
 *
 * <ol>
 *   <li>the longest length; a design that misses the goal by more than {@link #HOPELESS} there is given up
 *   <li>a quarter, half and three quarters of it
 *   <li>halving between the longest length that misses and the shortest that meets, down to one mark
 * </ol>
 *
 * <p>A wand may stop early, so what a length gets is the best of all stops up to it: a longer wand never gets less. The mark below the one that is
 * found has been run and misses; a shorter length could meet the goal only if coverage fell and rose again between marks that were run.
 */
final class LengthSearch {
    /** A design is given up if it misses the goal by more than this share of it when it stands deepest. */
    static final double HOPELESS = 0.1;

    private final int least;
    private final int most;
    private final SizeRequest goal;
    private final TreeMap<Integer, StudyResult> known = new TreeMap<>();

    /** @param least,most lengths in marks, {@code 1 <= least <= most} */
    LengthSearch(int least, int most, SizeRequest goal) {
        if (least < 1 || most < least) {
            throw new IllegalArgumentException("lengths of " + least + " to " + most + " marks");
        }
        this.least = least;
        this.most = most;
        this.goal = goal;
    }

    /** How much of the goal a run gets: 1 or more meets it. */
    static double score(StudyResult r, SizeRequest goal) {
        if (!r.done()) {
            return 0;
        }
        double score = r.reached() / goal.reached();
        return goal.seamsReached() > 0 ? Math.min(score, r.seamsReached() / goal.seamsReached()) : score;
    }

    /** Lengths in marks whose runs are wanted next; none when the search is over. */
    List<Integer> wanted() {
        if (known.isEmpty()) {
            return List.of(most);
        }
        if (hopeless()) {
            return List.of();
        }
        List<Integer> coarse = new ArrayList<>();
        for (int quarter = 1; quarter <= 3; quarter++) {
            int k = least + (int) Math.round((most - least) * quarter / 4.0);
            if (!known.containsKey(k) && !coarse.contains(k)) {
                coarse.add(k);
            }
        }
        if (known.size() == 1 && !coarse.isEmpty()) {
            return coarse;
        }
        Integer meets = shortest();
        if (meets == null) {
            return List.of();
        }
        Integer below = known.lowerKey(meets);
        int misses = below == null ? least - 1 : below;
        return meets - misses > 1 ? List.of((meets + misses) / 2) : List.of();
    }

    void learn(int marks, StudyResult result) {
        known.put(marks, result);
    }

    /** Whether the search was given up after its first run. */
    boolean hopeless() {
        StudyResult deepest = known.get(most);
        return known.size() == 1 && deepest != null && score(deepest, goal) < 1 - HOPELESS;
    }

    /** Shortest length known to meet the goal, marks, or null. */
    @Nullable
    Integer shortest() {
        for (Map.Entry<Integer, StudyResult> e : known.entrySet()) {
            if (score(e.getValue(), goal) >= 1) {
                return e.getKey();
            }
        }
        return null;
    }

    /** Lengths that were run, ascending. */
    List<Integer> lengths() {
        return List.copyOf(known.keySet());
    }

    /** Best stop of a wand of this length among the runs, marks; the shortest among equals. */
    int bestStop(int marks) {
        int best = known.firstKey();
        for (int k : known.headMap(marks, true).keySet()) {
            best = score(result(k), goal) > score(result(best), goal) ? k : best;
        }
        return best;
    }

    StudyResult result(int marks) {
        StudyResult r = known.get(marks);
        if (r == null) {
            throw new IllegalArgumentException("a length of " + marks + " marks was not run");
        }
        return r;
    }
}
