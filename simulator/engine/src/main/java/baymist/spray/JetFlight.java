package baymist.spray;

import baymist.geom.Vec3;

/**
 * One jet at one station: its rays followed to their ends, its law among the sheets, and what it leaves where.
 *
 * <p>Made for one cast and used by one thread; holds scratch space.
 */
final class JetFlight {
    /** Speed below which a jet and its drops are no longer told apart from the bay's own motion, m/s (ASSUMED). */
    static final double DEAD_M_PER_S = 0.5;

    /** Places at the edge of the footprint to which a ray's wall jet carries its fog. */
    private static final int RING = 4;

    private final SprayContext context;
    private final SprayTally tally;
    private final int tipCell;
    private final double[] openFraction;
    private final CellWalk path;
    private final CellWalk aside;
    private final double[] efficiency;
    private final int[] ringCell = new int[RING + 1];
    private final JetHandover handover;

    JetFlight(SprayContext context, SprayTally tally, int tipCell, double[] openFraction) {
        this.context = context;
        this.tally = tally;
        this.tipCell = tipCell;
        this.openFraction = openFraction;
        this.path = new CellWalk(context.grid());
        this.aside = new CellWalk(context.grid());
        this.efficiency = new double[context.bins().count()];
        this.handover = new JetHandover(context, tally);
    }

    /**
     * Casts a jet.
     *
     * @param wand axis of the wand
     * @param travelM stretch along it that the station stands for, m
     * @param merging speed on each ray where jets have merged over that of this jet alone, [rays]; empty = alone
     */
    void cast(JetSource jet, Vec3 wand, double travelM, double[] merging) {
        SheetRays.Followed centre = follow(jet.originM(), jet.direction());
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
        RaySet set = context.raySet();
        Vec3 u = jet.direction().anyPerpendicular();
        Vec3 v = jet.direction().cross(u);
        Ray[] rays = new Ray[set.count()];
        double farthest = 0;
        for (int i = 0; i < rays.length; i++) {
            Vec3 origin = jet.originM().plus(travelM * set.along(i), wand);
            Vec3 direction = set.direction(i, jet.direction(), u, v);
            double merged = merging.length == 0 ? 1 : merging[i];
            rays[i] = new Ray(i, origin, direction, set.axialShare(i), merged, follow(origin, direction));
            farthest = Math.max(farthest, axialReach(rays[i]));
        }
        DropSpeeds drops = new DropSpeeds(
                law, context.bins(), context.liquidDensityKgPerM3(), context.air(), farthest, DEAD_M_PER_S);
        for (Ray ray : rays) {
            walk(ray, wand, jet.originM());
            land(ray, jet.liquidKgPerS() * set.liquidShare(ray.index()), law, drops);
            draw(ray, law);
            handOver(ray, law);
        }
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
     * A ray of the jet; {@code axial} = distance along the jet's axis per distance along the ray, {@code merged} = speed over that of the
     * jet alone.
     */
    private record Ray(int index, Vec3 origin, Vec3 direction, double axial, double merged, SheetRays.Followed end) {
        boolean struck() {
            return end.struck();
        }
    }

    private SheetRays.Followed follow(Vec3 origin, Vec3 direction) {
        return context.rays().follow(origin, direction, context.rangeM(), openFraction);
    }

    private double lengthM(Ray ray) {
        return Math.min(ray.end().distanceM(), context.rangeM());
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

    /** Cells along the ray, resumed on the far side of each opening that it passes. */
    private void walk(Ray ray, Vec3 wand, Vec3 tip) {
        int start = startCell(ray, wand, tip);
        path.clear(0);
        trace(path, ray.origin(), ray.direction(), ray.end(), lengthM(ray), start);
    }

    /** Cell at a ray's beginning, which may lie beyond an inner opening through which the wand is drawn. */
    private int startCell(Ray ray, Vec3 wand, Vec3 tip) {
        Vec3 moved = ray.origin().minus(tip);
        double shift = moved.length();
        if (shift == 0) {
            return tipCell;
        }
        Vec3 way = moved.dot(wand) > 0 ? wand : wand.negate();
        aside.clear(0);
        trace(aside, tip, way, context.rays().follow(tip, way, shift, openFraction), shift, tipCell);
        return aside.lastCell();
    }

    /** Adds the cells of a followed ray, resumed on the far side of each opening that it passes. */
    private void trace(CellWalk walk, Vec3 origin, Vec3 direction, SheetRays.Followed way, double toM, int startCell) {
        int start = startCell;
        double from = 0;
        for (int i = 0; i < way.passedM().length; i++) {
            double t = way.passedM()[i];
            walk.add(origin, direction, from, t, start);
            Vec3 beyond = context.rays().normalAlong(way.passedOpening()[i], direction);
            start = context.finder().cellNear(origin.plus(t, direction), beyond);
            from = t;
        }
        walk.add(origin, direction, from, toM, start);
    }

    /** Shares a ray's liquid among surfel, fog and outside. */
    private void land(Ray ray, double kgPerS, ConfinedJet law, DropSpeeds drops) {
        double x = axialReach(ray);
        if (x > law.flatFromM()) {
            tally.beyondFreeJet(kgPerS);
        }
        boolean struck = ray.struck();
        int surfel = struck ? surfel(ray) : -1;
        if (struck) {
            ring(ray, law.halfWidthM(x));
        }
        SizeBins bins = context.bins();
        double incidence = Math.abs(ray.end().towardsAir().dot(ray.direction()));
        for (int b = 0; b < bins.count(); b++) {
            double mass = kgPerS * bins.share()[b];
            if (drops.endM(b) < x) {
                tally.fog(cellOn(drops.endM(b) / ray.axial()), b, mass);
            } else if (!struck) {
                tally.escaped(mass);
            } else {
                double speed = drops.at(b, x) * speedShare(ray) * incidence;
                double share = surfel < 0 ? 0 : efficiency(b, speed, law.halfWidthM(x));
                if (share > 0) {
                    tally.hit(surfel, b, mass * share, context.raySet().firstHalf(ray.index()));
                    if (context.splashes(b, speed)) {
                        tally.splash(mass * share);
                    }
                }
                double rest = (mass - mass * share) / ringCell.length;
                for (int cell : ringCell) {
                    tally.fog(cell, b, rest);
                }
            }
        }
    }

    /** Speed on the ray over that on the jet's own axis. */
    private double speedShare(Ray ray) {
        return context.raySet().speedShare(ray.index()) * ray.merged();
    }

    private double efficiency(int bin, double normalMPerS, double halfWidthM) {
        return Impaction.efficiency(Impaction.stokes(context.relaxationS()[bin], normalMPerS, 2 * halfWidthM));
    }

    private int surfel(Ray ray) {
        Vec3 point = ray.origin().plus(ray.end().distanceM(), ray.direction());
        return ray.end().end() == SheetRays.End.CLOSURE
                ? context.finder()
                        .closureNear(point, ray.end().opening(), ray.end().towardsAir())
                : context.finder().surfelNear(point, ray.end().part(), ray.end().towardsAir());
    }

    /** Cells that take the fog of a ray that strikes a sheet: at the point and at four points a half-width away along it. */
    private void ring(Ray ray, double radiusM) {
        Vec3 normal = ray.end().towardsAir();
        Vec3 size = context.grid().sizeM();
        double off = 0.25 * Math.min(size.x(), Math.min(size.y(), size.z()));
        Vec3 point = ray.origin().plus(ray.end().distanceM(), ray.direction());
        int here = context.finder().cellNear(point, normal);
        if (here < 0) {
            here = cellOn(ray.end().distanceM());
        }
        ringCell[RING] = here;
        Vec3 a = normal.anyPerpendicular();
        Vec3 b = normal.cross(a);
        for (int k = 0; k < RING; k++) {
            double angle = Math.PI * (0.5 * k + 0.25 * (ray.index() % 2));
            Vec3 along = a.times(Math.cos(angle)).plus(Math.sin(angle), b);
            aside.clear(0);
            aside.add(point.plus(off, normal), along, 0, radiusM, here);
            ringCell[k] = aside.lastCell() >= 0 ? aside.lastCell() : here;
        }
    }

    /** Cavity cell on the ray at a distance, or the nearest one before it, or the tip's. */
    private int cellOn(double distanceM) {
        for (int p = path.pieceAt(distanceM); p >= 0; p--) {
            if (path.cell(p) >= 0) {
                return path.cell(p);
            }
        }
        return tipCell;
    }

    /** Air that the ray moves through the cells on its way, and the fog that it draws in and throws at what it strikes. */
    private void draw(Ray ray, ConfinedJet law) {
        double share = 1.0 / (context.raySet().count() * ray.merged());
        double end = Math.min(lengthM(ray), law.reachM(DEAD_M_PER_S) / ray.axial());
        int target = scoured(ray, law, end);
        for (int p = 0; p < path.count(); p++) {
            double from = path.startM(p);
            double to = Math.min(path.endM(p), end);
            if (from >= end) {
                return;
            }
            if (path.cell(p) < 0) {
                continue;
            }
            double x = 0.5 * (from + to) * ray.axial();
            double moved = law.flowM3PerS(x) * share * (to - from);
            Vec3 d = ray.direction();
            tally.stream(path.cell(p), moved * d.x(), moved * d.y(), moved * d.z());
            double drawn = share * (law.flowM3PerS(to * ray.axial()) - law.flowM3PerS(from * ray.axial()));
            if (target >= 0 && drawn > 0) {
                tally.scour(path.cell(p), target, drawn, efficiency);
            }
        }
    }

    /** Hands the ray's momentum to the bay's air where it falls to the cap; what flies out of an opening hands over nothing. */
    private void handOver(Ray ray, ConfinedJet law) {
        double capped = law.reachM(SprayCaster.CAP_M_PER_S) / ray.axial();
        double momentum = law.free().thrustN() * handover.momentumShare(ray.index());
        if (capped < lengthM(ray)) {
            handover.free(cellOn(capped), momentum, ray.direction());
        } else if (ray.struck()) {
            Vec3 point = ray.origin().plus(ray.end().distanceM(), ray.direction());
            int here = context.finder().cellNear(point, ray.end().towardsAir());
            handover.wall(
                    ray.index(),
                    here >= 0 ? here : cellOn(ray.end().distanceM()),
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
        return most > 0 ? surfel(ray) : -1;
    }
}
