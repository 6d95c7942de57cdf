package baymist.size;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What became of one design.
 *
 * @param deepestM how deep it goes at all, m; 0 if it does not go in
 * @param endedBy what ends it there: name of a part, or the wand's length
 * @param holeM smallest round hole that it passes, m
 * @param sweep lengths that were run, ascending; empty where it was cut before any run
 * @param shortest the shortest that meets the goal, or null
 * @param verdict why it fails, or what it takes, in one clause
 * @param cut whether it was cut before any run
 */
public record DesignResult(
        Design design,
        double deepestM,
        String endedBy,
        double holeM,
        List<Candidate> sweep,
        @Nullable Candidate shortest,
        String verdict,
        boolean cut) {
    public DesignResult {
        sweep = List.copyOf(sweep);
    }

    /** The length that gets most, the shortest among equals; null without a sweep. */
    public @Nullable Candidate best() {
        Candidate best = null;
        for (Candidate c : sweep) {
            best = best == null || c.at().reached() > best.at().reached() ? c : best;
        }
        return best;
    }
}
