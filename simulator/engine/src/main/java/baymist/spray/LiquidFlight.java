package baymist.spray;

import baymist.geom.Vec3;
import java.util.Arrays;

/**
 * Where the liquid of one jet goes: its rays followed to the sheets, their bundles spread over the surfels there, what does not land made
 * fog.
 *
 * <p>Drops that sink noticeably on their way do not fly to where the ray ends, but to where it would lead, lower by what they have sunk.
 *
 * <p>Made for one jet of one cast and used by one thread; holds scratch space.
 */
final class LiquidFlight {
    /** Places at the edge of the footprint to which a ray's wall jet carries its fog. */
    private static final int RING = 4;

    /** Sizes whose ways end nearer to each other than this share of a voxel's least edge fly together, the smallest along the ray itself. */
    private static final double SINK_STEP = 0.5;

    private static final int DONE = -1;

    /** Bundles of one half of the rays are twice as large as those of the other: what the halves tell apart is also what the size does. */
    private static final double WIDER = 4.0 / 3;

    /** Times that the place where sinking drops arrive is looked for; the way there is nearly straight. */
    private static final int SINK_STEPS = 2;

    private final SprayContext context;
    private final SprayTally tally;
    private final RayPath path;
    private final Footprint footprint;
    private final JetSource jet;
    private final ConfinedJet law;
    private final DropSpeeds drops;
    private final Vec3 wand;
    private final int[] ringCell = new int[RING + 1];
    /** Of the ray in hand, by bin, kg/s: what flies at the place looked at, what landed there. */
    private final double[] thrown;

    private final double[] landed;
    /** How many steps each size has sunk at the end of the ray in hand, or {@link #DONE}, [bins]. */
    private final int[] level;

    private final double sinkStepM;
    private final Vec3 down;
    private boolean walked;

    /** @param footprint made ready for this jet */
    LiquidFlight(
            SprayContext context,
            SprayTally tally,
            RayPath path,
            Footprint footprint,
            JetSource jet,
            ConfinedJet law,
            DropSpeeds drops,
            Vec3 wand) {
        this.context = context;
        this.tally = tally;
        this.path = path;
        this.footprint = footprint;
        this.jet = jet;
        this.law = law;
        this.drops = drops;
        this.wand = wand;
        this.thrown = new double[context.bins().count()];
        this.landed = new double[context.bins().count()];
        this.level = new int[context.bins().count()];
        Vec3 size = context.grid().sizeM();
        this.sinkStepM = SINK_STEP * Math.min(size.x(), Math.min(size.y(), size.z()));
        double g = context.gravityMPerS2().length();
        this.down = g > 0 ? context.gravityMPerS2().times(1 / g) : Vec3.ZERO;
    }

    /**
     * Where some of a ray's drops arrive.
     *
     * @param sunkM how far they have sunk on their way, m
     */
    private record Arrival(Vec3 direction, SheetRays.Followed end, double sunkM) {}

    /** Shares a ray's liquid among surfels, fog and outside. */
    void land(JetFlight.Ray ray) {
        RaySet set = context.liquidSet();
        double kgPerS = jet.liquidKgPerS() * set.liquidShare(ray.index());
        double x = path.lengthM(ray.end()) * ray.axial();
        if (x > law.flatFromM()) {
            tally.beyondFreeJet(kgPerS);
        }
        walked = false;
        double place = drops.place(x);
        double share = set.speedShare(ray.index()) * ray.merged();
        for (int b = 0; b < thrown.length; b++) {
            if (drops.endM(b) < x) {
                level[b] = DONE;
                tally.fog(
                        cellOn(ray, drops.endM(b) / ray.axial()),
                        b,
                        kgPerS * context.bins().share()[b]);
            } else {
                boolean ends = ray.end().distanceM() < context.rangeM();
                level[b] = ends ? (int) Math.rint(drops.sunkM(b, place, share) / sinkStepM) : 0;
            }
        }
        for (int first = 0; first < thrown.length; first++) {
            int here = level[first];
            if (here == DONE) {
                continue;
            }
            for (int b = 0; b < thrown.length; b++) {
                boolean together = b >= first && level[b] == here;
                thrown[b] = together ? kgPerS * context.bins().share()[b] : 0;
                level[b] = together ? DONE : level[b];
            }
            arrive(ray, here == 0 ? new Arrival(ray.direction(), ray.end(), 0) : sunk(ray, first, x, share));
        }
    }

    /** Where drops of a bin arrive that the ray would carry to {@code x}, m along the axis: the straight way to where they have sunk to. */
    private Arrival sunk(JetFlight.Ray ray, int bin, double x, double speedShare) {
        double at = x;
        Arrival found = new Arrival(ray.direction(), ray.end(), 0);
        for (int n = 0; n < SINK_STEPS; n++) {
            double sunk = drops.sunkM(bin, drops.place(at), speedShare);
            Vec3 way = ray.direction().times(at / ray.axial()).plus(sunk, down);
            double length = way.length();
            Vec3 direction = way.times(1 / length);
            SheetRays.Followed end = path.follow(ray.origin(), direction);
            double reached = Math.min(1, path.lengthM(end) / length);
            found = new Arrival(direction, end, reached * sunk);
            at *= reached;
        }
        return found;
    }

    /** What is {@link #thrown} comes to the end of its way. */
    private void arrive(JetFlight.Ray ray, Arrival to) {
        if (!to.end().struck()) {
            for (double mass : thrown) {
                tally.escaped(mass);
            }
            return;
        }
        Arrays.fill(landed, 0);
        int struck = path.surfel(ray.origin(), to.direction(), to.end());
        if (struck >= 0) {
            RaySet set = context.liquidSet();
            Vec3 from = ray.origin().plus(to.sunkM(), down);
            int i = ray.index();
            double angle = set.angle(i) * (set.firstHalf(i) ? WIDER : 2 - WIDER);
            footprint.gather(from, set.tangentU(i), set.tangentV(i), angle, struck);
            for (int n = 0; n < footprint.count(); n++) {
                settle(ray, to, n);
            }
        }
        ring(ray, to);
        for (int b = 0; b < thrown.length; b++) {
            double rest = (thrown[b] - landed[b]) / ringCell.length;
            if (rest > 0) {
                for (int cell : ringCell) {
                    tally.fog(cell, b, rest);
                }
            }
        }
    }

    /** Lands on surfel {@code n} of the footprint what its drops' inertia carries there. */
    private void settle(JetFlight.Ray ray, Arrival to, int n) {
        RaySet set = context.liquidSet();
        boolean alone = footprint.isAlone(n);
        double x = alone ? path.lengthM(ray.end()) * ray.axial() : footprint.axialM(n);
        double share = ray.merged() * (alone ? set.speedShare(ray.index()) : footprint.speedShare(n));
        double incidence = alone ? Math.abs(to.end().towardsAir().dot(to.direction())) : footprint.incidence(n);
        double place = drops.place(x);
        double width = 2 * law.halfWidthM(x);
        double falls = to.sunkM() > 0 ? Math.max(0, -to.end().towardsAir().dot(down)) : 0;
        int slot = -1;
        for (int b = 0; b < thrown.length; b++) {
            double mass = thrown[b] * footprint.weight(n);
            if (!(mass > 0)) {
                continue;
            }
            double speed = drops.onAxisMPerS(b, place) * share * incidence + falls * drops.fallMPerS(b, place, share);
            double kgPerS = mass * Impaction.efficiency(Impaction.stokes(context.relaxationS()[b], speed, width));
            if (kgPerS > 0) {
                slot = slot >= 0 ? slot : tally.hitSlot(footprint.surfel(n));
                tally.hit(slot, b, kgPerS, set.firstHalf(ray.index()));
                landed[b] += kgPerS;
                if (context.splashes(b, speed)) {
                    tally.splash(kgPerS);
                }
            }
        }
    }

    /** Cells that take the fog of a ray that strikes a sheet: at the point and at four points a half-width away along it. */
    private void ring(JetFlight.Ray ray, Arrival to) {
        Vec3 normal = to.end().towardsAir();
        Vec3 size = context.grid().sizeM();
        double off = 0.25 * Math.min(size.x(), Math.min(size.y(), size.z()));
        Vec3 point = ray.origin().plus(to.end().distanceM(), to.direction());
        double radius = law.halfWidthM(path.lengthM(to.end()) * ray.axial());
        int here = context.finder().cellNear(point, normal);
        if (here < 0) {
            here = cellOn(ray, path.lengthM(ray.end()));
        }
        ringCell[RING] = here;
        Vec3 a = normal.anyPerpendicular();
        Vec3 b = normal.cross(a);
        for (int k = 0; k < RING; k++) {
            double angle = Math.PI * (0.5 * k + 0.25 * (ray.index() % 2));
            Vec3 along = a.times(Math.cos(angle)).plus(Math.sin(angle), b);
            ringCell[k] = path.beside(point.plus(off, normal), along, radius, here);
        }
    }

    /** Cavity cell on the ray at a distance; the ray is walked when first asked. */
    private int cellOn(JetFlight.Ray ray, double distanceM) {
        if (!walked) {
            path.walk(ray.origin(), ray.direction(), ray.end(), wand, jet.originM());
            walked = true;
        }
        return path.cellOn(distanceM);
    }
}
