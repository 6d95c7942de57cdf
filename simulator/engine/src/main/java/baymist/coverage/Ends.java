package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.voxel.SurfelSet;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Finds the members that bound a set of surfels: the sheets in the corner that look back over it. */
final class Ends {
    /** A sheet bounds a surface when at least this share of the edges that look the same way is its own. ASSUMED. */
    private static final double SHARE = 0.25;
    /** How squarely a bounding sheet must look along the axis: cosine. ASSUMED: 60 degrees. */
    private static final double LOOKS_ALONG = 0.5;

    private final Cavity cavity;
    private final SurfelSet surfels;

    Ends(Cavity cavity, SurfelSet surfels) {
        this.cavity = cavity;
        this.surfels = surfels;
    }

    /** A bounding member: part index and mean position of the shared edge along the axis, m. */
    record Member(int part, String name, double positionM) {}

    /**
     * The member at one end of a surface along an axis, or null.
     *
     * @param on surfels of one part
     * @param high the end at larger coordinates
     */
    @Nullable
    Member find(int[] on, int part, int axis, boolean high) {
        Map<Integer, double[]> edges = new TreeMap<>(); // part -> {edges, sum of positions}
        int most = 0;
        for (int s : on) {
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                if (bounds(n, part, axis, high)) {
                    double[] tally = edges.computeIfAbsent(surfels.part()[n], k -> new double[2]);
                    tally[0]++;
                    tally[1] += coordinate(n, axis);
                    most = Math.max(most, (int) tally[0]);
                }
            }
        }
        Member best = null;
        for (Map.Entry<Integer, double[]> e : edges.entrySet()) {
            double position = e.getValue()[1] / e.getValue()[0];
            boolean counts = e.getValue()[0] >= SHARE * most;
            boolean farther = best == null || (high ? position > best.positionM : position < best.positionM);
            if (counts && farther) {
                best = new Member(e.getKey(), cavity.parts().get(e.getKey()).name(), position);
            }
        }
        return best;
    }

    /** Whether any of these surfels shares an edge with a surfel of the member that looks back along the axis. */
    boolean touches(int[] on, int part, Member member, int axis, boolean high) {
        for (int s : on) {
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                if (surfels.part()[n] == member.part && bounds(n, part, axis, high)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean bounds(int n, int part, int axis, boolean high) {
        int other = surfels.part()[n];
        double along = normal(n, axis);
        // skins that meet at an edge don't bound each other: the edge does
        boolean edge = kind(part) == PartKind.SKIN && kind(other) == PartKind.SKIN;
        return other != part
                && !edge
                && surfels.isStructure(n)
                && surfels.areaM2()[n] > 0
                && kind(other) != PartKind.STRINGER
                && (high ? along < -LOOKS_ALONG : along > LOOKS_ALONG);
    }

    private PartKind kind(int part) {
        return cavity.parts().get(part).kind();
    }

    private double normal(int s, int axis) {
        return axis == 0 ? surfels.normalX()[s] : axis == 1 ? surfels.normalY()[s] : surfels.normalZ()[s];
    }

    private double coordinate(int s, int axis) {
        return axis == 0 ? surfels.centreX()[s] : axis == 1 ? surfels.centreY()[s] : surfels.centreZ()[s];
    }
}
