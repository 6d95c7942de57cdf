package baymist.cavity;

import baymist.geom.Predicates;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Triangles of a plane polygon with holes that use the given corners and no others, so that neighbouring sheets meet them
 * vertex for vertex.
 *
 * <p>Every hole is joined to the rim by a bridge to the nearest corner that sees it; the ring that results is cut down ear by
 * ear, shortest diagonal first (existence of ears: Meisters 1975). All decisions are exact ({@link Predicates#orient2d}), so
 * triangles never overlap and never miss a place.
 */
final class PolygonTriangles {
    /** All corners {x, y}, rim first. */
    private final List<double[]> points = new ArrayList<>();

    private PolygonTriangles() {}

    /**
     * Corner numbers of the triangles, counter-clockwise; corners count through the rim, then through the holes in turn.
     *
     * @param rim counter-clockwise
     * @param holes each counter-clockwise, inside of the rim and clear of it and of each other
     * @return null if the loops cross, touch or have no area
     */
    static @Nullable List<int[]> of(List<double[]> rim, List<List<double[]>> holes) {
        if (!clear(rim, holes)) {
            return null;
        }
        PolygonTriangles t = new PolygonTriangles();
        t.points.addAll(rim);
        List<Integer> ring = new ArrayList<>();
        for (int i = 0; i < rim.size(); i++) {
            ring.add(i);
        }
        List<List<Integer>> loops = new ArrayList<>();
        for (List<double[]> hole : holes) {
            List<Integer> loop = new ArrayList<>();
            for (int i = hole.size() - 1; i >= 0; i--) {
                loop.add(t.points.size() + i);
            }
            t.points.addAll(hole);
            loops.add(loop);
        }
        while (!loops.isEmpty()) {
            if (!t.bridge(ring, loops)) {
                return null;
            }
        }
        return t.clip(ring);
    }

    /** Whether each loop is simple, holes lie inside of the rim, and no two loops meet. */
    private static boolean clear(List<double[]> rim, List<List<double[]>> holes) {
        List<List<double[]>> loops = new ArrayList<>(holes);
        loops.add(0, rim);
        for (int i = 0; i < loops.size(); i++) {
            if (selfMeets(loops.get(i)) || signedArea(loops.get(i)) <= 0) {
                return false;
            }
            for (int j = i + 1; j < loops.size(); j++) {
                boolean within = contains(loops.get(i), loops.get(j).get(0));
                boolean around = contains(loops.get(j), loops.get(i).get(0));
                if (meets(loops.get(i), loops.get(j)) || within != (i == 0) || around) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean selfMeets(List<double[]> loop) {
        int n = loop.size();
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                boolean neighbours = j == i + 1 || (i == 0 && j == n - 1);
                if (!neighbours && touch(loop.get(i), loop.get((i + 1) % n), loop.get(j), loop.get((j + 1) % n))) {
                    return true;
                }
            }
        }
        return n < 3;
    }

    private static boolean meets(List<double[]> a, List<double[]> b) {
        for (int i = 0; i < a.size(); i++) {
            for (int j = 0; j < b.size(); j++) {
                if (touch(a.get(i), a.get((i + 1) % a.size()), b.get(j), b.get((j + 1) % b.size()))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double signedArea(List<double[]> loop) {
        double sum = 0;
        double[] o = loop.get(0);
        for (int i = 0; i < loop.size(); i++) {
            double[] p = loop.get(i);
            double[] q = loop.get((i + 1) % loop.size());
            sum += (p[0] - o[0]) * (q[1] - o[1]) - (q[0] - o[0]) * (p[1] - o[1]);
        }
        return sum / 2;
    }

    /** Even-odd rule, exact for points off the loop. */
    private static boolean contains(List<double[]> loop, double[] p) {
        boolean in = false;
        for (int i = 0; i < loop.size(); i++) {
            double[] a = loop.get(i);
            double[] b = loop.get((i + 1) % loop.size());
            if ((a[1] > p[1]) != (b[1] > p[1])) {
                int side = turn(a, b, p);
                in ^= b[1] > a[1] ? side > 0 : side < 0;
            }
        }
        return in;
    }

    private static int turn(double[] a, double[] b, double[] c) {
        return Predicates.orient2d(a[0], a[1], b[0], b[1], c[0], c[1]);
    }

    /** Whether two closed segments have a point in common. */
    private static boolean touch(double[] a, double[] b, double[] c, double[] d) {
        int ac = turn(a, b, c);
        int ad = turn(a, b, d);
        int ca = turn(c, d, a);
        int cb = turn(c, d, b);
        if (ac * ad < 0 && ca * cb < 0) {
            return true;
        }
        return (ac == 0 && between(a, b, c))
                || (ad == 0 && between(a, b, d))
                || (ca == 0 && between(c, d, a))
                || (cb == 0 && between(c, d, b));
    }

    private static boolean between(double[] a, double[] b, double[] p) {
        return Math.min(a[0], b[0]) <= p[0]
                && p[0] <= Math.max(a[0], b[0])
                && Math.min(a[1], b[1]) <= p[1]
                && p[1] <= Math.max(a[1], b[1]);
    }

    private boolean same(int i, int j) {
        double[] p = points.get(i);
        double[] q = points.get(j);
        return p[0] == q[0] && p[1] == q[1];
    }

    /** Joins the hole that reaches furthest along +x: its extreme corner sees a corner of the ring, all others considered. */
    private boolean bridge(List<Integer> ring, List<List<Integer>> loops) {
        int best = 0;
        double far = Double.NEGATIVE_INFINITY;
        int start = 0;
        for (int l = 0; l < loops.size(); l++) {
            for (int i = 0; i < loops.get(l).size(); i++) {
                double x = points.get(loops.get(l).get(i))[0];
                if (x > far) {
                    far = x;
                    best = l;
                    start = i;
                }
            }
        }
        List<Integer> loop = loops.get(best);
        int h = loop.get(start);
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < ring.size(); i++) {
            places.add(i);
        }
        double[] p = points.get(h);
        places.sort(Comparator.comparingDouble((Integer i) -> {
            double[] q = points.get(ring.get(i));
            return Math.hypot(q[0] - p[0], q[1] - p[1]);
        }));
        for (int at : places) {
            if (inCone(ring, at, h) && sees(ring, loops, h, ring.get(at))) {
                List<Integer> joined = new ArrayList<>(ring.subList(0, at + 1));
                for (int i = 0; i <= loop.size(); i++) {
                    joined.add(loop.get((start + i) % loop.size()));
                }
                joined.addAll(ring.subList(at, ring.size()));
                ring.clear();
                ring.addAll(joined);
                loops.remove(best);
                return true;
            }
        }
        return false;
    }

    /** Whether the way from a ring's corner to h starts into the ring's inside. */
    private boolean inCone(List<Integer> ring, int at, int h) {
        double[] q = points.get(ring.get(at));
        double[] before = points.get(ring.get((at + ring.size() - 1) % ring.size()));
        double[] after = points.get(ring.get((at + 1) % ring.size()));
        double[] p = points.get(h);
        boolean left = turn(q, after, p) > 0;
        boolean right = turn(before, q, p) > 0;
        return turn(before, q, after) > 0 ? left && right : left || right;
    }

    private boolean sees(List<Integer> ring, List<List<Integer>> loops, int h, int q) {
        if (!free(ring, h, q)) {
            return false;
        }
        for (List<Integer> loop : loops) {
            if (!free(loop, h, q)) {
                return false;
            }
        }
        return true;
    }

    private boolean free(List<Integer> loop, int h, int q) {
        for (int i = 0; i < loop.size(); i++) {
            int a = loop.get(i);
            int b = loop.get((i + 1) % loop.size());
            boolean meetsEnd = same(a, h) || same(a, q) || same(b, h) || same(b, q);
            double[] s = points.get(h);
            double[] t = points.get(q);
            if (!meetsEnd && touch(s, t, points.get(a), points.get(b))) {
                return false;
            }
            // an edge that shares an end may still lie along the way
            if (meetsEnd && (lies(s, t, a, h, q) || lies(s, t, b, h, q))) {
                return false;
            }
        }
        return true;
    }

    private boolean lies(double[] s, double[] t, int corner, int h, int q) {
        double[] p = points.get(corner);
        return !same(corner, h) && !same(corner, q) && turn(s, t, p) == 0 && between(s, t, p);
    }

    private @Nullable List<int[]> clip(List<Integer> ring) {
        List<int[]> triangles = new ArrayList<>();
        // 0 = not known, 1 = ear, -1 = none; in step with the ring
        List<Integer> ear = new ArrayList<>();
        for (int i = 0; i < ring.size(); i++) {
            ear.add(0);
        }
        boolean fresh = true;
        while (ring.size() > 3) {
            int best = shortestEar(ring, ear);
            if (best < 0) {
                if (fresh) {
                    return null;
                }
                ear.replaceAll(e -> 0);
                fresh = true;
                continue;
            }
            int n = ring.size();
            triangles.add(new int[] {ring.get((best + n - 1) % n), ring.get(best), ring.get((best + 1) % n)});
            ring.remove(best);
            ear.remove(best);
            ear.set((best + n - 2) % (n - 1), 0);
            ear.set(best % (n - 1), 0);
            fresh = false;
        }
        triangles.add(new int[] {ring.get(0), ring.get(1), ring.get(2)});
        return triangles;
    }

    private int shortestEar(List<Integer> ring, List<Integer> ear) {
        int best = -1;
        double shortest = Double.POSITIVE_INFINITY;
        int n = ring.size();
        for (int i = 0; i < n; i++) {
            if (ear.get(i) == 0) {
                ear.set(i, isEar(ring, i) ? 1 : -1);
            }
            if (ear.get(i) == 1) {
                double[] a = points.get(ring.get((i + n - 1) % n));
                double[] c = points.get(ring.get((i + 1) % n));
                double length = Math.hypot(a[0] - c[0], a[1] - c[1]);
                if (length < shortest) {
                    shortest = length;
                    best = i;
                }
            }
        }
        return best;
    }

    private boolean isEar(List<Integer> ring, int i) {
        int n = ring.size();
        int ia = ring.get((i + n - 1) % n);
        int ib = ring.get(i);
        int ic = ring.get((i + 1) % n);
        double[] a = points.get(ia);
        double[] b = points.get(ib);
        double[] c = points.get(ic);
        if (turn(a, b, c) <= 0) {
            return false;
        }
        for (int other : ring) {
            double[] p = points.get(other);
            if (!same(other, ia)
                    && !same(other, ib)
                    && !same(other, ic)
                    && turn(a, b, p) >= 0
                    && turn(b, c, p) >= 0
                    && turn(c, a, p) >= 0) {
                return false;
            }
        }
        return true;
    }
}
