package baymist.access;

import baymist.access.HookShape.Stretch;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * A hook tube in its hole at one slide and one clock angle: maps the shape's frame into the structure's.
 *
 * @param slideM length of tube inside, m
 * @param clockRad clock angle of the pin at the hole, seen looking in ({@link ClockAngle})
 */
record HookPlace(
        HookShape shape,
        double slideM,
        double clockRad,
        HookFit fit,
        Vec3 bodyX,
        Vec3 bodyY,
        Vec3 bodyZ,
        Vec3 m,
        Vec3 l,
        Vec3 n,
        Vec3 holeM) {
    static HookPlace of(HookShape shape, double slideM, double clockRad, HookFit fit, PlacedOutline hole) {
        double a = shape.lengthM() - slideM;
        Vec3 t = shape.headingAt(a).along();
        Vec3 pin = shape.pinAt(a);
        Vec3 x = fit.bendDirection();
        double beta = Math.atan2(x.dot(t.cross(pin)), x.dot(pin));
        Vec3 n = hole.normal();
        Vec3 m = ClockAngle.pin(n, clockRad + beta);
        double cos = Math.cos(fit.tiltRad());
        double sin = Math.sin(fit.tiltRad());
        Vec3 bodyZ = t.times(cos).plus(-sin, x);
        Vec3 bodyX = x.times(cos).plus(sin, t);
        return new HookPlace(
                shape,
                slideM,
                clockRad,
                fit,
                bodyX,
                bodyZ.cross(bodyX),
                bodyZ,
                m,
                n.cross(m),
                n,
                hole.centreM().plus(fit.offsetM(), m));
    }

    /** A direction of the shape in the structure's axes. */
    Vec3 direction(Vec3 d) {
        return m.times(d.dot(bodyX)).plus(d.dot(bodyY), l).plus(d.dot(bodyZ), n);
    }

    /** A place of the shape in the structure's axes, m. */
    Vec3 point(Vec3 p) {
        return holeM.plus(
                direction(p.minus(shape.headingAt(shape.lengthM() - slideM).atM())));
    }

    /** The tube between two distances from the hole, m, negative outside. */
    List<Stretch> stretches(double fromM, double toM) {
        double a = shape.lengthM() - slideM;
        List<Stretch> out = new ArrayList<>();
        for (Stretch s : shape.between(Math.max(0, a + fromM), Math.min(shape.lengthM(), a + toM))) {
            PathPiece p = s.piece();
            Heading start = new Heading(
                    point(p.start().atM()), direction(p.start().along()).unit());
            out.add(new Stretch(
                    new PathPiece(start, direction(p.towards()).unit(), p.curvaturePerM(), p.lengthM()), s.radiusM()));
        }
        return out;
    }

    /** Body inside, from the hole to the tip. */
    WandPose pose() {
        List<PathPiece> pieces = new ArrayList<>();
        for (Stretch s : stretches(0, slideM)) {
            pieces.add(s.piece());
        }
        return new CurvedPath(pieces, shape.radiusM(0, shape.lengthM())).body(slideM);
    }

    /** Tip with its pin. */
    TipPose tip() {
        double end = shape.lengthM();
        return new TipPose(
                point(shape.headingAt(end).atM()),
                direction(shape.headingAt(end).along()).unit(),
                direction(shape.pinAt(end)).unit());
    }
}
