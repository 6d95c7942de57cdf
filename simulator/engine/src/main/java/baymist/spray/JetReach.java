package baymist.spray;

import baymist.scene.ProductSpec;
import baymist.units.Air;

/**
 * What a piece of sheet gets straight from one free round jet, by distance and incidence: the law of the caster turned round, so that it can be
 * asked from the sheet's side.
 *
 * <p>Of the jet's liquid a piece of area A at the distance L from the tip, at an angle φ off the jet's axis, its normal at an angle θ against the line to the tip, catches
 *
 * <pre>
 *   x = L cos φ,   b = b(x),   q = (L sin φ / b)²,   n = cos θ 2^-q
 *   share = A cos θ/cos φ · ln2 (1 + 1/k²)/(π b²) · 2^(-q (1 + 1/k²)) · E(x, n),   q at most 2.5²
 * </pre>
 *
 * the caster's own profile of liquid (docs/theory/spray.md, 3), spread over the section of the jet that the piece covers, times the share of the drops
 * that land, averaged over the sizes. A cos θ/cos φ is the piece as it shadows the section of the jet, seen from the tip.
 * Free jets only: no confinement, no neighbours. Immutable.
 */
public final class JetReach {
    /** Slope of the liquid's profile against the speed's, {@code 1 + 1/k²}. */
    private static final double LIQUID = 1 + 1 / (RoundJet.FOG_WIDTH * RoundJet.FOG_WIDTH);

    private static final int NORMALS = 33;
    private static final int NODES = 96;

    private final RoundJet jet;
    private final double firstM;
    private final double logStep;

    /** Share that lands, [nodes][normals]: node at firstM exp(i logStep), normal factor j/(NORMALS-1). */
    private final double[][] landing;

    private JetReach(RoundJet jet, double firstM, double logStep, double[][] landing) {
        this.jet = jet;
        this.firstM = firstM;
        this.logStep = logStep;
        this.landing = landing;
    }

    /**
     * The reach of a jet.
     *
     * @param source with thrust above 0
     * @param rangeM largest distance asked for, m
     */
    public static JetReach of(JetSource source, SizeBins bins, ProductSpec product, Air air, double rangeM) {
        RoundJet jet = new RoundJet(source.momentumN(), source.exitSpeedMPerS(), air.densityKgPerM3());
        DropSpeeds drops = new DropSpeeds(
                ConfinedJet.unconfined(jet), bins, product.densityKgPerM3(), air, rangeM, JetFlight.DEAD_M_PER_S);
        double first = 0.25 * jet.expandedDiameterM();
        double step = Math.log(Math.max(rangeM, 2 * first) / first) / (NODES - 1);
        double[][] landing = new double[NODES][NORMALS];
        for (int i = 0; i < NODES; i++) {
            double x = first * Math.exp(i * step);
            for (int b = 0; b < bins.count(); b++) {
                if (drops.endM(b) < x) {
                    continue;
                }
                double tau = Droplet.relaxationTimeS(bins.diameterM()[b], product.densityKgPerM3(), air);
                double speed = drops.at(b, x);
                for (int j = 0; j < NORMALS; j++) {
                    double normal = speed * j / (NORMALS - 1.0);
                    double stokes = Impaction.stokes(tau, normal, 2 * jet.halfWidthM(x));
                    landing[i][j] += bins.share()[b] * Impaction.efficiency(stokes);
                }
            }
        }
        return new JetReach(jet, first, step, landing);
    }

    /** Share of drops that land at an axial distance, m, where their speed square to the sheet is this share of that on the axis. */
    public double landing(double axialM, double normalShare) {
        double place = Math.log(Math.max(axialM, firstM) / firstM) / logStep;
        int i = (int) Math.min(NODES - 2.0, place);
        double w = Math.min(1, place - i);
        double at = Math.min(1, Math.max(0, normalShare)) * (NORMALS - 1);
        int j = (int) Math.min(NORMALS - 2.0, at);
        double u = at - j;
        double near = landing[i][j] * (1 - u) + landing[i][j + 1] * u;
        double far = landing[i + 1][j] * (1 - u) + landing[i + 1][j + 1] * u;
        return near * (1 - w) + far * w;
    }

    /**
     * Share of the jet's liquid that flies at a small piece of sheet, whether or not it lands.
     *
     * @param distanceM from the tip, m, above 0
     * @param cosOff cosine of the angle between the jet and the line to the piece
     * @param cosIncidence cosine of the angle between the line and the normal of the piece, 0..1
     * @param areaM2 area of the piece, m²; small against the section of the jet, else pieces together must be held to 1
     */
    public double meeting(double distanceM, double cosOff, double cosIncidence, double areaM2) {
        if (!(cosOff > 0) || !(cosIncidence > 0)) {
            return 0;
        }
        double b = jet.halfWidthM(distanceM * cosOff);
        double q = widths(distanceM, cosOff, b);
        if (q > RaySet.EDGE * RaySet.EDGE) {
            return 0;
        }
        double density = Math.log(2) * LIQUID / (Math.PI * b * b) * Math.exp(-Math.log(2) * LIQUID * q);
        return areaM2 * cosIncidence / cosOff * density;
    }

    /** Share of what flies at the piece that lands, arguments as of {@link #meeting}. */
    public double landingAt(double distanceM, double cosOff, double cosIncidence) {
        double x = distanceM * cosOff;
        double q = widths(distanceM, cosOff, jet.halfWidthM(x));
        return landing(x, cosIncidence * Math.exp(-Math.log(2) * q));
    }

    /** Share of the jet's liquid that a small piece of sheet catches, arguments as of {@link #meeting}. */
    public double share(double distanceM, double cosOff, double cosIncidence, double areaM2) {
        double meeting = meeting(distanceM, cosOff, cosIncidence, areaM2);
        return meeting > 0 ? meeting * landingAt(distanceM, cosOff, cosIncidence) : 0;
    }

    private static double widths(double distanceM, double cosOff, double b) {
        return distanceM * distanceM * Math.max(0, 1 - cosOff * cosOff) / (b * b);
    }

    /** Share of drops that land where the jet strikes square; no place at that distance gets more. */
    public double most(double distanceM) {
        return landing(distanceM, 1);
    }

    /** Half-width of the jet, m. */
    public double halfWidthM(double axialM) {
        return jet.halfWidthM(axialM);
    }
}
