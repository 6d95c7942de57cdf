package baymist.cavity;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.IntConsumer;

/** Points by the cube that they lie in, for searches within the cubes' side. */
final class PointGrid {
    /** A long way is walked in at most so many steps; beyond, all points are asked. */
    private static final int MOST_STEPS = 100_000;

    private record Cube(long x, long y, long z) {}

    private final double sideM;
    private final Map<Cube, List<Integer>> members = new HashMap<>();
    private final List<Integer> all = new ArrayList<>();

    PointGrid(double sideM) {
        this.sideM = sideM;
    }

    void add(int number, Vec3 p) {
        members.computeIfAbsent(cube(p), k -> new ArrayList<>()).add(number);
        all.add(number);
    }

    private Cube cube(Vec3 p) {
        return new Cube(
                (long) Math.floor(p.x() / sideM), (long) Math.floor(p.y() / sideM), (long) Math.floor(p.z() / sideM));
    }

    /** Visits every point within the side of a cube, and some beyond. */
    void forEachNear(Vec3 p, IntConsumer visit) {
        Cube c = cube(p);
        for (long x = c.x() - 1; x <= c.x() + 1; x++) {
            for (long y = c.y() - 1; y <= c.y() + 1; y++) {
                for (long z = c.z() - 1; z <= c.z() + 1; z++) {
                    members.getOrDefault(new Cube(x, y, z), List.of()).forEach(visit::accept);
                }
            }
        }
    }

    /** Visits every point within the side of a cube from a line, once, ascending, and some beyond. */
    void forEachNearSegment(Vec3 a, Vec3 b, IntConsumer visit) {
        double steps = Math.ceil(2 * a.distance(b) / sideM);
        if (all.size() < 64 || steps > MOST_STEPS) {
            all.forEach(visit::accept);
            return;
        }
        TreeSet<Integer> found = new TreeSet<>();
        int n = (int) Math.max(1, steps);
        for (int i = 0; i <= n; i++) {
            forEachNear(a.plus((double) i / n, b.minus(a)), found::add);
        }
        found.forEach(visit::accept);
    }
}
