package baymist.geom;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Polygon arithmetic behind {@link Outline}: plain shoelace sums and point tests in the outline's plane. */
final class OutlinePolygons {
    private OutlinePolygons() {}

    static double signedArea(List<double[]> points) {
        double sum = 0;
        for (int i = 0; i < points.size(); i++) {
            double[] p = points.get(i);
            double[] q = points.get((i + 1) % points.size());
            sum += p[0] * q[1] - q[0] * p[1];
        }
        return 0.5 * sum;
    }

    static List<double[]> counterClockwise(List<double[]> points) {
        List<double[]> copy = new ArrayList<>();
        for (double[] p : points) {
            copy.add(p.clone());
        }
        if (signedArea(copy) < 0) {
            Collections.reverse(copy);
        }
        return List.copyOf(copy);
    }

    static double perimeter(List<double[]> points) {
        double sum = 0;
        for (int i = 0; i < points.size(); i++) {
            double[] p = points.get(i);
            double[] q = points.get((i + 1) % points.size());
            sum += Math.hypot(q[0] - p[0], q[1] - p[1]);
        }
        return sum;
    }

    /** Even-odd rule; points on the boundary count by the half-open convention. */
    static boolean contains(List<double[]> points, double u, double v) {
        boolean in = false;
        for (int i = 0, j = points.size() - 1; i < points.size(); j = i++) {
            double[] p = points.get(i);
            double[] q = points.get(j);
            if ((p[1] > v) != (q[1] > v) && u < (q[0] - p[0]) * (v - p[1]) / (q[1] - p[1]) + p[0]) {
                in = !in;
            }
        }
        return in;
    }

    static double distanceToBoundary(List<double[]> points, double u, double v) {
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i < points.size(); i++) {
            double[] p = points.get(i);
            double[] q = points.get((i + 1) % points.size());
            double du = q[0] - p[0];
            double dv = q[1] - p[1];
            double l2 = du * du + dv * dv;
            double t = l2 > 0 ? Math.min(1, Math.max(0, ((u - p[0]) * du + (v - p[1]) * dv) / l2)) : 0;
            best = Math.min(best, Math.hypot(u - p[0] - t * du, v - p[1] - t * dv));
        }
        return best;
    }

    /** Rectangle of half sides a, b grown by radius r; the arcs' radius is enlarged so that areas match exactly. */
    static List<double[]> roundedRectangle(double a, double b, double r, int segmentsPerTurn) {
        if (segmentsPerTurn < 8) {
            throw new IllegalArgumentException("segmentsPerTurn " + segmentsPerTurn + ", at least 8 expected");
        }
        if (r <= 0) {
            return List.of(new double[] {a, b}, new double[] {-a, b}, new double[] {-a, -b}, new double[] {a, -b});
        }
        int perQuarter = Math.max(2, (segmentsPerTurn + 3) / 4);
        double step = Math.PI / 2 / perQuarter;
        // with n = 4 perQuarter chords the polygon's area is n/2 sin(step) R^2 + 4 (a + b) R + 4 a b; solve for R
        double quad = 2 * perQuarter * Math.sin(step);
        double target = 4 * (a + b) * r + Math.PI * r * r;
        double half = 2 * (a + b);
        double radius = quad > 0 ? (-half + Math.sqrt(half * half + quad * target)) / quad : r;
        List<double[]> points = new ArrayList<>();
        double[][] centres = {{a, b}, {-a, b}, {-a, -b}, {a, -b}};
        for (int q = 0; q < 4; q++) {
            // where two arcs share a centre their common end point is written once
            int first = q == 0 || !same(centres[q], centres[q - 1]) ? 0 : 1;
            int last = q == 3 && same(centres[3], centres[0]) ? perQuarter - 1 : perQuarter;
            for (int k = first; k <= last; k++) {
                double angle = q * Math.PI / 2 + k * step;
                points.add(
                        new double[] {centres[q][0] + radius * Math.cos(angle), centres[q][1] + radius * Math.sin(angle)
                        });
            }
        }
        return points;
    }

    private static boolean same(double[] p, double[] q) {
        return p[0] == q[0] && p[1] == q[1];
    }
}
