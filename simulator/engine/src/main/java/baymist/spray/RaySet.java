package baymist.spray;

import baymist.geom.Vec3;

/**
 * Rays that stand for one round jet: a fixed low-discrepancy set, no chance in it.
 *
 * <p>Ray i of n stands for an equal step of {@code 1 - 2^(-a q²)}, q = r/b within {@link #EDGE}; its angle round the jet and its place
 * along the stretch that the station stands for are the two-dimensional R sequence (multiples of the inverse powers of the plastic
 * number, Roberts 2018). With a = 1 every ray carries the same flow of air: the set for what the air does ({@link #ofAir}). The set for
 * the liquid takes a = {@value #LIQUID_TILT}: more even in solid angle, so that thin film far out is met by as many rays as the
 * core, and each ray
 * carries the liquid of its step. Liquid goes as speed times fog concentration, {@code 2^(-q² (1 + 1/k²))}, k = 1.18. The local
 * speed of a ray
 * is {@code 2^(-q²)} of that on the axis.
 */
final class RaySet {
    private static final double PLASTIC = 1.324717957244746;
    /**
     * Edge of the jet, in half-widths. Profiles are measured to follow the Gaussian out to some 2.2 (Rajaratnam 1976, figures,
     * from memory) and
     * fall below it further out, where the jet flaps; the Gaussian itself has no edge, so that ever more rays would find ever more
     * outlying sheet. ASSUMED at 2.5, where the speed is 1.3 % of the centre's; 1.3 % of the flow and 0.06 % of the liquid lie beyond.
     */
    static final double EDGE = 2.5;

    /** Tilt of the liquid's rays towards the axis: 0 would be even in solid angle, 1 even in flow. From axis to edge they thin out 13-fold instead of 76-fold. */
    static final double LIQUID_TILT = 0.6;

    private static final double GOLDEN = 0.6180339887498949;

    private final int count;
    private final double[] tangent;
    private final double[] cosine;
    private final double[] sine;
    private final double[] along;
    private final double[] speed;
    private final double[] liquid;
    private final double[] angle;
    private final double[] momentum;

    RaySet(int count) {
        this(count, 0);
    }

    /** The air's rays as the station of a number sees them, seed 0. */
    RaySet(int count, long station) {
        this(count, station, 0, 1);
    }

    /** Rays of equal flow of air. */
    static RaySet ofAir(int count, long station, long seed) {
        return new RaySet(count, station, seed, 1);
    }

    /** Rays that carry the liquid. */
    static RaySet ofLiquid(int count, long station, long seed) {
        return new RaySet(count, station, seed, LIQUID_TILT);
    }

    /**
     * The set as the station of a number sees it: shifted along quantile, turn and stretch by multiples of irrational numbers, so that
     * the stations of a pass fill each other's gaps and a surfel far along the jets is met by the rays of several of them (a Cranley and
     * Patterson 1976 rotation with a Kronecker sequence in place of chance). Station 0 sees the plain set. A seed shifts all
     * stations alike, by
     * multiples of the roots of 2, 3 and 5.
     */
    private RaySet(int count, long station, long seed, double tilt) {
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
        angle = new double[count];
        momentum = new double[count];
        double within = fraction(0.5 + station * GOLDEN + seed * Math.sqrt(2));
        double turned = fraction(0.5 + station / PLASTIC + seed * Math.sqrt(3));
        double moved = fraction(0.5 + station / (PLASTIC * PLASTIC) + seed * Math.sqrt(5));
        double inside = 1 - Math.pow(2, -tilt * EDGE * EDGE);
        double liquids = 0;
        double pushes = 0;
        for (int i = 0; i < count; i++) {
            double rest = 1 - inside * (i + within) / count;
            double turn = 2 * Math.PI * fraction(turned + i / PLASTIC);
            double off2 = -Math.log(rest) / Math.log(2) / tilt;
            tangent[i] = RoundJet.SPREAD * Math.sqrt(off2);
            cosine[i] = Math.cos(turn);
            sine[i] = Math.sin(turn);
            along[i] = fraction(moved + i / (PLASTIC * PLASTIC)) - 0.5;
            speed[i] = Math.pow(2, -off2);
            angle[i] = Math.PI * RoundJet.SPREAD * RoundJet.SPREAD * inside / (count * tilt * Math.log(2) * rest);
            liquid[i] = liquidDensity(off2) * angle[i];
            momentum[i] = speed[i] * speed[i] * angle[i];
            liquids += liquid[i];
            pushes += momentum[i];
        }
        for (int i = 0; i < count; i++) {
            liquid[i] /= liquids;
            momentum[i] /= pushes;
        }
    }

    /** Flux of liquid at q² = (r/b)² over that on the axis; none beyond the edge. */
    static double liquidDensity(double q2) {
        return q2 > EDGE * EDGE ? 0 : Math.pow(2, -q2 * (1 + 1 / (RoundJet.FOG_WIDTH * RoundJet.FOG_WIDTH)));
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

    /** Solid angle for which a ray stands, as the area that it cuts out of a plane square to the jet at unit distance. */
    double angle(int ray) {
        return angle[ray];
    }

    /** Tangents of the ray's angle to the jet's axis along u and v. */
    double tangentU(int ray) {
        return tangent[ray] * cosine[ray];
    }

    double tangentV(int ray) {
        return tangent[ray] * sine[ray];
    }

    /** Share of the jet's momentum, flow times speed; all rays together 1. */
    double momentumShare(int ray) {
        return momentum[ray];
    }

    /** Share of the jet's liquid; all rays together 1. */
    double liquidShare(int ray) {
        return liquid[ray];
    }
}
