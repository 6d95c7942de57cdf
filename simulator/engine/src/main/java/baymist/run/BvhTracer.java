package baymist.run;

import baymist.geom.Bvh;
import baymist.geom.RayHit;
import baymist.geom.Vec3;
import baymist.spray.SheetTracer;
import org.jspecify.annotations.Nullable;

/** Traces rays through the tree over the whole sheets. */
public record BvhTracer(Bvh tree) implements SheetTracer {
    @Override
    public @Nullable Crossing nearest(Vec3 originM, Vec3 direction, double fromM, double toM, Filter filter) {
        RayHit hit = tree.closestHit(
                originM, direction, fromM, toM, (triangle, t, x, y, z) -> filter.counts(triangle, t, x, y, z));
        return hit == null ? null : new Crossing(hit.t(), hit.triangle());
    }
}
