package baymist.scene;

import baymist.geom.Vec3;

/** Turns about the fixed axes of the structure. */
public final class Turns {
    private Turns() {}

    /**
     * A point turned about x, then y, then z. Whole right angles turn without rounding.
     *
     * @param rotationDeg angle about each axis, degrees, right-handed
     */
    public static Vec3 turned(Vec3 p, Vec3 rotationDeg) {
        double cx = cos(rotationDeg.x());
        double sx = sin(rotationDeg.x());
        Vec3 a = new Vec3(p.x(), cx * p.y() - sx * p.z(), sx * p.y() + cx * p.z());
        double cy = cos(rotationDeg.y());
        double sy = sin(rotationDeg.y());
        Vec3 b = new Vec3(cy * a.x() + sy * a.z(), a.y(), -sy * a.x() + cy * a.z());
        double cz = cos(rotationDeg.z());
        double sz = sin(rotationDeg.z());
        return new Vec3(cz * b.x() - sz * b.y(), sz * b.x() + cz * b.y(), b.z());
    }

    private static double sin(double degrees) {
        double s = Math.sin(Math.toRadians(degrees));
        return isRight(degrees) ? Math.rint(s) : s;
    }

    private static double cos(double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        return isRight(degrees) ? Math.rint(c) : c;
    }

    private static boolean isRight(double degrees) {
        return degrees / 90 == Math.rint(degrees / 90);
    }
}
