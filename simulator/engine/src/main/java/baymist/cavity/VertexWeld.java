package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Numbers places so that what lies within the tolerance of an earlier one gets its number. One thread. */
final class VertexWeld {
    private final double toleranceM;
    private final Predicate<Vec3> mayMove;
    private final List<Vec3> points = new ArrayList<>();
    private final Map<Vec3, Integer> exact = new HashMap<>();
    /** Numbers of the places in each cube of the tolerance's size. */
    private final Map<Cube, List<Integer>> cubes = new HashMap<>();

    private record Cube(long i, long j, long k) {
        static Cube of(Vec3 p, double size) {
            return new Cube(
                    (long) Math.floor(p.x() / size), (long) Math.floor(p.y() / size), (long) Math.floor(p.z() / size));
        }
    }

    VertexWeld(double toleranceM, Predicate<Vec3> mayMove) {
        this.toleranceM = toleranceM;
        this.mayMove = mayMove;
    }

    Vec3 point(int vertex) {
        return points.get(vertex);
    }

    int vertex(Vec3 p) {
        Integer same = exact.get(p);
        if (same != null) {
            return same;
        }
        int near = mayMove.test(p) ? nearest(p) : -1;
        if (near >= 0) {
            exact.put(p, near);
            return near;
        }
        points.add(p);
        int number = points.size() - 1;
        exact.put(p, number);
        if (mayMove.test(p)) {
            cubes.computeIfAbsent(Cube.of(p, toleranceM), c -> new ArrayList<>())
                    .add(number);
        }
        return number;
    }

    private int nearest(Vec3 p) {
        Cube own = Cube.of(p, toleranceM);
        int best = -1;
        double least = toleranceM;
        for (int n = 0; n < 27; n++) {
            Cube cube = new Cube(own.i() + n % 3 - 1, own.j() + n / 3 % 3 - 1, own.k() + n / 9 - 1);
            for (int v : cubes.getOrDefault(cube, List.of())) {
                double d = points.get(v).distance(p);
                if (d < least || (d == least && best < 0)) {
                    least = d;
                    best = v;
                }
            }
        }
        return best;
    }

    /** Search for vertices on edges among all vertices numbered so far. */
    EdgeVertices edgeVertices() {
        return new EdgeVertices();
    }

    /** Vertices sorted into coarse boxes. */
    final class EdgeVertices {
        private final Vec3 low;
        private final double size;
        private final Map<Cube, List<Integer>> boxes = new HashMap<>();

        private EdgeVertices() {
            Box3 box = Box3.EMPTY;
            for (Vec3 p : points) {
                box = box.including(p);
            }
            low = points.isEmpty() ? Vec3.ZERO : box.min();
            double extent = points.isEmpty() ? 1 : box.size().length();
            size = Math.max(10 * toleranceM, extent / Math.max(1, 2 * Math.cbrt(points.size())));
            for (int v = 0; v < points.size(); v++) {
                boxes.computeIfAbsent(Cube.of(points.get(v).minus(low), size), c -> new ArrayList<>())
                        .add(v);
            }
        }

        /** Vertices within the tolerance of the straight edge between two others, from a to b. */
        List<Integer> between(int a, int b) {
            Vec3 from = points.get(a);
            Vec3 to = points.get(b);
            Vec3 reach = new Vec3(toleranceM, toleranceM, toleranceM);
            Box3 box = Box3.EMPTY.including(from).including(to);
            Cube first = Cube.of(box.min().minus(reach).minus(low), size);
            Cube last = Cube.of(box.max().plus(reach).minus(low), size);
            Map<Integer, Double> found = new HashMap<>();
            for (long k = first.k(); k <= last.k(); k++) {
                for (long j = first.j(); j <= last.j(); j++) {
                    for (long i = first.i(); i <= last.i(); i++) {
                        for (int v : boxes.getOrDefault(new Cube(i, j, k), List.of())) {
                            double at = place(from, to, points.get(v));
                            if (v != a && v != b && at > 0) {
                                found.put(v, at);
                            }
                        }
                    }
                }
            }
            List<Integer> sorted = new ArrayList<>(found.keySet());
            sorted.sort((v, w) -> {
                int byPlace = Double.compare(found.getOrDefault(v, 0.0), found.getOrDefault(w, 0.0));
                return byPlace != 0 ? byPlace : Integer.compare(v, w);
            });
            return sorted;
        }

        /** Distance along the edge at which the point lies on it, or -1. */
        private double place(Vec3 from, Vec3 to, Vec3 p) {
            Vec3 edge = to.minus(from);
            double length = edge.length();
            double along = p.minus(from).dot(edge) / length;
            boolean inside = along > toleranceM && along < length - toleranceM;
            double off = p.minus(from.plus(along / length, edge)).length();
            return inside && off <= toleranceM ? along : -1;
        }
    }
}
