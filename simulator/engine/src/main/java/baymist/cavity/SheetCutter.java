package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Cuts openings out of sheets along their normals.
 *
 * <p>Each convex piece of an opening's area-matched polygon is a prism along the normal. A triangle near it is split by the
 * prism's side planes one after the other: what lies outside of a plane stays sheet, what is inside of all of them is the
 * piece cut out. Each split is a partition, so cut sheet and closures together keep the area of the whole sheet to rounding.
 * Only sheet within one reach of the outline's plane is cut, just as {@link PlacedOutline#contains} has it.
 */
final class SheetCutter {
    /** A vertex nearer than this to a cutting plane counts as on it, m. */
    private static final double ON_PLANE_M = 1e-12;

    private final TriangleMesh whole;
    private final int[] partOfWhole;
    private final Bvh tree;
    /** What is left of each triangle that a cut came near: convex polygons. */
    private final Map<Integer, List<List<Vec3>>> left = new HashMap<>();

    private final SheetModel closures = new SheetModel();
    /** Closure polygons so far, by the part they came from. */
    private final Map<Integer, List<Closure>> cut = new HashMap<>();

    private SheetModel sheets = new SheetModel();

    private record Closure(int opening, List<Vec3> polygon, Box3 bounds) {
        static Closure of(int opening, List<Vec3> polygon) {
            Box3 box = Box3.EMPTY;
            for (Vec3 p : polygon) {
                box = box.including(p);
            }
            return new Closure(opening, polygon, box);
        }
    }

    SheetCutter(TriangleMesh whole, int[] partOfWhole) {
        this.whole = whole;
        this.partOfWhole = partOfWhole;
        this.tree = Bvh.of(whole);
    }

    /**
     * Outcome of one cut.
     *
     * @param projectedM2 area cut, seen along the normal, m²
     * @param sheetM2 area cut, in the sheet, m²
     * @param overlaps area of earlier openings that this one overlaps, by opening, m²
     */
    record Outcome(double projectedM2, double sheetM2, Map<Integer, Double> overlaps) {}

    Outcome cut(int opening, int part, PlacedOutline place, List<List<double[]>> convex) {
        double projected = 0;
        double area = 0;
        Map<Integer, Double> overlaps = new TreeMap<>();
        Box3 swept = swept(place);
        int[] near = near(part, swept);
        List<Closure> ofPart = cut.computeIfAbsent(part, p -> new ArrayList<>());
        for (List<double[]> piece : convex) {
            Prism prism = new Prism(place, piece);
            for (Closure other : ofPart) {
                if (other.opening != opening && swept.touches(other.bounds)) {
                    List<Vec3> common = prism.inside(other.polygon, new ArrayList<>());
                    overlaps.merge(other.opening, area(common), Double::sum);
                }
            }
            for (int t : near) {
                List<List<Vec3>> remaining = new ArrayList<>();
                for (List<Vec3> polygon : left(t)) {
                    List<Vec3> inside = prism.inside(polygon, remaining);
                    if (inside.size() >= 3) {
                        ofPart.add(Closure.of(opening, inside));
                        addClosure(opening, inside);
                        area += area(inside);
                        projected += Math.abs(areaVector(inside).dot(place.normal()));
                    }
                }
                left.put(t, remaining);
            }
        }
        return new Outcome(projected, area, overlaps);
    }

    /** A box of twice the reach: it holds the whole cylinder that a cut sweeps. */
    private static Box3 swept(PlacedOutline place) {
        double reach = place.outline().reachM() * 1.01 + 2e-6;
        return Box3.EMPTY.including(place.centreM()).grown(2 * reach);
    }

    /** A part's triangles whose boxes touch a box, in their order. */
    private int[] near(int part, Box3 box) {
        IntStream.Builder near = IntStream.builder();
        tree.forEachNear(box, t -> {
            if (partOfWhole[t] == part) {
                near.add(t);
            }
        });
        return near.build().sorted().toArray();
    }

    private List<List<Vec3>> left(int t) {
        List<List<Vec3>> polygons = left.get(t);
        return polygons != null ? polygons : List.of(List.of(whole.point(t, 0), whole.point(t, 1), whole.point(t, 2)));
    }

    void addClosure(int opening, List<Vec3> polygon) {
        fan(closures, opening, polygon);
    }

    private static void fan(SheetModel into, int tag, List<Vec3> polygon) {
        for (int k = 1; k + 1 < polygon.size(); k++) {
            if (area(List.of(polygon.get(0), polygon.get(k), polygon.get(k + 1))) > 0) {
                into.triangle(tag, polygon.get(0), polygon.get(k), polygon.get(k + 1));
            }
        }
    }

    TriangleMesh closures() {
        return closures.mesh();
    }

    int[] openingOfClosure() {
        return closures.partOfTriangle();
    }

    TriangleMesh cutSheets() {
        sheets = new SheetModel();
        for (int t = 0; t < whole.triangleCount(); t++) {
            for (List<Vec3> polygon : left(t)) {
                fan(sheets, partOfWhole[t], polygon);
            }
        }
        return sheets.mesh();
    }

    /** Valid after {@link #cutSheets}. */
    int[] partOfCut() {
        return sheets.partOfTriangle();
    }

    static Vec3 areaVector(List<Vec3> polygon) {
        Vec3 sum = Vec3.ZERO;
        for (int k = 1; k + 1 < polygon.size(); k++) {
            Vec3 a = polygon.get(k).minus(polygon.get(0));
            sum = sum.plus(a.cross(polygon.get(k + 1).minus(polygon.get(0))));
        }
        return sum.times(0.5);
    }

    static double area(List<Vec3> polygon) {
        return areaVector(polygon).length();
    }

    /** Convex prism along an opening's normal, two reaches high. */
    private static final class Prism {
        private final PlacedOutline place;
        /** Side planes, each {nu, nv, offset}: inside where nu u + nv v <= offset. */
        private final List<double[]> sides = new ArrayList<>();

        private final double high;

        Prism(PlacedOutline place, List<double[]> polygon) {
            this.place = place;
            this.high = place.outline().reachM() + 1e-6;
            for (int i : spread(polygon.size())) {
                double[] a = polygon.get(i);
                double[] b = polygon.get((i + 1) % polygon.size());
                double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
                if (length > 0) {
                    double nu = (b[1] - a[1]) / length;
                    double nv = -(b[0] - a[0]) / length;
                    sides.add(new double[] {nu, nv, 0, nu * a[0] + nv * a[1]});
                }
            }
            sides.add(new double[] {0, 0, 1, high});
            sides.add(new double[] {0, 0, -1, high});
        }

        /** 0, n/2, n/4, 3n/4, n/8 ...: coarse sides first, which leaves fewer and fatter pieces. */
        private static List<Integer> spread(int n) {
            List<Integer> order = new ArrayList<>();
            int size = Integer.highestOneBit(Math.max(1, 2 * n - 1));
            int bits = Integer.numberOfTrailingZeros(size);
            for (int k = 0; k < size; k++) {
                int i = bits == 0 ? 0 : Integer.reverse(k) >>> (32 - bits);
                if (i < n) {
                    order.add(i);
                }
            }
            return order;
        }

        private double height(double[] side, Vec3 p) {
            return side[0] * place.u(p) + side[1] * place.v(p) + side[2] * place.heightM(p) - side[3];
        }

        /** Part of the polygon inside the prism; all that is outside goes to {@code outside}, in one piece if none is in. */
        List<Vec3> inside(List<Vec3> polygon, List<List<Vec3>> outside) {
            List<List<Vec3>> off = new ArrayList<>();
            List<Vec3> rest = polygon;
            for (double[] side : sides) {
                double[] d = new double[rest.size()];
                boolean out = false;
                for (int i = 0; i < d.length; i++) {
                    d[i] = height(side, rest.get(i));
                    d[i] = Math.abs(d[i]) <= ON_PLANE_M ? 0 : d[i];
                    out |= d[i] > 0;
                }
                if (out) {
                    off.add(part(rest, d, +1));
                    rest = part(rest, d, -1);
                }
                if (rest.size() < 3) {
                    outside.add(polygon);
                    return List.of();
                }
            }
            off.removeIf(p -> p.size() < 3);
            outside.addAll(off);
            return rest;
        }

        /** Part of a convex polygon on one side of a plane (Sutherland and Hodgman 1974); empty if it has no area. */
        private static List<Vec3> part(List<Vec3> polygon, double[] d, int sign) {
            List<Vec3> kept = new ArrayList<>();
            boolean strictly = false;
            for (int i = 0; i < d.length; i++) {
                int j = (i + 1) % d.length;
                if (sign * d[i] >= 0) {
                    kept.add(polygon.get(i));
                    strictly |= d[i] != 0;
                }
                if (d[i] * d[j] < 0) {
                    // always from the negative to the positive end, so that neighbours find the same point
                    int n = d[i] < 0 ? i : j;
                    int p = n == i ? j : i;
                    Vec3 a = polygon.get(n);
                    kept.add(a.plus(d[n] / (d[n] - d[p]), polygon.get(p).minus(a)));
                }
            }
            return strictly ? kept : List.of();
        }
    }
}
