package baymist.spray;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import org.jspecify.annotations.Nullable;

/** Slow, plain oracle: every triangle in turn (Möller and Trumbore 1997), edges belong to both neighbours. */
public record BruteTracer(TriangleMesh mesh) implements SheetTracer {
    @Override
    public @Nullable Crossing nearest(Vec3 o, Vec3 d, double fromM, double toM, Filter filter) {
        Crossing best = null;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            Vec3 a = mesh.point(t, 0);
            Vec3 e1 = mesh.point(t, 1).minus(a);
            Vec3 e2 = mesh.point(t, 2).minus(a);
            Vec3 p = d.cross(e2);
            double det = e1.dot(p);
            if (Math.abs(det) < 1e-18) {
                continue;
            }
            Vec3 s = o.minus(a);
            double u = s.dot(p) / det;
            Vec3 q = s.cross(e1);
            double v = d.dot(q) / det;
            if (u < -1e-12 || v < -1e-12 || u + v > 1 + 1e-12) {
                continue;
            }
            double r = e2.dot(q) / det;
            double limit = best == null ? toM : best.distanceM();
            Vec3 hit = o.plus(r, d);
            if (r > fromM && r < limit && filter.counts(t, r, hit.x(), hit.y(), hit.z())) {
                best = new Crossing(r, t);
            }
        }
        return best;
    }
}
