package baymist.access;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.PairKey;
import baymist.geom.TriangleDistance;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The two sides of every triangle of the whole sheets, and how the air that touches a side goes on round each edge: to the next
 * triangle about the edge, or round a free edge to the back of the same triangle. Edges are matched by their ends, alike to the last bit.
 * Side 2 t faces along the normal of triangle t, side 2 t + 1 against it. Immutable.
 */
final class SheetSides {
    private final Cavity cavity;
    private final TriangleMesh mesh;
    private final Bvh bvh;
    /** Side reached from a side across the edge from corner k to k + 1, [3 * side + k]. */
    private final int[] next;
    /** Openings whose sphere of reach touches a triangle, [triangles][]. */
    private final int[][] openings;

    private record Point(double x, double y, double z) {}

    /** A triangle at an edge: angle about the edge, and whether its normal points to growing angles. */
    private record Leaf(int triangle, int corner, double angle, boolean normalAhead) {}

    private SheetSides(Cavity cavity) {
        this.cavity = cavity;
        this.mesh = cavity.sheets();
        this.bvh = Bvh.of(mesh);
        this.next = new int[6 * mesh.triangleCount()];
        this.openings = openings();
        link();
    }

    static SheetSides of(Cavity cavity) {
        return new SheetSides(cavity);
    }

    TriangleMesh mesh() {
        return mesh;
    }

    Bvh bvh() {
        return bvh;
    }

    /** Part of a triangle, -1 for the virtual cap of a gap. */
    int part(int triangle) {
        return cavity.partOfSheet(triangle);
    }

    /** The side that air touching {@code side} reaches across the edge from corner k to k + 1. */
    int across(int side, int k) {
        return next[3 * side + k];
    }

    /** Openings of the cavity that may lie in a triangle. */
    int[] openingsAt(int triangle) {
        return openings[triangle];
    }

    private int[][] openings() {
        List<List<Integer>> found = new ArrayList<>();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            found.add(List.of());
        }
        for (int i = 0; i < cavity.openings().size(); i++) {
            int opening = i;
            Opening o = cavity.openings().get(i);
            Vec3 c = o.place().centreM();
            double reach = o.place().outline().reachM() * 1.02 + 1e-6;
            bvh.forEachNear(Box3.EMPTY.including(c).grown(1.01 * reach), t -> {
                Vec3 q = TriangleDistance.closestPoint(c, mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2));
                if (q.distance(c) <= reach) {
                    if (found.get(t).isEmpty()) {
                        found.set(t, new ArrayList<>());
                    }
                    found.get(t).add(opening);
                }
            });
        }
        return found.stream()
                .map(l -> l.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }

    private void link() {
        Map<Point, Integer> numbers = new HashMap<>();
        Map<Long, List<int[]>> edges = new HashMap<>();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                int a = number(numbers, mesh.point(t, k));
                int b = number(numbers, mesh.point(t, (k + 1) % 3));
                long key = PairKey.of(a, b);
                edges.computeIfAbsent(key, e -> new ArrayList<>()).add(new int[] {t, k, a < b ? 1 : 0});
            }
        }
        for (List<int[]> edge : edges.values()) {
            round(edge);
        }
    }

    private static int number(Map<Point, Integer> numbers, Vec3 p) {
        // adding zero turns -0 into 0
        Point key = new Point(p.x() + 0.0, p.y() + 0.0, p.z() + 0.0);
        Integer before = numbers.putIfAbsent(key, numbers.size());
        return before == null ? numbers.size() - 1 : before;
    }

    /** Sorts the triangles at an edge by their angle about it and joins the sides that face each other. */
    private void round(List<int[]> edge) {
        int[] first = edge.get(0);
        Vec3 p = mesh.point(first[0], first[1]);
        Vec3 q = mesh.point(first[0], (first[1] + 1) % 3);
        Vec3 along = q.minus(p);
        if (!(along.length() > 0)) {
            edge.forEach(e -> join(2 * e[0], 2 * e[0] + 1, e[1], e[1]));
            return;
        }
        Vec3 d = along.unit();
        Vec3 x = d.anyPerpendicular();
        Vec3 y = d.cross(x);
        List<Leaf> leaves = new ArrayList<>();
        for (int[] e : edge) {
            Vec3 into = mesh.point(e[0], (e[1] + 2) % 3).minus(p);
            // the triangle's own order runs along d where it stores the edge the same way as the first one
            leaves.add(new Leaf(e[0], e[1], Math.atan2(into.dot(y), into.dot(x)), e[2] == first[2]));
        }
        leaves.sort(Comparator.comparingDouble(Leaf::angle).thenComparingInt(Leaf::triangle));
        for (int i = 0; i < leaves.size(); i++) {
            Leaf a = leaves.get(i);
            Leaf b = leaves.get((i + 1) % leaves.size());
            int ahead = 2 * a.triangle + (a.normalAhead ? 0 : 1);
            int behind = 2 * b.triangle + (b.normalAhead ? 1 : 0);
            join(ahead, behind, a.corner, b.corner);
        }
    }

    private void join(int sideA, int sideB, int cornerA, int cornerB) {
        next[3 * sideA + cornerA] = sideB;
        next[3 * sideB + cornerB] = sideA;
    }
}
