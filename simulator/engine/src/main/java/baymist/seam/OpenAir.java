package baymist.seam;

import baymist.geom.Bvh;
import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;

/** Tells a wedge of outside air: rays out of it get away; from inside closed sheets none does. */
final class OpenAir {
    /** Rays side by side across the wedge, and tilted along the line. */
    private static final int ACROSS = 4;

    private static final int TILTS = 5;
    private static final double STEEPEST = Math.toRadians(60);
    /** Rays that must get away, so that one that slips through a crack decides nothing. */
    private static final int ENOUGH = 2;

    private final Bvh tree;
    private final Ray ray = new Ray();

    OpenAir(TriangleMesh whole) {
        this.tree = Bvh.of(whole);
    }

    /**
     * Whether a wedge is open to the outside.
     *
     * @param onLine the point that the rays leave the line at
     * @param along unit vector of the line
     * @param offM how far off the line they start, m
     */
    boolean isOutside(Vec3 onLine, Vec3 along, SeamWedge wedge, double offM) {
        Vec3 from = onLine.plus(offM, wedge.bisector());
        Vec3 aside = along.cross(wedge.bisector());
        int free = 0;
        for (int i = 0; i < ACROSS; i++) {
            double turn = ((i + 0.5) / ACROSS - 0.5) * Math.min(wedge.openRad(), Math.PI);
            Vec3 level = wedge.bisector().times(Math.cos(turn)).plus(Math.sin(turn), aside);
            for (int j = 0; j < TILTS; j++) {
                double tilt = STEEPEST * (2.0 * j / (TILTS - 1) - 1);
                Vec3 way = level.times(Math.cos(tilt)).plus(Math.sin(tilt), along);
                free += tree.closestHit(ray.set(from, way, 0, Double.POSITIVE_INFINITY), TriangleFilter.ALL) ? 0 : 1;
                if (free >= ENOUGH) {
                    return true;
                }
            }
        }
        return false;
    }
}
