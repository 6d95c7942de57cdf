package baymist.cavity;

import baymist.geom.Bvh;
import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;

/**
 * Tells which side of a sheet is the open air: rays into all directions from a point just off the sheet; from outside many of
 * them meet nothing, from inside of closed sheets none does.
 */
final class OutsideProbe {
    private static final int RAYS = 128;
    /** Rays that must get away for a side to count as outside. */
    private static final int MANY = RAYS / 8;

    private final Bvh bvh;
    private final double offM;
    private final Ray ray = new Ray();

    OutsideProbe(TriangleMesh whole) {
        this.bvh = Bvh.of(whole);
        this.offM = 1e-7 * whole.bounds().size().length();
    }

    /** Outcome at a sheet: +1 = the normal's side is outside, -1 = the other side is, 0 = neither (an inner member). */
    int outsideSide(Vec3 onSheet, Vec3 normal) {
        int ahead = escapes(onSheet.plus(offM, normal));
        int behind = escapes(onSheet.plus(-offM, normal));
        if (Math.max(ahead, behind) < MANY) {
            return 0;
        }
        return ahead >= behind ? +1 : -1;
    }

    /** Whether no ray at all gets away from either side. */
    boolean isShutIn(Vec3 onSheet, Vec3 normal) {
        return escapes(onSheet.plus(offM, normal)) == 0 && escapes(onSheet.plus(-offM, normal)) == 0;
    }

    private int escapes(Vec3 from) {
        int free = 0;
        for (int i = 0; i < RAYS; i++) {
            // spiral of equal areas, turned by the golden angle (Vogel 1979)
            double z = 1 - (2 * i + 1.0) / RAYS;
            double r = Math.sqrt(1 - z * z);
            double angle = i * Math.PI * (3 - Math.sqrt(5));
            Vec3 direction = new Vec3(r * Math.cos(angle), r * Math.sin(angle), z);
            if (!bvh.closestHit(ray.set(from, direction, 0, Double.POSITIVE_INFINITY), TriangleFilter.ALL)) {
                free++;
            }
        }
        return free;
    }
}
