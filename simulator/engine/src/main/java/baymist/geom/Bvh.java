package baymist.geom;

import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Tree of boxes over the triangles of a mesh, immutable and safe to share between threads.
 *
 * <p>Built top-down with the surface-area heuristic over 16 bins an axis (Wald 2007, On fast Construction of SAH-based
 * Bounding Volume Hierarchies, IEEE RT 07); the same mesh gives the same tree. Rays are tested against boxes with the
 * conservative bound of Ize (2013), Robust BVH Ray Traversal, JCGT 2(2), and against triangles as Woop, Benthin and Wald
 * (2013), Watertight Ray/Triangle Intersection, JCGT 2(1): an edge shared by two triangles is never missed by both. The
 * signs come from products of the very same rounded coordinates on both sides, so no higher precision is needed for that;
 * a ray through an edge may report either triangle.
 */
public final class Bvh {
    /** Rounding allowance of a slab test, 1 + 2 gamma(3) (Ize 2013). */
    private static final double SLAB = 1 + 6 * 0x1p-53 / (1 - 3 * 0x1p-53);
    /** Neither below nor at any distance: not even at that of a ray without end, which would otherwise go through the whole tree. */
    private static final double MISSED = Double.NaN;

    private final TriangleMesh mesh;
    /** Node boxes, m, [6 * nodeCount]: low x, y, z, high x, y, z. */
    private final double[] bounds;
    /** Inner node: its right child (the left child is the next node). Leaf: first slot. [nodeCount] */
    private final int[] link;
    /** Triangles in a leaf, 0 for an inner node, [nodeCount]. */
    private final int[] count;
    /** Triangle number in each slot, [triangleCount]. */
    private final int[] triangleOfSlot;
    /** Corner coordinates by slot, m, [9 * triangleCount]. */
    private final double[] corners;

    private Bvh(TriangleMesh mesh, BvhBuilder built) {
        this.mesh = mesh;
        this.bounds = built.bounds();
        this.link = built.link();
        this.count = built.count();
        this.triangleOfSlot = built.order();
        this.corners = new double[9 * triangleOfSlot.length];
        for (int slot = 0; slot < triangleOfSlot.length; slot++) {
            for (int k = 0; k < 3; k++) {
                int vertex = mesh.corner(triangleOfSlot[slot], k);
                for (int axis = 0; axis < 3; axis++) {
                    corners[9 * slot + 3 * k + axis] = mesh.coordinate(vertex, axis);
                }
            }
        }
    }

    /** The tree of a mesh: made once, kept with the mesh. */
    public static Bvh of(TriangleMesh mesh) {
        return mesh.tree();
    }

    static Bvh make(TriangleMesh mesh) {
        return new Bvh(mesh, new BvhBuilder(mesh));
    }

    public TriangleMesh mesh() {
        return mesh;
    }

    /** Number of boxes, for statistics. */
    public int nodeCount() {
        return link.length;
    }

    /**
     * First triangle along a ray.
     *
     * @param direction not zero; {@code tMin}, {@code tMax} and the answer count in lengths of it
     * @param filter may turn hits down, upon which the ray goes on; called in no particular order of distance
     * @return the hit, or null if nothing is met from {@code tMin} to {@code tMax} (both inclusive)
     */
    public @Nullable RayHit closestHit(Vec3 origin, Vec3 direction, double tMin, double tMax, TriangleFilter filter) {
        Ray ray = new Ray().set(origin, direction, tMin, tMax);
        if (!closestHit(ray, filter)) {
            return null;
        }
        return new RayHit(ray.triangle(), ray.t(), new Vec3(ray.hitX(), ray.hitY(), ray.hitZ()));
    }

    /** First triangle along a ray that was set beforehand; true if there is one, then the ray holds it. */
    public boolean closestHit(Ray ray, TriangleFilter filter) {
        if (triangleOfSlot.length == 0) {
            return false;
        }
        int top = 0;
        int node = enter(ray, 0) <= ray.t() ? 0 : -1;
        while (node >= 0) {
            if (count[node] > 0) {
                for (int slot = link[node]; slot < link[node] + count[node]; slot++) {
                    testTriangle(ray, slot, filter);
                }
                node = -1;
            } else {
                int near = node + 1;
                int far = link[node];
                double nearT = enter(ray, near);
                double farT = enter(ray, far);
                if (farT < nearT) {
                    int swapNode = near;
                    near = far;
                    far = swapNode;
                    double swapT = nearT;
                    nearT = farT;
                    farT = swapT;
                }
                if (farT <= ray.t()) {
                    ray.stack[top] = far;
                    ray.entry[top++] = farT;
                }
                node = nearT <= ray.t() ? near : -1;
            }
            while (node < 0 && top > 0) {
                top--;
                node = ray.entry[top] <= ray.t() ? ray.stack[top] : -1;
            }
        }
        return ray.triangle() >= 0;
    }

    /** Parameter at which the ray enters a box; {@link #MISSED} if it passes by or the box lies beyond the current hit. */
    private double enter(Ray ray, int node) {
        int b = 6 * node;
        double x1 = (bounds[b] - ray.ox) * ray.inverseX;
        double x2 = (bounds[b + 3] - ray.ox) * ray.inverseX;
        double y1 = (bounds[b + 1] - ray.oy) * ray.inverseY;
        double y2 = (bounds[b + 4] - ray.oy) * ray.inverseY;
        double z1 = (bounds[b + 2] - ray.oz) * ray.inverseZ;
        double z2 = (bounds[b + 5] - ray.oz) * ray.inverseZ;
        // a ray that runs in a face of the box gives 0 * infinity: such a pair does not restrict
        double near = ray.tMin;
        double far = ray.t();
        if (!Double.isNaN(x1) && !Double.isNaN(x2)) {
            near = Math.max(near, Math.min(x1, x2));
            far = Math.min(far, wider(Math.max(x1, x2)));
        }
        if (!Double.isNaN(y1) && !Double.isNaN(y2)) {
            near = Math.max(near, Math.min(y1, y2));
            far = Math.min(far, wider(Math.max(y1, y2)));
        }
        if (!Double.isNaN(z1) && !Double.isNaN(z2)) {
            near = Math.max(near, Math.min(z1, z2));
            far = Math.min(far, wider(Math.max(z1, z2)));
        }
        return near <= far ? near : MISSED;
    }

    private static double wider(double t) {
        return t >= 0 ? t * SLAB : t / SLAB;
    }

    private void testTriangle(Ray ray, int slot, TriangleFilter filter) {
        int a = 9 * slot;
        double originX = ray.origin(ray.kx);
        double originY = ray.origin(ray.ky);
        double originZ = ray.origin(ray.kz);
        double az = corners[a + ray.kz] - originZ;
        double bz = corners[a + 3 + ray.kz] - originZ;
        double cz = corners[a + 6 + ray.kz] - originZ;
        double ax = corners[a + ray.kx] - originX - ray.shearX * az;
        double ay = corners[a + ray.ky] - originY - ray.shearY * az;
        double bx = corners[a + 3 + ray.kx] - originX - ray.shearX * bz;
        double by = corners[a + 3 + ray.ky] - originY - ray.shearY * bz;
        double cx = corners[a + 6 + ray.kx] - originX - ray.shearX * cz;
        double cy = corners[a + 6 + ray.ky] - originY - ray.shearY * cz;
        double u = cx * by - cy * bx;
        double v = ax * cy - ay * cx;
        double w = bx * ay - by * ax;
        if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0)) {
            return;
        }
        double det = u + v + w;
        if (det == 0) {
            return;
        }
        double t = ray.scaleZ * (u * az + v * bz + w * cz) / det;
        // of two triangles at one distance the lower number wins, whatever the order of the walk
        int triangle = triangleOfSlot[slot];
        if (!(t >= ray.tMin && (t < ray.t() || (t == ray.t() && (ray.triangle() < 0 || triangle < ray.triangle()))))) {
            return;
        }
        if (filter.accept(triangle, t, ray.ox + t * ray.dx, ray.oy + t * ray.dy, ray.oz + t * ray.dz)) {
            ray.found(triangle, t);
        }
    }

    /** Distance from a point to the nearest triangle, m; infinity for an empty mesh. */
    public double distanceToPoint(Vec3 p) {
        Nearest nearest = nearest(p);
        return nearest == null ? Double.POSITIVE_INFINITY : nearest.distanceM();
    }

    /**
     * Distance from a point to the nearest triangle, m, where it is below {@code limitM}; otherwise some number of at least that.
     * Makes no objects but a stack, and leaves out whatever lies beyond the limit.
     */
    public double distanceBelow(double x, double y, double z, double limitM) {
        double limit = limitM * limitM;
        double best = limit;
        int[] stack = new int[64];
        int top = 0;
        if (triangleOfSlot.length > 0) {
            stack[top++] = 0;
        }
        while (top > 0) {
            int node = stack[--top];
            if (boxSquare(node, x, y, z) * (1 - 1e-14) >= best) {
                continue;
            }
            if (count[node] == 0) {
                int left = node + 1;
                int right = link[node];
                boolean leftFirst = boxSquare(left, x, y, z) <= boxSquare(right, x, y, z);
                stack[top++] = leftFirst ? right : left;
                stack[top++] = leftFirst ? left : right;
                continue;
            }
            for (int slot = link[node]; slot < link[node] + count[node]; slot++) {
                best = Math.min(best, PointTriangle.square(corners, 9 * slot, x, y, z));
            }
        }
        return best < limit ? Math.sqrt(best) : limitM;
    }

    private double boxSquare(int node, double x, double y, double z) {
        int b = 6 * node;
        double dx = Math.max(0, Math.max(bounds[b] - x, x - bounds[b + 3]));
        double dy = Math.max(0, Math.max(bounds[b + 1] - y, y - bounds[b + 4]));
        double dz = Math.max(0, Math.max(bounds[b + 2] - z, z - bounds[b + 5]));
        return dx * dx + dy * dy + dz * dz;
    }

    /**
     * Triangle nearest to a point.
     *
     * @param point nearest point of it, m
     */
    public record Nearest(int triangle, Vec3 point, double distanceM) {}

    /** Triangle nearest to a point (the lowest number among equals), or null for an empty mesh. */
    public @Nullable Nearest nearest(Vec3 p) {
        Nearest best = null;
        int[] stack = new int[64];
        int top = 0;
        if (triangleOfSlot.length > 0) {
            stack[top++] = 0;
        }
        while (top > 0) {
            int node = stack[--top];
            if (best != null && boxDistance(node, p) > best.distanceM()) {
                continue;
            }
            if (count[node] == 0) {
                int left = node + 1;
                int right = link[node];
                boolean leftFirst = boxDistance(left, p) <= boxDistance(right, p);
                stack[top++] = leftFirst ? right : left;
                stack[top++] = leftFirst ? left : right;
                continue;
            }
            for (int slot = link[node]; slot < link[node] + count[node]; slot++) {
                int t = triangleOfSlot[slot];
                double known = best == null ? Double.POSITIVE_INFINITY : best.distanceM();
                // a hair less than the true distance, as for boxes
                if (PointTriangle.square(corners, 9 * slot, p.x(), p.y(), p.z()) * (1 - 1e-12) > known * known) {
                    continue;
                }
                Vec3 q = TriangleDistance.closestPoint(p, mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2));
                double d = q.distance(p);
                if (best == null || d < best.distanceM() || (d == best.distanceM() && t < best.triangle())) {
                    best = new Nearest(t, q, d);
                }
            }
        }
        return best;
    }

    private double boxDistance(int node, Vec3 p) {
        double sum = 0;
        for (int axis = 0; axis < 3; axis++) {
            double c = p.get(axis);
            double d = Math.max(0, Math.max(bounds[6 * node + axis] - c, c - bounds[6 * node + 3 + axis]));
            sum += d * d;
        }
        // a hair less than the true distance, so that rounding never drops the nearest triangle
        return Math.sqrt(sum) * (1 - 1e-15);
    }

    /** Calls {@code visit} for each triangle whose own box touches {@code box} (in the order of the tree). */
    public void forEachNear(Box3 box, IntConsumer visit) {
        int[] stack = new int[64];
        int top = 0;
        if (triangleOfSlot.length > 0 && !box.isEmpty()) {
            stack[top++] = 0;
        }
        while (top > 0) {
            int node = stack[--top];
            if (!touches(node, box)) {
                continue;
            }
            if (count[node] == 0) {
                stack[top++] = link[node];
                stack[top++] = node + 1;
                continue;
            }
            for (int slot = link[node]; slot < link[node] + count[node]; slot++) {
                if (slotTouches(slot, box)) {
                    visit.accept(triangleOfSlot[slot]);
                }
            }
        }
    }

    /**
     * Calls {@code visit} for each triangle in a leaf that the segment from a to b, thickened by {@code radiusM}, may touch:
     * all that it does touch and some more. Cheaper than a box query for long oblique rods.
     */
    public void forEachNearSegment(Vec3 a, Vec3 b, double radiusM, IntConsumer visit) {
        Vec3 along = b.minus(a);
        int[] stack = new int[64];
        int top = 0;
        if (triangleOfSlot.length > 0) {
            stack[top++] = 0;
        }
        while (top > 0) {
            int node = stack[--top];
            if (!segmentTouches(node, a, along, radiusM)) {
                continue;
            }
            if (count[node] == 0) {
                stack[top++] = link[node];
                stack[top++] = node + 1;
                continue;
            }
            for (int slot = link[node]; slot < link[node] + count[node]; slot++) {
                visit.accept(triangleOfSlot[slot]);
            }
        }
    }

    private boolean segmentTouches(int node, Vec3 a, Vec3 along, double radiusM) {
        double near = 0;
        double far = 1;
        for (int axis = 0; axis < 3; axis++) {
            double low = bounds[6 * node + axis] - radiusM - a.get(axis);
            double high = bounds[6 * node + 3 + axis] + radiusM - a.get(axis);
            double d = along.get(axis);
            if (d == 0) {
                if (low > 0 || high < 0) {
                    return false;
                }
                continue;
            }
            near = Math.max(near, Math.min(low / d, high / d) - 1e-12);
            far = Math.min(far, Math.max(low / d, high / d) + 1e-12);
        }
        return near <= far;
    }

    private boolean touches(int node, Box3 box) {
        int b = 6 * node;
        return bounds[b] <= box.max().x()
                && bounds[b + 3] >= box.min().x()
                && bounds[b + 1] <= box.max().y()
                && bounds[b + 4] >= box.min().y()
                && bounds[b + 2] <= box.max().z()
                && bounds[b + 5] >= box.min().z();
    }

    private boolean slotTouches(int slot, Box3 box) {
        for (int axis = 0; axis < 3; axis++) {
            double a = corners[9 * slot + axis];
            double b = corners[9 * slot + 3 + axis];
            double c = corners[9 * slot + 6 + axis];
            if (Math.min(a, Math.min(b, c)) > box.max().get(axis)
                    || Math.max(a, Math.max(b, c)) < box.min().get(axis)) {
                return false;
            }
        }
        return true;
    }
}
