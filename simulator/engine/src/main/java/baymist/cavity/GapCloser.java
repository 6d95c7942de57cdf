package baymist.cavity;

import baymist.geom.TriangleDistance;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Joins free edges that face each other across a narrow gap.
 *
 * <ol>
 *   <li>Weld: two free vertices within the width become one, at the place of the lower numbered one, nearest pairs first. The
 *       gap must run across their free edges or be short against these, so that a fine rim is not crumpled lengthwise; no
 *       two vertices of one triangle come together, and no vertex moves farther than the width.
 *   <li>Zip: a free vertex within the width of a free edge of another triangle is set into that edge; the triangle is split
 *       there.
 * </ol>
 *
 * Both are repeated until nothing changes, at most {@value #MOST_ROUNDS} times.
 */
final class GapCloser {
    private static final int MOST_ROUNDS = 4;
    /** Cosine to a free edge up to which a gap runs across it. ASSUMED: 45 degrees. */
    private static final double ACROSS = Math.sqrt(0.5);
    /** A gap of at most this share of the free edges can run any way. ASSUMED: such a move turns no triangle over. */
    private static final double SHORT = 0.25;

    private final double widthM;
    private SheetModel model;
    private TriangleMesh mesh;
    /** Free neighbours of each free vertex. */
    private final Map<Integer, TreeSet<Integer>> free = new TreeMap<>();

    private EdgeTable edges;
    private final List<Vec3> places = new ArrayList<>();
    private int welded;
    private int zipped;
    private double widestM;

    private GapCloser(SheetModel model, double widthM) {
        this.model = model;
        this.widthM = widthM;
        this.mesh = model.mesh();
        this.edges = new EdgeTable(mesh);
        collect();
    }

    /**
     * The closed model.
     *
     * @param places where joints were made, the first few
     */
    record Outcome(SheetModel model, int welded, int zipped, double widestM, double closedM, List<Vec3> places) {}

    static Outcome close(SheetModel model, double widthM) {
        GapCloser closer = new GapCloser(model, widthM);
        double before = closer.freeLengthM();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean changed = closer.weld();
            changed |= closer.zip();
            if (!changed) {
                break;
            }
        }
        return new Outcome(
                closer.model,
                closer.welded,
                closer.zipped,
                closer.widestM,
                Math.max(0, before - closer.freeLengthM()),
                List.copyOf(closer.places));
    }

    private void collect() {
        free.clear();
        for (int e = 0; e < edges.count(); e++) {
            if (edges.uses(e) == 1) {
                free.computeIfAbsent(edges.low(e), k -> new TreeSet<>()).add(edges.high(e));
                free.computeIfAbsent(edges.high(e), k -> new TreeSet<>()).add(edges.low(e));
            }
        }
    }

    private double freeLengthM() {
        double sum = 0;
        for (int e = 0; e < edges.count(); e++) {
            if (edges.uses(e) == 1) {
                sum += mesh.vertex(edges.low(e)).distance(mesh.vertex(edges.high(e)));
            }
        }
        return sum;
    }

    private void note(Vec3 place, double gapM) {
        widestM = Math.max(widestM, gapM);
        if (places.size() < 3) {
            places.add(place);
        }
    }

    /** Two free vertices and their distance. */
    private record Pair(int low, int high, double gapM) {}

    private boolean weld() {
        List<Pair> pairs = pairs();
        int[] joined = new int[mesh.vertexCount()];
        for (int v = 0; v < joined.length; v++) {
            joined[v] = v;
        }
        Map<Integer, List<Integer>> groups = new HashMap<>();
        int before = welded;
        for (Pair p : pairs) {
            int a = joined[p.low()];
            int b = joined[p.high()];
            List<Integer> one = groups.getOrDefault(a, List.of(a));
            List<Integer> two = groups.getOrDefault(b, List.of(b));
            if (a == b || !mayJoin(one, two, Math.min(a, b))) {
                continue;
            }
            List<Integer> both = new ArrayList<>(one);
            both.addAll(two);
            int lead = Collections.min(both);
            both.forEach(v -> joined[v] = lead);
            groups.put(lead, both);
            welded++;
            note(mesh.vertex(lead), p.gapM());
        }
        if (welded == before) {
            return false;
        }
        SheetModel next = emptyCopy();
        TriangleSet seen = new TriangleSet();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int a = joined[mesh.corner(t, 0)];
            int b = joined[mesh.corner(t, 1)];
            int c = joined[mesh.corner(t, 2)];
            if (seen.add(a, b, c)) {
                next.triangle(model.partOf(t), mesh.vertex(a), mesh.vertex(b), mesh.vertex(c));
            }
        }
        use(next);
        return true;
    }

    private boolean mayJoin(List<Integer> one, List<Integer> two, int lead) {
        for (int v : one) {
            for (int w : two) {
                if (edges.usesBetween(v, w) > 0
                        || mesh.vertex(v).distance(mesh.vertex(lead)) > widthM
                        || mesh.vertex(w).distance(mesh.vertex(lead)) > widthM) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Pairs that may be welded, nearest first. */
    private List<Pair> pairs() {
        PointGrid grid = new PointGrid(widthM);
        free.keySet().forEach(v -> grid.add(v, mesh.vertex(v)));
        List<Pair> pairs = new ArrayList<>();
        for (int v : free.keySet()) {
            grid.forEachNear(mesh.vertex(v), w -> {
                double gap = mesh.vertex(v).distance(mesh.vertex(w));
                if (w > v
                        && gap <= widthM
                        && edges.usesBetween(v, w) == 0
                        && runsAcross(v, w, gap)
                        && runsAcross(w, v, gap)) {
                    pairs.add(new Pair(v, w, gap));
                }
            });
        }
        pairs.sort(Comparator.comparingDouble(Pair::gapM)
                .thenComparingInt(Pair::low)
                .thenComparingInt(Pair::high));
        return pairs;
    }

    private boolean runsAcross(int v, int w, double gapM) {
        Vec3 d = mesh.vertex(w).minus(mesh.vertex(v));
        for (int n : free.getOrDefault(v, new TreeSet<>())) {
            Vec3 e = mesh.vertex(n).minus(mesh.vertex(v));
            if (gapM > SHORT * e.length() && Math.abs(d.dot(e)) > ACROSS * gapM * e.length()) {
                return false;
            }
        }
        return true;
    }

    private boolean zip() {
        PointGrid grid = new PointGrid(widthM);
        free.keySet().forEach(v -> grid.add(v, mesh.vertex(v)));
        SheetModel next = emptyCopy();
        int before = zipped;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            List<Vec3> corners = withInserted(t, grid);
            if (corners.size() == 3) {
                next.triangle(model.partOf(t), mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2));
            } else {
                for (int[] s : PolygonSplitter.split(corners).triangles()) {
                    next.triangle(model.partOf(t), corners.get(s[0]), corners.get(s[1]), corners.get(s[2]));
                }
            }
        }
        if (zipped == before) {
            return false;
        }
        use(next);
        return true;
    }

    /** Corners of a triangle, with the free vertices that belong into its free edges. */
    private List<Vec3> withInserted(int t, PointGrid grid) {
        List<Vec3> corners = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            int a = mesh.corner(t, k);
            int b = mesh.corner(t, (k + 1) % 3);
            int c = mesh.corner(t, (k + 2) % 3);
            corners.add(mesh.vertex(a));
            if (edges.usesBetween(a, b) == 1) {
                between(grid, a, b, c).forEach(v -> corners.add(mesh.vertex(v)));
            }
        }
        return corners;
    }

    /** Free vertices close to the edge from a to b, in turn; c is the triangle's third corner. */
    private List<Integer> between(PointGrid grid, int a, int b, int c) {
        Vec3 from = mesh.vertex(a);
        Vec3 to = mesh.vertex(b);
        double length = from.distance(to);
        List<Integer> found = new ArrayList<>();
        grid.forEachNearSegment(from, to, v -> {
            Vec3 p = mesh.vertex(v);
            double gap = TriangleDistance.closestOnSegment(p, from, to).distance(p);
            double along = p.minus(from).dot(to.minus(from)) / length;
            // nearer to an end than to the edge, a vertex belongs to that end
            boolean inner = along > gap && along < length - gap && along > 1e-6 * length && along < (1 - 1e-6) * length;
            if (v != a && v != b && v != c && gap <= widthM && inner && edges.usesBetween(v, c) == 0) {
                found.add(v);
                zipped++;
                note(p, gap);
            }
        });
        found.sort(Comparator.comparingDouble(
                (Integer v) -> mesh.vertex(v).minus(from).dot(to.minus(from))));
        return found;
    }

    private SheetModel emptyCopy() {
        SheetModel copy = new SheetModel();
        copy.parts.addAll(model.parts);
        copy.remarks.addAll(model.remarks);
        return copy;
    }

    private void use(SheetModel next) {
        model = next;
        mesh = model.mesh();
        edges = new EdgeTable(mesh);
        collect();
    }
}
