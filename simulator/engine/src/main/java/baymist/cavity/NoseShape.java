package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.ControlSurface;
import baymist.scene.ControlSurfaceDetail.Nose;
import java.util.ArrayList;
import java.util.List;

/**
 * Sections of a nose ahead of the spar, symmetric about z = 0: half an ellipse, or an arc about the leading edge with flats that
 * touch it and run to the spar's edges.
 */
final class NoseShape {
    /** Chords from the leading edge to the spar on each side. */
    static final int CHORDS = 12;

    private static final double SAME_M = 1e-9;

    private final ControlSurface spec;
    private final Nose nose;

    NoseShape(ControlSurface spec, Nose nose) {
        this.spec = spec;
        this.nose = nose;
    }

    double lengthM(double yM) {
        return nose.rootLengthM() + (nose.tipLengthM() - nose.rootLengthM()) * yM / spec.spanM();
    }

    double radiusM(double yM, double halfDepthM) {
        return nose.radiusM() * 2 * halfDepthM / spec.rootDepthM();
    }

    /** The section at a station, from the leading edge to the spar, whose edges it meets exactly. */
    RibSheets.Section section(double yM, Vec3 sparTop, Vec3 sparFoot) {
        double h = sparTop.z();
        double length = lengthM(yM);
        List<Vec3> upper = new ArrayList<>();
        List<Vec3> lower = new ArrayList<>();
        for (double[] p : nose.radiusM() > 0 ? arc(length, h, radiusM(yM, h)) : ellipse(length, h)) {
            boolean atSpar = Math.hypot(p[0], p[1] - h) < SAME_M;
            upper.add(atSpar ? sparTop : new Vec3(p[0], yM, p[1]));
            lower.add(atSpar ? sparFoot : new Vec3(p[0], yM, -p[1]));
        }
        return new RibSheets.Section(yM, upper, lower);
    }

    private static List<double[]> ellipse(double length, double h) {
        List<double[]> points = new ArrayList<>();
        for (int k = 0; k <= CHORDS; k++) {
            double t = Math.PI / 2 * k / CHORDS;
            points.add(k == CHORDS ? new double[] {0, h} : new double[] {-length * Math.cos(t), h * Math.sin(t)});
        }
        points.get(0)[1] = 0;
        return points;
    }

    private static List<double[]> arc(double length, double h, double r) {
        double ahead = length - r;
        double far = Math.hypot(ahead, h);
        double end = Math.atan2(h, ahead) + Math.acos(Math.min(1, r / far));
        List<double[]> points = new ArrayList<>();
        for (int k = 0; k < CHORDS; k++) {
            double a = Math.PI + (end - Math.PI) * k / (CHORDS - 1);
            points.add(new double[] {-ahead + r * Math.cos(a), r * Math.sin(a)});
        }
        points.get(0)[1] = 0;
        points.add(new double[] {0, h});
        return points;
    }
}
