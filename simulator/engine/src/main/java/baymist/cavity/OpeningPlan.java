package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PhaseStates;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Places all openings of a job on their parts, gives them states, and has them cut; every problem is collected. */
final class OpeningPlan {
    /** Share of an opening's area that may miss the sheet: rounding of faceted sheets, no more. */
    private static final double MISSING = 1e-6;

    private final CavitySpec spec;
    private final SheetModel model;
    private final PartSheets sheets;
    private final OutsideProbe probe;
    private final SpecCheck check;

    OpeningPlan(CavitySpec spec, SheetModel model, TriangleMesh sheets, int[] partOfSheet, TriangleMesh whole) {
        this.spec = spec;
        this.model = model;
        this.sheets = new PartSheets(sheets, partOfSheet);
        this.probe = new OutsideProbe(whole);
        this.check = new SpecCheck(spec.place());
    }

    /** An opening with where it was stated, for messages. */
    record Planned(Opening opening, SourcePlace source) {}

    List<Planned> place(
            List<OpeningSpec> cuts, Map<String, PhaseStates> states, List<EntrySpec> entries, SourcePlace statesPlace) {
        return settled(located(cuts), states, entries, statesPlace);
    }

    /** All openings in their places, with the states of the model. */
    List<Planned> located(List<OpeningSpec> cuts) {
        List<Planned> planned = new ArrayList<>();
        for (SheetModel.Placed p : model.placed) {
            if (OutlineCheck.good(p.name(), p.place().outline(), p.source(), check)) {
                boolean exterior =
                        probe.outsideSide(p.place().centreM(), p.place().normal()) != 0;
                planned.add(new Planned(
                        new Opening(p.name(), p.part(), p.kind(), p.place(), p.states(), exterior), p.source()));
            }
        }
        List<OpeningSpec> stated = new ArrayList<>(ports());
        stated.addAll(cuts);
        for (OpeningSpec opening : stated) {
            Opening placed = stated(opening);
            if (placed != null) {
                planned.add(new Planned(placed, opening.place()));
            }
        }
        for (SheetModel.Gap gap : model.gaps) {
            Opening opening =
                    new Opening(gap.name(), gap.part(), Opening.Kind.GAP, gap.place(), PhaseStates.ALWAYS_OPEN, true);
            planned.add(new Planned(opening, spec.place()));
        }
        return planned;
    }

    /** The same openings with the states of the scene; throws what has been found wrong so far. */
    List<Planned> settled(
            List<Planned> planned, Map<String, PhaseStates> states, List<EntrySpec> entries, SourcePlace statesPlace) {
        Set<String> names = new HashSet<>();
        for (Planned p : planned) {
            if (!names.add(p.opening().name())) {
                check.error(
                        "CAV-020",
                        p.source(),
                        "two openings are called '" + p.opening().name() + "'; names must differ");
            }
        }
        checkEntries(entries, planned);
        List<Planned> withStates = withStates(planned, states, statesPlace);
        check.orThrow();
        return withStates;
    }

    private List<OpeningSpec> ports() {
        if (spec instanceof CavitySpec.Shell s) {
            return s.ports();
        }
        if (spec instanceof CavitySpec.BoxSection s) {
            return s.ports();
        }
        if (spec instanceof CavitySpec.TubeFrame s) {
            return s.ports();
        }
        if (spec instanceof CavitySpec.ControlSurface s) {
            return s.ports();
        }
        if (spec instanceof CavitySpec.WingBox s) {
            return s.ports();
        }
        if (spec instanceof CavitySpec.Block s) {
            return s.ports();
        }
        if (spec instanceof CavitySpec.Round s) {
            return s.ports();
        }
        return spec.ports();
    }

    private @Nullable Opening stated(OpeningSpec opening) {
        List<String> partNames = model.parts.stream().map(Part::name).toList();
        int part = Names.find(opening.part(), partNames);
        if (part < 0) {
            String text = "opening '" + opening.name() + "': " + Names.unknown("part", opening.part(), partNames);
            check.error("CAV-021", opening.place(), text);
            return null;
        }
        if (!OutlineCheck.good(opening.name(), opening.outline(), opening.place(), check)) {
            return null;
        }
        if (!opening.centreM().isFinite()) {
            check.error("CAV-022", opening.place(), "opening '" + opening.name() + "' stands at no finite position");
            return null;
        }
        Vec3 centre = sheets.nearest(part, opening.centreM());
        double moved = centre.distance(opening.centreM());
        double size = sheets.sizeM();
        if (moved > 0.5 * size) {
            check.error(
                    "CAV-022",
                    opening.place(),
                    "opening '" + opening.name() + "' stands " + SpecCheck.mm(moved) + " off part '" + opening.part()
                            + "'; are its position and unit right?");
            return null;
        }
        if (moved > 1e-3) {
            model.remarks.add("opening '" + opening.name() + "' was moved by " + SpecCheck.mm(moved) + " onto part '"
                    + partNames.get(part) + "', to " + SpecCheck.at(centre));
        }
        Vec3 normal = sheets.normalAt(part, centre);
        int outside = probe.outsideSide(centre, normal);
        Vec3 into = outside == 0 ? outboard(normal) : normal.times(-outside);
        Vec3 lengthwise = opening.lengthwise() == null ? naturalAxis(part, into) : opening.lengthwise();
        if (!(lengthwise.cross(into).length() > 1e-6 * lengthwise.length())) {
            check.error(
                    "CAV-023",
                    opening.place(),
                    "opening '" + opening.name()
                            + "' runs lengthwise square to its sheet; a direction in the sheet expected");
            return null;
        }
        return new Opening(
                opening.name(),
                part,
                outside == 0 ? Opening.Kind.HOLE : Opening.Kind.PORT,
                PlacedOutline.of(opening.outline(), centre, lengthwise, into),
                opening.states(),
                outside != 0);
    }

    /** Inner members: normal along +y (outboard) or, square to that, along the larger component. */
    private static Vec3 outboard(Vec3 n) {
        double lead = Math.abs(n.y()) > 1e-6 ? n.y() : Math.abs(n.x()) >= Math.abs(n.z()) ? n.x() : n.z();
        return lead < 0 ? n.negate() : n;
    }

    /** The longest side of the part's bounding box that is not square to the sheet. */
    private Vec3 naturalAxis(int part, Vec3 normal) {
        Box3 box = sheets.bounds(part);
        Vec3[] axes = {Vec3.X, Vec3.Y, Vec3.Z};
        Vec3 best = normal.anyPerpendicular();
        double longest = 0;
        for (int k = 0; k < 3; k++) {
            double inSheet = axes[k].cross(normal).length();
            double length = box.size().get(k) * inSheet;
            if (inSheet > 0.1 && length > longest * (1 + 1e-9)) {
                longest = length;
                best = axes[k];
            }
        }
        return best;
    }

    private void checkEntries(List<EntrySpec> entries, List<Planned> planned) {
        List<String> names = planned.stream().map(p -> p.opening().name()).toList();
        Set<String> known = Set.copyOf(names);
        for (EntrySpec entry : entries) {
            if (!known.contains(entry.opening())) {
                check.error(
                        "CAV-024",
                        entry.place(),
                        "entry '" + entry.name() + "': " + Names.unknown("opening", entry.opening(), names));
            }
        }
    }

    private List<Planned> withStates(List<Planned> planned, Map<String, PhaseStates> states, SourcePlace statesPlace) {
        List<String> names = planned.stream().map(p -> p.opening().name()).toList();
        Set<String> known = Set.copyOf(names);
        for (String name : new TreeMap<>(states).keySet()) {
            if (!known.contains(name)) {
                check.error(
                        "CAV-025", statesPlace, "the scene sets a state, but " + Names.unknown("opening", name, names));
            }
        }
        List<Planned> changed = new ArrayList<>();
        for (Planned p : planned) {
            Opening o = p.opening();
            PhaseStates state = states.getOrDefault(o.name(), o.states());
            changed.add(
                    new Planned(new Opening(o.name(), o.part(), o.kind(), o.place(), state, o.exterior()), p.source()));
        }
        return changed;
    }

    /** Throws what has been found wrong so far. */
    void orThrow() {
        check.orThrow();
    }

    /** Cuts all openings (gaps are open already) and reports those that do not fit on their part. */
    void cut(List<Planned> planned, SheetCutter cutter) {
        for (int i = 0; i < planned.size(); i++) {
            Opening o = planned.get(i).opening();
            if (o.kind() == Opening.Kind.GAP) {
                continue;
            }
            Outline outline = o.place().outline();
            List<List<double[]>> pieces = ConvexPieces.of(outline);
            double want = ConvexPieces.area(pieces);
            if (Math.abs(want - outline.areaM2()) > 1e-9 * outline.areaM2()) {
                check.error(
                        "CAV-026", planned.get(i).source(), "the outline of opening '" + o.name() + "' crosses itself");
                continue;
            }
            SheetCutter.Outcome outcome = cutter.cut(i, o.part(), o.place(), pieces);
            report(planned, i, outcome, want);
        }
        check.orThrow();
    }

    private void report(List<Planned> planned, int i, SheetCutter.Outcome outcome, double want) {
        Opening o = planned.get(i).opening();
        String part = model.parts.get(o.part()).name();
        boolean overlapping = false;
        for (Map.Entry<Integer, Double> e : outcome.overlaps().entrySet()) {
            if (e.getValue() > MISSING * want) {
                overlapping = true;
                check.error(
                        "CAV-027",
                        planned.get(i).source(),
                        "opening '" + o.name() + "' overlaps opening '"
                                + planned.get(e.getKey()).opening().name() + "' in part '" + part
                                + "'; move one of them");
            }
        }
        double share = outcome.projectedM2() / want;
        String at = ", centre " + SpecCheck.at(o.place().centreM());
        if (!overlapping && share < 1 - MISSING) {
            check.error(
                    "CAV-028",
                    planned.get(i).source(),
                    String.format(
                            Locale.ROOT,
                            "opening '%s' does not fit on part '%s': %.3g %% of it lies beyond the sheet's edge%s;"
                                    + " move it inward or make it smaller",
                            o.name(),
                            part,
                            100 * (1 - share),
                            at));
        } else if (share > 1 + MISSING) {
            check.error(
                    "CAV-029",
                    planned.get(i).source(),
                    "opening '" + o.name() + "' meets part '" + part + "' more than once" + at
                            + "; the sheet is folded or doubled there, or too strongly curved for a hole that large");
        }
    }
}
