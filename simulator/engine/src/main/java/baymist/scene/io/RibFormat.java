package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Field;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;

/** The format of ribs, of webs along the span, and of the holes in both. */
final class RibFormat {
    private RibFormat() {}

    static Group flange() {
        return Group.of(
                "flange",
                "a lip that is turned out of the web round a hole; the hole's outline is that at the lip's free edge",
                need(
                        "depth",
                        Measure.of(Dimension.LENGTH, "(0 mm .. 200 mm]"),
                        "how far its free edge stands off the web"),
                may(
                        "angle",
                        Measure.of(Dimension.ANGLE, "[30 deg .. 90 deg]"),
                        "90 deg",
                        "between lip and web; below `90 deg` the web is cut back round the hole"),
                may(
                        "side",
                        Choice.of("outboard", "inboard", "aft", "forward"),
                        "",
                        "side of the web that it stands on: `outboard` or `inboard` of a rib (left out = `outboard`), "
                                + "`aft` or `forward` of a spar (left out = `aft`)"));
    }

    private static Group ribHole() {
        return Group.of(
                "rib_hole",
                "a hole in a rib",
                may("name", Text.NAME, "", "name; left out = `rib 2 hole 1` and so on"),
                need("shape", CavityFormat.OUTLINE, "its outline, lengthwise = aft, across = up"),
                need("aft", CavityFormat.SIZE_OR_NONE, "distance of its centre aft of the section's front (the spar)"),
                may("up", CavityFormat.POSITION, "0 mm", "height of its centre above the middle of the section there"),
                may("flange", flange(), "", "lip round the hole; left out = plain edge"),
                may("state", CavityFormat.STATE, "open", "state, one word or one for each phase"));
    }

    static Group sparHole() {
        return Group.of(
                "spar_hole",
                "a hole in a spar or a bulkhead along the span",
                may("name", Text.NAME, "", "name; left out = `spar hole 1` and so on"),
                need("shape", CavityFormat.OUTLINE, "its outline, lengthwise = along the span, across = up"),
                need("along", CavityFormat.SIZE_OR_NONE, "station of its centre, from the root"),
                may("up", CavityFormat.POSITION, "0 mm", "height of its centre above the middle of the web there"),
                may("flange", flange(), "", "lip round the hole; left out = plain edge"),
                may("state", CavityFormat.STATE, "open", "state, one word or one for each phase"));
    }

    private static Field at() {
        return need("at", CavityFormat.SIZE_OR_NONE, "station, from the root");
    }

    private static Field name() {
        return may("name", Text.NAME, "", "name of the part; left out = `rib 2` and so on");
    }

    private static Field holes() {
        return may("holes", new ListOf(ribHole(), 0, 50), "", "lightening and wand holes");
    }

    static Group shortRib() {
        return Group.of(
                "control_surface_rib",
                "a rib of a control surface",
                at(),
                name(),
                may(
                        "short_of_edge",
                        CavityFormat.SIZE_OR_NONE,
                        "0 mm",
                        "how far its web stops ahead of the trailing edge"),
                holes());
    }

    /** A rib from end to end of its section: of a wing box or of a nose. */
    static Group wholeRib() {
        return Group.of("wing_box_rib", "a rib of a wing box or of a nose", at(), name(), holes());
    }
}
