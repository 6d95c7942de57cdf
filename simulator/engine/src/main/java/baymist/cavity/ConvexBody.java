package baymist.cavity;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** A convex body as half-spaces, for cutting away what lies inside of it. */
final class ConvexBody {
    /** A corner nearer than this to a plane counts as on it, m. */
    private static final double ON_PLANE_M = 1e-12;

    private record Plane(Vec3 outward, double offsetM) {}

    private final List<Plane> planes = new ArrayList<>();

    /** Adds the half-space outward . p <= outward . on. */
    ConvexBody within(Vec3 outward, Vec3 on) {
        planes.add(new Plane(outward.unit(), outward.unit().dot(on)));
        return this;
    }

    boolean contains(Vec3 p, double marginM) {
        return planes.stream().allMatch(s -> s.outward.dot(p) - s.offsetM < -marginM);
    }

    /** Parameter range {from, to} of the line p + t d inside the body; from > to where it misses. */
    double[] range(Vec3 p, Vec3 d) {
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        for (Plane s : planes) {
            double slope = s.outward.dot(d);
            double height = s.outward.dot(p) - s.offsetM;
            if (slope > 0) {
                to = Math.min(to, -height / slope);
            } else if (slope < 0) {
                from = Math.max(from, -height / slope);
            } else if (height > 0) {
                return new double[] {1, 0};
            }
        }
        return new double[] {from, to};
    }

    /** Unit normal, outward, of the side that a point of the surface lies on. */
    Vec3 normalAt(Vec3 p) {
        Plane best = planes.get(0);
        for (Plane s : planes) {
            best = s.outward.dot(p) - s.offsetM > best.outward.dot(p) - best.offsetM ? s : best;
        }
        return best.outward;
    }

    /**
     * What is left of a convex polygon outside of this body made smaller by an allowance all round, as convex polygons; the
     * polygon itself, in one piece, where nothing of it lies inside.
     */
    List<List<Vec3>> outside(List<Vec3> polygon, double allowanceM) {
        List<List<Vec3>> off = new ArrayList<>();
        List<Vec3> rest = polygon;
        for (Plane plane : planes) {
            double[] d = new double[rest.size()];
            boolean out = false;
            for (int i = 0; i < d.length; i++) {
                d[i] = plane.outward.dot(rest.get(i)) - plane.offsetM + allowanceM;
                d[i] = Math.abs(d[i]) <= ON_PLANE_M ? 0 : d[i];
                out |= d[i] > 0;
            }
            if (out) {
                off.add(half(rest, d, +1));
                rest = half(rest, d, -1);
            }
            if (rest.size() < 3) {
                return List.of(polygon);
            }
        }
        off.removeIf(p -> p.size() < 3);
        return off;
    }

    /** What of a convex polygon lies inside of this body, a convex polygon; empty if it has no area. */
    List<Vec3> inside(List<Vec3> polygon) {
        List<Vec3> rest = polygon;
        for (Plane plane : planes) {
            double[] d = new double[rest.size()];
            for (int i = 0; i < d.length; i++) {
                d[i] = plane.outward.dot(rest.get(i)) - plane.offsetM;
                d[i] = Math.abs(d[i]) <= ON_PLANE_M ? 0 : d[i];
            }
            rest = half(rest, d, -1);
        }
        return rest;
    }

    /** Part of a convex polygon on one side of a plane (Sutherland and Hodgman 1974); empty if it has no area. */
    private static List<Vec3> half(List<Vec3> polygon, double[] d, int sign) {
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
