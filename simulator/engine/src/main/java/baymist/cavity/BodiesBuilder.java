package baymist.cavity;

import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.BodyJoint;
import baymist.scene.CavitySpec.Bodies;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PhaseStates;
import baymist.scene.PlacedBody;
import baymist.scene.ProtectedItem;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Builds a cavity of several bodies: each body in its own axes with its own openings, then moved to its place; sheets that lie on
 * each other are fused ({@link SheetFusion}), stated pairs of openings become one.
 */
final class BodiesBuilder {
    private final Bodies spec;
    private final SpecCheck check;
    private SheetModel model = new SheetModel();
    private final List<Integer> bodyOfPart = new ArrayList<>();
    private final List<OpeningPlan.Planned> planned = new ArrayList<>();

    private final List<ProtectedItem> items;

    BodiesBuilder(Bodies spec, List<ProtectedItem> items) {
        this.spec = spec;
        this.items = items;
        this.check = new SpecCheck(spec.place());
    }

    Cavity build(
            List<OpeningSpec> cuts, Map<String, PhaseStates> states, List<EntrySpec> entries, SourcePlace statesPlace) {
        checkBodies();
        for (int i = 0; i < spec.bodies().size(); i++) {
            add(i, spec.bodies().get(i));
        }
        fuse();
        ItemSheets.add(model, items, spec.inside());
        TriangleMesh open = model.mesh();
        int[] partOfOpen = model.partOfTriangle();
        CavityBuilder.capGaps(model);
        TriangleMesh whole = model.mesh();
        int[] partOfWhole = model.partOfTriangle();
        OpeningPlan plan = new OpeningPlan(spec, model, open, partOfOpen, whole);
        List<OpeningPlan.Planned> all = new ArrayList<>(withInnerOnes(whole));
        all.addAll(plan.located(cuts));
        return CavityBuilder.cut(
                spec,
                model,
                open,
                partOfOpen,
                whole,
                partOfWhole,
                plan,
                plan.settled(all, states, entries, statesPlace));
    }

    private void checkBodies() {
        if (!(spec.toleranceM() >= 1e-7 && spec.toleranceM() <= 0.01)) {
            check.error(
                    "CAV-057", "the tolerance is " + SpecCheck.mm(spec.toleranceM()) + "; 0.0001 mm to 10 mm expected");
        }
        Set<String> names = new HashSet<>();
        for (PlacedBody body : spec.bodies()) {
            if (!names.add(body.name())) {
                check.error("CAV-057", body.place(), "two bodies are called '" + body.name() + "'; names must differ");
            }
            for (int axis = 0; axis < 3; axis++) {
                double at = body.atM().get(axis);
                double turn = body.rotationDeg().get(axis);
                if (!(Math.abs(at) <= SpecCheck.LARGEST_M && Math.abs(turn) <= 360)) {
                    check.error(
                            "CAV-057",
                            body.place(),
                            "body '" + body.name() + "' is placed at " + at + " m, turned by " + turn
                                    + " degrees; within 1000 m and 360 degrees expected");
                }
            }
        }
        check.orThrow();
    }

    private void add(int index, PlacedBody body) {
        SheetModel own = CavityBuilder.sheets(body.model());
        TriangleMesh open = own.mesh();
        int[] partOfOpen = own.partOfTriangle();
        CavityBuilder.capGaps(own);
        OpeningPlan plan = new OpeningPlan(body.model(), own, open, partOfOpen, own.mesh());
        List<OpeningPlan.Planned> openings = plan.located(List.of());
        plan.orThrow();
        Placement placement = Placement.of(body.rotationDeg(), body.atM());
        String prefix = body.name() + ": ";
        int firstPart = model.parts.size();
        for (Part part : own.parts) {
            model.part(prefix + part.name(), part.kind(), part.gaugeM());
            bodyOfPart.add(index);
        }
        TriangleMesh moved = placement.mesh(open);
        for (int t = 0; t < moved.triangleCount(); t++) {
            model.triangle(firstPart + partOfOpen[t], moved.point(t, 0), moved.point(t, 1), moved.point(t, 2));
        }
        for (OpeningPlan.Planned p : openings) {
            Opening o = p.opening();
            if (o.kind() != Opening.Kind.GAP) {
                planned.add(new OpeningPlan.Planned(
                        new Opening(
                                prefix + o.name(),
                                firstPart + o.part(),
                                o.kind(),
                                placement.outline(o.place()),
                                o.states(),
                                o.exterior()),
                        p.source()));
            }
        }
        for (SheetModel.Gap gap : own.gaps) {
            List<Vec3[]> cap = gap.cap().stream()
                    .map(t -> new Vec3[] {placement.point(t[0]), placement.point(t[1]), placement.point(t[2])})
                    .toList();
            model.gaps.add(new SheetModel.Gap(
                    prefix + gap.name(), firstPart + gap.part(), placement.outline(gap.place()), cap));
        }
        own.remarks.forEach(remark -> model.remarks.add(prefix + remark));
    }

    private void fuse() {
        SheetFusion fusion = new SheetFusion(
                model, bodyOfPart.stream().mapToInt(Integer::intValue).toArray(), spec.toleranceM());
        SheetModel fused = new SheetModel();
        fused.parts.addAll(model.parts);
        fused.gaps.addAll(model.gaps);
        fused.remarks.addAll(model.remarks);
        fusion.fuse(fused);
        for (SheetFusion.Contact c : fusion.contacts()) {
            Part a = model.parts.get(c.kept());
            Part b = model.parts.get(c.lost());
            int shared = fused.part(a.name() + " on " + b.name(), a.kind(), a.gaugeM() + b.gaugeM());
            if (shared != c.shared()) {
                throw new IllegalStateException("parts of contacts are numbered in turn");
            }
            fused.remarks.add(
                    "'" + b.name() + "' lies on '" + a.name() + "'; where both are, they count as one sheet, '"
                            + fused.parts.get(shared).name() + "'");
        }
        model = fused;
        Set<String> joined = new HashSet<>();
        for (BodyJoint joint : spec.joints()) {
            join(joint, fusion.contacts(), joined);
        }
        for (OpeningPlan.Planned p : planned) {
            if (!joined.contains(p.opening().name())) {
                checkFree(p, fusion.contacts());
            }
        }
        check.orThrow();
    }

    private void join(BodyJoint joint, List<SheetFusion.Contact> contacts, Set<String> joined) {
        List<String> names = planned.stream().map(p -> p.opening().name()).toList();
        int a = names.indexOf(joint.a());
        int b = names.indexOf(joint.b());
        if (a < 0 || b < 0) {
            check.error(
                    "CAV-058",
                    joint.place(),
                    Names.unknown("opening to be joined", a < 0 ? joint.a() : joint.b(), names));
            return;
        }
        Opening first = planned.get(a).opening();
        Opening second = planned.get(b).opening();
        String pair = "openings '" + first.name() + "' and '" + second.name() + "' ";
        for (SheetFusion.Contact c : contacts) {
            boolean fits = (c.kept() == first.part() && c.lost() == second.part())
                    || (c.kept() == second.part() && c.lost() == first.part());
            if (fits && Math.abs(c.heightM(first.place().centreM())) <= 2 * spec.toleranceM()) {
                PlacedOutline place = common(first.place(), second.place());
                if (place == null) {
                    check.error(
                            "CAV-058",
                            joint.place(),
                            pair + "do not lie one within the other: their centres are "
                                    + SpecCheck.mm(first.place()
                                            .centreM()
                                            .distance(second.place().centreM()))
                                    + " apart; the same place and shape, within " + SpecCheck.mm(spec.toleranceM())
                                    + ", or a smaller one within a larger one expected");
                } else if (!covered(place, c)) {
                    check.error(
                            "CAV-058",
                            joint.place(),
                            pair + "reach beyond the place where the two sheets lie on each other; move a body, or make"
                                    + " the openings smaller");
                } else {
                    joined.add(joint.name());
                    planned.set(
                            a,
                            new OpeningPlan.Planned(
                                    new Opening(
                                            joint.name(), c.shared(), Opening.Kind.HOLE, place, first.states(), false),
                                    joint.place()));
                    planned.remove(b);
                }
                return;
            }
        }
        check.error(
                "CAV-058",
                joint.place(),
                pair + "lie in sheets that do not touch: the second is "
                        + SpecCheck.mm(
                                Math.abs(first.place().heightM(second.place().centreM())))
                        + " off the plane of the first; sheets that lie on each other within "
                        + SpecCheck.mm(spec.toleranceM()) + " expected: move a body");
    }

    /** Of two outlines in one plane the one that lies within the other. */
    private @Nullable PlacedOutline common(PlacedOutline a, PlacedOutline b) {
        return within(a, b) ? a : within(b, a) ? b : null;
    }

    private boolean within(PlacedOutline inner, PlacedOutline outer) {
        // arcs of the polygon reach out a little, since its area is the outline's
        double slack = spec.toleranceM() + 1e-3 * inner.outline().reachM();
        for (double[] p : inner.outline().polygon(ConvexPieces.SEGMENTS_PER_TURN)) {
            Vec3 q = inner.point(p[0], p[1]);
            if (outer.outline().clearanceM(outer.u(q), outer.v(q)) < -slack) {
                return false;
            }
        }
        return true;
    }

    private void checkFree(OpeningPlan.Planned p, List<SheetFusion.Contact> contacts) {
        Opening o = p.opening();
        for (SheetFusion.Contact c : contacts) {
            if ((o.part() == c.kept() || o.part() == c.lost())
                    && Math.abs(c.heightM(o.place().centreM())) <= 2 * spec.toleranceM()
                    && meets(o.place(), c)) {
                check.error(
                        "CAV-059",
                        p.source(),
                        "opening '" + o.name() + "' lies against '"
                                + model.parts
                                        .get(o.part() == c.kept() ? c.lost() : c.kept())
                                        .name()
                                + "'; join it to an opening there, or leave it out");
                return;
            }
        }
    }

    private static boolean covered(PlacedOutline place, SheetFusion.Contact c) {
        for (double[] p : place.outline().polygon(ConvexPieces.SEGMENTS_PER_TURN)) {
            if (!c.covers(place.point(0.999 * p[0], 0.999 * p[1]))) {
                return false;
            }
        }
        return true;
    }

    private static boolean meets(PlacedOutline place, SheetFusion.Contact c) {
        boolean meets = c.covers(place.centreM());
        for (double[] p : place.outline().polygon(24)) {
            // a little inside of the rim, so that an opening that only touches the seam is free
            meets |= c.covers(place.point(0.999 * p[0], 0.999 * p[1]));
        }
        return meets;
    }

    /** Openings of one body that lead into another one are no longer outside ones. */
    private List<OpeningPlan.Planned> withInnerOnes(TriangleMesh whole) {
        OutsideProbe probe = new OutsideProbe(whole);
        List<OpeningPlan.Planned> result = new ArrayList<>();
        for (OpeningPlan.Planned p : planned) {
            Opening o = p.opening();
            boolean inner = o.exterior()
                    && probe.isShutIn(o.place().centreM(), o.place().normal());
            result.add(
                    inner
                            ? new OpeningPlan.Planned(
                                    new Opening(o.name(), o.part(), Opening.Kind.HOLE, o.place(), o.states(), false),
                                    p.source())
                            : p);
        }
        return result;
    }
}
