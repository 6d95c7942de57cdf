package baymist.surface;

import baymist.geom.PairKey;
import baymist.geom.Vec3;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;

/**
 * Flat stretches of a sheet, and better triangles in them.
 *
 * <p>Two triangles of a part that share an edge and lie in one plane belong to one stretch. In it an edge is turned wherever the angles
 * opposite to it sum to more than 180 degrees, until none does: the triangles are then those of Delaunay, whose least angle is the largest
 * possible (Lawson 1977, Software for C1 surface interpolation; from memory). The sheet stays where it is.
 */
final class FlatStretches {
    /** Sine of the angle between the planes of two triangles up to which they are one plane. */
    private static final double FLAT = 1e-5;
    /** Cotangents must sum to less than this before an edge is turned: turning for nothing would never end. */
    private static final double WORSE = -1e-9;

    private final Pieces pieces;
    /** Triangles on each edge: two, or one and -1; an edge with three or more has no entry left. */
    private final Map<Long, int[]> edges = new HashMap<>();

    private FlatStretches(Pieces pieces) {
        this.pieces = pieces;
        for (int t = 0; t < pieces.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                int[] pair = edges.computeIfAbsent(key(t, k), x -> new int[] {-1, -1, 0});
                int n = pair[2]++;
                if (n < 2) {
                    pair[n] = t;
                }
            }
        }
        edges.values().removeIf(pair -> pair[2] != 2);
    }

    /** Numbers the stretches of sheets. */
    static void number(Pieces sheets) {
        FlatStretches flat = new FlatStretches(sheets);
        int[] root = new int[sheets.triangles()];
        for (int t = 0; t < root.length; t++) {
            root[t] = t;
        }
        for (int[] pair : flat.edges.values()) {
            if (sheets.part(pair[0]) == sheets.part(pair[1]) && flat.onePlane(pair[0], pair[1])) {
                int a = find(root, pair[0]);
                int b = find(root, pair[1]);
                root[Math.max(a, b)] = Math.min(a, b);
            }
        }
        for (int t = 0; t < root.length; t++) {
            sheets.setStretch(t, find(root, t));
        }
    }

    private static int find(int[] root, int t) {
        int r = t;
        while (root[r] != r) {
            root[r] = root[root[r]];
            r = root[r];
        }
        return r;
    }

    /** Turns edges within stretches. */
    static void improve(Pieces pieces) {
        FlatStretches flat = new FlatStretches(pieces);
        Deque<Integer> open = new ArrayDeque<>();
        for (int t = 0; t < pieces.triangles(); t++) {
            open.add(t);
        }
        // each turn brings the triangles nearer to Delaunay's; the bound is for rounding alone
        for (long turns = 50L * pieces.triangles(); turns > 0 && !open.isEmpty(); turns--) {
            flat.turnOne(open.remove(), open);
        }
    }

    private void turnOne(int t, Deque<Integer> open) {
        for (int k = 0; k < 3; k++) {
            int[] pair = edges.get(key(t, k));
            int other = pair == null ? -1 : pair[0] == t ? pair[1] : pair[0];
            if (other < 0 || pieces.stretch(other) != pieces.stretch(t)) {
                continue;
            }
            int a = pieces.corner(t, k);
            int b = pieces.corner(t, (k + 1) % 3);
            int m = back(other, b, a);
            if (m < 0) {
                continue; // the neighbour is wound the other way round
            }
            int tip = pieces.corner(t, (k + 2) % 3);
            int far = pieces.corner(other, (m + 2) % 3);
            if (cotangent(tip, a, b) + cotangent(far, a, b) < WORSE && !edges.containsKey(PairKey.of(tip, far))) {
                turn(t, other, a, b, tip, far);
                open.add(t);
                open.add(other);
                return;
            }
        }
    }

    /** Corner of a triangle from which its edge runs from {@code from} to {@code to}, or -1. */
    private int back(int triangle, int from, int to) {
        for (int m = 0; m < 3; m++) {
            if (pieces.corner(triangle, m) == from && pieces.corner(triangle, (m + 1) % 3) == to) {
                return m;
            }
        }
        return -1;
    }

    private void turn(int t, int other, int a, int b, int tip, int far) {
        edges.remove(PairKey.of(a, b));
        pieces.set(t, tip, a, far);
        pieces.set(other, far, b, tip);
        edges.put(PairKey.of(tip, far), new int[] {t, other, 2});
        replace(PairKey.of(a, far), other, t);
        replace(PairKey.of(b, tip), t, other);
    }

    private void replace(long key, int old, int now) {
        int[] pair = edges.get(key);
        if (pair != null) {
            pair[pair[0] == old ? 0 : 1] = now;
        }
    }

    private double cotangent(int tip, int a, int b) {
        Vec3 p = pieces.point(tip);
        Vec3 u = pieces.point(a).minus(p);
        Vec3 v = pieces.point(b).minus(p);
        double twice = u.cross(v).length();
        return twice > 0 ? u.dot(v) / twice : Math.signum(u.dot(v)) * 1e12;
    }

    private boolean onePlane(int t, int other) {
        Vec3 m = pieces.doubleAreaVector(t);
        Vec3 n = pieces.doubleAreaVector(other);
        return m.cross(n).length() <= FLAT * m.length() * n.length() && m.dot(n) > 0;
    }

    private long key(int triangle, int k) {
        return PairKey.of(pieces.corner(triangle, k), pieces.corner(triangle, (k + 1) % 3));
    }
}
