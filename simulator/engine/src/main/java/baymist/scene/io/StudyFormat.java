package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Either;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;

/** The format of what studies over a scene try. */
final class StudyFormat {
    private StudyFormat() {}

    private static final Measure DEPTH = Measure.of(Dimension.LENGTH, "[0 mm .. 10 m]");
    private static final ListOf NAMES = new ListOf(Text.NAME, 0, 200);

    static final Group COMPARE = Group.of(
            "compare",
            "what a comparison tries: entries x wands x clock angles, one pass each",
            may("entries", new ListOf(Text.NAME, 1, 200), "", "names of entries; left out = all"),
            may("wands", new ListOf(Text.NAME, 1, 100), "", "names of wands; left out = all at hand"),
            may(
                    "clocks",
                    new ListOf(Measure.of(Dimension.ANGLE, "[-360 deg .. 360 deg]"), 1, 72),
                    "",
                    "clock angles of the direction pin; left out = eight, evenly"),
            may(
                    "holes",
                    new ListOf(CavityFormat.OPENING, 0, 50),
                    "",
                    "openings that might be cut, each tried as a way in of its own"),
            may("from", Either.of(DEPTH, Choice.of("deepest")), "deepest", "insertion depth at the start"),
            may("to", DEPTH, "50 mm", "insertion depth at the end"),
            may("draw_back", Measure.of(Dimension.SPEED, "(0 mm/s .. 10 m/s]"), "75 mm/s", "draw-back rate"),
            may(
                    "hold",
                    Measure.of(Dimension.TIME, "[0 s .. 1 h]"),
                    "0 s",
                    "trigger time at the start depth before drawing back"));

    static final Group PLAN = Group.of(
            "plan",
            "limits that a plan of passes keeps",
            may(
                    "slowest",
                    Measure.of(Dimension.SPEED, "(0 mm/s .. 10 m/s]"),
                    "",
                    "slowest draw-back; left out = 50 mm/s, or that of the scene's own passes if one is slower"),
            may(
                    "fastest",
                    Measure.of(Dimension.SPEED, "(0 mm/s .. 10 m/s]"),
                    "",
                    "fastest draw-back; left out = 500 mm/s, or that of the scene's own passes if one is faster"),
            may(
                    "trigger",
                    Measure.of(Dimension.TIME, "(0 s .. 10 h]"),
                    "",
                    "most time with the trigger held; left out = that of the scene's own passes"),
            may(
                    "product",
                    Measure.of(Dimension.VOLUME, "(0 mL .. 100 L]"),
                    "",
                    "most product; left out = that of the scene's own passes"),
            may("passes", new Count(1, 100), "12", "passes at most"),
            may(
                    "panels",
                    NAMES,
                    "",
                    "openings that are closed while spraying but may be opened as a way in; the program counts each as work"));

    static final Group DRILLING = Group.of(
            "drilling",
            "where access holes may be thought of; drilling needs approved data and a licensed person",
            need("parts", new ListOf(Text.NAME, 1, 200), "parts that may be drilled"),
            may("primary", NAMES, "", "parts that are primary structure: never drilled, whatever `parts` says"),
            may("pressurised", NAMES, "", "parts that hold cabin pressure: never drilled"),
            may("doublers", NAMES, "", "parts that lie on others as doublers; holes stay clear of them"),
            may(
                    "drills",
                    new ListOf(new Count(1, 80), 1, 80),
                    "",
                    "number drills to choose from (ASME B94.11M); left out = those of 3/32 to 3/16 in rivets"),
            may("grid", Measure.of(Dimension.LENGTH, "[5 mm .. 1 m]"), "50 mm", "spacing of the places looked at"),
            may("most", new Count(1, 20), "3", "holes at most"),
            may(
                    "least_gain",
                    Measure.of(Dimension.FRACTION, "[0 .. 1]"),
                    "1 %",
                    "share of the surface that the next hole must add"));

    static final Group CARD = Group.of(
            "card",
            "what the work card is told beside the job",
            may(
                    "interval",
                    new Text("[1-9]\\d{0,3} +(day|week|month|year)s?", "an interval such as `24 months`"),
                    "",
                    "time until the treatment is due again; left out = a blank on the card"),
            may(
                    "allowance",
                    Measure.of(Dimension.FRACTION, "[0 .. 3]"),
                    "20 %",
                    "product to have at hand beyond what is sprayed"),
            may("cup", Measure.of(Dimension.VOLUME, "(0 mL .. 1 m3]"), "1 L", "what the cup or tank holds"));
}
