package baymist.access;

import baymist.geom.Vec3;

/**
 * A straight or a circular arc of a wand's centreline.
 *
 * @param start where it begins
 * @param towards unit vector square to the start's direction, from the start to the centre of the arc; any for a straight
 * @param curvaturePerM 1/radius, 1/m; 0 for a straight
 * @param lengthM length along the line, m, not negative
 */
record PathPiece(Heading start, Vec3 towards, double curvaturePerM, double lengthM) {
    static PathPiece straight(Heading start, double lengthM) {
        return new PathPiece(start, start.along().anyPerpendicular(), 0, lengthM);
    }

    /** Angle that the direction turns by, rad. */
    double bendRad() {
        return curvaturePerM * lengthM;
    }

    /** Place at {@code s} m along the piece. */
    Vec3 pointAt(double s) {
        Vec3 p = start.atM();
        if (curvaturePerM == 0) {
            return p.plus(s, start.along());
        }
        double angle = curvaturePerM * s;
        // 1 - cos through the half angle keeps its digits on flat arcs
        double half = Math.sin(angle / 2);
        return p.plus(Math.sin(angle) / curvaturePerM, start.along()).plus(2 * half * half / curvaturePerM, towards);
    }

    /** Unit direction at {@code s} m along the piece. */
    Vec3 directionAt(double s) {
        if (curvaturePerM == 0) {
            return start.along();
        }
        double angle = curvaturePerM * s;
        return start.along()
                .times(Math.cos(angle))
                .plus(Math.sin(angle), towards)
                .unit();
    }

    Heading end() {
        return headingAt(lengthM);
    }

    Heading headingAt(double s) {
        return new Heading(pointAt(s), directionAt(s));
    }

    /** The first {@code shorterM} of this piece. */
    PathPiece cut(double shorterM) {
        return new PathPiece(start, towards, curvaturePerM, shorterM);
    }

    /** A vector square to the start's direction, carried along the piece without twist. */
    Vec3 carry(Vec3 across) {
        if (curvaturePerM == 0) {
            return across;
        }
        double in = across.dot(towards);
        double angle = bendRad();
        Vec3 turned = towards.times(Math.cos(angle)).plus(-Math.sin(angle), start.along());
        return across.plus(-in, towards).plus(in, turned);
    }
}
