package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.units.Dimension;

/** The format of control surfaces. */
final class ControlSurfaceFormat {
    private ControlSurfaceFormat() {}

    private static final Measure BEAD = Measure.of(Dimension.LENGTH, "(0 mm .. 2 m]");
    private static final Measure BEAD_OR_NONE = Measure.of(Dimension.LENGTH, "[0 mm .. 2 m]");

    private static Group beads() {
        return Group.of(
                "beads",
                "beads or corrugations of a skin; chordwise measures hold at the root and shrink with the chord",
                need("run", Choice.of("spanwise", "chordwise"), "which way they run"),
                may(
                        "form",
                        Choice.of("trapezoid", "sine"),
                        "trapezoid",
                        "`sine` with the width of the pitch = corrugated"),
                need("pitch", BEAD, "middle to middle"),
                may("width", BEAD, "", "width over both flanks; left out = the pitch"),
                need("depth", Measure.of(Dimension.LENGTH, "(0 mm .. 200 mm]"), "height over the plain sheet"),
                may("press", Choice.of("out", "in"), "out", "side of the skin that they stand on"),
                may("flank", BEAD, "", "breadth of each sloping flank of a trapezoid; left out = the depth"),
                may("from", BEAD_OR_NONE, "0 mm", "where they begin, aft of the spar"),
                may("to", CavityFormat.SIZE, "", "where they end, aft of the spar; left out = the root chord"),
                may(
                        "run_out",
                        BEAD_OR_NONE,
                        "",
                        "length over which an end fades out; left out = twice the depth; `0 mm` = "
                                + "they run through"),
                may(
                        "clear_of_ribs",
                        BEAD_OR_NONE,
                        "0 mm",
                        "distance that they keep from ribs; `0 mm` = spanwise ones run through the ribs"));
    }

    private static Group nose() {
        return Group.of(
                "nose",
                "closed nose ahead of the spar, as deep as the spar",
                need("length", CavityFormat.SIZE, "spar to leading edge at the root"),
                may("tip_length", CavityFormat.SIZE, "", "the same at the tip; left out = as at the root"),
                may("radius", BEAD, "", "radius of the leading edge at the root; left out = half an ellipse"),
                may(
                        "ribs",
                        new ListOf(RibFormat.wholeRib(), 0, 200),
                        "",
                        "inner nose ribs; `aft` of their holes counts from the leading edge"));
    }

    private static Group horn() {
        return Group.of(
                "horn",
                "box ahead of the spar at the tip",
                need("width", CavityFormat.SIZE, "along the span, from the tip inboard"),
                need("length", CavityFormat.SIZE, "spar to the horn's front"),
                may(
                        "front_depth",
                        CavityFormat.SIZE_OR_NONE,
                        "0 mm",
                        "inside depth at its front; `0 mm` = the skins meet"),
                may(
                        "bulkhead",
                        CavityFormat.SIZE,
                        "",
                        "distance ahead of the spar of a bulkhead that parts off the counterweight's bay; left out = none"),
                may("bulkhead_holes", new ListOf(RibFormat.sparHole(), 0, 50), "", "holes in the bulkhead"));
    }

    static Group group() {
        Group beads = beads();
        return Group.of(
                "control_surface",
                "wedge: spar at x = 0, skins straight to the trailing edge, ribs across, root at y = 0",
                ModelFormat.VERSION,
                CavityFormat.NAME,
                need("span", CavityFormat.SIZE, "root rib to tip rib"),
                need("root_chord", CavityFormat.SIZE, "spar to trailing edge at the root"),
                may("tip_chord", CavityFormat.SIZE, "", "the same at the tip; left out = as at the root"),
                need("root_depth", CavityFormat.SIZE, "inside depth at the spar at the root"),
                may("tip_depth", CavityFormat.SIZE, "", "the same at the tip; left out = as at the root"),
                may("edge_depth", CavityFormat.SIZE_OR_NONE, "0 mm", "inside depth left at the trailing edge"),
                CavityFormat.SHEET,
                may("upper_beads", beads, "", "beads of the upper skin; left out = plain"),
                may("lower_beads", beads, "", "beads of the lower skin; left out = plain"),
                may("nose", nose(), "", "nose ahead of the spar; left out = none"),
                may("horn", horn(), "", "horn at the tip; left out = none"),
                may(
                        "spar_holes",
                        new ListOf(RibFormat.sparHole(), 0, 200),
                        "",
                        "hinge cut-outs and other holes in the spar"),
                need(
                        "ribs",
                        new ListOf(RibFormat.shortRib(), 2, 200),
                        "ribs in order from the root; the first and last close the ends"),
                CavityFormat.PORTS);
    }
}
