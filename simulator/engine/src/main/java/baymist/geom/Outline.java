package baymist.geom;

import java.util.List;

/**
 * Closed outline of an opening in its own plane (u, v), m, about its centre. Exact: area, membership and clearance come
 * from the analytic form; {@link #polygon} is for cutting meshes and for display.
 */
public sealed interface Outline {
    /** Enclosed area, m². */
    double areaM2();

    /** Whether the point lies strictly inside. */
    boolean contains(double u, double v);

    /** Distance from the point to the outline, m, positive inside, negative outside. */
    double clearanceM(double u, double v);

    /** Perimeter, m. */
    double perimeterM();

    /** Radius of the smallest circle about the centre that holds the outline, m. */
    double reachM();

    /**
     * Counter-clockwise polygon with the same area as the outline (points moved along their own radius where curved).
     *
     * @param segmentsPerTurn chords that a full circle would get, at least 8
     */
    List<double[]> polygon(int segmentsPerTurn);

    record Circle(double radiusM) implements Outline {
        @Override
        public double areaM2() {
            return Math.PI * radiusM * radiusM;
        }

        @Override
        public boolean contains(double u, double v) {
            return u * u + v * v < radiusM * radiusM;
        }

        @Override
        public double clearanceM(double u, double v) {
            return radiusM - Math.hypot(u, v);
        }

        @Override
        public double perimeterM() {
            return 2 * Math.PI * radiusM;
        }

        @Override
        public double reachM() {
            return radiusM;
        }

        @Override
        public List<double[]> polygon(int segmentsPerTurn) {
            return OutlinePolygons.roundedRectangle(0, 0, radiusM, segmentsPerTurn);
        }
    }

    /** Straight-sided slot with round ends: overall length along u, width along v. */
    record Slot(double lengthM, double widthM) implements Outline {
        private RoundedRectangle asRectangle() {
            return new RoundedRectangle(lengthM, widthM, widthM / 2);
        }

        @Override
        public double areaM2() {
            return asRectangle().areaM2();
        }

        @Override
        public boolean contains(double u, double v) {
            return clearanceM(u, v) > 0;
        }

        @Override
        public double clearanceM(double u, double v) {
            return asRectangle().clearanceM(u, v);
        }

        @Override
        public double perimeterM() {
            return asRectangle().perimeterM();
        }

        @Override
        public double reachM() {
            return lengthM / 2;
        }

        @Override
        public List<double[]> polygon(int segmentsPerTurn) {
            return asRectangle().polygon(segmentsPerTurn);
        }
    }

    /** Rectangle of overall length along u and width along v with corner radius (0 allowed). */
    record RoundedRectangle(double lengthM, double widthM, double cornerRadiusM) implements Outline {
        @Override
        public double areaM2() {
            return lengthM * widthM - (4 - Math.PI) * cornerRadiusM * cornerRadiusM;
        }

        @Override
        public boolean contains(double u, double v) {
            return clearanceM(u, v) > 0;
        }

        @Override
        public double clearanceM(double u, double v) {
            double qu = Math.abs(u) - lengthM / 2 + cornerRadiusM;
            double qv = Math.abs(v) - widthM / 2 + cornerRadiusM;
            double outside = Math.hypot(Math.max(qu, 0), Math.max(qv, 0));
            return -(outside + Math.min(Math.max(qu, qv), 0) - cornerRadiusM);
        }

        @Override
        public double perimeterM() {
            return 2 * (lengthM + widthM) - (8 - 2 * Math.PI) * cornerRadiusM;
        }

        @Override
        public double reachM() {
            double inner = Math.hypot(lengthM / 2 - cornerRadiusM, widthM / 2 - cornerRadiusM);
            return inner + cornerRadiusM;
        }

        @Override
        public List<double[]> polygon(int segmentsPerTurn) {
            return OutlinePolygons.roundedRectangle(
                    lengthM / 2 - cornerRadiusM, widthM / 2 - cornerRadiusM, cornerRadiusM, segmentsPerTurn);
        }
    }

    /** Simple polygon, counter-clockwise points {u, v}, m. */
    record Polygon(List<double[]> points) implements Outline {
        public Polygon {
            points = OutlinePolygons.counterClockwise(points);
        }

        @Override
        public double areaM2() {
            return OutlinePolygons.signedArea(points);
        }

        @Override
        public boolean contains(double u, double v) {
            return OutlinePolygons.contains(points, u, v);
        }

        @Override
        public double clearanceM(double u, double v) {
            double d = OutlinePolygons.distanceToBoundary(points, u, v);
            return contains(u, v) ? d : -d;
        }

        @Override
        public double perimeterM() {
            return OutlinePolygons.perimeter(points);
        }

        @Override
        public double reachM() {
            return points.stream()
                    .mapToDouble(p -> Math.hypot(p[0], p[1]))
                    .max()
                    .orElse(0);
        }

        @Override
        public List<double[]> polygon(int segmentsPerTurn) {
            return points;
        }
    }
}
