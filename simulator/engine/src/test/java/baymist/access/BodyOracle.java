package baymist.access;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Dense independent check of a wand's body: points along its centre line, each against every triangle. Written without the
 * distance routines of the main code: the distance of a point from a triangle is found by projection on its plane and on its
 * sides in plain coordinates, by brute force.
 *
 * <p>A straight or bent body is the union of discs square to its centre line, flat at the tip: the distance of a triangle from the
 * body is bounded from below by that of the sampled points less half a step. Points nearer to the tip than the radius do not stand for
 * a ball but for a disc; a triangle ahead of the nose's plane does not count against them.
 */
public final class BodyOracle {
    /** A nose that comes as near as this to a sheet ahead touches it without going in, m. */
    private static final double TOUCH_M = 1e-9;

    private BodyOracle() {}

    /**
     * What comes nearest to a centre line.
     *
     * @param distanceM distance from the nearest sampled point to the triangle, m
     */
    public record Nearest(int triangle, double distanceM, Vec3 bodyM) {}

    /**
     * Nearest triangle to the sampled centre line; the part of the mesh ahead of the plane through the tip square to the wand there is
     * cut away for the last radius of the body.
     *
     * @param stepM distance of samples, m
     * @param counts which triangles count
     */
    public static Nearest nearest(WandPose pose, TriangleMesh mesh, double stepM, IntPredicate counts) {
        return nearest(pose, mesh, stepM, Double.POSITIVE_INFINITY, counts);
    }

    /** The same among triangles whose own box comes within {@code withinM} of the body's box. */
    public static Nearest nearest(WandPose pose, TriangleMesh mesh, double stepM, double withinM, IntPredicate counts) {
        double[][] box = box(pose.centrelineM().stream().map(BodyOracle::array).toArray(double[][]::new));
        Nearest best = new Nearest(-1, Double.POSITIVE_INFINITY, pose.tipM());
        List<Vec3> line = pose.centrelineM();
        double[] axis = array(pose.tipAxis());
        double[] tip = array(pose.tipM());
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (!counts.test(t)) {
                continue;
            }
            double[][] whole = {array(mesh.point(t, 0)), array(mesh.point(t, 1)), array(mesh.point(t, 2))};
            if (apart(box, box(whole), withinM)) {
                continue;
            }
            double[][] behind = behind(whole, tip, axis);
            for (int i = 0; i + 1 < line.size(); i++) {
                double[] a = array(line.get(i));
                double[] b = array(line.get(i + 1));
                int n = Math.max(1, (int) Math.ceil(Math.sqrt(square(a, b)) / stepM));
                for (int k = 0; k <= n; k++) {
                    double s = (double) k / n;
                    double[] p = {a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])};
                    boolean nose = square(p, tip) <= 1.0001 * pose.radiusM() * pose.radiusM();
                    double d = distance(p, nose ? behind : whole);
                    if (d < best.distanceM) {
                        best = new Nearest(t, d, new Vec3(p[0], p[1], p[2]));
                    }
                }
            }
        }
        return best;
    }

    /** Whether no sampled point comes nearer to a triangle than the body's radius less {@code slackM}. */
    public static boolean free(WandPose pose, TriangleMesh mesh, double stepM, double slackM, IntPredicate counts) {
        return nearest(pose, mesh, stepM, pose.radiusM(), counts).distanceM() >= pose.radiusM() - slackM;
    }

    /** Distance of a convex polygon's points from p, m; infinite for an empty one. */
    static double distance(double[] p, double[][] polygon) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < polygon.length; k++) {
            least = Math.min(least, toSide(p, polygon[k], polygon[(k + 1) % polygon.length]));
        }
        for (int k = 1; k + 1 < polygon.length; k++) {
            least = Math.min(least, toFace(p, polygon[0], polygon[k], polygon[k + 1]));
        }
        return least;
    }

    private static double toSide(double[] p, double[] a, double[] b) {
        double l2 = square(a, b);
        double s = l2 == 0 ? 0 : (sub(p, a, b, 0) + sub(p, a, b, 1) + sub(p, a, b, 2)) / l2;
        s = Math.min(1, Math.max(0, s));
        double[] q = {a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])};
        return Math.sqrt(square(p, q));
    }

    private static double sub(double[] p, double[] a, double[] b, int i) {
        return (p[i] - a[i]) * (b[i] - a[i]);
    }

    /** Height above the face where the foot lies in it (Gram's equations), otherwise infinity: then a side is nearest. */
    private static double toFace(double[] p, double[] a, double[] b, double[] c) {
        double uu = 0;
        double uv = 0;
        double vv = 0;
        double up = 0;
        double vp = 0;
        for (int i = 0; i < 3; i++) {
            double u = b[i] - a[i];
            double v = c[i] - a[i];
            double w = p[i] - a[i];
            uu += u * u;
            uv += u * v;
            vv += v * v;
            up += u * w;
            vp += v * w;
        }
        double det = uu * vv - uv * uv;
        if (!(det > 0)) {
            return Double.POSITIVE_INFINITY;
        }
        double s = (vv * up - uv * vp) / det;
        double t = (uu * vp - uv * up) / det;
        if (s < 0 || t < 0 || s + t > 1) {
            return Double.POSITIVE_INFINITY;
        }
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double d = p[i] - a[i] - s * (b[i] - a[i]) - t * (c[i] - a[i]);
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    /** The part of a triangle behind the plane through the tip (Sutherland and Hodgman 1974, one plane). */
    private static double[][] behind(double[][] t, double[] tip, double[] axis) {
        double[][] out = new double[4][];
        int n = 0;
        for (int k = 0; k < 3; k++) {
            double[] a = t[k];
            double[] b = t[(k + 1) % 3];
            double ha = height(a, tip, axis) + TOUCH_M;
            double hb = height(b, tip, axis) + TOUCH_M;
            if (ha <= 0) {
                out[n++] = a;
            }
            if (ha < 0 && hb > 0 || ha > 0 && hb < 0) {
                double s = ha / (ha - hb);
                out[n++] = new double[] {a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])};
            }
        }
        double[][] kept = new double[n][];
        System.arraycopy(out, 0, kept, 0, n);
        return kept;
    }

    private static double[][] box(double[][] points) {
        double[][] box = {points[0].clone(), points[0].clone()};
        for (double[] p : points) {
            for (int i = 0; i < 3; i++) {
                box[0][i] = Math.min(box[0][i], p[i]);
                box[1][i] = Math.max(box[1][i], p[i]);
            }
        }
        return box;
    }

    private static boolean apart(double[][] a, double[][] b, double by) {
        for (int i = 0; i < 3; i++) {
            if (a[0][i] - b[1][i] > by || b[0][i] - a[1][i] > by) {
                return true;
            }
        }
        return false;
    }

    private static double height(double[] p, double[] tip, double[] axis) {
        double h = 0;
        for (int i = 0; i < 3; i++) {
            h += (p[i] - tip[i]) * axis[i];
        }
        return h;
    }

    private static double square(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return sum;
    }

    private static double[] array(Vec3 v) {
        return new double[] {v.x(), v.y(), v.z()};
    }
}
