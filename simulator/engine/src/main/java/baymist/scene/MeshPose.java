package baymist.scene;

import baymist.geom.Vec3;

/**
 * How a mesh lies in structure axes (x aft, y right, z up). In this order: scaled, its axes laid along those of the
 * structure, turned about the structure's x, then y, then z, moved.
 *
 * @param xTo unit vector in structure axes that the file's x axis points along; {@code yTo}, {@code zTo} likewise; the three
 *     are square to each other and right-handed
 * @param rotationDeg turns about x, y and z, in that order, degrees, -360 to 360
 * @param originM where the file's origin comes to lie, m
 * @param scale factor on lengths beside the unit, above 0
 */
public record MeshPose(Vec3 xTo, Vec3 yTo, Vec3 zTo, Vec3 rotationDeg, Vec3 originM, double scale) {
    /** The file's axes are those of the structure. */
    public static final MeshPose AS_IS = new MeshPose(Vec3.X, Vec3.Y, Vec3.Z, Vec3.ZERO, Vec3.ZERO, 1);

    /** A direction or place of the file in structure axes before turns and moves. */
    public Vec3 laid(double x, double y, double z) {
        return new Vec3(
                x * xTo.x() + y * yTo.x() + z * zTo.x(),
                x * xTo.y() + y * yTo.y() + z * zTo.y(),
                x * xTo.z() + y * yTo.z() + z * zTo.z());
    }
}
