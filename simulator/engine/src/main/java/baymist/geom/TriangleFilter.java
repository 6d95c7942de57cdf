package baymist.geom;

/** Decides whether a ray stops at a triangle that it hits, or goes on (through an open hole, say). */
@FunctionalInterface
public interface TriangleFilter {
    /** Accepts every hit. */
    TriangleFilter ALL = (triangle, t, x, y, z) -> true;

    /**
     * Whether the ray takes this hit.
     *
     * @param t ray parameter of the hit; m when the ray's direction is a unit vector
     * @param x,y,z hit point, m
     * @return true to take the hit, false to let the ray pass
     */
    boolean accept(int triangle, double t, double x, double y, double z);
}
