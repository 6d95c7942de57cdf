package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Either;
import baymist.scene.io.Shape.Field;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Real;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;
import java.util.List;

/** The format of wand, tip and product models. */
final class ModelFormat {
    private ModelFormat() {}

    /** Format version key: must stand in a scene, may stand in a model. */
    static final Field VERSION = may("baymist", new Count(1, 1), "1", "version of the format");

    static final Measure DIAMETER = Measure.of(Dimension.LENGTH, "(0 mm .. 100 mm]");
    private static final Measure ORIFICE = Measure.of(Dimension.LENGTH, "(0 mm .. 20 mm]");
    private static final Measure CLOCK = Measure.of(Dimension.ANGLE, "[-360 deg .. 360 deg]");
    private static final Measure OFF_AXIS = Measure.of(Dimension.ANGLE, "[0 deg .. 180 deg]");
    private static final Measure SHARE = Measure.of(Dimension.FRACTION, "[0 .. 1]");

    static final Group JET = Group.of(
            "jet",
            "one jet of a tip",
            need("off_axis", OFF_AXIS, "angle from straight ahead; `90 deg` = square to the wand"),
            may("clock", CLOCK, "0 deg", "angle round the wand from its direction pin, clockwise seen along the wand"),
            need("orifice", ORIFICE, "diameter of the air orifice"),
            may("air_share", SHARE, "", "share of the tip's air; left out of all jets = by orifice area"),
            may("liquid_share", SHARE, "", "share of the tip's liquid; left out of all jets = by orifice area"));

    private static final Group RING = Group.of(
            "ring",
            "jets evenly all round",
            need("jets", new Count(2, 64), "number of jets"),
            need("orifice", ORIFICE, "diameter of each air orifice"),
            may("off_axis", OFF_AXIS, "90 deg", "angle from straight ahead"),
            may("clock", CLOCK, "0 deg", "place of the first jet, from the pin"));

    private static final Group ONE_SIDED = Group.of(
            "one_sided",
            "a fan of jets centred on the direction pin, its outer jets at the ends of the arc",
            need("jets", new Count(1, 64), "number of jets"),
            may(
                    "arc",
                    Measure.of(Dimension.ANGLE, "[0 deg .. 360 deg)"),
                    "60 deg",
                    "angle round the wand from first to last jet"),
            need("orifice", ORIFICE, "diameter of each air orifice"),
            may("off_axis", OFF_AXIS, "90 deg", "angle from straight ahead"));

    private static final Group FORWARD = Group.of(
            "forward",
            "a plume straight ahead",
            may("jets", new Count(1, 64), "1", "number of jets; one stands on the axis, several evenly on the cone"),
            may(
                    "cone",
                    Measure.of(Dimension.ANGLE, "[0 deg .. 120 deg]"),
                    "0 deg",
                    "full angle of the cone that several jets stand on"),
            need("orifice", ORIFICE, "diameter of each air orifice"));

    static final Group TIP = Group.of(
                    "tip",
                    "a spray tip, given as one of its patterns or jet by jet",
                    VERSION,
                    may("name", Text.NAME, "", "name of the tip; left out = its pattern"),
                    may("ring", RING, "", "jets evenly all round"),
                    may("one_sided", ONE_SIDED, "", "a fan of jets centred on the pin"),
                    may("forward", FORWARD, "", "a plume straight ahead"),
                    may("jets", new ListOf(JET, 1, 64), "", "any other pattern, jet by jet"),
                    may("outer_diameter", DIAMETER, "", "outside diameter of the tip; left out = as the wand"),
                    may(
                            "length",
                            Measure.of(Dimension.LENGTH, "(0 mm .. 1 m]"),
                            "",
                            "length of a tip that is thicker than the wand; left out = twice its diameter"))
            .oneOf("ring", "one_sided", "forward", "jets");

    private static final List<Dimension> VISCOSITIES =
            List.of(Dimension.KINEMATIC_VISCOSITY, Dimension.DYNAMIC_VISCOSITY);

    private static final Measure VISCOSITY =
            new Measure(VISCOSITIES, new Interval(0, false, 20, true, "0", "2e7 cSt or 20 000 cP"));

    private static final Measure OIL_TEMPERATURE = Measure.of(Dimension.TEMPERATURE, "[-60 degC .. 200 degC]");

    static final Group VISCOSITY_POINT = Group.of(
            "viscosity_point",
            "a measured viscosity",
            need("at", OIL_TEMPERATURE, "temperature of the measurement"),
            need("value", VISCOSITY, "kinematic or dynamic viscosity there"));

    private static final Measure FILM = Measure.of(Dimension.LENGTH, "[0 um .. 1 mm]");

    static final Group CREEP = Group.of(
            "creep",
            "spreading of a film's edge, as watched on a plate",
            need("distance", Measure.of(Dimension.LENGTH, "(0 mm .. 1 m]"), "way of the edge"),
            need("time", Measure.of(Dimension.TIME, "(0 s .. 720 h]"), "in this time"));

    static final Group PRODUCT = Group.of(
            "product",
            "the oil at its temperature of use",
            VERSION,
            need("name", Text.NAME, "name of the product"),
            need(
                    "density",
                    Measure.of(Dimension.DENSITY, "[300 kg/m3 .. 3000 kg/m3]"),
                    "density at the temperature of use"),
            need(
                    "viscosity",
                    Either.of(VISCOSITY, new ListOf(VISCOSITY_POINT, 2, 2)),
                    "kinematic or dynamic; one value holds at the temperature of use, two points are interpolated by ASTM D341"),
            need("surface_tension", Measure.of(Dimension.SURFACE_TENSION, "(0 N/m .. 0.1 N/m]"), "against air"),
            may(
                    "non_volatile",
                    Measure.of(Dimension.FRACTION, "(0 .. 1]"),
                    "1",
                    "mass fraction that stays on the sheet"),
            may("temperature", OIL_TEMPERATURE, "20 degC", "temperature of use"),
            may("residual_film", FILM, "5 um", "film that never runs off upright sheet"),
            may(
                    "yield_stress",
                    Measure.of(Dimension.PRESSURE, "[0 Pa .. 1 kPa]"),
                    "0 Pa",
                    "stress that the film bears without running"),
            may("creep", CREEP, "", "how the edge of a wet film spreads over dry sheet; left out = it does not"),
            may(
                    "setting_time",
                    Measure.of(Dimension.TIME, "(0 s .. 720 h]"),
                    "",
                    "time after which the film runs no more; left out = it stays wet"));

    private static final Group SIZE_CLASS = Group.of(
            "size_class",
            "droplets of one size",
            need("diameter", Measure.of(Dimension.LENGTH, "[0.05 um .. 2 mm]"), "droplet diameter"),
            need("share", SHARE, "share of the sprayed mass; the shares sum to 1"));

    private static final Measure MEDIAN = Measure.of(Dimension.LENGTH, "[0.5 um .. 1 mm]");

    private static final Group SHEET = Group.of(
            "sheet",
            "sizes by a data sheet (ASTM E799 terms)",
            need("dv10", Measure.of(Dimension.LENGTH, "[0.1 um .. 1 mm]"), "a tenth of the volume is in smaller drops"),
            need("dv50", MEDIAN, "half of it is"),
            need("dv90", Measure.of(Dimension.LENGTH, "[0.5 um .. 5 mm]"), "nine tenths of it are"));

    private static final Group CORRELATION = Group.of(
            "correlation",
            "sizes by a published correlation of air-assisted atomisers (docs/theory/spray.md)",
            need(
                    "form",
                    Choice.of("nukiyama_tanasawa", "rizk_lefebvre", "el_shanawany_lefebvre"),
                    "plain jet in fast air; plain-jet air-blast; prefilming air-blast"),
            may("spread", Real.of("[1.2 .. 8]"), "2", "exponent of Rosin-Rammler about the Sauter mean"),
            may(
                    "outside_range",
                    Choice.of("refuse", "allow"),
                    "refuse",
                    "what to do where tip, air and liquid lie beyond the range that it was fitted to"));

    /** Size distribution of the droplets that leave the tip. */
    static final Shape DROPLETS = Either.of(
            Choice.of("tracer"),
            Group.of(
                            "droplets",
                            "volume distribution of the droplets",
                            may(
                                    "rosin_rammler",
                                    Group.of(
                                            "rosin_rammler",
                                            "Rosin-Rammler distribution",
                                            need("dv50", MEDIAN, "volume median diameter"),
                                            need("spread", Real.of("[1 .. 8]"), "exponent; larger = more even")),
                                    "",
                                    "Rosin-Rammler"),
                            may(
                                    "log_normal",
                                    Group.of(
                                            "log_normal",
                                            "log-normal distribution",
                                            need("dv50", MEDIAN, "volume median diameter"),
                                            need("deviation", Real.of("(1 .. 5]"), "geometric standard deviation")),
                                    "",
                                    "log-normal"),
                            may("sheet", SHEET, "", "three figures of a data sheet"),
                            may("classes", new ListOf(SIZE_CLASS, 1, 64), "", "explicit sizes"),
                            may("correlation", CORRELATION, "", "a published estimate for tip, air and liquid"),
                            may(
                                    "setting",
                                    Either.of(Choice.of("finer", "coarser"), Real.of("[0.25 .. 4]")),
                                    "",
                                    "factor on every diameter; `finer` = 0.71, `coarser` = 1.41; left out = as stated"),
                            may(
                                    "dv50_within",
                                    Real.of("[1 .. 4]"),
                                    "",
                                    "factor either way within which the median is known; left out = 1.3, or 2 for a correlation beyond its range"))
                    .oneOf("rosin_rammler", "log_normal", "sheet", "classes", "correlation"));
}
