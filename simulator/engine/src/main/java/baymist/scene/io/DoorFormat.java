package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.CavitySpec;
import baymist.scene.DoorBeam;
import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Value.Fields;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Format and assembly of doors. */
final class DoorFormat {
    private static PanelHoles edge() {
        return new PanelHoles(
                "door_edge_opening",
                "an opening in the lower edge or in the waist edge of a door, lengthwise = aft",
                may(
                        "aft",
                        CavityFormat.SIZE_OR_NONE,
                        "",
                        "distance of its centre aft of the front edge; left out = middle"),
                may(
                        "inboard",
                        CavityFormat.SIZE_OR_NONE,
                        "",
                        "distance of its centre inboard of the outer panel's rim; left out = middle"));
    }

    private static PanelHoles inner() {
        return new PanelHoles(
                "door_inner_hole",
                "an opening in the inner panel of a door, lengthwise = aft",
                need("aft", CavityFormat.SIZE_OR_NONE, "distance of its centre aft of the front edge"),
                need("up", CavityFormat.SIZE_OR_NONE, "distance of its centre above the lower edge"));
    }

    private final Problems problems;
    private final OpeningAssembler openings;

    DoorFormat(Problems problems, OpeningAssembler openings) {
        this.problems = problems;
        this.openings = openings;
    }

    static Group group() {
        Group beam = Group.of(
                "door_beam",
                "an intrusion beam from the front to the aft edge",
                need(
                        "kind",
                        Choice.of("box", "hat", "plate"),
                        "closed tube, channel closed by the outer panel, or strip"),
                need("up", CavityFormat.SIZE, "height of its middle above the lower edge"),
                need("width", CavityFormat.SIZE, "its extent up and down"),
                may("depth", CavityFormat.SIZE, "", "its extent inboard; needed for box and hat"),
                may(
                        "gap",
                        CavityFormat.SIZE_OR_NONE,
                        "10 mm",
                        "from the outer panel's rim to its outer face; not for a hat"),
                may("gauge", CavityFormat.GAUGE, "1.5 mm", "its thickness"));
        return Group.of(
                "door",
                "door: outer panel at y = 0 facing +y, stepped inner panel, closed edges; x aft, z up from the lower edge",
                ModelFormat.VERSION,
                CavityFormat.NAME,
                need("length", CavityFormat.SIZE, "front edge to aft edge"),
                need("height", CavityFormat.SIZE, "lower edge to waist"),
                need("depth", CavityFormat.SIZE, "inside, outer panel's rim to the lower inner panel"),
                may("upper_depth", CavityFormat.SIZE, "", "the same above the step; left out = no step"),
                may("step", CavityFormat.SIZE, "", "height of the step; needed with `upper_depth`"),
                may("crown", CavityFormat.SIZE_OR_NONE, "0 mm", "bulge of the outer panel in the middle of its height"),
                CavityFormat.SHEET,
                may("beams", new ListOf(beam, 0, 4), "", "intrusion beams"),
                may("window_slots", new ListOf(edge().group(), 0, 4), "", "openings along the waist edge"),
                may("drains", new ListOf(edge().group(), 0, 20), "", "openings in the lower edge"),
                may("inner_holes", new ListOf(inner().group(), 0, 40), "", "openings in the inner panel"),
                CavityFormat.PORTS);
    }

    CavitySpec door(Fields f) {
        double length = f.si("length");
        double depth = f.si("depth");
        double upper = f.si("upper_depth", depth);
        if (f.has("upper_depth") && !f.has("step")) {
            problems.add(
                    SceneProblem.DOOR_FORM,
                    f.at("upper_depth"),
                    "`step` is missing; the height is wanted at which the inner panel changes from `depth` to"
                            + " `upper_depth`");
        }
        return new CavitySpec.Door(
                f.text("name"),
                length,
                f.si("height"),
                depth,
                upper,
                f.si("step", 0),
                f.si("crown"),
                f.si("gauge"),
                beams(f),
                edge().holes(f.list("window_slots"), 0.5 * length, 0.5 * upper, openings),
                edge().holes(f.list("drains"), 0.5 * length, 0.5 * depth, openings),
                inner().holes(f.list("inner_holes"), Double.NaN, Double.NaN, openings),
                openings.openings(f.list("ports")),
                f.place());
    }

    private List<DoorBeam> beams(Fields f) {
        List<DoorBeam> beams = new ArrayList<>();
        for (Fields b : f.list("beams")) {
            String word = b.text("kind");
            DoorBeam.Kind kind =
                    word.isEmpty() ? DoorBeam.Kind.PLATE : DoorBeam.Kind.valueOf(word.toUpperCase(Locale.ROOT));
            if (kind != DoorBeam.Kind.PLATE && !b.has("depth")) {
                problems.add(
                        SceneProblem.DOOR_FORM,
                        b.place(),
                        "`depth` is missing; a " + word + " beam wants its extent inboard");
            }
            beams.add(new DoorBeam(
                    kind, b.si("up"), b.si("width"), b.si("depth", 0), b.si("gap"), b.si("gauge"), b.place()));
        }
        return List.copyOf(beams);
    }
}
