package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import baymist.scene.CrossFrame;
import baymist.scene.Stiffeners;
import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Field;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Value.Fields;
import java.util.ArrayList;
import java.util.List;

/** Format and assembly of stiffened voids. */
final class VoidFormat {
    private static PanelHoles frameHole() {
        return new PanelHoles(
                "frame_hole",
                "a hole in a frame, lengthwise = across the box",
                need("across", CavityFormat.SIZE_OR_NONE, "distance of its centre from the left wall"),
                need("up", CavityFormat.SIZE_OR_NONE, "distance of its centre above the floor"));
    }

    private static PanelHoles manhole() {
        return new PanelHoles(
                "manhole",
                "an opening in the ceiling, lengthwise = aft",
                need("aft", CavityFormat.SIZE_OR_NONE, "distance of its centre aft of the forward wall"),
                need("across", CavityFormat.SIZE_OR_NONE, "distance of its centre from the left wall"));
    }

    private final OpeningAssembler openings;

    VoidFormat(OpeningAssembler openings) {
        this.openings = openings;
    }

    private static Field[] bar(String first) {
        return new Field[] {
            need("spacing", CavityFormat.SIZE, "from bar to bar"),
            may("first", CavityFormat.SIZE, "", first + "; left out = one spacing"),
            need("web", CavityFormat.SIZE, "height of the web off the wall"),
            may(
                    "flange",
                    CavityFormat.SIZE_OR_NONE,
                    "0 mm",
                    "width of the flange on the web's free edge; 0 = flat bar"),
            may(
                    "side",
                    Choice.of("both", "back", "on"),
                    "both",
                    "where the flange points: both ways (T), back to where places are measured from, or on"),
            may("gauge", CavityFormat.GAUGE, "8 mm", "its thickness")
        };
    }

    static Group group() {
        Field[] bars = bar("place of the first bar, from the left wall or the floor");
        Field[] longitudinal = new Field[bars.length + 1];
        longitudinal[0] = need("wall", Choice.of("floor", "ceiling", "left wall", "right wall"), "wall they stand on");
        System.arraycopy(bars, 0, longitudinal, 1, bars.length);
        Group frame = Group.of(
                "cross_frame",
                "a web over the whole section",
                need("at", CavityFormat.SIZE, "distance aft of the forward wall"),
                may("holes", new ListOf(frameHole().group(), 0, 50), "", "manholes and lightening holes"),
                may(
                        "drain_radius",
                        CavityFormat.SIZE_OR_NONE,
                        "0 mm",
                        "quarter-round mouse holes in the lower corners; 0 = none"),
                may("air_radius", CavityFormat.SIZE_OR_NONE, "0 mm", "the same in the upper corners"),
                may(
                        "notch",
                        CavityFormat.SIZE_OR_NONE,
                        "0 mm",
                        "clearance round the bars that pass; 0 = welded all round"),
                may("gauge", CavityFormat.GAUGE, "", "its thickness; left out = as the walls"));
        return Group.of(
                "stiffened_void",
                "tank or void space: a box with bars, frames and manholes; low forward left corner at the origin",
                ModelFormat.VERSION,
                CavityFormat.NAME,
                need("length", CavityFormat.SIZE, "inside, along x"),
                need("width", CavityFormat.SIZE, "inside, along y"),
                need("height", CavityFormat.SIZE, "inside, along z"),
                may("gauge", CavityFormat.GAUGE, "8 mm", "thickness of the walls"),
                may(
                        "longitudinals",
                        new ListOf(Group.of("longitudinals", "equal bars along x on one wall", longitudinal), 0, 20),
                        "",
                        "bars along x"),
                may("frames", new ListOf(frame, 0, 60), "", "webs square to x, in order"),
                may(
                        "deck_beams",
                        new ListOf(
                                Group.of(
                                        "deck_beams",
                                        "equal bars along y under the ceiling; left out where a frame stands",
                                        bar("place of the first beam, from the forward wall")),
                                0,
                                20),
                        "",
                        "bars along y under the ceiling"),
                may("manholes", new ListOf(manhole().group(), 0, 40), "", "openings in the ceiling"),
                CavityFormat.PORTS);
    }

    CavitySpec space(Fields f) {
        double gauge = f.si("gauge");
        List<CrossFrame> frames = new ArrayList<>();
        for (Fields frame : f.list("frames")) {
            frames.add(new CrossFrame(
                    frame.si("at"),
                    frameHole().holes(frame.list("holes"), Double.NaN, Double.NaN, openings),
                    frame.si("drain_radius"),
                    frame.si("air_radius"),
                    frame.si("notch"),
                    frame.si("gauge", gauge),
                    frame.place()));
        }
        return new CavitySpec.StiffenedVoid(
                f.text("name"),
                new Vec3(f.si("length"), f.si("width"), f.si("height")),
                gauge,
                bars(f.list("longitudinals")),
                List.copyOf(frames),
                bars(f.list("deck_beams")),
                manhole().holes(f.list("manholes"), Double.NaN, Double.NaN, openings),
                openings.openings(f.list("ports")),
                f.place());
    }

    private static List<Stiffeners> bars(List<Fields> list) {
        List<Stiffeners> bars = new ArrayList<>();
        for (Fields f : list) {
            double spacing = f.si("spacing");
            Stiffeners.Side side = switch (f.text("side")) {
                case "back" -> Stiffeners.Side.BACK;
                case "on" -> Stiffeners.Side.ON;
                default -> Stiffeners.Side.BOTH;
            };
            bars.add(new Stiffeners(
                    f.has("wall") ? f.text("wall") : "ceiling",
                    f.si("first", spacing),
                    spacing,
                    f.si("web"),
                    f.si("flange"),
                    side,
                    f.si("gauge"),
                    f.place()));
        }
        return List.copyOf(bars);
    }
}
