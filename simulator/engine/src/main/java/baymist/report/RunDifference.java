package baymist.report;

import baymist.coverage.CoverageAssessor;
import baymist.coverage.SeamCoverage;
import baymist.coverage.UnreachedRegion;
import baymist.coverage.Verdict;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.RunResult;
import baymist.scene.TargetSpec;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What changed from an earlier run, place by place. Each surfel is set against the earlier surfel of the same part and side nearest to it:
 * with the same voxels that is itself, with others the film there. Both films are judged by the thresholds of the later scene.
 *
 * @param sameVoxels whether both runs have the same surfels
 * @param unmatchedM2 surface without a counterpart within two voxels, left out, m²
 * @param beforeM earlier film on each surfel of the later run, m, NaN where there is none, [surfels]
 * @param total the whole
 * @param byPart by part, as {@code byBay}: they add up to the whole
 * @param regions bare places of either run
 * @param seams reached share of the seams
 */
public record RunDifference(
        PastRun past,
        boolean sameVoxels,
        double unmatchedM2,
        double[] beforeM,
        Change total,
        List<Change> byPart,
        List<Change> byBay,
        List<Region> regions,
        List<Seams> seams) {
    public RunDifference {
        byPart = List.copyOf(byPart);
        byBay = List.copyOf(byBay);
        regions = List.copyOf(regions);
        seams = List.copyOf(seams);
    }

    /**
     * Area that changed its verdict; all m², film volumes m³.
     *
     * @param gainedM2 bare before, reached now
     * @param lostM2 reached before, bare now
     */
    public record Change(
            String name,
            double areaM2,
            double reachedBeforeM2,
            double reachedNowM2,
            double protectedBeforeM2,
            double protectedNowM2,
            double gainedM2,
            double lostM2,
            double filmBeforeM3,
            double filmNowM3) {
        private static Change of(String name, double[] v) {
            return new Change(name, v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], v[8]);
        }
    }

    /** A bare place by its label; 0 m² = not there. */
    public record Region(String label, double beforeM2, double nowM2) {}

    /** Reached share of the seams of a part, a bay or all. */
    public record Seams(String name, double before, double now) {}

    /**
     * Compares.
     *
     * @throws SceneException CMP-003 if the runs are of different structures
     */
    public static RunDifference of(RunResult now, PastRun past) {
        SurfelSet q = now.grid().surfels();
        Set<String> names = new LinkedHashSet<>();
        now.coverage().byPart().forEach(f -> names.add(f.name()));
        Set<String> others = new LinkedHashSet<>(past.film().part());
        Set<String> common = new LinkedHashSet<>(names);
        common.retainAll(others);
        if (common.isEmpty()) {
            throw new SceneException(
                    "CMP-003",
                    SourcePlace.of(past.file()),
                    "the earlier run is of another structure: its parts are " + shortList(others) + ", here they are "
                            + shortList(names) + "; a result of the same structure would be right");
        }
        Match match = new Match(now, past.film());
        TargetSpec target = now.scene().targets();
        double[] total = new double[9];
        Map<String, double[]> parts = new LinkedHashMap<>();
        Map<String, double[]> bays = new LinkedHashMap<>();
        now.coverage().byPart().forEach(f -> parts.put(f.name(), new double[9]));
        now.coverage().byBay().forEach(f -> bays.put(f.name(), new double[9]));
        for (int s = 0; s < q.count(); s++) {
            if (q.isStructure(s) && !Double.isNaN(match.before[s])) {
                String part = now.cavity().parts().get(q.part()[s]).name();
                String bay =
                        now.grid().bays().get(now.grid().bayOfCell(q.cell()[s])).name();
                for (double[] sum : List.of(
                        total,
                        parts.computeIfAbsent(part, k -> new double[9]),
                        bays.computeIfAbsent(bay, k -> new double[9]))) {
                    add(sum, q.areaM2()[s], match.before[s], now.filmM()[s], target);
                }
            }
        }
        return new RunDifference(
                past,
                match.same,
                match.unmatchedM2,
                match.before,
                Change.of("all surfaces", total),
                changes(parts),
                changes(bays),
                regions(now, past),
                seams(now, past));
    }

    private static void add(double[] sum, double area, double before, double now, TargetSpec target) {
        Verdict was = CoverageAssessor.verdict(before, target);
        Verdict is = CoverageAssessor.verdict(now, target);
        sum[0] += area;
        sum[1] += reached(was) ? area : 0;
        sum[2] += reached(is) ? area : 0;
        sum[3] += treated(was) ? area : 0;
        sum[4] += treated(is) ? area : 0;
        sum[5] += !reached(was) && reached(is) ? area : 0;
        sum[6] += reached(was) && !reached(is) ? area : 0;
        sum[7] += area * before;
        sum[8] += area * now;
    }

    private static boolean reached(Verdict v) {
        return v != Verdict.UNREACHED;
    }

    private static boolean treated(Verdict v) {
        return v == Verdict.PROTECTED || v == Verdict.EXCESS;
    }

    private static List<Change> changes(Map<String, double[]> sums) {
        List<Change> list = new ArrayList<>();
        sums.forEach((name, v) -> list.add(Change.of(name, v)));
        return list;
    }

    private static List<Region> regions(RunResult now, PastRun past) {
        Map<String, double[]> areas = new LinkedHashMap<>();
        for (UnreachedRegion r : now.coverage().unreached()) {
            areas.computeIfAbsent(r.label(), k -> new double[2])[1] = r.areaM2();
        }
        past.regionsM2().forEach((label, area) -> areas.computeIfAbsent(label, k -> new double[2])[0] = area);
        List<Region> regions = new ArrayList<>();
        areas.forEach((label, v) -> regions.add(new Region(label, v[0], v[1])));
        regions.sort((a, b) -> {
            int byChange = Double.compare(Math.abs(b.nowM2 - b.beforeM2), Math.abs(a.nowM2 - a.beforeM2));
            return byChange != 0 ? byChange : a.label.compareTo(b.label);
        });
        return regions;
    }

    private static List<Seams> seams(RunResult now, PastRun past) {
        List<Seams> list = new ArrayList<>();
        SeamCoverage c = now.coverage().seams();
        list.add(new Seams("all", past.seams().getOrDefault("all", Double.NaN), c.reached()));
        for (SeamCoverage.Share s : c.byPart()) {
            list.add(new Seams(
                    "part: " + s.name(), past.seams().getOrDefault("part: " + s.name(), Double.NaN), s.reached()));
        }
        for (SeamCoverage.Share s : c.byBay()) {
            list.add(new Seams(
                    "bay: " + s.name(), past.seams().getOrDefault("bay: " + s.name(), Double.NaN), s.reached()));
        }
        return list;
    }

    private static String shortList(Set<String> names) {
        List<String> list = names.stream().limit(4).toList();
        return String.join(", ", list) + (names.size() > list.size() ? " and others" : "");
    }

    /** Finds the earlier film at each surfel. */
    private static final class Match {
        private static final double SAME_M = 2e-5;
        private final double[] before;
        private final boolean same;
        private double unmatchedM2;

        Match(RunResult now, FilmTable table) {
            SurfelSet q = now.grid().surfels();
            before = new double[q.count()];
            Arrays.fill(before, Double.NaN);
            Vec3 h = now.grid().sizeM();
            double bin = Math.max(h.x(), Math.max(h.y(), h.z()));
            Map<List<Object>, List<Integer>> bins = new HashMap<>();
            for (int i = 0; i < table.rows(); i++) {
                Vec3 p = new Vec3(table.xyzM()[3 * i], table.xyzM()[3 * i + 1], table.xyzM()[3 * i + 2]);
                bins.computeIfAbsent(key(table.part().get(i), p, bin, 0, 0, 0), k -> new ArrayList<>())
                        .add(i);
            }
            boolean exact = true;
            int count = 0;
            for (int s = 0; s < before.length; s++) {
                if (!q.isStructure(s)) {
                    continue;
                }
                count++;
                int best = nearest(now, table, bins, bin, s);
                if (best < 0) {
                    unmatchedM2 += q.areaM2()[s];
                    exact = false;
                } else {
                    before[s] = table.filmM()[best];
                    exact &= distance(q, table, s, best) < SAME_M && table.areaM2()[best] == q.areaM2()[s];
                }
            }
            same = exact && count == table.rows();
        }

        private static int nearest(
                RunResult now, FilmTable table, Map<List<Object>, List<Integer>> bins, double bin, int s) {
            SurfelSet q = now.grid().surfels();
            String part = now.cavity().parts().get(q.part()[s]).name();
            Vec3 p = new Vec3(q.centreX()[s], q.centreY()[s], q.centreZ()[s]);
            int best = -1;
            double least = 2 * bin;
            for (int dk = -2; dk <= 2; dk++) {
                for (int dj = -2; dj <= 2; dj++) {
                    for (int di = -2; di <= 2; di++) {
                        for (int i : bins.getOrDefault(key(part, p, bin, di, dj, dk), List.of())) {
                            double looks = q.normalX()[s] * table.normal()[3 * i]
                                    + q.normalY()[s] * table.normal()[3 * i + 1]
                                    + q.normalZ()[s] * table.normal()[3 * i + 2];
                            // a surfel of the same area at the same place is itself, whatever lies on it
                            double d = distance(q, table, s, i) + (table.areaM2()[i] == q.areaM2()[s] ? 0 : 1e-6);
                            if (looks > 0.5 && (d < least || (d == least && i < best))) {
                                least = d;
                                best = i;
                            }
                        }
                    }
                }
            }
            return best;
        }

        private static double distance(SurfelSet q, FilmTable table, int s, int i) {
            double x = q.centreX()[s] - table.xyzM()[3 * i];
            double y = q.centreY()[s] - table.xyzM()[3 * i + 1];
            double z = q.centreZ()[s] - table.xyzM()[3 * i + 2];
            return Math.sqrt(x * x + y * y + z * z);
        }

        private static List<Object> key(String part, Vec3 p, double bin, int di, int dj, int dk) {
            return List.of(
                    part,
                    (long) Math.floor(p.x() / bin) + di,
                    (long) Math.floor(p.y() / bin) + dj,
                    (long) Math.floor(p.z() / bin) + dk);
        }
    }
}
