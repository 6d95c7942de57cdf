package baymist.access;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Sag of a straight rod in a cavity: an elastic beam that hangs from its entry and rests on hole edges and skins.
 *
 * <p>Assumed: the rod is held at the plane of the entry, on its planned line and in its direction (the hand outside and the edge of the
 * hole are a pair that keeps it so); beyond it moves in the plane of its line and gravity, without friction. Gravity along the rod and
 * slopes beyond the small do not count. See docs/theory/access-sag.md.
 */
public final class Sag {
    /** Most nodes of the beam, besides those at ribs. */
    private static final int MOST_NODES = 120;
    /** Node spacing on a long rod, m. */
    private static final double SPACING_M = 0.015;
    /** Stretch before and after the edge of a sheet across the rod in which the nose is compared with it, m. */
    private static final double NARROW_M = 0.004;
    /** Gravity across the rod below this share is none. */
    private static final double ALONG = 1e-6;
    /** A support that pushes less than this is not told of, share of the rod's weight. */
    private static final double TOLD = 1e-6;

    private final Vec3 origin;
    private final Vec3 axis;
    private final TubeSection tube;
    private final double gravityAcross;
    private final @Nullable Vec3 down;
    private final double[] stationM;
    private final @Nullable SagCorridor corridor;
    private final Cavity cavity;

    /**
     * Prepares a rod on its line.
     *
     * @param around what it may rest on
     * @param entry index of the opening it goes in by
     * @param line its straight way; its greatest depth is the deepest that may be asked for
     * @param gravity unit vector along gravity
     * @param gravityMPerS2 its magnitude, m/s²
     */
    public Sag(
            Surroundings around,
            int entry,
            WandPath.Straight line,
            TubeSection tube,
            Vec3 gravity,
            double gravityMPerS2) {
        this.cavity = around.cavity();
        this.origin = line.originM();
        this.axis = line.axis();
        this.tube = tube;
        Vec3 square = gravity.plus(-gravity.dot(axis), axis);
        this.gravityAcross = gravityMPerS2 * square.length();
        this.down = square.length() > ALONG && gravityMPerS2 > 0 ? square.unit() : null;
        this.corridor = down == null ? null : corridor(around, down, entry, line.maxDepthM());
        this.stationM = stations(corridor, line.maxDepthM());
    }

    private SagCorridor corridor(Surroundings around, Vec3 way, int entry, double maxDepthM) {
        SagCorridor c = new SagCorridor(origin, axis, way, tube.outerM() / 2);
        Opening opening = cavity.openings().get(entry);
        double pastOwn = pastOwnSheetM(opening);
        TriangleMesh mesh = around.mesh();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int part = around.part(t);
            c.add(mesh, t, part == opening.part() ? pastOwn : 1e-6, maxDepthM, around.name(t), part);
        }
        return c;
    }

    /** Depth from which the entry's own sheet counts: its rim lies behind, its polygon and gauge too. */
    private double pastOwnSheetM(Opening opening) {
        double cos = Math.max(1e-3, Math.abs(axis.dot(opening.place().normal())));
        double tan = Math.sqrt(Math.max(0, 1 - cos * cos)) / cos;
        double gauge = cavity.parts().get(opening.part()).gaugeM();
        return 0.5 * tube.outerM() * tan
                + gauge
                + 0.05 * opening.place().outline().reachM()
                + 1e-6;
    }

    /** Nodes up to the greatest depth: evenly, and one at each rib; those closer than a third of the spacing are one. */
    private static double[] stations(@Nullable SagCorridor corridor, double maxDepthM) {
        int n = (int) Math.max(24, Math.min(MOST_NODES, Math.ceil(maxDepthM / SPACING_M)));
        double even = maxDepthM / n;
        List<Double> at = new ArrayList<>();
        if (corridor != null) {
            List<Double> narrow = corridor.acrossM();
            narrow.sort(Double::compare);
            for (double s : narrow) {
                if (s > even / 3 && s < maxDepthM && (at.isEmpty() || s - at.get(at.size() - 1) > even / 3)) {
                    at.add(s);
                }
            }
        }
        List<Double> ribs = List.copyOf(at);
        at.add(0.0);
        for (int i = 1; i <= n; i++) {
            double s = even * i;
            if (ribs.stream().noneMatch(rib -> Math.abs(rib - s) < even / 3)) {
                at.add(s);
            }
        }
        return at.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    /** The rod at a depth up to the greatest, m. */
    public SagResult at(double depthM) {
        Vec3 straight = origin.plus(depthM, axis);
        if (down == null || corridor == null || !(depthM > 0)) {
            return new SagResult(
                    depthM,
                    straight,
                    straight,
                    axis,
                    0,
                    0,
                    List.of(origin, straight),
                    List.of(),
                    0,
                    0,
                    tube.yieldPa(),
                    null);
        }
        double[] nodes = nodes(depthM);
        SagCorridor.Limit[][] limits = limits(nodes);
        BeamShape shape = rest(nodes, limits);
        return result(depthM, shape, limits, corridor, down);
    }

    private double[] nodes(double depthM) {
        double close = depthM * 1e-9 + 1e-4;
        int n = 0;
        while (n < stationM.length && stationM[n] < depthM - close) {
            n++;
        }
        double[] nodes = new double[n + 1];
        System.arraycopy(stationM, 0, nodes, 0, n);
        nodes[n] = depthM;
        return nodes;
    }

    /** Obstacles above and below the stretch that each node stands for, [nodes][2]. */
    private SagCorridor.Limit[][] limits(double[] nodes) {
        SagCorridor c = java.util.Objects.requireNonNull(corridor);
        SagCorridor.Limit[][] limits = new SagCorridor.Limit[nodes.length][2];
        for (int i = 1; i < nodes.length; i++) {
            double from = 0.5 * (nodes[i - 1] + nodes[i]);
            double to = i + 1 < nodes.length ? 0.5 * (nodes[i] + nodes[i + 1]) : nodes[i] - 1e-6;
            double nose = nodes[nodes.length - 1];
            limits[i][0] = c.limit(from, to, nose, false);
            limits[i][1] = c.limit(from, to, nose, true);
        }
        return limits;
    }

    private BeamShape rest(double[] nodes, SagCorridor.Limit[][] limits) {
        double[] low = new double[nodes.length];
        double[] high = new double[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            // what lies nearer than the rod's own radius is touched by the straight rod already
            low[i] = limits[i][0] == null ? Double.NEGATIVE_INFINITY : Math.min(0, -limits[i][0].moveM());
            high[i] = limits[i][1] == null ? Double.POSITIVE_INFINITY : Math.max(0, limits[i][1].moveM());
        }
        double load = tube.massKgPerM() * gravityAcross;
        ElasticBeam beam = new ElasticBeam(nodes, tube.stiffnessNm2(), load, new double[nodes.length], true);
        return new BeamContact(beam, low, high).solve();
    }

    private SagResult result(double depthM, BeamShape shape, SagCorridor.Limit[][] limits, SagCorridor c, Vec3 way) {
        List<Vec3> line = new ArrayList<>();
        List<SagResult.Rest> rests = new ArrayList<>();
        double weight = tube.massKgPerM() * gravityAcross * depthM;
        for (int i = 0; i < shape.stationM().length; i++) {
            double v = shape.deflectionM()[i];
            line.add(c.place(shape.stationM()[i], v, 0));
            double force = shape.reactionN()[i];
            SagCorridor.Limit on = i == 0 ? null : limits[i][force < 0 ? 1 : 0];
            if (on != null && Math.abs(force) > TOLD * weight) {
                double z = v + (force < 0 ? 1 : -1) * Math.sqrt(Math.max(0, sq(tube.outerM() / 2) - sq(on.acrossM())));
                Vec3 place = c.place(on.atM(), z, on.acrossM());
                rests.add(new SagResult.Rest(words(on, place), on.atM(), place, Math.abs(force)));
            }
        }
        double slope = shape.tipSlopeRad();
        Vec3 tipAxis = axis.times(Math.cos(slope)).plus(Math.sin(slope), way).unit();
        double drop = shape.tipDropM();
        double clock = ClockAngle.of(axis, drop >= 0 ? way : way.negate());
        return new SagResult(
                depthM,
                origin.plus(depthM, axis),
                line.get(line.size() - 1),
                tipAxis,
                drop,
                clock,
                line,
                rests,
                tube.stressPa(shape.peakMomentNm()),
                shape.peakAtM(),
                tube.yieldPa(),
                catchOnTheWay(depthM));
    }

    private static double sq(double a) {
        return a * a;
    }

    /** The first rib that the free nose hangs below or above the edge of when it comes to it. */
    private SagResult.@Nullable Catch catchOnTheWay(double depthM) {
        SagCorridor c = java.util.Objects.requireNonNull(corridor);
        for (double s : stationM) {
            SagCorridor.Limit[] ahead = ahead(c, s, depthM);
            if (ahead.length == 0) {
                continue;
            }
            double[] nodes = nodes(s - NARROW_M / 2);
            if (nodes.length < 3) {
                continue;
            }
            double nose = rest(nodes, limits(nodes)).tipDropM();
            double lift = nose - ahead[0].moveM();
            if (lift > 1e-6) {
                Vec3 place = c.place(ahead[0].atM(), ahead[0].moveM() + tube.outerM() / 2, 0);
                return new SagResult.Catch(words(ahead[0], place), s, lift);
            }
        }
        return null;
    }

    /** The sheet that begins at a rib's node, if it comes up higher than what the nose slides on just before it. */
    private static SagCorridor.Limit[] ahead(SagCorridor c, double s, double depthM) {
        if (s < NARROW_M || s > depthM - 3 * NARROW_M) {
            return new SagCorridor.Limit[0];
        }
        SagCorridor.Limit at = c.limit(s - NARROW_M / 2, s + NARROW_M / 2, depthM, true);
        SagCorridor.Limit before = c.limit(s - 1.5 * NARROW_M, s - NARROW_M / 2, depthM, true);
        boolean step = at != null && (before == null || before.moveM() > at.moveM() + 1e-6);
        return step ? new SagCorridor.Limit[] {at} : new SagCorridor.Limit[0];
    }

    /** What the rod rests on: the edge of an opening if one lies there, else the sheet. */
    private String words(SagCorridor.Limit on, Vec3 place) {
        for (Opening o : cavity.openings()) {
            if (o.part() != on.part()) {
                continue;
            }
            Vec3 d = place.minus(o.place().centreM());
            double off = Math.abs(d.dot(o.place().normal()));
            double play = o.place()
                    .outline()
                    .clearanceM(d.dot(o.place().uAxis()), d.dot(o.place().vAxis()));
            if (off < 0.005 && Math.abs(play) < 0.003) {
                return "edge of '" + o.name() + "'";
            }
        }
        return on.name();
    }
}
