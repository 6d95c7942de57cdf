package baymist.access;

import baymist.geom.Vec3;

/**
 * Clock angles round a wand: 0 = structure up as seen along the wand from outside, clockwise looking in. Where the wand lies
 * within 20 degrees of vertical, "up" would say nothing and clock 0 is forward (-x).
 */
public final class ClockAngle {
    /** Angle from vertical within which forward takes the place of up, rad. */
    public static final double VERTICAL_RAD = Math.toRadians(20);

    private static final Vec3 FORWARD = new Vec3(-1, 0, 0);

    private ClockAngle() {}

    /**
     * Direction of the pin, a unit vector square to the wand. Going in along +y, clock 90 degrees is +x (aft).
     *
     * @param axis unit vector along the wand, going in
     * @param clockRad clock angle, rad
     */
    public static Vec3 pin(Vec3 axis, double clockRad) {
        Vec3 twelve = twelve(axis);
        return twelve.times(Math.cos(clockRad))
                .plus(Math.sin(clockRad), axis.cross(twelve))
                .unit();
    }

    /** Clock angle of a direction seen along the wand, rad, 0..2 pi; the part along the wand does not count. */
    public static double of(Vec3 axis, Vec3 direction) {
        Vec3 twelve = twelve(axis);
        double angle = Math.atan2(direction.dot(axis.cross(twelve)), direction.dot(twelve));
        return angle < 0 ? angle + 2 * Math.PI : angle;
    }

    private static Vec3 twelve(Vec3 axis) {
        Vec3 reference = Math.abs(axis.z()) > Math.cos(VERTICAL_RAD) ? FORWARD : Vec3.Z;
        return reference.plus(-reference.dot(axis), axis).unit();
    }
}
