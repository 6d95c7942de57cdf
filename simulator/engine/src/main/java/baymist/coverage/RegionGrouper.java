package baymist.coverage;

import baymist.voxel.SurfelEdge;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Which bare surfels make one place. Neither a strip of film narrower than the bridge parts a place, nor does a neck of bare sheet narrower
 * than it join two: a closing and an opening in the sense of Serra (1982), Image Analysis and Mathematical Morphology, ch. II, with ways
 * along the sheet for distances, so that the size of the voxels decides nothing that is much larger than they are. Bare surfels are never
 * lost or gained.
 */
final class RegionGrouper {
    private static final double STRICTLY = 1 - 1e-9;

    private final SurfelSet surfels;
    private final SurfelEdge edge;
    private final Verdict[] verdict;
    private final double bridgeM;
    private final double coreM2;
    /** Film that lies in a bridge between bare places, [surfels]. */
    private final boolean[] bridged;

    RegionGrouper(VoxelGrid grid, @Nullable Verdict[] verdict, double bridgeM, double spotM) {
        this.surfels = grid.surfels();
        this.edge = new SurfelEdge(grid);
        this.verdict = verdict;
        this.bridgeM = bridgeM;
        double core = Math.max(0, spotM - bridgeM);
        this.coreM2 = core * core;
        this.bridged = new boolean[surfels.count()];
    }

    private record Front(int surfel, double wayM) {}

    private static PriorityQueue<Front> fronts() {
        return new PriorityQueue<>(
                (a, b) -> a.wayM != b.wayM ? Double.compare(a.wayM, b.wayM) : Integer.compare(a.surfel, b.surfel));
    }

    private boolean bare(int s) {
        return verdict[s] == Verdict.UNREACHED;
    }

    private boolean filmed(int s) {
        return verdict[s] != null && verdict[s] != Verdict.UNREACHED;
    }

    /** Places in the order of their lowest surfel, members ascending. */
    List<int[]> places() {
        int[] label = components();
        if (bridgeM > 0) {
            bridge(label);
            split(label);
        }
        TreeMap<Integer, List<Integer>> members = new TreeMap<>();
        for (int s = 0; s < label.length; s++) {
            if (bare(s)) {
                members.computeIfAbsent(label[s], k -> new ArrayList<>()).add(s);
            }
        }
        return members.values().stream()
                .map(m -> m.stream().mapToInt(Integer::intValue).toArray())
                .sorted((a, b) -> Integer.compare(a[0], b[0]))
                .toList();
    }

    /** Number of the component of each bare surfel: its lowest surfel; -1 for others. */
    private int[] components() {
        int[] label = new int[surfels.count()];
        Arrays.fill(label, -1);
        int[] queue = new int[label.length];
        for (int start = 0; start < label.length; start++) {
            if (!bare(start) || label[start] >= 0) {
                continue;
            }
            int head = 0;
            int tail = 0;
            queue[tail++] = start;
            label[start] = start;
            while (head < tail) {
                int s = queue[head++];
                for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                    int n = surfels.neighbour()[e];
                    if (bare(n) && label[n] < 0) {
                        label[n] = start;
                        queue[tail++] = n;
                    }
                }
            }
        }
        return label;
    }

    /** Joins components that narrow film parts. */
    private void bridge(int[] label) {
        double[] way = new double[label.length];
        int[] from = new int[label.length];
        int[] of = label.clone();
        spread(way, from, of);
        int[] root = new int[label.length];
        Arrays.setAll(root, s -> s);
        for (int s = 0; s < label.length; s++) {
            if (!filmed(s) || of[s] < 0) {
                continue;
            }
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                boolean joins = bare(n) ? of[n] != of[s] || from[s] != n : filmed(n) && of[n] >= 0 && n > s;
                double step = edge.wayM(s, n);
                double width = way[s] + (bare(n) ? step / 2 : step + way[n]);
                if (joins && width < bridgeM * STRICTLY && find(root, of[s]) != find(root, of[n])) {
                    int low = Math.min(find(root, of[s]), find(root, of[n]));
                    int high = Math.max(find(root, of[s]), find(root, of[n]));
                    root[high] = low;
                }
                if (joins && width < bridgeM * STRICTLY && of[s] != of[n]) {
                    mark(s, from);
                    mark(n, from);
                }
            }
        }
        for (int s = 0; s < label.length; s++) {
            label[s] = label[s] < 0 ? -1 : find(root, label[s]);
        }
    }

    /** Way from the rim of the nearest bare component into the film, as far as a bridge may reach; the component goes along. */
    private void spread(double[] way, int[] from, int[] of) {
        Arrays.fill(way, Double.POSITIVE_INFINITY);
        PriorityQueue<Front> open = fronts();
        for (int s = 0; s < way.length; s++) {
            if (bare(s)) {
                way[s] = 0;
                from[s] = s;
                open.add(new Front(s, 0));
            }
        }
        while (!open.isEmpty()) {
            Front f = open.remove();
            int s = f.surfel;
            if (f.wayM > way[s]) {
                continue;
            }
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                double to = way[s] + edge.wayM(s, n) * (bare(s) ? 0.5 : 1);
                if (filmed(n) && to < way[n] && to < bridgeM) {
                    way[n] = to;
                    from[n] = s;
                    of[n] = of[s];
                    open.add(new Front(n, to));
                }
            }
        }
    }

    private void mark(int start, int[] from) {
        for (int s = start; filmed(s) && !bridged[s]; s = from[s]) {
            bridged[s] = true;
        }
    }

    private static int find(int[] root, int s) {
        int r = s;
        while (root[r] != r) {
            r = root[r];
        }
        return r;
    }

    /** Parts places that only narrow necks join. */
    private void split(int[] label) {
        double[] depth = depths();
        int[] core = new int[label.length];
        Arrays.fill(core, -1);
        TreeMap<Integer, List<Integer>> cores = new TreeMap<>(); // place -> lowest surfels of its cores
        for (int start = 0; start < label.length; start++) {
            if (core[start] < 0 && bare(start) && isCore(start, depth) && floodCore(start, core, depth) >= coreM2) {
                cores.computeIfAbsent(label[start], k -> new ArrayList<>()).add(start);
            }
        }
        PriorityQueue<Front> open = fronts();
        double[] way = new double[label.length];
        int[] to = new int[label.length];
        Arrays.fill(way, Double.POSITIVE_INFINITY);
        Arrays.fill(to, -1);
        for (int s = 0; s < label.length; s++) {
            List<Integer> of = label[s] < 0 ? null : cores.get(label[s]);
            if (of != null && of.size() > 1 && core[s] >= 0 && of.contains(core[s])) {
                way[s] = 0;
                to[s] = core[s];
                open.add(new Front(s, 0));
            }
        }
        while (!open.isEmpty()) {
            Front f = open.remove();
            int s = f.surfel;
            if (f.wayM > way[s]) {
                continue;
            }
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                double length = way[s] + edge.wayM(s, n);
                if ((bare(n) || bridged[n]) && length < way[n]) {
                    way[n] = length;
                    to[n] = to[s];
                    open.add(new Front(n, length));
                }
            }
        }
        for (int s = 0; s < label.length; s++) {
            label[s] = bare(s) && to[s] >= 0 ? to[s] : label[s];
        }
    }

    /** Marks a core by its lowest surfel; returns its area, m². */
    private double floodCore(int start, int[] core, double[] depth) {
        List<Integer> queue = new ArrayList<>(List.of(start));
        core[start] = start;
        double area = 0;
        for (int q = 0; q < queue.size(); q++) {
            int s = queue.get(q);
            area += bare(s) ? surfels.areaM2()[s] : 0;
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                if (core[n] < 0 && isCore(n, depth)) {
                    core[n] = start;
                    queue.add(n);
                }
            }
        }
        return area;
    }

    private boolean isCore(int s, double[] depth) {
        return (bare(s) || bridged[s]) && depth[s] >= bridgeM / 2 * STRICTLY;
    }

    /** Way from film that is no bridge to each bare or bridged surfel's middle, m, [surfels]. */
    private double[] depths() {
        double[] depth = new double[surfels.count()];
        Arrays.fill(depth, Double.POSITIVE_INFINITY);
        PriorityQueue<Front> open = fronts();
        for (int s = 0; s < depth.length; s++) {
            if (filmed(s) && !bridged[s]) {
                depth[s] = 0;
                open.add(new Front(s, 0));
            }
        }
        while (!open.isEmpty()) {
            Front f = open.remove();
            int s = f.surfel;
            if (f.wayM > depth[s] || f.wayM > bridgeM) {
                continue;
            }
            boolean rim = filmed(s) && !bridged[s];
            for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                int n = surfels.neighbour()[e];
                double to = depth[s] + edge.wayM(s, n) * (rim ? 0.5 : 1);
                if ((bare(n) || bridged[n]) && to < depth[n]) {
                    depth[n] = to;
                    open.add(new Front(n, to));
                }
            }
        }
        return depth;
    }
}
