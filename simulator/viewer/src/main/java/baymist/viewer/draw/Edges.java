package baymist.viewer.draw;

import baymist.surface.Patch;
import baymist.surface.Surface;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Lines that show the shape: where a side of a sheet ends and where it is bent. Straight runs of short edges become one line. */
public final class Edges {
    /** A bend of more than this is drawn, cosine. */
    private static final double BEND = Math.cos(Math.toRadians(28));
    /** Edges that turn by less than this are one line, cosine. */
    private static final double STRAIGHT = Math.cos(Math.toRadians(1.5));

    private final Surface surface;
    private final Set<List<Long>> drawn = new HashSet<>();

    private Edges(Surface surface) {
        this.surface = surface;
    }

    /**
     * Lines of one side of the surface.
     *
     * @return for each patch of that side, by its index, segments, m, x y z of one end then of the other; empty for other sides
     */
    public static List<float[]> of(Surface surface, Patch.Side side) {
        Edges edges = new Edges(surface);
        List<float[]> lines = new ArrayList<>();
        for (Patch patch : surface.patches()) {
            lines.add(patch.side() == side ? edges.of(patch) : new float[0]);
        }
        return lines;
    }

    private float[] of(Patch patch) {
        Map<Long, Integer> firstSide = new HashMap<>();
        Map<Long, Boolean> shown = new HashMap<>();
        for (int t = patch.firstTriangle(); t < patch.firstTriangle() + patch.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                int a = surface.corners()[3 * t + k];
                int b = surface.corners()[3 * t + (k + 1) % 3];
                long edge = (long) Math.min(a, b) << 32 | Math.max(a, b);
                Integer other = firstSide.putIfAbsent(edge, t);
                shown.put(edge, other == null || bent(other, t));
            }
        }
        Map<Integer, List<Integer>> next = new HashMap<>();
        shown.forEach((edge, show) -> {
            if (show) {
                int a = (int) (edge >> 32);
                int b = edge.intValue();
                next.computeIfAbsent(a, v -> new ArrayList<>()).add(b);
                next.computeIfAbsent(b, v -> new ArrayList<>()).add(a);
            }
        });
        return joined(next);
    }

    private boolean bent(int s, int t) {
        double[] m = normal(s);
        double[] n = normal(t);
        double dot = m[0] * n[0] + m[1] * n[1] + m[2] * n[2];
        return dot < BEND * Math.sqrt((m[0] * m[0] + m[1] * m[1] + m[2] * m[2]) * (n[0] * n[0] + n[1] * n[1] + n[2] * n[2]));
    }

    private double[] normal(int t) {
        double[] u = between(surface.corners()[3 * t], surface.corners()[3 * t + 1]);
        double[] v = between(surface.corners()[3 * t], surface.corners()[3 * t + 2]);
        return new double[] {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
    }

    private double[] between(int a, int b) {
        float[] p = surface.xyz();
        return new double[] {
            (double) p[3 * b] - p[3 * a], (double) p[3 * b + 1] - p[3 * a + 1], (double) p[3 * b + 2] - p[3 * a + 2]
        };
    }

    /** Walks along edges as long as they run straight on. */
    private float[] joined(Map<Integer, List<Integer>> next) {
        List<Float> out = new ArrayList<>();
        Set<Long> walked = new HashSet<>();
        List<Integer> starts = new ArrayList<>(next.keySet());
        starts.sort(null);
        for (boolean corners : new boolean[] {true, false}) {
            for (int v : starts) {
                List<Integer> ways = next.get(v);
                if (corners && ways.size() == 2 && straight(ways.get(0), v, ways.get(1))) {
                    continue;
                }
                for (int w : ways) {
                    walk(v, w, next, walked, out);
                }
            }
        }
        float[] flat = new float[out.size()];
        for (int i = 0; i < flat.length; i++) {
            flat[i] = out.get(i);
        }
        return flat;
    }

    private void walk(int start, int second, Map<Integer, List<Integer>> next, Set<Long> walked, List<Float> out) {
        int before = start;
        int at = second;
        if (!walked.add(key(before, at))) {
            return;
        }
        while (next.get(at).size() == 2) {
            int on = next.get(at).get(0) == before ? next.get(at).get(1) : next.get(at).get(0);
            if (on == start || !straight(before, at, on) || !walked.add(key(at, on))) {
                break;
            }
            before = at;
            at = on;
        }
        if (drawn.add(place(start, at)) && drawn.add(place(at, start))) {
            for (int v : new int[] {start, at}) {
                for (int a = 0; a < 3; a++) {
                    out.add(surface.xyz()[3 * v + a]);
                }
            }
        }
    }

    private static long key(int a, int b) {
        return (long) Math.min(a, b) << 32 | Math.max(a, b);
    }

    /** The two ends to half a millimetre: lines of neighbouring sides at one place are drawn once. */
    private List<Long> place(int a, int b) {
        List<Long> place = new ArrayList<>();
        for (int v : new int[] {a, b}) {
            for (int axis = 0; axis < 3; axis++) {
                place.add(Math.round(surface.xyz()[3 * v + axis] / 5e-4));
            }
        }
        return place;
    }

    private boolean straight(int a, int b, int c) {
        double[] u = between(a, b);
        double[] v = between(b, c);
        double dot = u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
        double uu = u[0] * u[0] + u[1] * u[1] + u[2] * u[2];
        double vv = v[0] * v[0] + v[1] * v[1] + v[2] * v[2];
        return dot >= STRAIGHT * Math.sqrt(uu * vv);
    }
}
