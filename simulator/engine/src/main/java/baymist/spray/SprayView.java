package baymist.spray;

import baymist.access.TipPose;
import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import baymist.units.Air;
import java.util.List;

/**
 * What a single place of the structure sees of a tip: whether a straight line from the tip gets there, and what the jets would leave
 * there by the free jet's law. It is a quick look at one point, where {@link SprayCaster} casts whole jets: confinement and the merging of
 * jets are left out, so its rates serve to tell good poses from bad ones and never as film. Immutable; safe for many threads.
 */
public final class SprayView {
    /** A point this close to a jet's axis, in half-widths of its speed, lies in the pattern: half of the jet's flow passes within 1, 94 % within 2. */
    public static final double PATTERN_HALF_WIDTHS = 2;

    /** How far before its end a line of sight may be ended by the sheet that the point lies on, m. */
    private static final double SKIN_M = 2e-3;

    private final SheetRays rays;
    private final SupplySpec supply;
    private final ProductSpec product;
    private final Air air;
    private final SizeBins bins;
    private final double[] relaxationS;

    /** @param supply as the scene states it */
    public SprayView(
            Cavity cavity, SheetTracer tracer, SupplySpec supply, ProductSpec product, Air air, SizeBins bins) {
        this.rays = new SheetRays(cavity, tracer);
        this.supply = supply;
        this.product = product;
        this.air = air;
        this.bins = bins;
        this.relaxationS = new double[bins.count()];
        for (int b = 0; b < relaxationS.length; b++) {
            relaxationS[b] = Droplet.relaxationTimeS(bins.diameterM()[b], product.densityKgPerM3(), air);
        }
    }

    /**
     * The end of a line of sight.
     *
     * @param clear whether it gets to the point
     * @param part what ends it first, or -1: a part of the cavity
     * @param opening closed opening that ends it, or outer opening by which it leaves, or -1
     */
    public record Line(boolean clear, int part, int opening) {}

    /**
     * What the jets of a tip would leave at a point.
     *
     * @param inside whether the point lies in the pattern of one jet at least
     * @param kgPerM2S product that would land, kg/m²s
     * @param halfWidths distance from the nearest jet's axis in half-widths
     * @param speedMPerS speed of the nearest jet's air at the point, m/s
     * @param cutM droplets above this size land there, m; infinite where hardly anything arrives
     * @param incidence cosine of the angle between the jet and the sheet's normal, 0..1
     */
    public record Arrival(
            boolean inside, double kgPerM2S, double halfWidths, double speedMPerS, double cutM, double incidence) {}

    /** Looks from a tip at a point of a sheet. */
    public Line look(Vec3 tip, Vec3 point, double[] openFraction) {
        Vec3 way = point.minus(tip);
        double length = way.length();
        if (length <= SKIN_M) {
            return new Line(true, -1, -1);
        }
        SheetRays.Followed f = rays.follow(tip, way.times(1 / length), length - SKIN_M, openFraction);
        boolean clear = f.end() == SheetRays.End.NOTHING;
        return new Line(clear, clear ? -1 : f.part(), clear ? -1 : f.opening());
    }

    /** The jets of a tip at a pose. */
    public List<JetSource> jets(WandSpec wand, TipPose pose) {
        return TipJets.of(
                wand.tip(), pose, TipFlow.of(supply, wand, product, air).supply(), air);
    }

    /**
     * What jets would leave at a point that they see, by the free jet's law.
     *
     * @param normal unit normal of the sheet into the air
     */
    public Arrival arrival(List<JetSource> jets, Vec3 point, Vec3 normal) {
        double sum = 0;
        double nearest = Double.POSITIVE_INFINITY;
        double speed = 0;
        double incidence = 0;
        double halfWidth = 1;
        for (JetSource jet : jets) {
            Vec3 way = point.minus(jet.originM());
            double x = way.dot(jet.direction());
            double facing = -way.unit().dot(normal);
            if (!(jet.momentumN() > 0) || x <= 0 || facing <= 0) {
                continue;
            }
            RoundJet law = new RoundJet(jet.momentumN(), jet.exitSpeedMPerS(), air.densityKgPerM3());
            double r = Math.sqrt(Math.max(0, way.dot(way) - x * x));
            double b = law.halfWidthM(x);
            double u = law.centreSpeedMPerS(x) * Math.exp(-Math.log(2) * r * r / (b * b));
            double s = RoundJet.FOG_WIDTH * b;
            double flux =
                    jet.liquidKgPerS() * Math.log(2) / (Math.PI * s * s) * Math.exp(-Math.log(2) * r * r / (s * s));
            sum += flux * facing * landing(u * facing, 2 * b);
            if (r / b < nearest) {
                nearest = r / b;
                speed = u;
                incidence = facing;
                halfWidth = b;
            }
        }
        double normalSpeed = speed * incidence;
        double cut = normalSpeed > JetFlight.DEAD_M_PER_S
                ? Impaction.cutM(product.densityKgPerM3(), normalSpeed, 2 * halfWidth, air)
                : Double.POSITIVE_INFINITY;
        return new Arrival(nearest <= PATTERN_HALF_WIDTHS, sum, nearest, speed, cut, incidence);
    }

    private double landing(double normalMPerS, double jetM) {
        if (normalMPerS < JetFlight.DEAD_M_PER_S) {
            return 0;
        }
        double sum = 0;
        for (int b = 0; b < relaxationS.length; b++) {
            sum += bins.share()[b] * Impaction.efficiency(Impaction.stokes(relaxationS[b], normalMPerS, jetM));
        }
        return sum;
    }
}
