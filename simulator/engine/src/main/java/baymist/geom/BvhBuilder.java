package baymist.geom;

import java.util.Arrays;

/** Builds the arrays of a {@link Bvh}: surface-area heuristic over bins of the box centres, leaves of at most four. */
final class BvhBuilder {
    private static final int BINS = 16;
    private static final int LEAF = 4;
    /** Below this many levels left, nodes are halved by count, so that no walk needs more than 64 stack entries. */
    private static final int SAH_LEVELS = 32;

    private static final double TRAVERSAL_COST = 1.0;

    private final double[] low;
    private final double[] high;
    private final int[] order;
    private double[] bounds;
    private int[] link;
    private int[] count;
    private int nodes;

    BvhBuilder(TriangleMesh mesh) {
        int n = mesh.triangleCount();
        low = new double[3 * n];
        high = new double[3 * n];
        order = new int[n];
        for (int t = 0; t < n; t++) {
            order[t] = t;
            for (int axis = 0; axis < 3; axis++) {
                double a = mesh.coordinate(mesh.corner(t, 0), axis);
                double b = mesh.coordinate(mesh.corner(t, 1), axis);
                double c = mesh.coordinate(mesh.corner(t, 2), axis);
                low[3 * t + axis] = Math.min(a, Math.min(b, c));
                high[3 * t + axis] = Math.max(a, Math.max(b, c));
            }
        }
        int capacity = Math.max(1, 2 * n);
        bounds = new double[6 * capacity];
        link = new int[capacity];
        count = new int[capacity];
        if (n > 0) {
            build(0, n, 0);
        }
        bounds = Arrays.copyOf(bounds, 6 * nodes);
        link = Arrays.copyOf(link, nodes);
        count = Arrays.copyOf(count, nodes);
    }

    double[] bounds() {
        return bounds;
    }

    int[] link() {
        return link;
    }

    int[] count() {
        return count;
    }

    int[] order() {
        return order;
    }

    private void build(int from, int to, int depth) {
        int node = nodes++;
        double[] box = boxOf(from, to);
        System.arraycopy(box, 0, bounds, 6 * node, 6);
        int middle = to - from <= LEAF ? -1 : depth < SAH_LEVELS ? split(from, to, box) : halve(from, to, box);
        if (middle < 0) {
            link[node] = from;
            count[node] = to - from;
            return;
        }
        build(from, middle, depth + 1);
        link[node] = nodes;
        build(middle, to, depth + 1);
    }

    private double[] boxOf(int from, int to) {
        double[] box = emptyBox();
        for (int i = from; i < to; i++) {
            grow(box, 0, order[i]);
        }
        return box;
    }

    private static double[] emptyBox() {
        double inf = Double.POSITIVE_INFINITY;
        return new double[] {inf, inf, inf, -inf, -inf, -inf};
    }

    private void grow(double[] boxes, int at, int t) {
        for (int axis = 0; axis < 3; axis++) {
            boxes[at + axis] = Math.min(boxes[at + axis], low[3 * t + axis]);
            boxes[at + 3 + axis] = Math.max(boxes[at + 3 + axis], high[3 * t + axis]);
        }
    }

    private double centre(int t, int axis) {
        return 0.5 * (low[3 * t + axis] + high[3 * t + axis]);
    }

    /** Splits where the heuristic says it is cheapest; returns the first index of the right part, or -1 for a leaf. */
    private int split(int from, int to, double[] box) {
        double bestCost = Double.POSITIVE_INFINITY;
        int bestAxis = -1;
        int bestBin = -1;
        for (int axis = 0; axis < 3; axis++) {
            double[] range = centreRange(from, to, axis);
            if (!(range[1] > range[0])) {
                continue;
            }
            double[] cost = costs(from, to, axis, range);
            for (int bin = 1; bin < BINS; bin++) {
                if (cost[bin] < bestCost) {
                    bestCost = cost[bin];
                    bestAxis = axis;
                    bestBin = bin;
                }
            }
        }
        if (bestAxis < 0) {
            return halve(from, to, box);
        }
        double whole = halfArea(box, 0);
        boolean leafIsCheaper = to - from <= 2 * LEAF && TRAVERSAL_COST * whole + bestCost >= (to - from) * whole;
        if (leafIsCheaper) {
            return -1;
        }
        double[] range = centreRange(from, to, bestAxis);
        return partition(from, to, bestAxis, range, bestBin);
    }

    private double[] centreRange(int from, int to, int axis) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            double c = centre(order[i], axis);
            min = Math.min(min, c);
            max = Math.max(max, c);
        }
        return new double[] {min, max};
    }

    private static int binOf(double c, double[] range) {
        return (int) Math.min(BINS - 1, BINS * ((c - range[0]) / (range[1] - range[0])));
    }

    /** Cost of splitting ahead of each bin (infinite where one side would be empty), [BINS]. */
    private double[] costs(int from, int to, int axis, double[] range) {
        int[] inBin = new int[BINS];
        double[] boxes = new double[6 * BINS];
        for (int bin = 0; bin < BINS; bin++) {
            System.arraycopy(emptyBox(), 0, boxes, 6 * bin, 6);
        }
        for (int i = from; i < to; i++) {
            int bin = binOf(centre(order[i], axis), range);
            inBin[bin]++;
            grow(boxes, 6 * bin, order[i]);
        }
        double[] cost = new double[BINS];
        double[] left = emptyBox();
        int leftCount = 0;
        for (int bin = 1; bin < BINS; bin++) {
            merge(left, boxes, 6 * (bin - 1));
            leftCount += inBin[bin - 1];
            cost[bin] = leftCount == 0 ? Double.POSITIVE_INFINITY : leftCount * halfArea(left, 0);
        }
        double[] right = emptyBox();
        int rightCount = 0;
        for (int bin = BINS - 1; bin > 0; bin--) {
            merge(right, boxes, 6 * bin);
            rightCount += inBin[bin];
            cost[bin] += rightCount == 0 ? Double.POSITIVE_INFINITY : rightCount * halfArea(right, 0);
        }
        return cost;
    }

    private static void merge(double[] into, double[] boxes, int at) {
        for (int axis = 0; axis < 3; axis++) {
            into[axis] = Math.min(into[axis], boxes[at + axis]);
            into[3 + axis] = Math.max(into[3 + axis], boxes[at + 3 + axis]);
        }
    }

    private static double halfArea(double[] box, int at) {
        double x = box[at + 3] - box[at];
        double y = box[at + 4] - box[at + 1];
        double z = box[at + 5] - box[at + 2];
        return x < 0 ? 0 : x * y + y * z + z * x;
    }

    /** Stable: both sides keep their order, so the tree depends on the mesh alone. */
    private int partition(int from, int to, int axis, double[] range, int bin) {
        int[] right = new int[to - from];
        int rightCount = 0;
        int at = from;
        for (int i = from; i < to; i++) {
            int t = order[i];
            if (binOf(centre(t, axis), range) < bin) {
                order[at++] = t;
            } else {
                right[rightCount++] = t;
            }
        }
        System.arraycopy(right, 0, order, at, rightCount);
        return at;
    }

    /** Halves by count along the longest side; ties by triangle number. */
    private int halve(int from, int to, double[] box) {
        int axis = 0;
        for (int k = 1; k < 3; k++) {
            if (box[3 + k] - box[k] > box[3 + axis] - box[axis]) {
                axis = k;
            }
        }
        int along = axis;
        Integer[] boxed = new Integer[to - from];
        for (int i = from; i < to; i++) {
            boxed[i - from] = order[i];
        }
        Arrays.sort(boxed, (a, b) -> {
            int c = Double.compare(centre(a, along), centre(b, along));
            return c != 0 ? c : Integer.compare(a, b);
        });
        for (int i = from; i < to; i++) {
            order[i] = boxed[i - from];
        }
        return (from + to) >>> 1;
    }
}
