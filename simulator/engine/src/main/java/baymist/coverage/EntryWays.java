package baymist.coverage;

import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.EntrySpec;
import baymist.scene.Scene;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The way through the air from the nearest entry to each cell: Dijkstra (1959) over cells and open holes, where a cell takes the ancestor
 * of the cell before it if that is in sight (Nash, Daniel, Koenig and Felner 2007, Theta*: any-angle path planning), so that ways are
 * straight in open rooms and not staircases. Immutable.
 */
final class EntryWays {
    static final EntryWays NONE = new EntryWays(List.of(), new double[0], new int[0]);

    private final List<String> names;
    /** Way, m, [cells]; infinity where no air leads. */
    private final double[] wayM;
    /** Index of the entry, [cells]. */
    private final int[] entry;

    private EntryWays(List<String> names, double[] wayM, int[] entry) {
        this.names = names;
        this.wayM = wayM;
        this.entry = entry;
    }

    /** Name of the nearest entry, "" where there is none. */
    String name(int cell) {
        return names.isEmpty() || Double.isInfinite(wayM[cell]) ? "" : names.get(entry[cell]);
    }

    /** Way to the middle of a cell, m; infinity where there is none. */
    double wayM(int cell) {
        return names.isEmpty() ? Double.POSITIVE_INFINITY : wayM[cell];
    }

    static EntryWays of(Scene scene, Cavity cavity, VoxelGrid grid) {
        return scene.entries().isEmpty() ? NONE : new Search(scene, cavity, grid).run();
    }

    private record Reach(int cell, double wayM) {}

    private static final class Search {
        private static final double ROUNDING = 1e-12;

        private final VoxelGrid grid;
        private final int[] next;
        private final double[] way;
        private final int[] from;
        private final int[] entry;
        private final List<String> names = new ArrayList<>();
        private final PriorityQueue<Reach> open = new PriorityQueue<>(
                (a, b) -> a.wayM != b.wayM ? Double.compare(a.wayM, b.wayM) : Integer.compare(a.cell, b.cell));

        Search(Scene scene, Cavity cavity, VoxelGrid grid) {
            this.grid = grid;
            next = links(cavity, grid);
            way = new double[grid.cellCount()];
            Arrays.fill(way, Double.POSITIVE_INFINITY);
            from = new int[way.length];
            entry = new int[way.length];
            for (EntrySpec e : scene.entries()) {
                start(e.name(), cavity.openingIndex(e.opening()), cavity);
            }
        }

        private void start(String name, int opening, Cavity cavity) {
            FaceSet faces = grid.faces();
            names.add(name);
            for (int v = 0; v < faces.vents() && opening >= 0; v++) {
                if (faces.ventOpening()[v] == opening) {
                    int cell = faces.ventCell()[v];
                    Vec3 centre = cavity.openings().get(opening).place().centreM();
                    double first = grid.centre(cell).distance(centre);
                    if (first < way[cell]) {
                        way[cell] = first;
                        from[cell] = cell;
                        entry[cell] = names.size() - 1;
                        open.add(new Reach(cell, first));
                    }
                }
            }
        }

        EntryWays run() {
            boolean[] done = new boolean[way.length];
            while (!open.isEmpty()) {
                int cell = open.remove().cell;
                if (done[cell]) {
                    continue;
                }
                done[cell] = true;
                for (int d = 0; d < 6; d++) {
                    int to = next[6 * cell + d];
                    if (to >= 0 && !done[to]) {
                        relax(cell, to);
                    }
                }
            }
            return new EntryWays(List.copyOf(names), way, entry);
        }

        private void relax(int cell, int to) {
            // lines of sight are long to walk: not where the way could not be shorter even with one
            int ancestor = from[cell];
            boolean known = way[to] < Double.POSITIVE_INFINITY;
            double straight = way[ancestor] + grid.centre(ancestor).distance(grid.centre(to));
            if (known && (from[to] == ancestor || straight > way[to] * (1 + ROUNDING))) {
                return;
            }
            int base = inSight(from[cell], to) ? from[cell] : cell;
            double length = way[base] + grid.centre(base).distance(grid.centre(to));
            if (length < way[to]) {
                way[to] = length;
                from[to] = base;
                entry[to] = entry[cell];
                open.add(new Reach(to, length));
            }
        }

        /** Whether the straight line between two centres crosses open faces only. */
        private boolean inSight(int a, int b) {
            int[] at = {grid.i(a), grid.j(a), grid.k(a)};
            int[] end = {grid.i(b), grid.j(b), grid.k(b)};
            double[] step = new double[3];
            double[] ahead = new double[3];
            for (int axis = 0; axis < 3; axis++) {
                int n = Math.abs(end[axis] - at[axis]);
                step[axis] = n == 0 ? Double.POSITIVE_INFINITY : 1.0 / n;
                ahead[axis] = n == 0 ? Double.POSITIVE_INFINITY : 0.5 / n;
            }
            int cell = a;
            while (cell != b) {
                int axis = ahead[0] <= ahead[1] && ahead[0] <= ahead[2] ? 0 : ahead[1] <= ahead[2] ? 1 : 2;
                if (at[axis] == end[axis]) {
                    return false;
                }
                cell = next[6 * cell + 2 * axis + (end[axis] > at[axis] ? 1 : 0)];
                if (cell < 0) {
                    return false;
                }
                at[axis] += end[axis] > at[axis] ? 1 : -1;
                ahead[axis] += step[axis];
            }
            return true;
        }

        /** Neighbours across open faces and holes that stand open while spraying, [6 * cells]. */
        private static int[] links(Cavity cavity, VoxelGrid grid) {
            int[] next = new int[6 * grid.cellCount()];
            for (int c = 0; c < grid.cellCount(); c++) {
                for (int d = 0; d < 6; d++) {
                    next[6 * c + d] = grid.neighbour(c, d);
                }
            }
            FaceSet faces = grid.faces();
            double[] open = OpenFractions.pass(cavity.openings(), -1, 0);
            for (int f = 0; f < faces.count(); f++) {
                if (faces.opening()[f] >= 0 && open[faces.opening()[f]] > 0) {
                    next[6 * faces.low()[f] + 2 * faces.axis()[f] + 1] = faces.high()[f];
                    next[6 * faces.high()[f] + 2 * faces.axis()[f]] = faces.low()[f];
                }
            }
            return next;
        }
    }
}
