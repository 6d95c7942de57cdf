package baymist.spray;

import baymist.geom.Vec3;

/**
 * The rays that stand for one round jet: a fixed low-discrepancy set, no chance in it.
 *
 * <p>Ray i of n lies at the quantile {@code p = (i + 1/2)/n} of the jet's volume flow, at {@code r/b = √(-ln(1-p)/ln2)}, so that
 * every ray carries the same flow of air; its angle round the jet and its place along the stretch that the station stands
 * for are the two-dimensional R sequence (multiples of the inverse powers of the plastic number, Roberts 2018). Liquid goes
 * as speed times fog concentration: its share is weighted with the fog profile {@code (1-p)^(1/k²)}, k = 1.18. The local speed
 * of a ray is {@code 1-p} of that on the axis.
 */
final class RaySet {
    private static final double PLASTIC = 1.324717957244746;

    private final int count;
    private final double[] tangent;
    private final double[] cosine;
    private final double[] sine;
    private final double[] along;
    private final double[] speed;
    private final double[] liquid;

    RaySet(int count) {
        if (count < 1) {
            throw new IllegalArgumentException("rays per jet " + count + ", at least 1 expected");
        }
        this.count = count;
        tangent = new double[count];
        cosine = new double[count];
        sine = new double[count];
        along = new double[count];
        speed = new double[count];
        liquid = new double[count];
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double rest = 1 - (i + 0.5) / count;
            double turn = 2 * Math.PI * fraction(0.5 + i / PLASTIC);
            tangent[i] = RoundJet.SPREAD * Math.sqrt(-Math.log(rest) / Math.log(2));
            cosine[i] = Math.cos(turn);
            sine[i] = Math.sin(turn);
            along[i] = fraction(0.5 + i / (PLASTIC * PLASTIC)) - 0.5;
            speed[i] = rest;
            liquid[i] = Math.pow(rest, 1 / (RoundJet.FOG_WIDTH * RoundJet.FOG_WIDTH));
            sum += liquid[i];
        }
        for (int i = 0; i < count; i++) {
            liquid[i] /= sum;
        }
    }

    private static double fraction(double v) {
        return v - Math.floor(v);
    }

    int count() {
        return count;
    }

    /** Unit direction of a ray of a jet along {@code axis}; u and v are unit vectors square to it and to each other. */
    Vec3 direction(int ray, Vec3 axis, Vec3 u, Vec3 v) {
        double t = tangent[ray];
        return axis.plus(t * cosine[ray], u).plus(t * sine[ray], v).times(axialShare(ray));
    }

    /** Cosine of the angle between ray and jet: axial distance per distance along the ray. */
    double axialShare(int ray) {
        return 1 / Math.sqrt(1 + tangent[ray] * tangent[ray]);
    }

    /** Place along the station's stretch, -0.5..0.5. */
    double along(int ray) {
        return along[ray];
    }

    /** Speed on the ray over that on the jet's axis, 0..1. */
    double speedShare(int ray) {
        return speed[ray];
    }

    /**
     * Whether a ray belongs to the first of two interleaved halves of the set. Of each pair of neighbouring quantiles one ray goes to
     * either half, which one by the Thue-Morse sequence: every other ray would turn by 0.51 of a circle and leave gaps.
     */
    boolean firstHalf(int ray) {
        return (ray & 1) == (Integer.bitCount(ray >> 1) & 1);
    }

    /** Share of the jet's liquid; all rays together 1. */
    double liquidShare(int ray) {
        return liquid[ray];
    }
}
