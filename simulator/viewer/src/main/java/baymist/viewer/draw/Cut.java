package baymist.viewer.draw;

import baymist.geom.Vec3;

/**
 * A plane that takes away what lies before it.
 *
 * @param normal unit vector to the side that is taken away
 * @param offsetM distance of the plane from the origin along the normal, m
 */
public record Cut(Vec3 normal, double offsetM) {
    /** How far a point lies on the side that is taken away, m; negative on the side that stays. */
    public double beyondM(double x, double y, double z) {
        return normal.x() * x + normal.y() * y + normal.z() * z - offsetM;
    }
}
