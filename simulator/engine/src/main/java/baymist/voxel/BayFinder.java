package baymist.voxel;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;

/** Splits the cavity into the compartments that appear when every opening is closed. */
final class BayFinder {
    /** Components below this many cells or this share of the volume join a neighbour (ASSUMED: a pocket is no bay). */
    private static final int LEAST_CELLS = 8;

    private static final double LEAST_SHARE = 0.002;
    /** The share counts up to this part of the largest component: bays of a long structure are small shares of it all (ASSUMED). */
    private static final double LEAST_OF_LARGEST = 0.05;

    private final Lattice lattice;
    private final CavityCells cells;
    private final double[] volumeM3;
    private final FaceSet faces;
    /** Component of each cell before merging. */
    private final int[] component;

    private int components;

    private BayFinder(Lattice lattice, CavityCells cells, double[] volumeM3, FaceSet faces) {
        this.lattice = lattice;
        this.cells = cells;
        this.volumeM3 = volumeM3;
        this.faces = faces;
        component = new int[cells.count()];
    }

    /** Bays in order, and the bay of each cell. */
    record Bays(List<Bay> list, int[] bayOfCell) {}

    static Bays find(
            Lattice lattice, CavityCells cells, int[] neighbour, double[] volumeM3, FaceSet faces, SurfelSet surfels) {
        BayFinder finder = new BayFinder(lattice, cells, volumeM3, faces);
        finder.label(neighbour);
        return finder.name(finder.merge(), surfels);
    }

    private void label(int[] neighbour) {
        Arrays.fill(component, -1);
        int[] stack = new int[component.length];
        for (int seed = 0; seed < component.length; seed++) {
            if (component[seed] >= 0) {
                continue;
            }
            int top = 0;
            stack[top++] = seed;
            component[seed] = components;
            while (top > 0) {
                int cell = stack[--top];
                for (int d = 0; d < 6; d++) {
                    int next = neighbour[6 * cell + d];
                    if (next >= 0 && component[next] < 0) {
                        component[next] = components;
                        stack[top++] = next;
                    }
                }
            }
            components++;
        }
    }

    /** A component that may be too small for a bay; ties go to the lower one. */
    private record Small(double volumeM3, int group) implements Comparable<Small> {
        @Override
        public int compareTo(Small o) {
            int byVolume = Double.compare(volumeM3, o.volumeM3);
            return byVolume != 0 ? byVolume : Integer.compare(group, o.group);
        }
    }

    /** Joins each small component, smallest first, to the one it shares the largest opening area with. */
    private Groups merge() {
        Groups groups = new Groups(components);
        double[] volume = new double[components];
        int[] size = new int[components];
        double total = 0;
        for (int c = 0; c < component.length; c++) {
            volume[component[c]] += volumeM3[c];
            size[component[c]]++;
            total += volumeM3[c];
        }
        double largest = Arrays.stream(volume).max().orElse(0);
        double least = Math.min(LEAST_SHARE * total, LEAST_OF_LARGEST * largest);
        List<List<Integer>> holes = holes();
        PriorityQueue<Small> waiting = new PriorityQueue<>();
        for (int c = 0; c < components; c++) {
            waiting.add(new Small(volume[c], c));
        }
        while (!waiting.isEmpty()) {
            Small next = waiting.remove();
            int small = next.group;
            boolean tiny = size[small] < LEAST_CELLS || volume[small] < least;
            if (groups.of(small) != small || volume[small] != next.volumeM3 || !tiny) {
                continue;
            }
            int into = widestNeighbour(groups, small, holes.get(small));
            if (into < 0) {
                continue;
            }
            groups.join(small, into);
            int root = groups.of(small);
            int other = root == small ? into : small;
            volume[root] += volume[other];
            size[root] += size[other];
            holes.set(root, joined(holes.get(root), holes.get(other)));
            waiting.add(new Small(volume[root], root));
        }
        return groups;
    }

    /** Faces of holes at each component, ascending, [components]. */
    private List<List<Integer>> holes() {
        List<List<Integer>> holes = new ArrayList<>();
        for (int c = 0; c < components; c++) {
            holes.add(new ArrayList<>());
        }
        for (int f = 0; f < faces.count(); f++) {
            int low = component[faces.low()[f]];
            int high = component[faces.high()[f]];
            if (faces.opening()[f] >= 0 && low != high) {
                holes.get(low).add(f);
                holes.get(high).add(f);
            }
        }
        return holes;
    }

    /** Both lists in the longer of them. */
    private static List<Integer> joined(List<Integer> a, List<Integer> b) {
        List<Integer> longer = a.size() >= b.size() ? a : b;
        longer.addAll(longer == a ? b : a);
        return longer;
    }

    private int widestNeighbour(Groups groups, int group, List<Integer> holes) {
        holes.sort(null);
        Map<Integer, Double> area = new TreeMap<>();
        for (int f : holes) {
            int a = groups.of(component[faces.low()[f]]);
            int b = groups.of(component[faces.high()[f]]);
            if (a != b) {
                area.merge(a == group ? b : a, faces.areaM2()[f], Double::sum);
            }
        }
        int best = -1;
        double most = 0;
        for (Map.Entry<Integer, Double> e : area.entrySet()) {
            if (e.getValue() > most) {
                best = e.getKey();
                most = e.getValue();
            }
        }
        return best;
    }

    /** What a bay is made of while it is summed up. */
    private static final class Sum {
        final int root;
        double volumeM3;
        double areaM2;
        int cells;
        Vec3 moment = Vec3.ZERO;
        Box3 bounds = Box3.EMPTY;

        Sum(int root) {
            this.root = root;
        }

        double along(int axis) {
            return moment.get(axis) / volumeM3;
        }
    }

    private Bays name(Groups groups, SurfelSet surfels) {
        Sum[] byRoot = new Sum[components];
        List<Sum> order = new ArrayList<>();
        Vec3 half = lattice.pitch().times(0.5);
        Box3 whole = Box3.EMPTY;
        for (int c = 0; c < component.length; c++) {
            int root = groups.of(component[c]);
            if (byRoot[root] == null) {
                byRoot[root] = new Sum(root);
                order.add(byRoot[root]);
            }
            Sum sum = byRoot[root];
            Vec3 p = lattice.centre(cells.latticeOf(c));
            sum.cells++;
            sum.volumeM3 += volumeM3[c];
            sum.moment = sum.moment.plus(volumeM3[c], p);
            sum.bounds = sum.bounds.including(p.minus(half)).including(p.plus(half));
            whole = whole.including(p);
        }
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                byRoot[groups.of(component[surfels.cell()[s]])].areaM2 += surfels.areaM2()[s];
            }
        }
        int axis = longest(whole.size());
        order.sort(Comparator.<Sum>comparingDouble(s -> s.along(axis)).thenComparingInt(s -> s.root));
        int[] bayOfRoot = new int[components];
        List<Bay> bays = new ArrayList<>();
        for (Sum s : order) {
            bayOfRoot[s.root] = bays.size();
            bays.add(new Bay("bay " + (bays.size() + 1), s.volumeM3, s.areaM2, s.bounds, s.cells));
        }
        int[] bayOfCell = new int[component.length];
        for (int c = 0; c < component.length; c++) {
            bayOfCell[c] = bayOfRoot[groups.of(component[c])];
        }
        return new Bays(bays, bayOfCell);
    }

    private static int longest(Vec3 size) {
        int axis = 0;
        for (int a = 1; a < 3; a++) {
            if (size.get(a) > size.get(axis) * (1 + 1e-9)) {
                axis = a;
            }
        }
        return axis;
    }
}
