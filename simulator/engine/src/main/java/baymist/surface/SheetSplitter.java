package baymist.surface;

import baymist.cavity.Cavity;
import baymist.geom.PairKey;
import baymist.geom.TriangleMesh;
import java.util.HashMap;
import java.util.Map;

/**
 * Splits sheet triangles until no edge is longer than wanted.
 *
 * <p>An edge is cut if it is too long, whatever triangle asks; so both triangles on an edge agree and no crack opens. The cut is such that
 * equal pieces just short enough can come of it. One cut edge makes two triangles, two make three, three make four; rounds go on until none
 * is too long. Between rounds edges are turned within each flat stretch, see {@link FlatStretches}, so that thin triangles don't stay thin.
 */
final class SheetSplitter {
    private SheetSplitter() {}

    /** The cut sheets, with points that coincide joined within each part; triangles without area are left out. */
    static Pieces sheets(Cavity cavity) {
        TriangleMesh mesh = cavity.cutSheets();
        Pieces pieces = new Pieces();
        Map<Corner, Integer> known = new HashMap<>();
        int[] c = new int[3];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int part = cavity.partOfCut(t);
            if (part < 0 || !(mesh.doubleAreaVector(t).length() > 0)) {
                continue;
            }
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                double x = mesh.coordinate(v, 0);
                double y = mesh.coordinate(v, 1);
                double z = mesh.coordinate(v, 2);
                c[k] = known.computeIfAbsent(new Corner(part, x, y, z), key -> pieces.addVertex(x, y, z));
            }
            pieces.add(c[0], c[1], c[2], part, -1);
        }
        return pieces;
    }

    /** The split triangles, or all that there were when more than {@code most} came up (the caller tries longer edges). */
    static Pieces split(Pieces sheets, double edgeM, int most) {
        Pieces now = sheets;
        double limit = edgeM * edgeM;
        while (now.triangles() <= most) {
            Pieces next = now.verticesOnly();
            Map<Long, Integer> halves = new HashMap<>();
            boolean split = false;
            for (int t = 0; t < now.triangles(); t++) {
                split |= one(now, next, t, limit, halves);
            }
            if (!split) {
                return next;
            }
            FlatStretches.improve(next);
            now = next;
        }
        return now;
    }

    private static boolean one(Pieces from, Pieces to, int t, double limit, Map<Long, Integer> halves) {
        int part = from.part(t);
        int stretch = from.stretch(t);
        int[] c = {from.corner(t, 0), from.corner(t, 1), from.corner(t, 2)};
        int[] half = new int[3];
        int count = 0;
        for (int k = 0; k < 3; k++) {
            int a = c[k];
            int b = c[(k + 1) % 3];
            half[k] = from.length2(a, b) > 1.0001 * limit ? half(to, a, b, limit, halves) : -1;
            count += half[k] >= 0 ? 1 : 0;
        }
        switch (count) {
            case 0 -> to.add(c[0], c[1], c[2], part, stretch);
            case 1 -> {
                int k = half[0] >= 0 ? 0 : half[1] >= 0 ? 1 : 2;
                to.add(c[k], half[k], c[(k + 2) % 3], part, stretch);
                to.add(half[k], c[(k + 1) % 3], c[(k + 2) % 3], part, stretch);
            }
            case 2 -> two(to, c, half, part, stretch);
            default -> {
                for (int k = 0; k < 3; k++) {
                    to.add(c[k], half[k], half[(k + 2) % 3], part, stretch);
                }
                to.add(half[0], half[1], half[2], part, stretch);
            }
        }
        return count > 0;
    }

    /** Two halved edges: the corner between them is cut off, the rest halved along its shorter diagonal. */
    private static void two(Pieces to, int[] c, int[] half, int part, int stretch) {
        int whole = half[0] < 0 ? 0 : half[1] < 0 ? 1 : 2;
        int a = c[whole];
        int b = c[(whole + 1) % 3];
        int tip = c[(whole + 2) % 3];
        int onB = half[(whole + 1) % 3];
        int onA = half[(whole + 2) % 3];
        to.add(onB, tip, onA, part, stretch);
        if (to.length2(a, onB) <= to.length2(b, onA)) {
            to.add(a, b, onB, part, stretch);
            to.add(a, onB, onA, part, stretch);
        } else {
            to.add(a, b, onA, part, stretch);
            to.add(b, onB, onA, part, stretch);
        }
    }

    private static int half(Pieces to, int a, int b, double limit, Map<Long, Integer> halves) {
        long key = PairKey.of(a, b);
        return halves.computeIfAbsent(key, k -> {
            double pieces = Math.ceil(Math.sqrt(to.length2(a, b) / limit) - 1e-9);
            double share = Math.floor(pieces / 2) / pieces;
            double[] at = new double[3];
            for (int axis = 0; axis < 3; axis++) {
                double from = to.coordinate(Math.min(a, b), axis);
                at[axis] = from + share * (to.coordinate(Math.max(a, b), axis) - from);
            }
            return to.addVertex(at[0], at[1], at[2]);
        });
    }

    private record Corner(int part, double x, double y, double z) {}
}
