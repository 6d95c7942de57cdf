package baymist.voxel;

import baymist.geom.Bvh;
import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.Vec3;

/**
 * Straight lines through the air between the exact sheets, openings closed. What a line joins without meeting a sheet is one
 * body of air, whatever the voxels hold. One sight serves one thread.
 */
final class Sight {
    private final Bvh tree;
    private final Ray ray = new Ray();

    Sight(Bvh tree) {
        this.tree = tree;
    }

    /** Whether no sheet lies between two points, ends included. */
    boolean clear(Vec3 from, Vec3 to) {
        Vec3 way = to.minus(from);
        if (way.dot(way) == 0) {
            return true;
        }
        ray.set(from, way, 0, 1);
        return !tree.closestHit(ray, TriangleFilter.ALL);
    }

    /** Distance to the first sheet along a unit vector, m, or {@code mostM} if none lies nearer. */
    double freeM(Vec3 from, Vec3 direction, double mostM) {
        return freeM(from, direction, mostM, TriangleFilter.ALL);
    }

    /** As {@link #freeM(Vec3, Vec3, double)}, counting only what the filter accepts. */
    double freeM(Vec3 from, Vec3 direction, double mostM, TriangleFilter filter) {
        ray.set(from, direction, 0, mostM);
        return tree.closestHit(ray, filter) ? ray.t() : mostM;
    }
}
