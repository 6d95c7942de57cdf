package baymist.viewer.draw;

import baymist.geom.Vec3;
import baymist.surface.Surface;
import org.jspecify.annotations.Nullable;

/** Finds the film that a look meets first: sides of sheets that look at the eye and carry surfels. */
public final class Picker {
    private Picker() {}

    /** A triangle of the surface and the place on it, m, in the structure as it is built (not as it is drawn apart). */
    public record Hit(int triangle, int surfel, Vec3 point) {}

    /** What of the surface is shown and where. */
    public interface Showing {
        /** Whether the triangles of a patch are shown. */
        boolean shown(int patch);

        /** How far a patch is drawn from its place, m. */
        Vec3 offset(int patch);

        /** Whether a place of the structure is cut away. */
        boolean cutAway(Vec3 p);
    }

    /**
     * The first film on a line of sight, or null.
     *
     * @param eye m
     * @param direction unit vector
     */
    public static @Nullable Hit first(Surface surface, Showing showing, Vec3 eye, Vec3 direction) {
        Hit best = null;
        double nearest = Double.POSITIVE_INFINITY;
        for (int p = 0; p < surface.patches().size(); p++) {
            if (!showing.shown(p)) {
                continue;
            }
            var patch = surface.patches().get(p);
            Vec3 from = eye.minus(showing.offset(p));
            for (int t = patch.firstTriangle(); t < patch.firstTriangle() + patch.triangleCount(); t++) {
                double d = surface.surfel(t) < 0 ? Double.NaN : distance(surface, t, from, direction);
                if (d < nearest) {
                    Vec3 point = from.plus(d, direction);
                    if (!showing.cutAway(point)) {
                        nearest = d;
                        best = new Hit(t, surface.surfel(t), point);
                    }
                }
            }
        }
        return best;
    }

    /** Distance to a triangle seen from its front, m, or not a number. Möller and Trumbore (1997). */
    private static double distance(Surface s, int t, Vec3 eye, Vec3 d) {
        int a = 3 * s.corners()[3 * t];
        int b = 3 * s.corners()[3 * t + 1];
        int c = 3 * s.corners()[3 * t + 2];
        float[] p = s.xyz();
        double ux = (double) p[b] - p[a];
        double uy = (double) p[b + 1] - p[a + 1];
        double uz = (double) p[b + 2] - p[a + 2];
        double vx = (double) p[c] - p[a];
        double vy = (double) p[c + 1] - p[a + 1];
        double vz = (double) p[c + 2] - p[a + 2];
        double hx = d.y() * vz - d.z() * vy;
        double hy = d.z() * vx - d.x() * vz;
        double hz = d.x() * vy - d.y() * vx;
        double det = ux * hx + uy * hy + uz * hz;
        if (!(det > 0)) {
            return Double.NaN;
        }
        double sx = eye.x() - p[a];
        double sy = eye.y() - p[a + 1];
        double sz = eye.z() - p[a + 2];
        double u = sx * hx + sy * hy + sz * hz;
        double qx = sy * uz - sz * uy;
        double qy = sz * ux - sx * uz;
        double qz = sx * uy - sy * ux;
        double v = d.x() * qx + d.y() * qy + d.z() * qz;
        double distance = (vx * qx + vy * qy + vz * qz) / det;
        return u >= 0 && v >= 0 && u + v <= det && distance > 0 ? distance : Double.NaN;
    }
}
