package baymist.geom;

/** A point (m) or a direction in structure axes: x aft, y right, z up. Immutable. */
public record Vec3(double x, double y, double z) {
    public static final Vec3 ZERO = new Vec3(0, 0, 0);
    public static final Vec3 X = new Vec3(1, 0, 0);
    public static final Vec3 Y = new Vec3(0, 1, 0);
    public static final Vec3 Z = new Vec3(0, 0, 1);

    public Vec3 plus(Vec3 o) {
        return new Vec3(x + o.x, y + o.y, z + o.z);
    }

    /** This vector plus {@code s} times {@code o}. */
    public Vec3 plus(double s, Vec3 o) {
        return new Vec3(x + s * o.x, y + s * o.y, z + s * o.z);
    }

    public Vec3 minus(Vec3 o) {
        return new Vec3(x - o.x, y - o.y, z - o.z);
    }

    public Vec3 times(double s) {
        return new Vec3(x * s, y * s, z * s);
    }

    public Vec3 negate() {
        return new Vec3(-x, -y, -z);
    }

    public double dot(Vec3 o) {
        return x * o.x + y * o.y + z * o.z;
    }

    public Vec3 cross(Vec3 o) {
        return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
    }

    public double length() {
        return Math.sqrt(dot(this));
    }

    public double distance(Vec3 o) {
        return minus(o).length();
    }

    /** Unit vector along this one; {@link ArithmeticException} for the zero vector. */
    public Vec3 unit() {
        double l = length();
        if (!(l > 0)) {
            throw new ArithmeticException("the zero vector has no direction");
        }
        return times(1 / l);
    }

    /** Component on {@code axis}: 0 = x, 1 = y, 2 = z. */
    public double get(int axis) {
        return axis == 0 ? x : axis == 1 ? y : z;
    }

    /** Any unit vector square to this one, the same for the same input. */
    public Vec3 anyPerpendicular() {
        Vec3 other = Math.abs(x) <= Math.abs(y) && Math.abs(x) <= Math.abs(z) ? X : Math.abs(y) <= Math.abs(z) ? Y : Z;
        return cross(other).unit();
    }

    public boolean isFinite() {
        return Double.isFinite(x) && Double.isFinite(y) && Double.isFinite(z);
    }
}
