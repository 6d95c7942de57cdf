package baymist.viewer.draw;

import baymist.access.TipPose;
import baymist.access.WandPath;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What can be dragged of one pass: the tip where the trigger is pressed and where it is let go, along the way of the wand, and a ring
 * round the first of them on which the pin is turned. Immutable; a drag gives a new one.
 *
 * @param path the wand's way into the cavity
 * @param deepestM as deep as a drag goes, m, above 0 and no more than the way has
 * @param fromM depth where the trigger is pressed, m; taken as {@code deepestM} where it is more
 * @param toM depth where it is let go, m
 * @param clockRad clock angle of the pin, rad
 * @param ringM radius of the ring, m, above 0
 */
public record PassHandle(WandPath path, double deepestM, double fromM, double toM, double clockRad, double ringM) {
    /** A pointer takes hold of what is no farther than this from it, pixels. */
    public static final double HOLD_PX = 11;

    /** Below this share of its length a line of sight lies too flat in the ring's plane to say where it meets it. */
    private static final double FLAT = 0.15;

    private static final int STEPS = 400;
    private static final int DEGREES = 360;

    public PassHandle {
        if (!(deepestM > 0) || !(ringM > 0) || deepestM > path.maxDepthM() * (1 + 1e-9)) {
            throw new IllegalArgumentException("deepest " + deepestM + " m, ring " + ringM + " m");
        }
        fromM = Math.min(deepestM, fromM);
        toM = Math.min(fromM, toM);
    }

    /** What is taken hold of. */
    public enum Grip {
        FROM,
        TO,
        CLOCK
    }

    /** Where the tip is when the trigger is pressed, m. */
    public Vec3 fromPlace() {
        return tip(fromM, clockRad).positionM();
    }

    /** Where it is when the trigger is let go, m. */
    public Vec3 toPlace() {
        return tip(toM, clockRad).positionM();
    }

    /** Where the ring is held: out from the tip in the pin's direction, m. */
    public Vec3 pinPlace() {
        return onRing(clockRad);
    }

    /** The ring as a closed line, m. */
    public List<Vec3> ring() {
        List<Vec3> ring = new ArrayList<>();
        for (int d = 0; d <= DEGREES; d += 6) {
            ring.add(onRing(Math.toRadians(d)));
        }
        return ring;
    }

    /** The way of the tip between both depths, m. */
    public List<Vec3> stretch() {
        List<Vec3> line = new ArrayList<>();
        for (int s = 0; s <= 40; s++) {
            line.add(tip(toM + (fromM - toM) * s / 40, clockRad).positionM());
        }
        return line;
    }

    private Vec3 onRing(double clock) {
        return fromPlace().plus(ringM, tip(fromM, clock).pin());
    }

    /** The tip; the way knows none at depth 0, so that it begins a hair within. */
    private TipPose tip(double depthM, double clock) {
        return path.tip(Math.max(1e-6, Math.min(path.maxDepthM(), depthM)), clock);
    }

    /** What a pointer at a pixel takes hold of, or null; where two are as near, the pin before the depths. */
    public @Nullable Grip gripAt(Camera camera, double xPx, double yPx, double widthPx, double heightPx) {
        Grip best = null;
        double least = HOLD_PX;
        Vec3[] places = {toPlace(), fromPlace(), pinPlace()};
        Grip[] grips = {Grip.TO, Grip.FROM, Grip.CLOCK};
        for (int g = 0; g < grips.length; g++) {
            double off = offPx(camera, places[g], xPx, yPx, widthPx, heightPx);
            if (off <= least) {
                least = off;
                best = grips[g];
            }
        }
        return best;
    }

    /** The handle dragged to a pixel; depths to whole millimetres, angles to whole degrees, so that fields read well. */
    public PassHandle dragged(Grip grip, Camera camera, double xPx, double yPx, double widthPx, double heightPx) {
        if (grip == Grip.CLOCK) {
            double clock = clockAt(camera, xPx, yPx, widthPx, heightPx);
            return new PassHandle(path, deepestM, fromM, toM, clock, ringM);
        }
        double low = grip == Grip.FROM ? Math.max(1e-3, toM) : 0;
        double high = grip == Grip.FROM ? deepestM : fromM;
        double depth = depthAt(camera, xPx, yPx, widthPx, heightPx, low, high);
        return grip == Grip.FROM
                ? new PassHandle(path, deepestM, depth, toM, clockRad, ringM)
                : new PassHandle(path, deepestM, fromM, depth, clockRad, ringM);
    }

    /** The depth at which the tip is seen nearest to a pixel, m. */
    private double depthAt(
            Camera camera, double xPx, double yPx, double widthPx, double heightPx, double low, double high) {
        double best = low;
        double around = high - low;
        for (int round = 0; round < 2; round++) {
            double begin = Math.max(low, best - around);
            double end = Math.min(high, best + around);
            double least = Double.POSITIVE_INFINITY;
            for (int s = 0; s <= STEPS; s++) {
                double depth = begin + (end - begin) * s / STEPS;
                double off = offPx(camera, tip(depth, clockRad).positionM(), xPx, yPx, widthPx, heightPx);
                if (off < least) {
                    least = off;
                    best = depth;
                }
            }
            around = (end - begin) / STEPS;
        }
        return Math.max(low, Math.min(high, Math.round(1e3 * best) / 1e3));
    }

    /** The clock angle whose pin points nearest to where a pixel's line of sight meets the ring's plane, rad, 0 to below 2 pi. */
    private double clockAt(Camera camera, double xPx, double yPx, double widthPx, double heightPx) {
        Vec3 middle = fromPlace();
        Vec3 axis = path.tipAxis(Math.max(1e-6, fromM));
        Vec3 sight = camera.throughPixel(xPx, yPx, widthPx, heightPx);
        double slope = sight.dot(axis);
        Vec3 out = null;
        if (Math.abs(slope) > FLAT) {
            double along = middle.minus(camera.eye()).dot(axis) / slope;
            Vec3 met = camera.eye().plus(along, sight).minus(middle);
            out = along > 0 && met.length() > 1e-9 ? met : null;
        }
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int d = 0; d < DEGREES; d++) {
            double clock = Math.toRadians(d);
            double near = out == null
                    ? -offPx(camera, onRing(clock), xPx, yPx, widthPx, heightPx)
                    : tip(fromM, clock).pin().dot(out);
            if (near > most) {
                most = near;
                best = d;
            }
        }
        return Math.toRadians(best);
    }

    private static double offPx(Camera camera, Vec3 p, double xPx, double yPx, double widthPx, double heightPx) {
        Camera.Spot spot = camera.project(p, widthPx, heightPx);
        return spot == null ? Double.POSITIVE_INFINITY : Math.hypot(spot.x() - xPx, spot.y() - yPx);
    }
}
