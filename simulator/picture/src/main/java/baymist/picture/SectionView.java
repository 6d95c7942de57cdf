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

    /**
     * The part round some places, where they take up little of the view; else the view itself.
     *
     * @param marginM what is shown round them, m
     * @param most share of the view's width up to which a part is shown instead
     */
    SectionView round(java.util.List<Vec3> places, double marginM, double most) {
        double u0 = Math.max(
                lowU, places.stream().mapToDouble(p -> p.dot(right)).min().orElse(lowU) - marginM);
        double u1 = Math.min(
                highU, places.stream().mapToDouble(p -> p.dot(right)).max().orElse(highU) + marginM);
        double v0 =
                Math.max(lowV, places.stream().mapToDouble(p -> p.dot(up)).min().orElse(lowV) - marginM);
        double v1 = Math.min(
                highV, places.stream().mapToDouble(p -> p.dot(up)).max().orElse(highV) + marginM);
        if (u1 - u0 > most * (highU - lowU) || !(u1 > u0) || !(v1 > v0)) {
            return this;
        }
        // the whole height stays, unless it is much more than the width of the part
        boolean slim = highV - lowV <= 1.2 * (u1 - u0);
        return new SectionView(
                title + ", a part",
                view,
                axis,
                atM,
                farM,
                right,
                up,
                u0,
                u1,
                slim ? lowV : v0,
                slim ? highV : v1,
                whole);
    }
}
