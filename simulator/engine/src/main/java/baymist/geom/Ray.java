package baymist.geom;

/**
 * A ray with its working memory, to be set again for each cast: one per thread, no allocation per ray. After
 * {@link Bvh#closestHit(Ray, TriangleFilter)} returned true, {@link #triangle} and {@link #t} hold the hit.
 */
public final class Ray {
    double ox;
    double oy;
    double oz;
    double dx;
    double dy;
    double dz;
    double inverseX;
    double inverseY;
    double inverseZ;
    double tMin;
    /** Axis of the largest direction component, and the two others in the order of Woop et al. */
    int kx;

    int ky;
    int kz;
    double shearX;
    double shearY;
    double scaleZ;
    int[] stack = new int[64];
    double[] entry = new double[64];

    private int triangle = -1;
    private double t;

    /**
     * Sets the ray for a new cast.
     *
     * @param direction not zero; parameters count in lengths of it
     * @param tMin hits nearer than this are ignored (inclusive bound)
     * @param tMax hits farther than this are ignored (inclusive bound)
     */
    public Ray set(Vec3 origin, Vec3 direction, double tMin, double tMax) {
        return set(origin.x(), origin.y(), origin.z(), direction.x(), direction.y(), direction.z(), tMin, tMax);
    }

    /** As {@link #set(Vec3, Vec3, double, double)} from plain numbers. */
    public Ray set(
            double originX,
            double originY,
            double originZ,
            double directionX,
            double directionY,
            double directionZ,
            double nearest,
            double farthest) {
        ox = originX;
        oy = originY;
        oz = originZ;
        dx = directionX;
        dy = directionY;
        dz = directionZ;
        double size = Math.max(Math.abs(dx), Math.max(Math.abs(dy), Math.abs(dz)));
        if (!(size > 0) || !Double.isFinite(size + ox + oy + oz)) {
            throw new IllegalArgumentException("ray from (" + ox + ", " + oy + ", " + oz + ") along (" + dx + ", " + dy
                    + ", " + dz + ") is not a finite ray");
        }
        inverseX = 1 / dx;
        inverseY = 1 / dy;
        inverseZ = 1 / dz;
        tMin = nearest;
        t = farthest;
        triangle = -1;
        kz = Math.abs(dx) == size ? 0 : Math.abs(dy) == size ? 1 : 2;
        kx = (kz + 1) % 3;
        ky = (kz + 2) % 3;
        if (direction(kz) < 0) {
            int swap = kx;
            kx = ky;
            ky = swap;
        }
        shearX = direction(kx) / direction(kz);
        shearY = direction(ky) / direction(kz);
        scaleZ = 1 / direction(kz);
        return this;
    }

    private double direction(int axis) {
        return axis == 0 ? dx : axis == 1 ? dy : dz;
    }

    double origin(int axis) {
        return axis == 0 ? ox : axis == 1 ? oy : oz;
    }

    void found(int hitTriangle, double hitT) {
        triangle = hitTriangle;
        t = hitT;
    }

    /** Triangle hit, or -1. */
    public int triangle() {
        return triangle;
    }

    /** Parameter of the hit; the far limit while nothing is hit. */
    public double t() {
        return t;
    }

    public double hitX() {
        return ox + t * dx;
    }

    public double hitY() {
        return oy + t * dy;
    }

    public double hitZ() {
        return oz + t * dz;
    }
}
