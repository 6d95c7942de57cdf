package baymist.explain;

import baymist.coverage.UnreachedRegion;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.RunResult;
import baymist.voxel.SurfelSet;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Finds the place that is asked about among the surfaces of a run. */
final class PatchFinder {
    /** A place is taken with what lies so near on the same sheet, bare or not, m. */
    private static final double ABOUT_M = 0.1;
    /** A sheet's side that looks away from the point counts as farther by this, m. */
    private static final double BEHIND_M = 5e-3;
    /** A point farther off every surface than this means none of them, m. */
    private static final double FAR_M = 0.25;

    private PatchFinder() {}

    /**
     * The region.
     *
     * @throws SceneException EXP-001 if there is no such region, EXP-002 if the point is nowhere near a surface, EXP-003 if nothing is bare
     */
    static Patch find(RunResult base, ExplainOptions options) {
        List<UnreachedRegion> regions = base.coverage().unreached();
        Vec3 at = options.atM();
        if (at != null) {
            return new Patch(at(base, at), base);
        }
        if (regions.isEmpty()) {
            throw problem(
                    base,
                    "EXP-003",
                    "film reaches every surface, so there is nothing to explain; name a place with --at x,y,z to ask about one"
                            + " that is thin");
        }
        String name = options.region().isEmpty() ? "1" : options.region();
        for (UnreachedRegion r : regions) {
            if (String.valueOf(r.id()).equals(name) || r.label().equals(name)) {
                return new Patch(r, base);
            }
        }
        String known = regions.stream()
                .limit(9)
                .map(r -> r.id() + " = " + r.label() + " (" + r.where() + ")")
                .collect(Collectors.joining("; "));
        throw problem(
                base,
                "EXP-001",
                "there is no bare region '" + name + "'; at planning resolution there are " + regions.size() + ": "
                        + known);
    }

    private static UnreachedRegion at(RunResult base, Vec3 point) {
        SurfelSet s = base.grid().surfels();
        int nearest = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < s.count(); i++) {
            Vec3 way = point.minus(new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]));
            double side = way.x() * s.normalX()[i] + way.y() * s.normalY()[i] + way.z() * s.normalZ()[i];
            double d = way.length() + (side < 0 ? BEHIND_M : 0);
            if (d < least && s.closure()[i] < 0) {
                least = d;
                nearest = i;
            }
        }
        if (nearest < 0 || least > FAR_M) {
            throw problem(
                    base,
                    "EXP-002",
                    String.format(
                            Locale.ROOT,
                            "the place [%.0f, %.0f, %.0f] mm lies %s off the nearest surface of the inside; name one within %.0f mm"
                                    + " of it",
                            1e3 * point.x(),
                            1e3 * point.y(),
                            1e3 * point.z(),
                            Words.length(least),
                            1e3 * FAR_M));
        }
        return about(base, nearest);
    }

    /** What lies about a surfel on the same sheet. */
    private static UnreachedRegion about(RunResult base, int start) {
        SurfelSet s = base.grid().surfels();
        Vec3 centre = new Vec3(s.centreX()[start], s.centreY()[start], s.centreZ()[start]);
        TreeSet<Integer> found = new TreeSet<>(List.of(start));
        ArrayDeque<Integer> queue = new ArrayDeque<>(found);
        while (!queue.isEmpty()) {
            int i = queue.remove();
            for (int e = s.neighbourStart()[i]; e < s.neighbourStart()[i + 1]; e++) {
                int n = s.neighbour()[e];
                Vec3 at = new Vec3(s.centreX()[n], s.centreY()[n], s.centreZ()[n]);
                boolean same = s.part()[n] == s.part()[start] && s.closure()[n] == s.closure()[start];
                if (same && at.distance(centre) <= ABOUT_M && found.add(n)) {
                    queue.add(n);
                }
            }
        }
        int[] own = found.stream().mapToInt(Integer::intValue).toArray();
        double area = 0;
        Vec3 moment = Vec3.ZERO;
        for (int i : own) {
            area += s.areaM2()[i];
            moment = moment.plus(s.areaM2()[i], new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]));
        }
        String part = base.cavity().parts().get(s.part()[start]).name();
        String where = String.format(
                Locale.ROOT,
                "%s about [%.0f, %.0f, %.0f] mm",
                part,
                1e3 * centre.x(),
                1e3 * centre.y(),
                1e3 * centre.z());
        String bay =
                base.grid().bays().get(base.grid().bayOfCell(s.cell()[start])).name();
        Box3 box = Box3.EMPTY;
        for (int i : own) {
            box = box.including(new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]));
        }
        return new UnreachedRegion(
                0, area, moment.times(1 / area), where, List.of(part), own, "", List.of(bay), box, 0, "", Double.NaN);
    }

    private static SceneException problem(RunResult base, String id, String text) {
        return new SceneException(id, new SourcePlace(base.scene().file(), 0, ""), text);
    }
}
