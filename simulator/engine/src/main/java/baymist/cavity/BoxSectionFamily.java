package baymist.cavity;

import baymist.cavity.SweptLine.Ring;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.BoxSectionSpec;
import baymist.scene.BoxSectionSpec.Baffle;
import baymist.scene.BoxSectionSpec.End;
import baymist.scene.BoxSectionSpec.Plate;
import baymist.scene.BoxSectionSpec.Wall;
import baymist.scene.BoxSectionSpec.WallHole;
import baymist.scene.CavitySpec.BoxSection;
import baymist.scene.ShellSpec.WebHole;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Box or hat section along a bent line ({@link SweptLine}), with caps, baffles and reinforcement plates.
 *
 * <p>The section's corners, and the edges of plates that reach from wall to wall, run as lines along the box; rings of them
 * stand at mitres, baffles and ends of plates. All sheets go through the rings' points, so they meet without T-joints.
 */
final class BoxSectionFamily {
    /** Least length of a wall between two rings, m. */
    private static final double LEAST_M = 1e-6;

    private final BoxSection spec;
    private final BoxSectionSpec shape;
    private final SweptLine line;
    private final BoxLoop loop;
    private final SpecCheck check;
    private final SheetModel model = new SheetModel();
    /** Mitres and stations in order along the line. */
    private final List<Ring> rings = new ArrayList<>();

    private BoxSectionFamily(BoxSection spec, SweptLine line, SpecCheck check) {
        this.spec = spec;
        this.shape = spec.shape();
        this.line = line;
        this.loop = new BoxLoop(shape);
        this.check = check;
    }

    static SheetModel build(BoxSection spec) {
        SpecCheck check = new SpecCheck(spec.place());
        BoxSectionSpec shape = spec.shape();
        check.positive("top width", shape.topM());
        check.positive("bottom width", shape.bottomM());
        check.positive("height", shape.heightM());
        check.positive("gauge", spec.gaugeM());
        if (shape.line().size() < 2 || shape.line().size() > 200) {
            check.error("CAV-046", shape.line().size() + " point(s) of the line given; 2 to 200 expected");
        }
        if (!(shape.up().length() > 0)) {
            check.error("CAV-046", "up has no direction; a direction such as (0, 0, 1) expected");
        }
        for (BoxSectionSpec.Bend b : shape.line()) {
            if (!b.atM().isFinite()
                    || !(b.radiusM() >= 0 && b.radiusM() <= SpecCheck.LARGEST_M)
                    || b.facets() < 0
                    || b.facets() > 90) {
                check.error(
                        "CAV-046",
                        b.place(),
                        "a bend has radius " + SpecCheck.mm(b.radiusM()) + " and " + b.facets()
                                + " facets; 0 to 1000 m and 0 to 90 expected");
            }
        }
        plates(check, shape);
        check.orThrow();
        double reach = Math.hypot(Math.max(shape.topM(), shape.bottomM()) / 2, shape.heightM() / 2);
        SweptLine line = SweptLine.of(shape.line(), shape.up(), reach, check);
        check.orThrow();
        if (line == null) {
            throw new IllegalStateException("a line without a finding is laid");
        }
        return new BoxSectionFamily(spec, line, check).build();
    }

    private static void plates(SpecCheck check, BoxSectionSpec shape) {
        BoxLoop loop = new BoxLoop(shape);
        for (Plate p : shape.plates()) {
            double across = loop.plateWidthM(p.wall(), p.gapM());
            if (!(p.gapM() > 0 && across > 0)) {
                check.error(
                        "CAV-047",
                        p.place(),
                        "a plate stands " + SpecCheck.mm(p.gapM()) + " off the "
                                + p.wall().partName()
                                + "; more than 0 and less than the section's size there expected");
            } else if (!(p.widthM() >= 0 && p.widthM() <= across)) {
                check.error(
                        "CAV-047",
                        p.place(),
                        "a plate is " + SpecCheck.mm(p.widthM()) + " wide; at most " + SpecCheck.mm(across)
                                + ", the width between the walls there, expected");
            } else if (!(p.fromM() < p.toM())) {
                check.error(
                        "CAV-047",
                        p.place(),
                        "a plate runs from " + SpecCheck.mm(p.fromM()) + " to " + SpecCheck.mm(p.toM())
                                + " along the line; from the nearer to the farther end expected");
            }
        }
    }

    private SheetModel build() {
        rings();
        check.orThrow();
        walls();
        ends();
        int number = 0;
        for (Baffle baffle : shape.baffles()) {
            String name = "baffle " + ++number;
            Ring ring = stationed(baffle.alongM(), name, baffle.place());
            int part = web(name, PartKind.RIB, ring);
            holes(name, part, ring, ring.along(), baffle.holes());
        }
        number = 0;
        for (Plate plate : shape.plates()) {
            plate(plate, "plate " + ++number);
        }
        number = 0;
        for (WallHole hole : shape.holes()) {
            wallHole(hole, ++number);
        }
        check.orThrow();
        return model;
    }

    private Ring stationed(double alongM, String what, SourcePlace place) {
        Ring ring = line.station(alongM);
        if (ring == null) {
            check.error(
                    "CAV-047",
                    place,
                    what + " stands at " + SpecCheck.mm(alongM) + " along the line; a place on a straight stretch ("
                            + line.straights() + ") expected");
            return line.joint(0);
        }
        return ring;
    }

    /** A station with what it is for. */
    private record Stop(double alongM, String what, SourcePlace place) {}

    private void rings() {
        List<Stop> stops = new ArrayList<>();
        for (int i = 0; i < shape.baffles().size(); i++) {
            Baffle b = shape.baffles().get(i);
            stops.add(new Stop(b.alongM(), "baffle " + (i + 1), b.place()));
            if (b.alongM() < LEAST_M || b.alongM() > line.lengthM() - LEAST_M) {
                check.error(
                        "CAV-047",
                        b.place(),
                        "baffle " + (i + 1) + " stands at " + SpecCheck.mm(b.alongM()) + "; between the ends, 0 and "
                                + SpecCheck.mm(line.lengthM()) + ", expected");
            }
            if (i > 0 && !(b.alongM() - shape.baffles().get(i - 1).alongM() >= 1e-4)) {
                check.error(
                        "CAV-047",
                        b.place(),
                        "baffle " + (i + 1) + " stands at " + SpecCheck.mm(b.alongM())
                                + ", not beyond the one before; list them along the line, 0.1 mm apart at least");
            }
        }
        for (int i = 0; i < shape.plates().size(); i++) {
            Plate p = shape.plates().get(i);
            stops.add(new Stop(p.fromM(), "the start of plate " + (i + 1), p.place()));
            stops.add(new Stop(p.toM(), "the end of plate " + (i + 1), p.place()));
        }
        stops.sort(Comparator.comparingDouble(Stop::alongM));
        int next = 0;
        for (int k = 0; k <= line.pieces(); k++) {
            rings.add(line.joint(k));
            double before = Double.NEGATIVE_INFINITY;
            while (next < stops.size()) {
                Stop stop = stops.get(next);
                Ring ring = stationed(stop.alongM(), stop.what(), stop.place());
                if (ring.piece() > k) {
                    break;
                }
                next++;
                if (stop.alongM() - before < LEAST_M || nearEnd(stop.alongM())) {
                    continue;
                }
                before = stop.alongM();
                rings.add(ring);
            }
        }
        for (int k = 0; k + 1 < rings.size(); k++) {
            checkForward(rings.get(k), rings.get(k + 1));
        }
    }

    private boolean nearEnd(double alongM) {
        return alongM < LEAST_M || alongM > line.lengthM() - LEAST_M;
    }

    /** Every line of the section must run forward from ring to ring, else the inside of a bend folds over. */
    private void checkForward(Ring a, Ring b) {
        Vec3 along = b.along();
        for (double[] p : loop.corners()) {
            if (!(b.at(p[0], p[1]).minus(a.at(p[0], p[1])).dot(along) >= LEAST_M)) {
                int point = line.pointOfPiece(Math.min(line.pieces() - 1, b.piece()));
                check.error(
                        "CAV-046",
                        shape.line()
                                .get(Math.min(point, shape.line().size()) - 1)
                                .place(),
                        "the section folds over itself near " + SpecCheck.at(b.origin())
                                + "; a larger bend radius, a longer stretch, or baffles and plates further from the bend expected");
                return;
            }
        }
    }

    private List<Vec3> points(Ring ring) {
        List<Vec3> points = new ArrayList<>();
        loop.points().forEach(p -> points.add(ring.at(p.a(), p.b())));
        return points;
    }

    private void walls() {
        int[] part = new int[4];
        for (Wall wall : Wall.values()) {
            part[wall.side()] = model.part(wall.partName(), PartKind.WALL, spec.gaugeM());
        }
        int n = loop.points().size();
        for (int r = 0; r + 1 < rings.size(); r++) {
            List<Vec3> a = points(rings.get(r));
            List<Vec3> b = points(rings.get(r + 1));
            for (int k = 0; k < n; k++) {
                int next = (k + 1) % n;
                int wall = part[loop.points().get(k).wall().side()];
                model.quad(wall, a.get(k), a.get(next), b.get(next), b.get(k));
            }
        }
    }

    /** A strip between two lines of the section, from ring to ring. */
    private void strip(int part, int from, int to, double[] p, double[] q) {
        for (int r = from; r < to; r++) {
            Ring a = rings.get(r);
            Ring b = rings.get(r + 1);
            model.quad(part, a.at(p[0], p[1]), a.at(q[0], q[1]), b.at(q[0], q[1]), b.at(p[0], p[1]));
        }
    }

    private void ends() {
        end(shape.start(), "start end", rings.get(0), +1);
        end(shape.end(), "far end", rings.get(rings.size() - 1), -1);
    }

    private void end(End end, String name, Ring ring, int inward) {
        Vec3 normal = ring.along().times(inward);
        if (!end.open()) {
            int part = web(name, PartKind.WALL, ring);
            holes(name, part, ring, normal, end.holes());
            return;
        }
        List<Vec3> rim = points(ring);
        List<Vec3[]> cap = new ArrayList<>();
        for (int k = 0; k < rim.size(); k++) {
            cap.add(new Vec3[] {ring.origin(), rim.get(k), rim.get((k + 1) % rim.size())});
        }
        model.gaps.add(new SheetModel.Gap("open " + name, 0, RibSheets.polygon(rim, ring.right(), normal), cap));
    }

    /** A sheet across the whole section, as a fan about its middle. */
    private int web(String name, PartKind kind, Ring ring) {
        int part = model.part(name, kind, spec.gaugeM());
        List<Vec3> rim = points(ring);
        for (int k = 0; k < rim.size(); k++) {
            model.triangle(part, ring.origin(), rim.get(k), rim.get((k + 1) % rim.size()));
        }
        return part;
    }

    private void holes(String webName, int part, Ring ring, Vec3 normal, List<WebHole> holes) {
        int number = 0;
        // v must point up; where the normal runs against the line, right and normal make it point down
        for (WebHole h : holes) {
            number++;
            boolean turned = normal.cross(ring.right()).dot(ring.up()) < 0;
            PlacedOutline place = PlacedOutline.of(
                    turned ? Outlines.turnedOver(h.outline()) : h.outline(),
                    ring.at(h.rightM(), h.upM()),
                    ring.right(),
                    normal);
            String name = h.name() == null ? webName + " hole " + number : h.name();
            model.placed.add(new SheetModel.Placed(name, part, Opening.Kind.HOLE, place, h.states(), h.place()));
        }
    }

    private int ringAt(double alongM) {
        if (nearEnd(alongM)) {
            return alongM < LEAST_M ? 0 : rings.size() - 1;
        }
        @Nullable Ring want = line.station(alongM);
        for (int r = 0; r < rings.size() && want != null; r++) {
            if (rings.get(r).normal() == null && rings.get(r).origin().distance(want.origin()) < 2 * LEAST_M) {
                return r;
            }
        }
        throw new IllegalStateException("no ring at " + alongM + " m");
    }

    private void plate(Plate plate, String name) {
        int part = model.part(name, PartKind.OTHER, spec.gaugeM());
        double[][] ends = loop.plate(plate.wall(), plate.gapM(), plate.widthM());
        strip(part, ringAt(plate.fromM()), ringAt(plate.toM()), ends[0], ends[1]);
    }

    private void wallHole(WallHole hole, int number) {
        String name = hole.name() == null ? "wall hole " + number : hole.name();
        Ring ring = stationed(hole.alongM(), name, hole.place());
        double[] at = loop.onWall(hole.wall(), hole.acrossM());
        double[] in = loop.inward(hole.wall());
        Vec3 normal = ring.right().times(in[0]).plus(in[1], ring.up());
        double[] across = loop.across(hole.wall());
        Vec3 acrossAxis = ring.right().times(across[0]).plus(across[1], ring.up());
        boolean turned = normal.cross(ring.along()).dot(acrossAxis) < 0;
        PlacedOutline place = PlacedOutline.of(
                turned ? Outlines.turnedOver(hole.outline()) : hole.outline(),
                ring.at(at[0], at[1]),
                ring.along(),
                normal);
        model.placed.add(
                new SheetModel.Placed(name, hole.wall().side(), Opening.Kind.HOLE, place, hole.states(), hole.place()));
    }
}
