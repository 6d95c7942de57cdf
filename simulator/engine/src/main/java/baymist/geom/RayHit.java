package baymist.geom;

/**
 * First triangle that a ray meets.
 *
 * @param t ray parameter, in lengths of the direction vector (m for a unit direction)
 * @param point origin + t * direction, m
 */
public record RayHit(int triangle, double t, Vec3 point) {}
