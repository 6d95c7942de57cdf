package baymist.cavity;

import baymist.geom.Outline;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.ConvexArea;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.apache.commons.geometry.euclidean.twod.path.LinePath;
import org.apache.commons.numbers.core.Precision;

/** An outline's area-matched polygon as convex polygons (binary space partition of Commons Geometry where concave). */
final class ConvexPieces {
    /** Chords that a full circle gets. */
    static final int SEGMENTS_PER_TURN = 96;
    /** Points closer than this are one, m; far below any sheet-metal dimension, far above rounding at 100 m. */
    private static final double SAME_POINT_M = 1e-11;

    private ConvexPieces() {}

    /** Counter-clockwise convex polygons, points {u, v}, m, that together make up the outline. */
    static List<List<double[]>> of(Outline outline) {
        List<double[]> polygon = outline.polygon(SEGMENTS_PER_TURN);
        if (isConvex(polygon)) {
            return List.of(polygon);
        }
        Precision.DoubleEquivalence precision = Precision.doubleEquivalenceOfEpsilon(SAME_POINT_M);
        List<Vector2D> points =
                polygon.stream().map(p -> Vector2D.of(p[0], p[1])).toList();
        List<List<double[]>> pieces = new ArrayList<>();
        for (ConvexArea area :
                LinePath.fromVertexLoop(points, precision).toTree().toConvex()) {
            List<double[]> piece = new ArrayList<>();
            for (Vector2D v : area.getVertices()) {
                piece.add(new double[] {v.getX(), v.getY()});
            }
            pieces.add(piece);
        }
        return pieces;
    }

    static double area(List<List<double[]>> pieces) {
        double sum = 0;
        for (List<double[]> piece : pieces) {
            sum += new Outline.Polygon(piece).areaM2();
        }
        return sum;
    }

    private static boolean isConvex(List<double[]> p) {
        for (int i = 0; i < p.size(); i++) {
            double[] a = p.get(i);
            double[] b = p.get((i + 1) % p.size());
            double[] c = p.get((i + 2) % p.size());
            double turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
            double size = Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.hypot(c[0] - b[0], c[1] - b[1]);
            if (turn < -1e-12 * size) {
                return false;
            }
        }
        return turnsOnce(p);
    }

    /** A star that winds twice has left turns only, too: all corners must turn by one full circle in sum. */
    private static boolean turnsOnce(List<double[]> p) {
        double sum = 0;
        for (int i = 0; i < p.size(); i++) {
            double[] a = p.get(i);
            double[] b = p.get((i + 1) % p.size());
            double[] c = p.get((i + 2) % p.size());
            double ux = b[0] - a[0];
            double uy = b[1] - a[1];
            double vx = c[0] - b[0];
            double vy = c[1] - b[1];
            sum += Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
        }
        return Math.abs(sum - 2 * Math.PI) < 0.1;
    }
}
