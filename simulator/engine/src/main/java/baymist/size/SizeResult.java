package baymist.size;

import baymist.scene.Scene;
import baymist.study.StudyResult;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The wands that would do a scene's job.
 *
 * @param planning the resolution of the sweep, in words
 * @param designs straight ones first, thin before thick
 * @param shortest the shortest wand that meets the goal, the thinnest of that length; where it was run in full, the shortest that meets it
 *     there too; null if none does
 * @param thinnest the thinnest wand that meets the goal, the shortest of that diameter; null if none does
 * @param verified the chosen wand at the scene's own resolution, and what was tried on from there; empty where it was not asked for
 * @param jobs how many jobs were run or taken from the store for the sweep
 */
public record SizeResult(
        Scene scene,
        SizeRequest request,
        String planning,
        List<DesignResult> designs,
        @Nullable Candidate shortest,
        @Nullable Candidate thinnest,
        List<Verified> verified,
        int jobs) {
    public SizeResult {
        designs = List.copyOf(designs);
        verified = List.copyOf(verified);
    }

    /**
     * A wand run at the scene's own resolution.
     *
     * @param meets whether it meets the goal there
     */
    public record Verified(Design design, double lengthM, StudyResult result, boolean meets) {}

    /** Whether the chosen wand was run in full and meets the goal there. */
    public boolean confirmed() {
        return verified.stream().anyMatch(Verified::meets);
    }
}
