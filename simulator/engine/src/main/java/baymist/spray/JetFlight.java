package baymist.spray;

import baymist.geom.Vec3;
import java.util.List;

/**
 * One jet at one station: its law among the sheets, its liquid ({@link LiquidFlight}), and what its air does: what it moves, draws in, and
 * hands over.
 *
 * <p>Made for one cast and used by one thread; holds scratch space.
 */
final class JetFlight {
    /** Speed below which a jet and its drops are no longer told apart from the bay's own motion, m/s (ASSUMED). */
    static final double DEAD_M_PER_S = 0.5;

    private final SprayContext context;
    private final SprayTally tally;
    private final int tipCell;
    private final double[] openFraction;
    private final RayPath path;
    private final Footprint footprint;
    private final double[] efficiency;
    private final JetHandover handover;

    JetFlight(SprayContext context, SprayTally tally, int tipCell, double[] openFraction) {
        this.context = context;
        this.tally = tally;
        this.tipCell = tipCell;
        this.openFraction = openFraction;
        this.path = new RayPath(context, tipCell, openFraction);
        this.footprint = new Footprint(context.grid().surfels(), openFraction);
        this.efficiency = new double[context.bins().count()];
        this.handover = new JetHandover(context, tally);
    }

    /**
     * Speed on each ray where jets have merged over that of the jet alone; empty = alone.
     *
     * @param air on the rays of the air, [rays]
     * @param liquid on the rays of the liquid, [rays]
     */
    record Merging(double[] air, double[] liquid) {
        static Merging of(List<JetSource> jets, int own, SprayContext context) {
            return new Merging(
                    JetMerging.factors(jets, own, context.raySet()),
                    JetMerging.factors(jets, own, context.liquidSet()));
        }
    }

    /**
     * Casts a jet.
     *
     * @param wand axis of the wand
     * @param travelM stretch along it that the station stands for, m
     */
    void cast(JetSource jet, Vec3 wand, double travelM, Merging merging) {
        SheetRays.Followed centre = path.follow(jet.originM(), jet.direction());
        double power = jet.momentumN() * Math.min(SprayCaster.CAP_M_PER_S, jet.exitSpeedMPerS()) / 3;
        tally.jet(jet, power, bayAt(jet.originM(), jet.direction(), centre));
        if (!(jet.momentumN() > 0)) {
            leaveAsFog(jet.liquidKgPerS());
            return;
        }
        RoundJet free = new RoundJet(
                jet.momentumN(), jet.exitSpeedMPerS(), context.air().densityKgPerM3());
        double reach = Math.min(centre.distanceM(), context.rangeM());
        ConfinedJet law = Confinement.of(free, context.rays(), jet.originM(), jet.direction(), reach, openFraction);
        shear(jet, centre);
        Ray[] liquid = rays(jet, wand, travelM, context.liquidSet(), merging.liquid());
        double farthest = 0;
        for (Ray ray : liquid) {
            farthest = Math.max(farthest, axialReach(ray));
        }
        DropSpeeds drops = new DropSpeeds(
                law,
                context.bins(),
                context.liquidDensityKgPerM3(),
                context.air(),
                farthest,
                DEAD_M_PER_S,
                context.gravityMPerS2().length());
        Vec3 u = jet.direction().anyPerpendicular();
        footprint.jet(jet.direction(), u, jet.direction().cross(u));
        LiquidFlight flight = new LiquidFlight(context, tally, path, footprint, jet, law, drops, wand);
        for (Ray ray : liquid) {
            flight.land(ray);
        }
        for (Ray ray : rays(jet, wand, travelM, context.raySet(), merging.air())) {
            path.walk(ray.origin(), ray.direction(), ray.end(), wand, jet.originM());
            draw(ray, law);
            handOver(ray, law);
        }
    }

    private Ray[] rays(JetSource jet, Vec3 wand, double travelM, RaySet set, double[] merging) {
        Vec3 u = jet.direction().anyPerpendicular();
        Vec3 v = jet.direction().cross(u);
        Ray[] rays = new Ray[set.count()];
        for (int i = 0; i < rays.length; i++) {
            Vec3 origin = jet.originM().plus(travelM * set.along(i), wand);
            Vec3 direction = set.direction(i, jet.direction(), u, v);
            double merged = merging.length == 0 ? 1 : merging[i];
            rays[i] = new Ray(i, origin, direction, set.axialShare(i), merged, path.follow(origin, direction));
        }
        return rays;
    }

    /** Wall shear where the jet's centre strikes, by the cosine of its incidence. */
    private void shear(JetSource jet, SheetRays.Followed centre) {
        double distance = centre.distanceM();
        if (centre.end() != SheetRays.End.SHEET || !(distance < context.rangeM()) || !(distance > 0)) {
            return;
        }
        Vec3 point = jet.originM().plus(distance, jet.direction());
        int surfel = context.finder().surfelNear(point, centre.part(), centre.towardsAir());
        if (surfel >= 0) {
            double radius = WallShear.peakRadiusM(distance);
            double square = Math.abs(centre.towardsAir().dot(jet.direction()));
            tally.shear(surfel, square * WallShear.peakPa(jet.momentumN(), distance) / radius, radius);
        }
    }

    /**
     * A ray of the jet.
     *
     * @param axial distance along the jet's axis per distance along the ray
     * @param merged speed on it over that of the jet alone
     */
    record Ray(int index, Vec3 origin, Vec3 direction, double axial, double merged, SheetRays.Followed end) {
        boolean struck() {
            return end.struck();
        }
    }

    private double lengthM(Ray ray) {
        return path.lengthM(ray.end());
    }

    private double axialReach(Ray ray) {
        return lengthM(ray) * ray.axial();
    }

    private void leaveAsFog(double kgPerS) {
        for (int b = 0; b < context.bins().count(); b++) {
            tally.fog(tipCell, b, kgPerS * context.bins().share()[b]);
        }
    }

    private int bayAt(Vec3 origin, Vec3 direction, SheetRays.Followed end) {
        int cell = -1;
        if (end.struck()) {
            cell = context.finder().cellNear(origin.plus(end.distanceM(), direction), end.towardsAir());
        }
        return context.grid().bayOfCell(cell >= 0 ? cell : tipCell);
    }

    /** Speed on the ray over that on the jet's own axis. */
    private double speedShare(Ray ray) {
        return context.raySet().speedShare(ray.index()) * ray.merged();
    }

    private double efficiency(int bin, double normalMPerS, double halfWidthM) {
        return Impaction.efficiency(Impaction.stokes(context.relaxationS()[bin], normalMPerS, 2 * halfWidthM));
    }

    /** Air that the ray moves through the cells on its way, and the fog that it draws in and throws at what it strikes. */
    private void draw(Ray ray, ConfinedJet law) {
        double share = 1.0 / (context.raySet().count() * ray.merged());
        double end = Math.min(lengthM(ray), law.reachM(DEAD_M_PER_S) / ray.axial());
        int target = scoured(ray, law, end);
        CellWalk pieces = path.pieces();
        for (int p = 0; p < pieces.count(); p++) {
            double from = pieces.startM(p);
            double to = Math.min(pieces.endM(p), end);
            if (from >= end) {
                return;
            }
            if (pieces.cell(p) < 0) {
                continue;
            }
            double x = 0.5 * (from + to) * ray.axial();
            double moved = law.flowM3PerS(x) * share * (to - from);
            Vec3 d = ray.direction();
            tally.stream(pieces.cell(p), moved * d.x(), moved * d.y(), moved * d.z());
            double drawn = share * (law.flowM3PerS(to * ray.axial()) - law.flowM3PerS(from * ray.axial()));
            if (target >= 0 && drawn > 0) {
                tally.scour(pieces.cell(p), target, drawn, efficiency);
            }
        }
    }

    /** Hands the ray's momentum to the bay's air where it falls to the cap; what flies out of an opening hands over nothing. */
    private void handOver(Ray ray, ConfinedJet law) {
        double capped = law.reachM(SprayCaster.CAP_M_PER_S) / ray.axial();
        double momentum = law.free().thrustN() * handover.momentumShare(ray.index());
        if (capped < lengthM(ray)) {
            handover.free(path.cellOn(capped), momentum, ray.direction());
        } else if (ray.struck()) {
            Vec3 point = ray.origin().plus(ray.end().distanceM(), ray.direction());
            int here = context.finder().cellNear(point, ray.end().towardsAir());
            handover.wall(
                    ray.index(),
                    here >= 0 ? here : path.cellOn(ray.end().distanceM()),
                    point,
                    ray.end().towardsAir(),
                    momentum,
                    ray.direction(),
                    law.free().strengthM2PerS());
        }
    }

    /** Surfel at which drawn-in fog is thrown, with {@link #efficiency} filled, or -1 if none lands. */
    private int scoured(Ray ray, ConfinedJet law, double end) {
        if (!ray.struck() || end < ray.end().distanceM()) {
            return -1;
        }
        double x = axialReach(ray);
        double speed = law.centreSpeedMPerS(x)
                * speedShare(ray)
                * Math.abs(ray.end().towardsAir().dot(ray.direction()));
        double most = 0;
        for (int b = 0; b < efficiency.length; b++) {
            efficiency[b] = efficiency(b, speed, law.halfWidthM(x));
            most = Math.max(most, efficiency[b]);
        }
        return most > 0 ? path.surfel(ray.origin(), ray.direction(), ray.end()) : -1;
    }
}
