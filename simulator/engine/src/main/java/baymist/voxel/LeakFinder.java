package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * Follows outside air to a cell by the roomiest way and names the tightest places on it: those are the gaps to close.
 */
final class LeakFinder {
    private static final int MOST_SPOTS = 4;
    /** Cost of stepping into a cell that has a sheet at 0, 1, 2, 3 or more cells: wide ways are preferred strongly. */
    private static final double[] STEP_COST = {1e6, 1e4, 1e2, 1};

    private final Cavity cavity;
    private final Lattice lattice;
    private final BlockedFaces blocked;
    /** Steps to the nearest cell with a sheet at one of its sides, [cells]. */
    private final int[] clearance;
    /** Sheet triangle there, or -1, [cells]. */
    private final int[] nearestTriangle;

    LeakFinder(Cavity cavity, Lattice lattice, BlockedFaces blocked) {
        this.cavity = cavity;
        this.lattice = lattice;
        this.blocked = blocked;
        clearance = new int[lattice.cells()];
        nearestTriangle = new int[lattice.cells()];
        measureClearance();
    }

    private void measureClearance() {
        Arrays.fill(clearance, Integer.MAX_VALUE);
        Arrays.fill(nearestTriangle, -1);
        int[] queue = new int[lattice.cells()];
        int tail = 0;
        for (int slot = 0; slot < blocked.count(); slot++) {
            int low = blocked.lowCell(slot);
            for (int side = 0; side < 2; side++) {
                int cell = side == 0 ? low : low + lattice.stride(blocked.axis(slot));
                if (clearance[cell] != 0) {
                    clearance[cell] = 0;
                    nearestTriangle[cell] = blocked.triangle(2 * slot + side);
                    queue[tail++] = cell;
                }
            }
        }
        for (int head = 0; head < tail; head++) {
            int cell = queue[head];
            for (int d = 0; d < 6; d++) {
                int next = open(cell, d);
                if (next >= 0 && clearance[next] == Integer.MAX_VALUE) {
                    clearance[next] = clearance[cell] + 1;
                    nearestTriangle[next] = nearestTriangle[cell];
                    queue[tail++] = next;
                }
            }
        }
    }

    private int open(int cell, int d) {
        int key = lattice.faceKey(cell, d);
        return key < 0 || blocked.slot(key) >= 0 ? -1 : lattice.behind(cell, d);
    }

    /** Places where outside air passes on its way to the cell, tightest spot of each way; empty if it doesn't get there. */
    List<Leak> leaksInto(int target) {
        int middle = roomiestNear(target);
        boolean[] closed = new boolean[lattice.cells()];
        List<Leak> leaks = new ArrayList<>();
        while (leaks.size() < MOST_SPOTS) {
            List<Integer> way = roomiestWay(middle, closed);
            if (way.isEmpty()) {
                break;
            }
            int spot = tightestOn(way);
            leaks.add(new Leak(lattice.centre(spot), describe(spot), places(way)));
            closeAround(spot, closed);
            if (closed[middle]) {
                break;
            }
        }
        return leaks;
    }

    private int roomiestNear(int target) {
        int cell = target;
        boolean climbed = true;
        while (climbed) {
            climbed = false;
            for (int d = 0; d < 6; d++) {
                int next = open(cell, d);
                if (next >= 0 && !lattice.inRing(next) && clearance[next] > clearance[cell]) {
                    cell = next;
                    climbed = true;
                }
            }
        }
        return cell;
    }

    /** A cell waiting to be settled; ties go to the lower cell. */
    private record Waiting(double cost, int cell) implements Comparable<Waiting> {
        @Override
        public int compareTo(Waiting o) {
            int byCost = Double.compare(cost, o.cost);
            return byCost != 0 ? byCost : Integer.compare(cell, o.cell);
        }
    }

    /** Cells on the roomiest way from outside to the target, in that order; empty if there is none. */
    private List<Integer> roomiestWay(int target, boolean[] closed) {
        double[] cost = new double[lattice.cells()];
        int[] from = new int[lattice.cells()];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        PriorityQueue<Waiting> queue = new PriorityQueue<>();
        for (int cell = 0; cell < cost.length; cell++) {
            if (lattice.inRing(cell)) {
                cost[cell] = 0;
                from[cell] = -1;
                queue.add(new Waiting(0, cell));
            }
        }
        while (!queue.isEmpty()) {
            Waiting w = queue.remove();
            if (w.cost > cost[w.cell]) {
                continue;
            }
            if (w.cell == target) {
                return back(target, from);
            }
            for (int d = 0; d < 6; d++) {
                int next = open(w.cell, d);
                if (next < 0 || closed[next]) {
                    continue;
                }
                double c = w.cost + STEP_COST[Math.min(clearance[next], STEP_COST.length - 1)];
                if (c < cost[next]) {
                    cost[next] = c;
                    from[next] = w.cell;
                    queue.add(new Waiting(c, next));
                }
            }
        }
        return List.of();
    }

    private static List<Integer> back(int target, int[] from) {
        List<Integer> way = new ArrayList<>();
        for (int cell = target; cell >= 0; cell = from[cell]) {
            way.add(cell);
        }
        Collections.reverse(way);
        return way;
    }

    /** The cell with least clearance; of several the one nearest to the outside. */
    private int tightestOn(List<Integer> way) {
        int best = way.get(way.size() - 1);
        for (int i = way.size() - 1; i >= 0; i--) {
            int cell = way.get(i);
            if (!lattice.inRing(cell) && clearance[cell] <= clearance[best]) {
                best = cell;
            }
        }
        return best;
    }

    private List<Vec3> places(List<Integer> way) {
        double longest = Math.max(lattice.pitchM(0), Math.max(lattice.pitchM(1), lattice.pitchM(2)));
        return WayPoints.of(way.stream().map(lattice::centre).toList(), 1.5 * longest);
    }

    private void closeAround(int spot, boolean[] closed) {
        forBall(spot, clearance[spot] + 1, cell -> closed[cell] = true);
    }

    private void forBall(int spot, int reach, java.util.function.IntConsumer visit) {
        int i0 = lattice.at(spot, 0);
        int j0 = lattice.at(spot, 1);
        int k0 = lattice.at(spot, 2);
        for (int k = Math.max(0, k0 - reach); k <= Math.min(lattice.count(2) - 1, k0 + reach); k++) {
            for (int j = Math.max(0, j0 - reach); j <= Math.min(lattice.count(1) - 1, j0 + reach); j++) {
                for (int i = Math.max(0, i0 - reach); i <= Math.min(lattice.count(0) - 1, i0 + reach); i++) {
                    visit.accept(lattice.index(i, j, k));
                }
            }
        }
    }

    /** "near upper skin and spar": the two distinct parts nearest to the spot, nearest first. */
    String describe(int spot) {
        Vec3 centre = lattice.centre(spot);
        int reach = Math.min(clearance[spot], 12) + 2;
        List<double[]> near = new ArrayList<>();
        forBall(spot, reach, cell -> {
            int part = clearance[cell] == 0 ? cavity.partOfSheet(nearestTriangle[cell]) : -1;
            if (part >= 0) {
                near.add(new double[] {centre.distance(lattice.centre(cell)), part});
            }
        });
        near.sort((a, b) -> Double.compare(a[0], b[0]));
        Set<Integer> seen = new HashSet<>();
        List<String> names = new ArrayList<>();
        for (double[] n : near) {
            if (names.size() < 2 && seen.add((int) n[1])) {
                names.add(cavity.parts().get((int) n[1]).name());
            }
        }
        return names.isEmpty() ? "away from any sheet" : "near " + String.join(" and ", names);
    }
}
