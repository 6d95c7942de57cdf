package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;
import java.util.List;

/** The format of wing boxes. */
final class WingBoxFormat {
    private WingBoxFormat() {}

    private static final Measure SPAR = Measure.of(Dimension.FRACTION, "(0 .. 1)");

    private static Measure lengthOr(Dimension other, String range) {
        return new Measure(List.of(Dimension.LENGTH, other), Interval.of(Dimension.LENGTH, range));
    }

    private static Group station() {
        return Group.of(
                "section_station",
                "a measured place of a section",
                need(
                        "at",
                        lengthOr(Dimension.FRACTION, "[0 mm .. 100 m]"),
                        "place aft of that section's leading edge: a length, or a fraction of its chord"),
                need("upper", CavityFormat.POSITION, "height of the upper skin's inner face above the chord line"),
                need("lower", CavityFormat.POSITION, "the same for the lower skin, negative below the line"));
    }

    private static Group section() {
        ListOf stations = new ListOf(station(), 2, 60);
        return Group.of(
                "section",
                "measured heights in place of NACA digits",
                need("root", stations, "stations at the root, front to rear, from front spar to rear spar at least"),
                may("tip", stations, "", "the same at the tip; left out = the root's, scaled with the chord"),
                may(
                        "between",
                        Choice.of("curve", "straight"),
                        "curve",
                        "how the skin runs between stations: a smooth curve, or straight"));
    }

    private static Group stringers() {
        return Group.of(
                "stringers",
                "blade stringers, evenly between the spars",
                may("upper", new Count(0, 50), "0", "number on the upper skin"),
                may("lower", new Count(0, 50), "0", "number on the lower skin"),
                need("height", Measure.of(Dimension.LENGTH, "(0 mm .. 1 m]"), "height of the blade"),
                may(
                        "notch",
                        Group.of(
                                "notch",
                                "rectangular cut-outs in the inner ribs where blades pass",
                                need(
                                        "clearance",
                                        Measure.of(Dimension.LENGTH, "(0 mm .. 200 mm]"),
                                        "gap between rib and blade, on both faces and over its top"),
                                may("state", CavityFormat.STATE, "open", "state; `closed` where they are sealed")),
                        "",
                        "cut-outs in the ribs; left out = blades cross the ribs without a gap"));
    }

    private static Group falseSpar() {
        return Group.of(
                "false_spar",
                "a spar of full depth between front and rear spar",
                may("name", Text.NAME, "", "name of the part; left out = `false spar 1` and so on"),
                need("at", SPAR, "place, fraction of chord"),
                may("from_rib", new Count(1, 200), "1", "first rib that it meets, counted from the root"),
                may("to_rib", new Count(2, 200), "", "last rib that it meets; left out = the tip rib"),
                may("holes", new ListOf(RibFormat.sparHole(), 0, 100), "", "holes in it"));
    }

    static Group group() {
        Choice end = Choice.of("closed", "open");
        return Group.of(
                        "wing_box",
                        "box between two spars under skins of a NACA 4-digit section or of measured heights, root at y = 0",
                        ModelFormat.VERSION,
                        CavityFormat.NAME,
                        may("naca", new Text("\\d{4}", "four digits of a NACA section such as `2412`"), "", "section"),
                        may("section", section(), "", "heights measured at root and tip"),
                        need("span", CavityFormat.SIZE, "root rib to tip rib"),
                        need("root_chord", CavityFormat.SIZE, "chord of the whole section at the root"),
                        may("tip_chord", CavityFormat.SIZE, "", "the same at the tip; left out = as at the root"),
                        may(
                                "sweep",
                                lengthOr(Dimension.ANGLE, "[-1000 m .. 1000 m]"),
                                "0 mm",
                                "how far the tip's leading edge lies aft of the root's, or the angle of the leading edge"),
                        may(
                                "dihedral",
                                lengthOr(Dimension.ANGLE, "[-1000 m .. 1000 m]"),
                                "0 mm",
                                "how far the tip's chord line lies above the root's, or the angle of its rise"),
                        need("front_spar", SPAR, "place of the front spar, fraction of chord"),
                        need("rear_spar", SPAR, "place of the rear spar, fraction of chord"),
                        may("false_spars", new ListOf(falseSpar(), 0, 20), "", "spars between those two"),
                        CavityFormat.SHEET,
                        may("stringers", stringers(), "", "stringers; left out = none"),
                        need(
                                "ribs",
                                new ListOf(RibFormat.wholeRib(), 2, 200),
                                "ribs in order from the root; the first and last close the ends"),
                        may("root", end, "closed", "`open` = without root rib; the opening is called `open root`"),
                        may("tip", end, "closed", "`open` = the tip is off; the opening is called `open tip`"),
                        CavityFormat.PORTS)
                .oneOf("naca", "section");
    }
}
