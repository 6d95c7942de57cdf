package baymist.geom;

/**
 * An outline in space: plane point = centre + u * uAxis + v * vAxis; {@code normal} = uAxis x vAxis. For an opening to
 * the outside the normal points into the cavity.
 */
public record PlacedOutline(Outline outline, Vec3 centreM, Vec3 uAxis, Vec3 vAxis, Vec3 normal) {
    public static PlacedOutline of(Outline outline, Vec3 centreM, Vec3 uAxis, Vec3 normal) {
        Vec3 n = normal.unit();
        Vec3 u = uAxis.plus(-uAxis.dot(n), n).unit();
        return new PlacedOutline(outline, centreM, u, n.cross(u), n);
    }

    /** In-plane coordinate of a point along u, m (the point is projected along the normal). */
    public double u(Vec3 p) {
        return p.minus(centreM).dot(uAxis);
    }

    /** In-plane coordinate of a point along v, m. */
    public double v(Vec3 p) {
        return p.minus(centreM).dot(vAxis);
    }

    /** Height of a point above the outline's plane, m, positive along the normal. */
    public double heightM(Vec3 p) {
        return p.minus(centreM).dot(normal);
    }

    /** Whether a point of the sheet that the outline is cut from falls in the opening (cut along the normal). */
    public boolean contains(Vec3 p) {
        return Math.abs(heightM(p)) <= outline.reachM() + 1e-6 && outline.contains(u(p), v(p));
    }

    public Vec3 point(double u, double v) {
        return centreM.plus(u, uAxis).plus(v, vAxis);
    }
}
