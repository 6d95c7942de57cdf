package baymist.explain;

import baymist.access.AccessFinder;
import baymist.access.Station;
import baymist.access.WandStop;
import baymist.geom.Vec3;
import baymist.run.ReachLine;
import baymist.run.ReachResult;
import baymist.run.RunResult;
import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * Could the tip get near?
 *
 * @param stationM nearest approach of the tip during the passes, m; infinite without passes
 * @param stationPass name of that pass
 * @param stationDepthM insertion depth there, m
 * @param reachM nearest place that the tip of a wand of the scene can get to by an entry of the scene, m; infinite if none goes in
 * @param reachEntry, reachWand that entry and wand
 * @param reachDepthM how deep that wand goes there, m
 * @param stop what ends it: a part, a closed opening, or {@link AccessFinder#WAND_LENGTH}
 * @param why the same as a clause
 * @param sameBay share of the region in bays that the tip stood in, 0..1
 */
record AccessFacts(
        double stationM,
        String stationPass,
        double stationDepthM,
        double reachM,
        String reachEntry,
        String reachWand,
        double reachDepthM,
        String stop,
        String why,
        double sameBay) {

    static AccessFacts find(RunResult base, ReachResult reach, Patch patch) {
        int[] points = patch.sample(SightFacts.POINTS);
        double best = Double.POSITIVE_INFINITY;
        String pass = "";
        double depth = 0;
        for (Station s : base.stations()) {
            double d = distance(s.pose().positionM(), patch, points);
            if (d < best) {
                best = d;
                pass = base.scene().passes().get(s.pass()).name();
                depth = s.depthM();
            }
        }
        double nearest = Double.POSITIVE_INFINITY;
        ReachLine by = null;
        for (ReachLine line : reach.lines()) {
            double d = nearest(line, patch, points);
            boolean own = base.scene().entries().contains(line.entry());
            if (own && d < nearest) {
                nearest = d;
                by = line;
            }
        }
        WandStop stop = by == null ? null : by.reach().stop();
        return new AccessFacts(
                best,
                pass,
                depth,
                nearest,
                by == null ? "" : by.entry().name(),
                by == null ? "" : by.wand().name(),
                by == null ? 0 : by.reach().maxDepthM(),
                stop == null ? "" : stop.partName(),
                stop == null ? "" : stop.why(),
                sameBay(base, patch));
    }

    boolean endedByLength() {
        return stop.equals(AccessFinder.WAND_LENGTH);
    }

    /** Nearest of a wand's places to the region, m. */
    static double nearest(ReachLine line, Patch patch, int[] points) {
        double best = Double.POSITIVE_INFINITY;
        for (Vec3 p : line.places()) {
            best = Math.min(best, distance(p, patch, points));
        }
        return best;
    }

    /** Median distance of a point to the region, so that a region that is half near does not count as near. */
    static double distance(Vec3 tip, Patch patch, int[] points) {
        double[] d = new double[points.length];
        for (int k = 0; k < d.length; k++) {
            d[k] = tip.distance(patch.point(points[k]));
        }
        java.util.Arrays.sort(d);
        return d[d.length / 2];
    }

    private static double sameBay(RunResult base, Patch patch) {
        VoxelGrid grid = base.grid();
        boolean[] visited = new boolean[grid.bays().size()];
        for (Station s : base.stations()) {
            int cell = grid.cellHolding(s.pose().positionM());
            if (cell >= 0) {
                visited[grid.bayOfCell(cell)] = true;
            }
        }
        double in = 0;
        for (var e : patch.byBay().entrySet()) {
            in += visited[e.getKey()] ? e.getValue() : 0;
        }
        return in / patch.areaM2();
    }

    Fact fact(List<Fact> more) {
        String went = Double.isFinite(stationM)
                ? Words.say(
                        "Where the tip came nearest, half of the place lay within %s of it: in pass '%s' at a depth of %s.",
                        Words.length(stationM), stationPass, Words.length(stationDepthM))
                : "No pass was made.";
        String can = !Double.isFinite(reachM)
                ? " No wand of the scene goes in."
                : Words.say(
                        " The nearest that the tip of any wand of the scene can get is %s, counted alike: '%s' by '%s', which"
                                + " goes in %s along its line%s.",
                        Words.length(reachM),
                        reachWand,
                        reachEntry,
                        Words.length(reachDepthM),
                        endedByLength() ? ", its whole length" : ": " + (why.isEmpty() ? stop : why));
        return new Fact(
                "tip",
                went + can,
                new java.util.LinkedHashMap<>(Fact.of(
                                "",
                                "",
                                Fact.Numbers.of("nearestApproachM", stationM)
                                        .and("nearestApproachDepthM", stationDepthM)
                                        .and("nearestReachableM", reachM)
                                        .and("reachableDepthM", reachDepthM)
                                        .and("shareInBaysVisited", sameBay))
                        .numbers()),
                more);
    }
}
