package baymist.viewer.draw;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import org.jspecify.annotations.Nullable;

/**
 * An eye that looks at a target from a distance, upright: the z axis never leans on the picture. Axes: x aft, y right, z up.
 *
 * @param target what it looks at, m
 * @param yawRad where it stands round the target: 0 = ahead of it (looking aft), turning towards the left side
 * @param pitchRad how high it stands, -π/2 (below) to π/2 (above)
 * @param distanceM from the target, m, above 0
 */
public record Camera(Vec3 target, double yawRad, double pitchRad, double distanceM) {
    /** Angle of view from the lower to the upper edge of the picture, rad. */
    public static final double FIELD_OF_VIEW_RAD = Math.toRadians(28);
    /** Space left round the structure, as a factor on its size. */
    private static final double MARGIN = 1.16;

    public Camera {
        if (!(distanceM > 0)) {
            throw new IllegalArgumentException("distance " + distanceM + " m, above 0 expected");
        }
        pitchRad = Math.max(-Math.PI / 2, Math.min(Math.PI / 2, pitchRad));
    }

    /** Shows a box from one of the usual sides, whole, in a picture so many times as wide as high. */
    public static Camera of(View view, Box3 box, double aspect) {
        Vec3 size = box.size();
        double quarter = Math.PI / 2;
        double yaw = switch (view) {
            case ISO -> Math.toRadians(size.x() > size.y() ? 122 : 148);
            case TOP -> size.x() > size.y() ? quarter : 2 * quarter;
            case SIDE -> quarter;
            case FRONT -> 0;
        };
        double pitch = switch (view) {
            case ISO -> Math.toRadians(28);
            case TOP -> quarter;
            case SIDE, FRONT -> 0;
        };
        return new Camera(box.centre(), yaw, pitch, 1).fitting(box, aspect);
    }

    /** The same direction, moved so that a box fills the picture. */
    public Camera fitting(Box3 box, double aspect) {
        Vec3 middle = box.centre();
        double tanV = Math.tan(FIELD_OF_VIEW_RAD / 2);
        double tanH = tanV * aspect;
        double distance = 1e-3;
        for (int corner = 0; corner < 8; corner++) {
            Vec3 p = new Vec3(
                            (corner & 1) == 0 ? box.min().x() : box.max().x(),
                            (corner & 2) == 0 ? box.min().y() : box.max().y(),
                            (corner & 4) == 0 ? box.min().z() : box.max().z())
                    .minus(middle);
            double ahead = -p.dot(forward());
            distance = Math.max(distance, ahead + MARGIN * Math.abs(p.dot(right())) / tanH);
            distance = Math.max(distance, ahead + MARGIN * Math.abs(p.dot(up())) / tanV);
        }
        return new Camera(middle, yawRad, pitchRad, distance);
    }

    /** Unit vector from the eye to the target. */
    public Vec3 forward() {
        double level = Math.cos(pitchRad);
        return new Vec3(level * Math.cos(yawRad), level * Math.sin(yawRad), -Math.sin(pitchRad));
    }

    /** Unit vector to the right of the picture. */
    public Vec3 right() {
        return new Vec3(Math.sin(yawRad), -Math.cos(yawRad), 0);
    }

    /** Unit vector to the top of the picture. */
    public Vec3 up() {
        return right().cross(forward());
    }

    public Vec3 eye() {
        return target.plus(-distanceM, forward());
    }

    /** Turned about the target by angles, rad. */
    public Camera turned(double yaw, double pitch) {
        return new Camera(target, Math.IEEEremainder(yawRad + yaw, 2 * Math.PI), pitchRad + pitch, distanceM);
    }

    /** Moved so that what lies at the target goes along with the pointer, picture heights right and down. */
    public Camera panned(double rightHeights, double downHeights) {
        double perHeight = 2 * distanceM * Math.tan(FIELD_OF_VIEW_RAD / 2);
        Vec3 moved = target.plus(-rightHeights * perHeight, right()).plus(downHeights * perHeight, up());
        return new Camera(moved, yawRad, pitchRad, distanceM);
    }

    /** Nearer (factor below 1) or farther. */
    public Camera zoomed(double factor) {
        return new Camera(target, yawRad, pitchRad, Math.max(1e-3, Math.min(1e4, distanceM * factor)));
    }

    /** Part of the way to another camera, 0..1, by the shorter turn. */
    public Camera towards(Camera other, double share) {
        double turn = Math.IEEEremainder(other.yawRad - yawRad, 2 * Math.PI);
        return new Camera(
                target.plus(share, other.target.minus(target)),
                yawRad + share * turn,
                pitchRad + share * (other.pitchRad - pitchRad),
                distanceM * Math.pow(other.distanceM / distanceM, share));
    }

    /** Distance ahead of the eye, m. */
    public double depthM(Vec3 p) {
        return p.minus(eye()).dot(forward());
    }

    /**
     * Where a point falls on a picture.
     *
     * @return pixels from the left and from the top, or null for a point that is not ahead of the eye
     */
    public @Nullable Spot project(Vec3 p, double widthPx, double heightPx) {
        double depth = depthM(p);
        if (!(depth > 1e-6)) {
            return null;
        }
        Vec3 from = p.minus(eye());
        double perTan = heightPx / 2 / Math.tan(FIELD_OF_VIEW_RAD / 2);
        return new Spot(
                widthPx / 2 + perTan * from.dot(right()) / depth,
                heightPx / 2 - perTan * from.dot(up()) / depth,
                depth);
    }

    /** Unit vector from the eye through a pixel of the picture. */
    public Vec3 throughPixel(double xPx, double yPx, double widthPx, double heightPx) {
        double perTan = heightPx / 2 / Math.tan(FIELD_OF_VIEW_RAD / 2);
        Vec3 d = forward().plus((xPx - widthPx / 2) / perTan, right()).plus((heightPx / 2 - yPx) / perTan, up());
        return d.times(1 / d.length());
    }

    /** Metres that a pixel spans at the target. */
    public double mPerPixel(double heightPx) {
        return 2 * distanceM * Math.tan(FIELD_OF_VIEW_RAD / 2) / heightPx;
    }

    /** A place on the picture, pixels, and its distance ahead of the eye, m. */
    public record Spot(double x, double y, double depthM) {}
}
