package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.viewer.draw.Camera;

/** Directions to look from. */
final class Sights {
    private Sights() {}

    /** A camera that looks at a side of a sheet from the air before it, kept from standing on its head. */
    static Camera towards(Camera now, Vec3 facing) {
        // look against the side's normal, a little from above, so that depth can be seen
        Vec3 ahead = facing.negate().plus(new Vec3(0.25, 0.18, -0.3)).unit();
        double pitch = Math.asin(Math.max(-1, Math.min(1, -ahead.z())));
        double yaw = Math.hypot(ahead.x(), ahead.y()) < 1e-6 ? now.yawRad() : Math.atan2(ahead.y(), ahead.x());
        return new Camera(now.target(), yaw, Math.max(-1.3, Math.min(1.3, pitch)), now.distanceM());
    }
}
