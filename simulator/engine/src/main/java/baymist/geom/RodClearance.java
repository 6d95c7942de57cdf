package baymist.geom;

import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Clearance of a straight round rod against triangles, in closed form.
 *
 * <p>First contact of a flat-nosed rod pushed along its axis: in rod coordinates (two across, one along) it is the smallest
 * along-coordinate over the points of a triangle less than one radius off the axis. Triangle and cylinder are convex, so the
 * extremes of the linear coordinate lie at a corner inside the cylinder, where an edge passes through the cylinder's
 * surface, or, if the triangle's inside cuts right across, on the ellipse in which its plane meets the cylinder. Touching at
 * exactly one radius (to 1e-10 relative) is not a contact: a rod fits a hole of its own size and slides along a sheet.
 */
public final class RodClearance {
    private RodClearance() {}

    /**
     * Where a rod is stopped.
     *
     * @param depthM distance of the nose from the origin along the axis, m
     * @param placeM point of the triangle that the nose meets, m
     */
    public record Contact(double depthM, int triangle, Vec3 placeM) {}

    /**
     * Depth at which a rod that is pushed forward from the origin first touches a triangle, m; {@code maxDepthM} or more
     * never comes back: infinity if nothing is touched up to there.
     *
     * @param axis direction of the push, not zero
     * @param radiusM radius of the rod, m, positive
     */
    public static double firstContact(
            Vec3 origin, Vec3 axis, double radiusM, double maxDepthM, TriangleMesh mesh, Bvh bvh) {
        Contact contact = firstContact(origin, axis, radiusM, 0, maxDepthM, mesh, bvh);
        return contact == null ? Double.POSITIVE_INFINITY : contact.depthM();
    }

    /**
     * As above with a start depth: what lies in the rod's way before {@code startM} alone is ignored; a triangle that reaches
     * from before the start into the swept space is touched at the start.
     *
     * @return the contact (lowest triangle among equals), or null if the nose reaches {@code maxDepthM} free
     */
    public static @Nullable Contact firstContact(
            Vec3 origin, Vec3 axis, double radiusM, double startM, double maxDepthM, TriangleMesh mesh, Bvh bvh) {
        return firstContact(origin, axis, radiusM, t -> startM, startM, maxDepthM, mesh, bvh);
    }

    /**
     * As above with a start depth for each triangle.
     *
     * @param startOfM depth from which on a triangle counts, m, by triangle
     * @param startM smallest of them, m
     */
    public static @Nullable Contact firstContact(
            Vec3 origin,
            Vec3 axis,
            double radiusM,
            IntToDoubleFunction startOfM,
            double startM,
            double maxDepthM,
            TriangleMesh mesh,
            Bvh bvh) {
        if (!(radiusM > 0) || !(maxDepthM >= startM)) {
            throw new IllegalArgumentException("radius " + radiusM + " m from " + startM + " m to " + maxDepthM
                    + " m: a thick forward rod expected");
        }
        if (mesh != bvh.mesh()) {
            throw new IllegalArgumentException("the tree belongs to another mesh");
        }
        // the axis itself bounds the depth: what lies beyond its first hit need not be looked at
        RayHit ahead = bvh.closestHit(
                origin, axis.unit(), startM, maxDepthM, (t, depth, x, y, z) -> depth >= startOfM.applyAsDouble(t));
        double far = ahead == null ? maxDepthM : Math.min(maxDepthM, ahead.t() + 1e-9 * (1 + ahead.t()));
        return contactWithin(origin, axis, radiusM, startOfM, startM, far, mesh, bvh);
    }

    /** As above without a look ahead along the axis, for callers that know a near {@code maxDepthM}. */
    public static @Nullable Contact contactWithin(
            Vec3 origin,
            Vec3 axis,
            double radiusM,
            IntToDoubleFunction startOfM,
            double startM,
            double maxDepthM,
            TriangleMesh mesh,
            Bvh bvh) {
        Vec3 along = axis.unit();
        Sweep sweep = new Sweep(origin, along, radiusM, startOfM, maxDepthM, mesh);
        bvh.forEachNearSegment(origin.plus(startM, along), origin.plus(maxDepthM, along), radiusM, sweep::visit);
        return sweep.contact();
    }

    /**
     * Radius of the thickest rod along an axis that touches nothing between two depths, m: the least distance from the axis to
     * the part of the mesh between them, or {@code withinM} if all of it is farther off.
     *
     * @param startOfM depth from which on a triangle counts, m, by triangle
     */
    public static double freeRadiusM(
            Vec3 origin,
            Vec3 axis,
            IntToDoubleFunction startOfM,
            double toM,
            double withinM,
            TriangleMesh mesh,
            Bvh bvh) {
        Vec3 along = axis.unit();
        AxisDistance distance = new AxisDistance(origin, along, toM, withinM, mesh);
        bvh.forEachNearSegment(
                origin, origin.plus(toM, along), withinM, t -> distance.visit(t, startOfM.applyAsDouble(t)));
        return distance.leastM();
    }

    /** Smallest distance of the mesh from the segment from a to b, m, or {@code withinM} if all of it is farther away. */
    public static double clearanceM(Vec3 a, Vec3 b, double withinM, TriangleMesh mesh, Bvh bvh) {
        double[] best = {withinM};
        bvh.forEachNearSegment(a, b, withinM, t -> {
            double d = TriangleDistance.segmentTriangleM(a, b, mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2));
            best[0] = Math.min(best[0], d);
        });
        return best[0];
    }
}
