package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Either;
import baymist.scene.io.Shape.Family;
import baymist.scene.io.Shape.Field;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Real;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;

/** The format of cavities and openings. */
final class CavityFormat {
    private CavityFormat() {}

    static final Measure SIZE = Measure.of(Dimension.LENGTH, "(0 mm .. 100 m]");
    static final Measure SIZE_OR_NONE = Measure.of(Dimension.LENGTH, "[0 mm .. 100 m]");
    static final Measure POSITION = Measure.of(Dimension.LENGTH, "[-1000 m .. 1000 m]");
    static final Measure GAUGE = Measure.of(Dimension.LENGTH, "(0 mm .. 50 mm]");
    private static final Measure HOLE = Measure.of(Dimension.LENGTH, "(0 mm .. 5 m]");
    static final Measure TURN = Measure.of(Dimension.ANGLE, "[-360 deg .. 360 deg]");

    /** Three lengths: x aft, y right, z up. */
    static final ListOf POINT = new ListOf(POSITION, 3, 3);

    /** Three plain numbers; any length but zero. */
    static final ListOf DIRECTION = new ListOf(Real.of("[-1e6 .. 1e6]"), 3, 3);

    static final Group OUTLINE = Group.of(
                    "outline",
                    "the outline of an opening in its own plane",
                    may("circle", HOLE, "", "diameter; a drill size such as \"#30 drill\" will do"),
                    may(
                            "slot",
                            Group.of(
                                    "slot",
                                    "straight slot with round ends",
                                    need("length", HOLE, "overall length"),
                                    need("width", HOLE, "width")),
                            "",
                            "slot with round ends"),
                    may(
                            "rectangle",
                            Group.of(
                                    "rectangle",
                                    "rectangle, its corners rounded or not",
                                    need("length", HOLE, "overall length"),
                                    need("width", HOLE, "overall width"),
                                    may(
                                            "corner_radius",
                                            Measure.of(Dimension.LENGTH, "[0 mm .. 5 m]"),
                                            "0 mm",
                                            "corner radius")),
                            "",
                            "rectangle"),
                    may(
                            "ellipse",
                            Group.of(
                                    "ellipse",
                                    "ellipse",
                                    need("length", HOLE, "length of its longer or shorter axis, whole"),
                                    need("width", HOLE, "length of the other axis")),
                            "",
                            "ellipse, such as an oval manhole"),
                    may(
                            "polygon",
                            new ListOf(new ListOf(POSITION, 2, 2), 3, 200),
                            "",
                            "corners `[u, v]` about the centre, lengthwise and across"))
            .oneOf("circle", "slot", "rectangle", "ellipse", "polygon");

    private static final Choice WORD = Choice.of("open", "closed", "taped", "plugged");

    /** One word for always, or a word for each phase. */
    static final Shape STATE = Either.of(
            WORD,
            Group.of(
                    "state",
                    "state of an opening in each phase",
                    may("pass", WORD, "open", "while a wand sprays"),
                    may("hang", WORD, "", "while the fog hangs; left out = as in `pass`"),
                    may("after", WORD, "", "at close-up; left out = as in `hang`")));

    static final Group OPENING = Group.of(
            "opening",
            "an opening cut into a named part",
            need("name", Text.NAME, "name of the opening, used once"),
            need("part", Text.NAME, "name of the sheet that it is cut into"),
            need("shape", OUTLINE, "its outline"),
            need("at", POINT, "its centre; moved onto the nearest point of the part"),
            may("lengthwise", DIRECTION, "", "direction of the outline's length; left out = the part's natural one"),
            may("state", STATE, "open", "state, one word or one for each phase"));

    static final Field NAME = need("name", Text.NAME, "name of the structure");
    static final Field SHEET = may("gauge", GAUGE, "0.8 mm", "thickness of the sheet");
    static final Field PORTS = may("ports", new ListOf(OPENING, 0, 500), "", "openings in its skins, spars and walls");
    private static final Field CORNER =
            may("origin", POINT, "", "place of its low, forward, left corner; left out = `[0, 0, 0]`");
    private static final Field MIDDLE = may(
            "origin",
            POINT,
            "",
            "place of the middle of a cylinder's forward end, or of a sphere's centre; left out = `[0, 0, 0]`");
    private static final Field ROTATION =
            may("rotation", new ListOf(TURN, 3, 3), "", "turns about x, y and z, in that order; left out = none");

    /** A single body; {@link #CAVITY} adds the combination of several. */
    static final Family BODY = Family.of(
            "body",
            "family",
            "a structure of one of the families",
            ControlSurfaceFormat.group(),
            WingBoxFormat.group(),
            Group.of(
                    "block",
                    "closed rectangular box",
                    ModelFormat.VERSION,
                    NAME,
                    need("size", new ListOf(SIZE, 3, 3), "inside lengths along x, y and z"),
                    CORNER,
                    ROTATION,
                    SHEET,
                    PORTS),
            Group.of(
                    "round",
                    "closed cylinder along x, or a sphere",
                    ModelFormat.VERSION,
                    NAME,
                    may("length", SIZE_OR_NONE, "0 mm", "length of the cylinder; 0 = a sphere"),
                    need("radius", SIZE, "radius"),
                    may("segments", new Count(12, 720), "64", "flats round the circumference"),
                    MIDDLE,
                    ROTATION,
                    SHEET,
                    PORTS),
            ShellFormat.group(ModelFormat.VERSION, NAME, SHEET, PORTS),
            BoxSectionFormat.group(ModelFormat.VERSION, NAME, SHEET, PORTS),
            TubeFrameFormat.group(ModelFormat.VERSION, NAME, PORTS),
            MeshFormat.group(ModelFormat.VERSION, NAME, ROTATION, PORTS, GAUGE),
            DoorFormat.group(),
            VoidFormat.group(),
            PlatesFormat.group());

    static final Family CAVITY = BodiesFormat.with(BODY);
}
