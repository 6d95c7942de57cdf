package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.TubeFrame;
import baymist.scene.PhaseStates;
import baymist.scene.TubeFrameSpec;
import baymist.scene.TubeFrameSpec.Tube;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A frame of round tubes: each the inside of a tube as a closed prism, cut to fit those listed before it.
 *
 * <p>The prism of a tube runs from axis point to axis point. Of its walls and ends all that lies inside an earlier tube is
 * cut away. So tube k holds the air of its own prism less that of all earlier ones, bounded by what is left of its walls and
 * by the earlier tubes' walls: closed whatever the angles and diameters. The first tube at a node runs past it far enough to
 * take the others on its wall. Cuts stop 1 nm inside the earlier wall, so that the sheets cross instead of just meeting.
 *
 * <p>A gusset is a plate in the plane of two axes that stands across both bores ({@code left} cuts it like a wall).
 *
 * <p>A joint hole is a circle in the first wall that the tube's axis meets on its way to the node ({@link JointHoles}).
 */
final class TubeFrameFamily {
    /** Overlap of a cut wall with the wall that it lands on, m: far below a voxel, far above rounding. */
    private static final double OVERLAP_M = 1e-9;
    /** A node this near to an axis lies on it, m. */
    private static final double ON_AXIS_M = 1e-3;
    /** How far an end reaches beyond what it must bury, m (ASSUMED: a weld's width). */
    private static final double BEYOND_M = 5e-4;
    /** Branches that lean forward by less than this land on the end of the tube rather than on its wall. */
    private static final double LANDS_ON_END_RAD = Math.PI / 4;

    /** Tubes that meet at less than 3 degrees span no plane for a gusset. */
    private static final double LEAST_SINE = 0.05;

    private final TubeFrameSpec shape;
    private final SpecCheck check;
    private final SheetModel model = new SheetModel();
    private final List<TubePrism> prisms = new ArrayList<>();
    /** Part of each tube's wall and of its two ends. */
    private final List<int[]> parts = new ArrayList<>();

    private TubeFrameFamily(TubeFrame spec) {
        this.shape = spec.shape();
        this.check = new SpecCheck(spec.place());
    }

    static SheetModel build(TubeFrame spec) {
        return new TubeFrameFamily(spec).build();
    }

    private SheetModel build() {
        checkMeasures();
        check.orThrow();
        for (int k = 0; k < shape.tubes().size(); k++) {
            checkNodes(k);
            prisms.add(prism(k));
        }
        check.orThrow();
        for (int k = 0; k < prisms.size(); k++) {
            sheets(k);
        }
        for (int k = 0; k < prisms.size(); k++) {
            Tube tube = shape.tubes().get(k);
            joint(k, tube.from(), tube.fromHoleM());
            joint(k, tube.to(), tube.toHoleM());
        }
        for (int g = 0; g < shape.gussets().size(); g++) {
            gusset(shape.gussets().get(g), g);
        }
        check.orThrow();
        return model;
    }

    /** The gusset's plate in either bore, cut to fit the tubes listed before. */
    private void gusset(TubeFrameSpec.Gusset g, int index) {
        String name = g.name() == null ? "gusset " + (index + 1) : g.name();
        if (!fits(g, name)) {
            return;
        }
        int part = model.part(name, PartKind.OTHER, g.gaugeM());
        Vec3 normal = direction(g.first()).cross(direction(g.second())).unit();
        for (int tube : new int[] {g.first(), g.second()}) {
            Tube t = shape.tubes().get(tube);
            double back = t.to() == g.node() || passes(tube, g.node()) ? -g.reachM() : 0;
            double forth = t.from() == g.node() || passes(tube, g.node()) ? g.reachM() : 0;
            Vec3 along = direction(tube);
            Vec3 across = normal.cross(along).times(t.outerM());
            Vec3 a = node(g.node()).plus(back, along);
            Vec3 b = node(g.node()).plus(forth, along);
            List<Vec3> plate = List.of(a.minus(across), b.minus(across), b.plus(across), a.plus(across));
            left(tube, prisms.get(tube).body().inside(plate)).forEach(p -> fan(part, p));
        }
    }

    private boolean fits(TubeFrameSpec.Gusset g, String name) {
        boolean good = true;
        if (model.parts.stream().anyMatch(p -> p.name().equals(name))) {
            check.error(
                    "CAV-038",
                    g.place(),
                    "a gusset and another part are both called '" + name + "'; names must differ");
            good = false;
        }
        double shortest = Double.POSITIVE_INFINITY;
        for (int tube : new int[] {g.first(), g.second()}) {
            Tube t = shape.tubes().get(tube);
            if (!ends(tube, g.node()) && !passes(tube, g.node())) {
                check.error(
                        "CAV-038",
                        g.place(),
                        name + " is to be let into " + name(tube) + " at node '"
                                + shape.nodes().get(g.node()).name() + "', where that tube does not stand");
                return false;
            }
            for (int n : new int[] {t.from(), t.to()}) {
                double length = node(n).distance(node(g.node()));
                shortest = n == g.node() ? shortest : Math.min(shortest, length);
            }
        }
        if (!(g.reachM() > 0 && g.reachM() <= 0.8 * shortest)) {
            check.error(
                    "CAV-038",
                    g.place(),
                    name + " reaches " + SpecCheck.mm(g.reachM()) + " along its tubes; above 0 and at most "
                            + SpecCheck.mm(0.8 * shortest) + ", so that air passes round its ends, expected");
            good = false;
        }
        double sine = direction(g.first()).cross(direction(g.second())).length();
        if (!(sine >= LEAST_SINE)) {
            check.error(
                    "CAV-038",
                    g.place(),
                    name + " joins " + name(g.first()) + " and " + name(g.second())
                            + ", which run in one line, so they span no plane; two tubes at an angle expected");
            good = false;
        }
        return good;
    }

    private String name(int tube) {
        String own = shape.tubes().get(tube).name();
        return own == null ? "tube " + (tube + 1) : own;
    }

    private Vec3 node(int number) {
        return shape.nodes().get(number).atM();
    }

    private void checkMeasures() {
        if (shape.tubes().isEmpty() || shape.tubes().size() > 500) {
            check.error("CAV-048", shape.tubes().size() + " tube(s) given; 1 to 500 expected");
        }
        if (shape.segments() < 8 || shape.segments() > 180) {
            check.error("CAV-048", "segments is " + shape.segments() + "; 8 to 180 expected");
        }
        for (TubeFrameSpec.Node n : shape.nodes()) {
            for (int axis = 0; axis < 3; axis++) {
                check.finite("node '" + n.name() + "'", n.atM().get(axis));
            }
        }
        Set<String> names = new HashSet<>();
        for (int k = 0; k < shape.tubes().size(); k++) {
            Tube t = shape.tubes().get(k);
            boolean known = t.from() >= 0
                    && t.from() < shape.nodes().size()
                    && t.to() >= 0
                    && t.to() < shape.nodes().size();
            if (!known) {
                throw new IllegalArgumentException("tube " + k + " names a node that is not there");
            }
            double length = node(t.from()).distance(node(t.to()));
            if (!(length > 2 * t.outerM())) {
                check.error(
                        "CAV-048",
                        t.place(),
                        name(k) + " is " + SpecCheck.mm(length) + " long and " + SpecCheck.mm(t.outerM())
                                + " thick; more than twice its diameter from node to node expected");
            }
            if (!(t.wallM() > 0 && t.innerRadiusM() > 1e-4 && t.outerM() <= SpecCheck.LARGEST_M)) {
                check.error(
                        "CAV-048",
                        t.place(),
                        name(k) + " of " + SpecCheck.mm(t.outerM()) + " has a wall of " + SpecCheck.mm(t.wallM())
                                + "; a wall above 0 that leaves a bore of 0.2 mm at least expected");
            }
            for (double hole : new double[] {t.fromHoleM(), t.toHoleM()}) {
                if (!(hole >= 0 && hole <= 1.8 * t.innerRadiusM())) {
                    check.error(
                            "CAV-049",
                            t.place(),
                            "a joint hole of " + name(k) + " is " + SpecCheck.mm(hole)
                                    + " wide; at most 0.9 of its bore, " + SpecCheck.mm(1.8 * t.innerRadiusM())
                                    + ", expected");
                }
            }
            if (!names.add(name(k))) {
                check.error("CAV-048", t.place(), "two tubes are called '" + name(k) + "'; names must differ");
            }
        }
    }

    private Vec3 direction(int tube) {
        Tube t = shape.tubes().get(tube);
        return node(t.to()).minus(node(t.from())).unit();
    }

    /** Whether a tube's axis runs through a node between its ends. */
    private boolean passes(int tube, int node) {
        Tube t = shape.tubes().get(tube);
        Vec3 d = node(node).minus(node(t.from()));
        double along = d.dot(direction(tube));
        double length = node(t.to()).distance(node(t.from()));
        return along > ON_AXIS_M
                && along < length - ON_AXIS_M
                && d.minus(direction(tube).times(along)).length() <= ON_AXIS_M;
    }

    private boolean ends(int tube, int node) {
        Tube t = shape.tubes().get(tube);
        return t.from() == node || t.to() == node;
    }

    /** A tube that runs through a node must be the first there, or an earlier one would cut it in two. */
    private void checkNodes(int tube) {
        for (int n = 0; n < shape.nodes().size(); n++) {
            for (int earlier = 0; earlier < tube && passes(tube, n); earlier++) {
                if (ends(earlier, n) || passes(earlier, n)) {
                    check.error(
                            "CAV-048",
                            shape.tubes().get(tube).place(),
                            name(tube) + " runs through node '"
                                    + shape.nodes().get(n).name() + "', but "
                                    + name(earlier)
                                    + " is listed before it there and would cut it in two; list it first, or end it at the node");
                    return;
                }
            }
        }
    }

    private TubePrism prism(int tube) {
        Tube t = shape.tubes().get(tube);
        Vec3 d = direction(tube);
        Vec3 from = node(t.from()).plus(-past(tube, t.from(), d.negate()), d);
        Vec3 to = node(t.to()).plus(past(tube, t.to(), d), d);
        return new TubePrism(from, to, t.innerRadiusM(), shape.segments());
    }

    /** How far the first tube at a node runs past it, in its outward direction. */
    private double past(int tube, int node, Vec3 outward) {
        double most = 0;
        for (int k = 0; k < shape.tubes().size(); k++) {
            if (k == tube || !(ends(k, node) || passes(k, node))) {
                continue;
            }
            if (k < tube) {
                return 0;
            }
            Vec3 away = shape.tubes().get(k).from() == node
                    ? direction(k)
                    : direction(k).negate();
            double r = shape.tubes().get(k).innerRadiusM();
            double sine = away.cross(outward).length();
            double lean = Math.atan2(sine, away.dot(outward));
            double own = shape.tubes().get(tube).innerRadiusM();
            boolean onWall = lean >= LANDS_ON_END_RAD && lean < Math.PI / 2;
            double need = onWall ? (own * Math.cos(lean) + r) / sine : r * sine;
            most = Math.max(most, need + BEYOND_M);
        }
        return most;
    }

    private void sheets(int tube) {
        TubePrism prism = prisms.get(tube);
        double gauge = shape.tubes().get(tube).wallM();
        int wall = model.part(name(tube), PartKind.WALL, gauge);
        int[] ends = {-1, -1};
        for (List<Vec3> side : prism.sides()) {
            left(tube, side).forEach(p -> fan(wall, p));
        }
        for (int e = 0; e < 2; e++) {
            List<List<Vec3>> rest = left(tube, prism.end(e));
            if (!rest.isEmpty()) {
                ends[e] = model.part(name(tube) + (e == 0 ? " first end" : " last end"), PartKind.WALL, gauge);
                int part = ends[e];
                rest.forEach(p -> fan(part, p));
            }
        }
        parts.add(new int[] {wall, ends[0], ends[1]});
    }

    private List<List<Vec3>> left(int tube, List<Vec3> polygon) {
        List<List<Vec3>> pieces = List.of(polygon);
        for (int earlier = 0; earlier < tube; earlier++) {
            List<List<Vec3>> next = new ArrayList<>();
            for (List<Vec3> piece : pieces) {
                next.addAll(prisms.get(earlier).body().outside(piece, OVERLAP_M));
            }
            pieces = next;
        }
        return pieces;
    }

    private void fan(int part, List<Vec3> polygon) {
        for (int k = 1; k + 1 < polygon.size(); k++) {
            Vec3 a = polygon.get(0);
            Vec3 b = polygon.get(k);
            Vec3 c = polygon.get(k + 1);
            if (b.minus(a).cross(c.minus(a)).length() > 0) {
                model.triangle(part, a, b, c);
            }
        }
    }

    private void joint(int tube, int node, double diameterM) {
        if (diameterM == 0) {
            return;
        }
        Tube t = shape.tubes().get(tube);
        Vec3 inward = t.from() == node ? direction(tube).negate() : direction(tube);
        Vec3 start = node(t.from() == node ? t.to() : t.from());
        double length = node(t.from()).distance(node(t.to()));
        JointHoles joints = new JointHoles(prisms);
        String nodeName = shape.nodes().get(node).name();
        if (!joints.meets(tube, start, inward, length)) {
            check.error(
                    "CAV-049",
                    t.place(),
                    name(tube) + " has a joint hole at node '" + nodeName
                            + "', but no tube listed before it stands there; leave the hole out, or list the other tube first");
            return;
        }
        JointHoles.Found found = joints.find(tube, start, inward, length, diameterM);
        if (found == null) {
            check.error(
                    "CAV-049",
                    t.place(),
                    "the joint hole of " + name(tube) + " at node '" + nodeName + "' is " + SpecCheck.mm(diameterM)
                            + " wide and fits nowhere on the wall that it shares with an earlier tube; a smaller one expected");
            return;
        }
        String name = "joint of " + name(tube) + " at " + nodeName;
        int part = parts.get(found.landsOn())[found.face()];
        model.placed.add(new SheetModel.Placed(
                name, part, Opening.Kind.HOLE, found.place(), PhaseStates.ALWAYS_OPEN, t.place()));
    }
}
