package baymist.inspect;

import baymist.card.CardSource;
import baymist.coverage.UnreachedRegion;
import baymist.geom.Vec3;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.scene.Inspection;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The surface elements of inspected places, on the run's voxels and on others. */
final class PlaceSamples {
    /** A point further off any sheet than this is a mistake, m (ASSUMED: what a tape measure and a coarse voxel leave). */
    private static final double FAR_M = 0.05;

    /** Elements that stand for a place on other voxels, at most. */
    private static final int MOST = 24;

    private final CardSource source;
    private final List<int[]> surfels;

    private PlaceSamples(CardSource source, List<int[]> surfels) {
        this.source = source;
        this.surfels = surfels;
    }

    /**
     * Finds the places.
     *
     * @throws SceneException FND-001 for every point that lies off the structure, FND-002 for every unknown region, FND-003 for every
     *     unknown part
     */
    static PlaceSamples of(CardSource source, Inspection inspection) {
        List<Finding> problems = new ArrayList<>();
        List<int[]> found = new ArrayList<>();
        for (Inspection.Place p : inspection.places()) {
            found.add(p.region() != null ? region(source, p, problems) : point(source, p, problems));
        }
        if (!problems.isEmpty()) {
            throw new SceneException(problems);
        }
        return new PlaceSamples(source, found);
    }

    private static int[] region(CardSource source, Inspection.Place p, List<Finding> problems) {
        for (UnreachedRegion r : source.coverage().unreached()) {
            if (r.label().equals(p.region())) {
                return r.surfels();
            }
        }
        List<String> known = source.coverage().unreached().stream()
                .map(UnreachedRegion::label)
                .limit(8)
                .toList();
        problems.add(new Finding(
                "FND-002",
                Severity.ERROR,
                p.place(),
                "no bare place of the run is called `" + p.region() + "`; the largest are " + known
                        + "; name one of them or state a point"));
        return new int[0];
    }

    private static int[] point(CardSource source, Inspection.Place p, List<Finding> problems) {
        Vec3 at = p.atM();
        if (at == null) {
            throw new IllegalArgumentException("a place has neither point nor region");
        }
        SurfelSet q = source.grid().surfels();
        int part = p.part() == null ? -1 : source.cavity().partIndex(p.part());
        if (p.part() != null && part < 0) {
            problems.add(new Finding(
                    "FND-003",
                    Severity.ERROR,
                    p.place(),
                    "no part is called `" + p.part()
                            + "`; leave it out for the nearest, or take a name of the structure's own"));
            return new int[0];
        }
        int nearest = nearest(q, at, part, null);
        double off = nearest < 0 ? Double.POSITIVE_INFINITY : distance(q, nearest, at);
        if (off > FAR_M + p.radiusM()) {
            problems.add(new Finding(
                    "FND-001",
                    Severity.ERROR,
                    p.place(),
                    String.format(
                            Locale.ROOT,
                            "the point (%.0f, %.0f, %.0f) mm lies %.0f mm off the nearest treated surface%s; a point on the surface is wanted",
                            1e3 * at.x(),
                            1e3 * at.y(),
                            1e3 * at.z(),
                            1e3 * off,
                            p.part() == null ? "" : " of " + p.part())));
            return new int[0];
        }
        Vec3 normal = normal(q, nearest);
        List<Integer> all = new ArrayList<>();
        for (int s = 0; s < q.count(); s++) {
            boolean same = q.isStructure(s) && q.part()[s] == q.part()[nearest];
            if (same && distance(q, s, at) <= p.radiusM() && normal(q, s).dot(normal) > 0.5) {
                all.add(s);
            }
        }
        return all.isEmpty()
                ? new int[] {nearest}
                : all.stream().mapToInt(Integer::intValue).toArray();
    }

    int count() {
        return surfels.size();
    }

    /** Elements of a place on the run's voxels. */
    int[] surfels(int place) {
        return surfels.get(place);
    }

    /** The elements of each place on other voxels of the same structure: the nearest of the same part that look the same way. */
    List<int[]> on(VoxelGrid grid) {
        SurfelSet from = source.grid().surfels();
        SurfelSet to = grid.surfels();
        List<int[]> mapped = new ArrayList<>();
        for (int[] place : surfels) {
            int step = Math.max(1, place.length / MOST);
            List<Integer> set = new ArrayList<>();
            for (int i = 0; i < place.length; i += step) {
                int s = place[i];
                set.add(nearest(to, centre(from, s), from.part()[s], normal(from, s)));
            }
            mapped.add(set.stream()
                    .filter(s -> s >= 0)
                    .mapToInt(Integer::intValue)
                    .distinct()
                    .toArray());
        }
        return mapped;
    }

    /** Mean film by area of each place, m, [places]. */
    static double[] films(SurfelSet q, List<int[]> places, double[] filmM) {
        return places.stream()
                .mapToDouble(place -> {
                    double area =
                            Arrays.stream(place).mapToDouble(s -> q.areaM2()[s]).sum();
                    double film = Arrays.stream(place)
                            .mapToDouble(s -> q.areaM2()[s] * filmM[s])
                            .sum();
                    return area > 0 ? film / area : 0;
                })
                .toArray();
    }

    double[] films() {
        return films(source.grid().surfels(), surfels, source.filmM());
    }

    private static int nearest(SurfelSet q, Vec3 at, int part, @org.jspecify.annotations.Nullable Vec3 normal) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int s = 0; s < q.count(); s++) {
            if (q.isStructure(s) && (part < 0 || q.part()[s] == part)) {
                // an element that looks another way counts as a good deal further off
                double d = distance(q, s, at) + (normal == null || normal(q, s).dot(normal) > 0.5 ? 0 : 1);
                if (d < least) {
                    least = d;
                    best = s;
                }
            }
        }
        return best;
    }

    private static double distance(SurfelSet q, int s, Vec3 at) {
        return centre(q, s).distance(at);
    }

    static Vec3 centre(SurfelSet q, int s) {
        return new Vec3(q.centreX()[s], q.centreY()[s], q.centreZ()[s]);
    }

    private static Vec3 normal(SurfelSet q, int s) {
        return new Vec3(q.normalX()[s], q.normalY()[s], q.normalZ()[s]);
    }
}
