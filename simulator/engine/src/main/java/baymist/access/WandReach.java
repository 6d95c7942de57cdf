package baymist.access;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where a wand can get to through an entry.
 *
 * @param entry, wand names
 * @param feasible whether the wand goes in at all
 * @param minDepthM smallest depth at which the tip is inside, m
 * @param maxDepthM largest depth that the search found, m; 0 if it does not go in
 * @param stop what ends the deepest insertion, or keeps the wand out; null only if nothing was tried
 * @param tips bodies at the ends of ways in, each free of every sheet by its radius, deepest first
 * @param resolutionM a tip pose may be missed only if moving the body by less than this makes it touch something, m
 * @param complete whether all was seen at that resolution; false = the search's budget ended it, and there may be more
 * @param ways a flexible wand's ways through different openings, deepest first; empty for other kinds
 */
public record WandReach(
        String entry,
        String wand,
        boolean feasible,
        double minDepthM,
        double maxDepthM,
        @Nullable WandStop stop,
        List<WandPose> tips,
        double resolutionM,
        boolean complete,
        List<WandWay> ways) {
    public WandReach {
        tips = List.copyOf(tips);
        ways = List.copyOf(ways);
    }

    /** The reach of a wand that has no ways to choose between. */
    public WandReach(
            String entry,
            String wand,
            boolean feasible,
            double minDepthM,
            double maxDepthM,
            @Nullable WandStop stop,
            List<WandPose> tips,
            double resolutionM,
            boolean complete) {
        this(entry, wand, feasible, minDepthM, maxDepthM, stop, tips, resolutionM, complete, List.of());
    }

    /** The same with another account of what ends it. */
    public WandReach endedBy(@Nullable WandStop other) {
        return new WandReach(entry, wand, feasible, minDepthM, maxDepthM, other, tips, resolutionM, complete, ways);
    }

    /** A wand that does not go in. */
    public static WandReach none(ReachProblem p, WandStop stop) {
        return new WandReach(
                p.entry().name(),
                p.wand().name(),
                false,
                0,
                0,
                stop,
                List.of(),
                p.settings().resolutionM(),
                true);
    }

    /** The same from a search that could not see everything. */
    public WandReach incomplete() {
        return new WandReach(entry, wand, feasible, minDepthM, maxDepthM, stop, tips, resolutionM, false, ways);
    }
}
