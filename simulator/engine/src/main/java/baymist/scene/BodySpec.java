package baymist.scene;

import baymist.geom.TriangleDistance;
import baymist.geom.Vec3;

/** A plain closed body, for protected items and obstacles. Lengths m, structure axes. */
public sealed interface BodySpec {
    /** Distance of a point from the body, m; 0 on it and inside. */
    double distanceM(Vec3 p);

    /** Exact surface, m². */
    double areaM2();

    /** Exact volume, m³. */
    double volumeM3();

    /** Sphere about a centre. */
    record Sphere(Vec3 centreM, double radiusM) implements BodySpec {
        @Override
        public double distanceM(Vec3 p) {
            return Math.max(0, p.distance(centreM) - radiusM);
        }

        @Override
        public double areaM2() {
            return 4 * Math.PI * radiusM * radiusM;
        }

        @Override
        public double volumeM3() {
            return 4 * Math.PI / 3 * radiusM * radiusM * radiusM;
        }
    }

    /**
     * Box with its own axes turned.
     *
     * @param sizeM whole lengths along its own axes
     * @param xAxis, yAxis, zAxis its own axes, unit vectors square to each other
     */
    record Cuboid(Vec3 centreM, Vec3 sizeM, Vec3 xAxis, Vec3 yAxis, Vec3 zAxis) implements BodySpec {
        @Override
        public double distanceM(Vec3 p) {
            Vec3 d = p.minus(centreM);
            double x = Math.max(0, Math.abs(d.dot(xAxis)) - 0.5 * sizeM.x());
            double y = Math.max(0, Math.abs(d.dot(yAxis)) - 0.5 * sizeM.y());
            double z = Math.max(0, Math.abs(d.dot(zAxis)) - 0.5 * sizeM.z());
            return Math.sqrt(x * x + y * y + z * z);
        }

        @Override
        public double areaM2() {
            return 2 * (sizeM.x() * sizeM.y() + sizeM.y() * sizeM.z() + sizeM.z() * sizeM.x());
        }

        @Override
        public double volumeM3() {
            return sizeM.x() * sizeM.y() * sizeM.z();
        }
    }

    /** Straight cylinder with flat ends; the two points differ. */
    record Cylinder(Vec3 fromM, Vec3 toM, double radiusM) implements BodySpec {
        @Override
        public double distanceM(Vec3 p) {
            Vec3 axis = toM.minus(fromM).unit();
            double along = p.minus(fromM).dot(axis);
            double beyond = Math.max(0, Math.max(-along, along - lengthM()));
            double aside = Math.max(0, p.minus(fromM).plus(-along, axis).length() - radiusM);
            return Math.sqrt(beyond * beyond + aside * aside);
        }

        public double lengthM() {
            return fromM.distance(toM);
        }

        @Override
        public double areaM2() {
            return 2 * Math.PI * radiusM * (radiusM + lengthM());
        }

        @Override
        public double volumeM3() {
            return Math.PI * radiusM * radiusM * lengthM();
        }
    }

    /**
     * Distance between the body and a straight line of finite length, m; 0 where they meet. The bodies are convex, so the
     * distance is a convex function along the line and a search by thirds ends at its least value, to 1e-9 of the length.
     */
    default double distanceM(Vec3 a, Vec3 b) {
        if (this instanceof Sphere s) {
            return Math.max(
                    0, TriangleDistance.closestOnSegment(s.centreM(), a, b).distance(s.centreM()) - s.radiusM());
        }
        Vec3 along = b.minus(a);
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++) {
            double left = low + (high - low) / 3;
            double right = high - (high - low) / 3;
            double d = distanceM(a.plus(left, along));
            double e = distanceM(a.plus(right, along));
            if (d == 0 || e == 0) {
                return 0;
            }
            if (d <= e) {
                high = right;
            } else {
                low = left;
            }
        }
        return distanceM(a.plus(0.5 * (low + high), along));
    }
}
