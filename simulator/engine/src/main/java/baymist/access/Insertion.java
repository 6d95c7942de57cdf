package baymist.access;

import baymist.geom.Vec3;

/**
 * A wand in an entry.
 *
 * @param entry, wand names
 * @param openingIndex opening of the cavity that the wand passes
 * @param originM where the wand's axis crosses the opening, m
 * @param axis unit vector going in
 * @param maxDepthM largest insertion depth of the tip, m
 * @param stoppedBy what ends it: name of a part, or "wand length"; for an infeasible one what keeps it out
 * @param feasible whether the rod passes the opening at all
 * @param edgeClearanceM distance left between rod and hole edge (negative = does not pass), m
 * @param path body and tip at each depth
 * @param resolutionM a better way may stray from those tried by less than this, m; 0 where none was sought
 */
public record Insertion(
        String entry,
        String wand,
        int openingIndex,
        Vec3 originM,
        Vec3 axis,
        double maxDepthM,
        String stoppedBy,
        boolean feasible,
        double edgeClearanceM,
        WandPath path,
        double resolutionM) {
    /** A way that was stated, not sought. */
    public Insertion(
            String entry,
            String wand,
            int openingIndex,
            Vec3 originM,
            Vec3 axis,
            double maxDepthM,
            String stoppedBy,
            boolean feasible,
            double edgeClearanceM,
            WandPath path) {
        this(entry, wand, openingIndex, originM, axis, maxDepthM, stoppedBy, feasible, edgeClearanceM, path, 0);
    }

    /** The same on another way, such as that of a sagging rod. */
    public Insertion withPath(WandPath other) {
        return new Insertion(
                entry,
                wand,
                openingIndex,
                originM,
                axis,
                maxDepthM,
                stoppedBy,
                feasible,
                edgeClearanceM,
                other,
                resolutionM);
    }

    /** The same way with what its search left open, m. */
    Insertion within(double newResolutionM) {
        return new Insertion(
                entry,
                wand,
                openingIndex,
                originM,
                axis,
                maxDepthM,
                stoppedBy,
                feasible,
                edgeClearanceM,
                path,
                newResolutionM);
    }
}
