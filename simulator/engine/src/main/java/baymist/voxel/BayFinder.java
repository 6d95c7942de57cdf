package baymist.voxel;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Splits the cavity into the compartments that appear when every opening is closed. */
final class BayFinder {
    /** Components below this many cells or this share of the volume join a neighbour (ASSUMED: a pocket is no bay). */
    private static final int LEAST_CELLS = 8;

    private static final double LEAST_SHARE = 0.002;

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
        boolean[] settled = new boolean[components];
        while (true) {
            int small = -1;
            for (int c = 0; c < components; c++) {
                boolean tiny = size[c] < LEAST_CELLS || volume[c] < LEAST_SHARE * total;
                if (groups.of(c) == c && !settled[c] && tiny && (small < 0 || volume[c] < volume[small])) {
                    small = c;
                }
            }
            if (small < 0) {
                return groups;
            }
            int into = widestNeighbour(groups, small);
            if (into < 0) {
                settled[small] = true;
                continue;
            }
            groups.join(small, into);
            int root = groups.of(small);
            int other = root == small ? into : small;
            volume[root] += volume[other];
            size[root] += size[other];
        }
    }

    private int widestNeighbour(Groups groups, int group) {
        double[] area = new double[components];
        int best = -1;
        for (int f = 0; f < faces.count(); f++) {
            if (faces.opening()[f] < 0) {
                continue;
            }
            int a = groups.of(component[faces.low()[f]]);
            int b = groups.of(component[faces.high()[f]]);
            if (a != b && (a == group || b == group)) {
                area[a == group ? b : a] += faces.areaM2()[f];
            }
        }
        for (int c = 0; c < components; c++) {
            if (area[c] > 0 && (best < 0 || area[c] > area[best])) {
                best = c;
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
