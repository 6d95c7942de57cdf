package baymist.seam;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Seam lines found so far, to tell what of a new piece is known already: meshes that do not share their edges describe a seam twice. */
final class KnownLines {
    private static final double PARALLEL = Math.cos(Math.toRadians(15));

    private final double binM;
    private final Map<List<Long>, List<SeamSegment>> bins = new HashMap<>();

    KnownLines(double binM) {
        this.binM = binM;
    }

    void add(SeamSegment s) {
        for (List<Long> bin : bins(s.from(), s.to(), 0)) {
            bins.computeIfAbsent(bin, k -> new ArrayList<>()).add(s);
        }
    }

    /** Spans of a piece that no known seam of the two parts covers: {start, end} in m from its beginning. */
    List<double[]> fresh(int partA, int partB, Vec3 from, Vec3 to, double nearM) {
        double length = from.distance(to);
        Vec3 unit = to.minus(from).times(1 / length);
        List<double[]> left = new ArrayList<>();
        left.add(new double[] {0, length});
        Set<SeamSegment> seen = new LinkedHashSet<>();
        for (List<Long> bin : bins(from, to, nearM)) {
            seen.addAll(bins.getOrDefault(bin, List.of()));
        }
        for (SeamSegment s : seen) {
            if (s.partA() == partA && s.partB() == partB) {
                double[] span = covered(s, from, unit, nearM);
                if (span != null) {
                    left = less(left, span);
                }
            }
        }
        left.removeIf(x -> x[1] - x[0] < 1e-6);
        return left;
    }

    private static double @Nullable [] covered(SeamSegment s, Vec3 from, Vec3 unit, double nearM) {
        Vec3 along = s.to().minus(s.from());
        if (Math.abs(along.dot(unit)) < PARALLEL * along.length()) {
            return null;
        }
        double a = s.from().minus(from).dot(unit);
        double b = s.to().minus(from).dot(unit);
        double offA = s.from().minus(from).plus(-a, unit).length();
        double offB = s.to().minus(from).plus(-b, unit).length();
        return Math.max(offA, offB) > nearM ? null : new double[] {Math.min(a, b), Math.max(a, b)};
    }

    private static List<double[]> less(List<double[]> spans, double[] taken) {
        List<double[]> left = new ArrayList<>();
        for (double[] s : spans) {
            if (taken[1] <= s[0] || taken[0] >= s[1]) {
                left.add(s);
                continue;
            }
            if (taken[0] > s[0]) {
                left.add(new double[] {s[0], taken[0]});
            }
            if (taken[1] < s[1]) {
                left.add(new double[] {taken[1], s[1]});
            }
        }
        return left;
    }

    private List<List<Long>> bins(Vec3 from, Vec3 to, double grownM) {
        Box3 box = Box3.EMPTY.including(from).including(to).grown(grownM);
        List<List<Long>> found = new ArrayList<>();
        for (long i = bin(box.min().x()); i <= bin(box.max().x()); i++) {
            for (long j = bin(box.min().y()); j <= bin(box.max().y()); j++) {
                for (long k = bin(box.min().z()); k <= bin(box.max().z()); k++) {
                    found.add(List.of(i, j, k));
                }
            }
        }
        return found;
    }

    private long bin(double x) {
        return (long) Math.floor(x / binM);
    }
}
