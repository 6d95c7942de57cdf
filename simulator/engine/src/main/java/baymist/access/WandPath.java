package baymist.access;

import baymist.geom.Vec3;
import java.util.List;

/**
 * One way of a wand into a cavity: the body and the tip at each depth between 0 and {@link #maxDepthM}. Value types, so that
 * equal ways are equal.
 */
public interface WandPath {
    /** Largest depth, m. */
    double maxDepthM();

    /** The body when {@code depthM} of the wand is inside, m, above 0 and at most {@link #maxDepthM}. */
    WandPose body(double depthM);

    /** The body with the wand turned to a clock angle, as {@link #tip}; it is the same for every one unless the wand is bent. */
    default WandPose body(double depthM, double clockRad) {
        return body(depthM);
    }

    /** Unit vector along the wand at its tip at a depth. */
    Vec3 tipAxis(double depthM);

    /** Place of the tip at a depth, m. */
    Vec3 tipM(double depthM);

    /**
     * The tip with its pin.
     *
     * @param clockRad clock angle of the pin about the wand at the tip, rad, see {@link ClockAngle}; a way whose wand can't be
     *     turned freely (a hook) may give it a meaning of its own
     */
    default TipPose tip(double depthM, double clockRad) {
        Vec3 axis = tipAxis(depthM);
        return new TipPose(tipM(depthM), axis, ClockAngle.pin(axis, clockRad));
    }

    /** A straight rod pushed along its axis. */
    static WandPath straight(Vec3 originM, Vec3 axis, double radiusM, double maxDepthM) {
        return new Straight(originM, axis, radiusM, maxDepthM);
    }

    /**
     * A straight rod.
     *
     * @param originM where its axis crosses the plane of the entry, m
     * @param axis unit vector going in
     */
    record Straight(Vec3 originM, Vec3 axis, double radiusM, double maxDepthM) implements WandPath {
        @Override
        public WandPose body(double depthM) {
            return new WandPose(List.of(originM, tipM(depthM)), radiusM, depthM);
        }

        @Override
        public Vec3 tipAxis(double depthM) {
            return axis;
        }

        @Override
        public Vec3 tipM(double depthM) {
            return originM.plus(depthM, axis);
        }
    }
}
