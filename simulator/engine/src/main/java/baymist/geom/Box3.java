package baymist.geom;

/** Axis-aligned box, m; {@code min} is never above {@code max} except in {@link #EMPTY}. */
public record Box3(Vec3 min, Vec3 max) {
    private static final double INF = Double.POSITIVE_INFINITY;
    public static final Box3 EMPTY = new Box3(new Vec3(INF, INF, INF), new Vec3(-INF, -INF, -INF));

    public Box3 including(Vec3 p) {
        return new Box3(
                new Vec3(Math.min(min.x(), p.x()), Math.min(min.y(), p.y()), Math.min(min.z(), p.z())),
                new Vec3(Math.max(max.x(), p.x()), Math.max(max.y(), p.y()), Math.max(max.z(), p.z())));
    }

    public Box3 including(Box3 o) {
        return including(o.min).including(o.max);
    }

    public Vec3 size() {
        return max.minus(min);
    }

    public Vec3 centre() {
        return min.plus(max).times(0.5);
    }

    public boolean isEmpty() {
        return min.x() > max.x();
    }

    /** Whether two boxes have a point in common, their faces included. */
    public boolean touches(Box3 o) {
        return min.x() <= o.max.x()
                && max.x() >= o.min.x()
                && min.y() <= o.max.y()
                && max.y() >= o.min.y()
                && min.z() <= o.max.z()
                && max.z() >= o.min.z();
    }

    public Box3 grown(double marginM) {
        Vec3 m = new Vec3(marginM, marginM, marginM);
        return new Box3(min.minus(m), max.plus(m));
    }
}
