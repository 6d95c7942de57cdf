package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.TargetSpec;
import baymist.seam.SeamChains;
import baymist.seam.SeamKind;
import baymist.seam.SeamSegment;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Sums the coverage of seams for a film: docs/theory/coverage.md, section 4. */
final class SeamAssessor {
    private final SeamMap map;
    private final double[] filmM;
    private final TargetSpec target;

    private SeamAssessor(SeamMap map, double[] filmM, TargetSpec target) {
        this.map = map;
        this.filmM = filmM;
        this.target = target;
    }

    /** Length and what of it is covered; m. */
    private static final class Tally {
        private double length;
        private double reached;
        private double treated;
        private double unresolved;

        void add(double lengthM, boolean isReached, boolean isTreated, boolean isUnresolved) {
            length += lengthM;
            reached += isReached ? lengthM : 0;
            treated += isTreated ? lengthM : 0;
            unresolved += isUnresolved ? lengthM : 0;
        }

        SeamCoverage.Share share(String name) {
            return new SeamCoverage.Share(name, length, of(reached), of(treated), unresolved);
        }

        double of(double what) {
            return length > 0 ? what / length : 0;
        }
    }

    /** Key of a row: parts, kind, bay. */
    private record Row(int a, int b, SeamKind kind, int bay) {}

    static SeamCoverage assess(SeamMap map, double[] filmM, TargetSpec target) {
        return new SeamAssessor(map, filmM, target).assess();
    }

    private SeamCoverage assess() {
        Tally all = new Tally();
        Map<Integer, Tally> parts = new TreeMap<>();
        Map<Integer, Tally> bays = new TreeMap<>();
        Map<SeamKind, Tally> kinds = new TreeMap<>();
        Map<Row, Tally> rows = new LinkedHashMap<>();
        Map<Row, List<SeamMap.Stretch>> members = new HashMap<>();
        double drawn = 0;
        for (SeamMap.Stretch s : map.stretches) {
            SeamSegment seam = map.segments.get(s.segment());
            boolean reached = reached(s);
            boolean treated = treated(s);
            boolean hidden = !s.isResolved();
            Row row = new Row(seam.partA(), seam.partB(), seam.kind(), s.bay());
            all.add(s.lengthM(), reached, treated, hidden);
            parts.computeIfAbsent(row.a, k -> new Tally()).add(s.lengthM() / 2, reached, treated, hidden);
            parts.computeIfAbsent(row.b, k -> new Tally()).add(s.lengthM() / 2, reached, treated, hidden);
            bays.computeIfAbsent(row.bay, k -> new Tally()).add(s.lengthM(), reached, treated, hidden);
            kinds.computeIfAbsent(row.kind, k -> new Tally()).add(s.lengthM(), reached, treated, hidden);
            rows.computeIfAbsent(row, k -> new Tally()).add(s.lengthM(), reached, treated, hidden);
            members.computeIfAbsent(row, k -> new ArrayList<>()).add(s);
            if (reached) {
                drawn += s.lengthM() * target.seamCreepM() * (loose(s.besideA()) + loose(s.besideB()));
            }
        }
        return new SeamCoverage(
                all.length,
                lineM(),
                all.of(all.reached),
                all.of(all.treated),
                all.unresolved,
                all.reached > 0 ? drawn / all.reached : 0,
                seams(rows, members),
                table(parts, p -> map.cavity.parts().get(p).name()),
                table(bays, this::bayName),
                table(kinds, SeamKind::word),
                lines());
    }

    private boolean reached(SeamMap.Stretch s) {
        return SeamMap.most(s, filmM) >= target.hazeM();
    }

    /** Both sheets, or the one that the voxels hold. */
    private boolean treated(SeamMap.Stretch s) {
        boolean a = s.besideA().length == 0 || SeamMap.most(s.besideA(), filmM) >= target.buildM();
        boolean b = s.besideB().length == 0 || SeamMap.most(s.besideB(), filmM) >= target.buildM();
        return s.isResolved() && a && b;
    }

    /** Film that may be drawn away from the surfel at the seam: what lies above haze, m. */
    private double loose(int[] beside) {
        return beside.length == 0 ? 0 : Math.max(0, filmM[beside[0]] - target.hazeM());
    }

    private double lineM() {
        double sum = 0;
        int last = -1;
        int side = -1;
        boolean whole = map.grid.part() == null;
        for (SeamMap.Stretch s : map.stretches) {
            boolean first = s.segment() != last;
            side = first ? s.side() : side;
            double piece = s.side() == side ? s.lengthM() : 0; // some of the segment may lie in bays not computed
            sum += whole ? (first ? map.segments.get(s.segment()).lengthM() : 0) : piece;
            last = s.segment();
        }
        return sum;
    }

    private static <K> List<SeamCoverage.Share> table(
            Map<K, Tally> tallies, java.util.function.Function<K, String> name) {
        List<SeamCoverage.Share> rows = new ArrayList<>();
        tallies.forEach((k, t) -> rows.add(t.share(name.apply(k))));
        return rows;
    }

    private String bayName(int bay) {
        VoxelGrid grid = map.grid;
        return bay < 0 ? SeamCoverage.NO_BAY : grid.bays().get(bay).name();
    }

    private String parts(int a, int b) {
        Cavity cavity = map.cavity;
        return cavity.parts().get(a).name() + " - " + cavity.parts().get(b).name();
    }

    private List<SeamCoverage.Seam> seams(Map<Row, Tally> rows, Map<Row, List<SeamMap.Stretch>> members) {
        List<SeamCoverage.Seam> seams = new ArrayList<>();
        rows.forEach((row, t) -> {
            Run run = barest(members.getOrDefault(row, List.of()));
            seams.add(new SeamCoverage.Seam(
                    parts(row.a, row.b),
                    row.kind,
                    bayName(row.bay),
                    t.length,
                    t.of(t.reached),
                    t.of(t.treated),
                    t.unresolved,
                    run.middleM,
                    run.lengthM));
        });
        seams.sort(Comparator.comparingDouble((SeamCoverage.Seam s) -> -Math.rint(s.bareM() * 1e6))
                .thenComparing(SeamCoverage.Seam::parts)
                .thenComparing(SeamCoverage.Seam::bay)
                .thenComparing(SeamCoverage.Seam::kind));
        return seams;
    }

    private record Run(Vec3 middleM, double lengthM) {}

    /** The longest run of bare stretches that follow one another on one side. */
    private Run barest(List<SeamMap.Stretch> of) {
        Run best = new Run(of.get(of.size() / 2).middleM(), 0);
        int start = 0;
        double length = 0;
        for (int i = 0; i < of.size(); i++) {
            SeamMap.Stretch s = of.get(i);
            boolean bare = s.isResolved() && !reached(s);
            boolean goesOn = i > 0
                    && s.side() == of.get(i - 1).side()
                    && s.middleM().distance(of.get(i - 1).middleM())
                            < 1.5 * Math.max(s.lengthM(), of.get(i - 1).lengthM());
            if (!goesOn || !bare) {
                start = bare ? i : i + 1;
                length = 0;
            }
            if (bare) {
                length += s.lengthM();
                if (length > best.lengthM + 1e-9) {
                    best = new Run(of.get((start + i) / 2).middleM(), length);
                }
            }
        }
        return best;
    }

    /** Polylines: segments with the same parts, kind and bays on their sides. */
    private List<SeamCoverage.Line> lines() {
        Map<Integer, List<SeamMap.Stretch>> bySegment = new TreeMap<>();
        for (SeamMap.Stretch s : map.stretches) {
            bySegment.computeIfAbsent(s.segment(), k -> new ArrayList<>()).add(s);
        }
        Map<List<Object>, List<Integer>> groups = new LinkedHashMap<>();
        bySegment.forEach((i, of) -> {
            SeamSegment seam = map.segments.get(i);
            List<Object> key = new ArrayList<>(List.of(seam.partA(), seam.partB(), seam.kind()));
            Map<Integer, Integer> bayOfSide = new TreeMap<>();
            of.forEach(s -> bayOfSide.merge(s.side(), s.bay(), Math::max));
            key.addAll(bayOfSide.values().stream().sorted().toList());
            groups.computeIfAbsent(key, k -> new ArrayList<>()).add(i);
        });
        List<SeamCoverage.Line> lines = new ArrayList<>();
        groups.forEach((key, of) -> {
            List<String> bays = key.subList(3, key.size()).stream()
                    .map(b -> bayName((Integer) b))
                    .toList();
            SeamSegment first = map.segments.get(of.get(0));
            for (SeamChains.Chain chain :
                    SeamChains.join(of.stream().map(map.segments::get).toList())) {
                Tally t = new Tally();
                for (int member : chain.members()) {
                    for (SeamMap.Stretch s : bySegment.getOrDefault(of.get(member), List.of())) {
                        t.add(s.lengthM(), reached(s), treated(s), !s.isResolved());
                    }
                }
                double length = chain.members().stream()
                        .mapToDouble(m -> map.segments.get(of.get(m)).lengthM())
                        .sum();
                lines.add(new SeamCoverage.Line(
                        parts(first.partA(), first.partB()),
                        first.kind(),
                        bays,
                        chain.pointsM(),
                        length,
                        t.of(t.reached),
                        t.of(t.treated)));
            }
        });
        return lines;
    }
}
