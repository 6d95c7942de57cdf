package baymist.explain;

import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.ProtectedItem;
import baymist.voxel.FaceSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Changes of what is open: panels, masks, vents, holes inside. */
final class HoleTrials {
    /** Diameter of a new vent, m. */
    private static final double VENT_M = 0.02;
    /** Most openings of one kind that are tried. */
    private static final int MOST = 2;
    /** A hole is tried at so many times its size across. */
    private static final double WIDER = 2;
    /** ... and no less than this across, m. */
    private static final double LEAST_M = 0.03;

    private final Situation at;

    HoleTrials(Situation at) {
        this.at = at;
    }

    List<Trial> all() {
        List<Trial> trials = new ArrayList<>();
        masks(trials);
        keepOpen(trials);
        vents(trials);
        wider(trials);
        drillVent(trials);
        return trials;
    }

    static String yaml(OpeningSpec cut) {
        double r = cut.outline().reachM();
        return "cut: add {name: " + cut.name() + ", part: " + cut.part() + ", shape: {circle: " + Yaml.length(2 * r)
                + "}, at: " + Yaml.point(cut.centreM()) + "}";
    }

    private List<String> nearestFirst(List<String> names) {
        Vec3 middle = at.patch().region().centroidM();
        return names.stream()
                .sorted(Comparator.comparingDouble(
                        n -> opening(n).place().centreM().distance(middle)))
                .limit(MOST)
                .toList();
    }

    private Opening opening(String name) {
        return at.base().cavity().openings().get(at.base().cavity().openingIndex(name));
    }

    private void masks(List<Trial> trials) {
        for (String name : nearestFirst(at.supply().covered())) {
            trials.add(open(ChangeKind.MASK_OFF, "Take the cover off '" + name + "' for the whole job", name));
        }
        Set<String> over = new LinkedHashSet<>();
        for (int s : at.patch().surfels()) {
            over.add(at.patch().part(s));
        }
        List<ProtectedItem> items = at.base().scene().protectedItems();
        for (int i = 0; i < items.size(); i++) {
            ProtectedItem item = items.get(i);
            boolean shades = item.partName().equals(at.sight().shade());
            if (item.masked() && (over.contains(item.partName()) || shades)) {
                int index = i;
                trials.add(new Trial(
                        ChangeKind.MASK_OFF,
                        "Take the mask off '" + item.name() + "', if the approved data let product touch it",
                        List.of("protected, '" + item.name() + "': mask: none"),
                        d -> d.items.set(
                                index,
                                new ProtectedItem(
                                        item.name(),
                                        item.body(),
                                        item.part(),
                                        item.limitM(),
                                        ProtectedItem.Mask.NONE,
                                        item.place()))));
            }
        }
    }

    private Trial open(ChangeKind kind, String words, String name) {
        PhaseStates was = opening(name).states();
        return new Trial(
                kind,
                words,
                List.of("openings: '" + name + "': {pass: open, hang: open, after: "
                        + was.after().name().toLowerCase(java.util.Locale.ROOT) + "}"),
                d -> d.states.put(name, new PhaseStates(OpeningState.OPEN, OpeningState.OPEN, was.after())));
    }

    private void keepOpen(List<Trial> trials) {
        for (String name : nearestFirst(at.supply().shutInHang())) {
            trials.add(open(
                    ChangeKind.KEEP_OPEN,
                    "Keep '" + name + "' open until the fog has settled, and shut it then",
                    name));
        }
    }

    private void vents(List<Trial> trials) {
        List<String> outer =
                at.supply().shut().stream().filter(n -> opening(n).exterior()).toList();
        for (String name : nearestFirst(outer)) {
            trials.add(open(ChangeKind.OPEN_VENT, "Open '" + name + "' as a vent", name));
        }
        List<String> inner =
                at.supply().shut().stream().filter(n -> !opening(n).exterior()).toList();
        for (String name : nearestFirst(inner)) {
            trials.add(open(ChangeKind.KEEP_OPEN, "Open '" + name + "' before spraying", name));
        }
    }

    /** The hole through which the region's bay gets its fog, wider; where the model states it, another one beside it. */
    private void wider(List<Trial> trials) {
        String name = gate();
        if (name.isEmpty()) {
            return;
        }
        Opening o = opening(name);
        double radius = Math.max(0.5 * LEAST_M, WIDER * Math.sqrt(o.areaM2() / Math.PI));
        List<OpeningSpec> cuts = at.base().scene().cuts();
        for (int i = 0; i < cuts.size(); i++) {
            if (cuts.get(i).name().equals(name)) {
                OpeningSpec c = cuts.get(i);
                int index = i;
                OpeningSpec wide = new OpeningSpec(
                        c.name(),
                        c.part(),
                        new Outline.Circle(radius),
                        c.centreM(),
                        c.lengthwise(),
                        c.states(),
                        c.place());
                trials.add(new Trial(
                        ChangeKind.WIDER_HOLE,
                        "Widen '" + name + "' to a hole of " + Words.length(2 * radius),
                        List.of("cut, '" + name + "': shape: {circle: " + Yaml.length(2 * radius) + "}"),
                        d -> d.cuts.set(index, wide)));
                return;
            }
        }
        beside(trials, o, radius);
    }

    private void beside(List<Trial> trials, Opening o, double radius) {
        String part = at.base().cavity().parts().get(o.part()).name();
        double off = o.place().outline().reachM() + radius + 0.01;
        for (int k = 0; k < 8; k++) {
            Vec3 centre = o.place().point(off * Math.cos(Math.PI * k / 4), off * Math.sin(Math.PI * k / 4));
            OpeningSpec cut = new OpeningSpec(
                    "second hole",
                    part,
                    new Outline.Circle(radius),
                    centre,
                    null,
                    PhaseStates.ALWAYS_OPEN,
                    Situation.place());
            Trial trial = new Trial(
                    ChangeKind.WIDER_HOLE,
                    "Give the fog another hole of " + Words.length(2 * radius) + " beside '" + o.name() + "' in the "
                            + part,
                    List.of(yaml(cut)),
                    d -> d.cuts.add(cut));
            if (Buildable.is(trial.on(at.base().scene()))) {
                trials.add(trial);
                return;
            }
        }
    }

    /** The opening that fog comes to the region's bay by, or could come by. */
    String gate() {
        if (!at.fog().through().isEmpty()) {
            return at.fog().through();
        }
        FaceSet faces = at.base().grid().faces();
        int bay = at.patch().bay();
        int best = -1;
        for (int e = 0; e < faces.count(); e++) {
            int o = faces.opening()[e];
            boolean low = at.base().grid().bayOfCell(faces.low()[e]) == bay;
            boolean high = at.base().grid().bayOfCell(faces.high()[e]) == bay;
            if (o >= 0 && low != high) {
                Opening opening = at.base().cavity().openings().get(o);
                boolean larger = best < 0
                        || opening.areaM2()
                                > at.base().cavity().openings().get(best).areaM2();
                best = opening.states().pass() == OpeningState.OPEN && larger ? o : best;
            }
        }
        return best < 0 ? "" : at.base().cavity().openings().get(best).name();
    }

    private void drillVent(List<Trial> trials) {
        Holes holes = new Holes(at);
        int tried = 0;
        for (int s : holes.outer(0.5 * VENT_M)) {
            if (tried++ >= 5) {
                return;
            }
            OpeningSpec cut = holes.cut("new vent", s, 0.5 * VENT_M);
            Trial trial = new Trial(
                    ChangeKind.DRILL_VENT,
                    "Drill a vent of " + Words.length(VENT_M) + " in the " + cut.part() + " at "
                            + Yaml.point(cut.centreM()),
                    List.of(yaml(cut)),
                    d -> d.cuts.add(cut));
            if (Buildable.is(trial.on(at.base().scene()))) {
                trials.add(trial);
                return;
            }
        }
    }
}
