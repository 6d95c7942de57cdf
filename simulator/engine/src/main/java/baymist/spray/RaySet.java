package baymist.spray;

import baymist.geom.Vec3;

/**
 * The rays that stand for one round jet: a fixed low-discrepancy set, no chance in it.
 *
 * <p>Ray i of n lies at the quantile {@code p = P (i + 1/2)/n} of the jet's volume flow, P the share within {@link #EDGE}, at {@code
 * r/b = √(-ln(1-p)/ln2)}, so that every ray carries the same flow of air; its angle round the jet and its place along the stretch that the station stands
 * for are the two-dimensional R sequence (multiples of the inverse powers of the plastic number, Roberts 2018). Liquid goes
 * as speed times fog concentration: its share is weighted with the fog profile {@code (1-p)^(1/k²)}, k = 1.18. The local speed
 * of a ray is {@code 1-p} of that on the axis.
 */
final class RaySet {
    private static final double PLASTIC = 1.324717957244746;
    /**
     * Edge of the jet, in half-widths. Profiles are measured to follow the Gaussian out to some 2.2 (Rajaratnam 1976, figures, from memory) and
     * fall below it further out, where the jet flaps; the Gaussian itself has no edge, so that ever more rays would find ever more
     * outlying sheet. ASSUMED at 2.5, where the speed is 1.3 % of the centre's; 1.3 % of the flow and 0.06 % of the liquid lie beyond.
     */
    static final double EDGE = 2.5;

    private static final double WITHIN_EDGE = 1 - Math.pow(2, -EDGE * EDGE);
    private static final double GOLDEN = 0.6180339887498949;

    private final int count;
    private final double[] tangent;
    private final double[] cosine;
    private final double[] sine;
    private final double[] along;
    private final double[] speed;
    private final double[] liquid;
    private final double speedSum;

    RaySet(int count) {
        this(count, 0);
    }

    /**
     * The set as the station of a number sees it: shifted along quantile, turn and stretch by multiples of irrational numbers, so that
     * the stations of a pass fill each other's gaps and a surfel far along the jets is met by the rays of several of them (a Cranley and
     * Patterson 1976 rotation with a Kronecker sequence in place of chance). Station 0 sees the plain set.
     */
    RaySet(int count, long station) {
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
        double within = fraction(0.5 + station * GOLDEN);
        double turned = fraction(0.5 + station / PLASTIC);
        double moved = fraction(0.5 + station / (PLASTIC * PLASTIC));
        for (int i = 0; i < count; i++) {
            double rest = 1 - WITHIN_EDGE * (i + within) / count;
            double turn = 2 * Math.PI * fraction(turned + i / PLASTIC);
            tangent[i] = RoundJet.SPREAD * Math.sqrt(-Math.log(rest) / Math.log(2));
            cosine[i] = Math.cos(turn);
            sine[i] = Math.sin(turn);
            along[i] = fraction(moved + i / (PLASTIC * PLASTIC)) - 0.5;
            speed[i] = rest;
            liquid[i] = Math.pow(rest, 1 / (RoundJet.FOG_WIDTH * RoundJet.FOG_WIDTH));
            sum += liquid[i];
        }
        double all = 0;
        for (int i = 0; i < count; i++) {
            liquid[i] /= sum;
            all += speed[i];
        }
        speedSum = all;
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

    /** Share of the jet's momentum, flow times speed; all rays together 1. */
    double momentumShare(int ray) {
        return speed[ray] / speedSum;
    }

    /** Share of the jet's liquid; all rays together 1. */
    double liquidShare(int ray) {
        return liquid[ray];
    }
}
