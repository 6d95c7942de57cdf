package baymist.picture;

import baymist.geom.Vec3;

/**
 * A plane that cuts the structure, and how it is laid on the page.
 *
 * @param title what is cut where
 * @param view from where it is seen and which way is which
 * @param axis axis that the plane is square to
 * @param atM position of the plane on it, m
 * @param farM how far behind the plane is drawn, position on the axis, m
 * @param right,up unit vectors of the page
 * @param lowU,highU,lowV,highV extent that is drawn, m
 * @param whole whether it stands for all of the cavity rather than for one bay
 */
record SectionView(
        String title,
        String view,
        int axis,
        double atM,
        double farM,
        Vec3 right,
        Vec3 up,
        double lowU,
        double highU,
        double lowV,
        double highV,
        boolean whole) {
    /** +1 if the reader looks from the high end of the axis. */
    double towardsReader() {
        return right.cross(up).get(axis);
    }

    /** Distance of a point behind the plane, m; negative in front of it. */
    double behindM(Vec3 p) {
        return (atM - p.get(axis)) * towardsReader();
    }

    /** Whether the point is drawn though not cut: behind the plane, up to where the view ends. */
    boolean isSeen(Vec3 p) {
        double behind = behindM(p);
        return behind > -1e-9 && behind <= Math.abs(farM - atM) + 1e-9;
    }

    boolean holds(Vec3 p) {
        double u = p.dot(right);
        double v = p.dot(up);
        return u >= lowU && u <= highU && v >= lowV && v <= highV;
    }
}
