package baymist.seam;

import baymist.geom.Bvh;
import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;

/** Tells outside air: rays from there get away, from inside closed sheets none does. */
final class OpenAir {
    private static final int RAYS = 96;
    /** Rays that must get away, so that one that slips through a crack decides nothing. */
    private static final int ENOUGH = 3;

    private final Bvh tree;
    private final Ray ray = new Ray();

    OpenAir(TriangleMesh whole) {
        this.tree = Bvh.of(whole);
    }

    boolean isOutside(Vec3 point) {
        int free = 0;
        for (int i = 0; i < RAYS && free < ENOUGH; i++) {
            // spiral of equal areas, turned by the golden angle (Vogel 1979)
            double z = 1 - (2 * i + 1.0) / RAYS;
            double r = Math.sqrt(1 - z * z);
            double angle = i * Math.PI * (3 - Math.sqrt(5));
            Vec3 way = new Vec3(r * Math.cos(angle), r * Math.sin(angle), z);
            free += tree.closestHit(ray.set(point, way, 0, Double.POSITIVE_INFINITY), TriangleFilter.ALL) ? 0 : 1;
        }
        return free >= ENOUGH;
    }
}
