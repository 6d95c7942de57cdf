package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Either;
import baymist.scene.io.Shape.FileOr;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.MapOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Real;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;
import java.util.List;

/** The format of a scene file: everything that a job states. */
final class SceneFormat {
    private SceneFormat() {}

    private static final Measure THICKNESS = Measure.of(Dimension.LENGTH, "(0 um .. 10 mm]");
    private static final Measure PLACE = Measure.of(Dimension.LENGTH, "[0 mm .. 1 m]");
    private static final Measure WAIT = Measure.of(Dimension.TIME, "[0 s .. 24 h]");
    private static final Measure DEPTH = Measure.of(Dimension.LENGTH, "[0 mm .. 10 m]");
    private static final Measure DIFFUSIVITY = Measure.of(Dimension.DIFFUSIVITY, "[0 m2/s .. 10 m2/s]");
    private static final Measure ATTITUDE = Measure.of(Dimension.ANGLE, "[-180 deg .. 180 deg]");
    private static final Measure VOXEL = Measure.of(Dimension.LENGTH, "[0.1 mm .. 1 m]");

    private static final Measure LIQUID = new Measure(
            List.of(Dimension.VOLUME_FLOW, Dimension.MASS_FLOW), new Interval(0, true, 1, true, "0 mL/min", "1 kg/s"));

    private static final Measure GAUGE = Measure.of(Dimension.PRESSURE, "(0 bar .. 20 bar]");
    private static final Measure BORE = Measure.of(Dimension.LENGTH, "(0 mm .. 100 mm)");
    private static final Measure BORE_LENGTH = Measure.of(Dimension.LENGTH, "(0 mm .. 30 m]");

    private static final Group CATCH_CUP = Group.of(
            "catch_cup",
            "the liquid measured at the tip",
            need("volume", Measure.of(Dimension.VOLUME, "(0 mL .. 100 L]"), "liquid caught"),
            need("time", Measure.of(Dimension.TIME, "(0 s .. 1 h]"), "time of catching"),
            may("pressure", GAUGE, "", "pressure of the test, gauge; left out = that of the supply"),
            may("length", BORE_LENGTH, "", "length of the liquid's bore in the test; left out = that sprayed with"),
            may("bore", BORE, "", "diameter of the liquid's bore in the test; left out = that sprayed with"));

    private static final Group FEED = Group.of(
            "feed",
            "bores from the gauge to the tip, of a wand that mixes at its tip",
            need("air_bore", BORE, "diameter of the air's way; of another section its hydraulic diameter"),
            may("length", BORE_LENGTH, "", "length of the bores of liquid and air; left out = that of the wand"),
            may(
                    "friction",
                    Real.of("[0 .. 0.1]"),
                    "0.024",
                    "Darcy friction factor of the air's way; the usual one is that of a small smooth tube"));

    static final Group SUPPLY = Group.of(
                    "supply",
                    "how air and liquid are driven to the tip",
                    may("pressure", GAUGE, "", "air pressure, gauge: at the tip, or with `feed` where the hose ends"),
                    may(
                            "discharge_coefficient",
                            Measure.of(Dimension.FRACTION, "[0.3 .. 1]"),
                            "0.85",
                            "of the air orifices (with `pressure`)"),
                    may(
                            "exit_speed",
                            Measure.of(Dimension.SPEED, "(0 m/s .. 1000 m/s]"),
                            "",
                            "speed at each orifice, air at ambient density, in place of `pressure`"),
                    may("liquid", LIQUID, "", "liquid sprayed by the whole tip, by volume or mass"),
                    may(
                            "catch_cup",
                            Either.of(CATCH_CUP, new ListOf(CATCH_CUP, 1, 20)),
                            "",
                            "the liquid as measured, in place of `liquid`: one test, or several to fit the rate to"),
                    may("feed", FEED, "", "bores that cost pressure; left out = the pressure holds at the tip"),
                    need(
                            "droplets",
                            ModelFormat.DROPLETS,
                            "sizes of the droplets that leave the tip; `tracer` follows the air"))
            .atMostOneOf("pressure", "exit_speed")
            .atMostOneOf("liquid", "catch_cup");

    static final Group ENTRY = Group.of(
            "entry",
            "an opening that a wand may use",
            need("name", Text.NAME, "name by which passes call it"),
            need("opening", Text.NAME, "name of the opening, of the cavity or cut here"),
            may("direction", CavityFormat.DIRECTION, "", "way of the wand going in; left out = square to the opening"),
            may("grommet", AimFormat.GROMMET, "", "a lining that narrows the hole and thickens its edge"),
            may("second_plate", AimFormat.SECOND_PLATE, "", "another plate with a hole before or behind this one"));

    static final Group PASS = Group.of(
            "pass",
            "one draw-back with the trigger held",
            may("name", Text.NAME, "", "name; left out = `pass 1` and so on"),
            need("entry", Text.NAME, "name of the entry"),
            need("wand", Text.NAME, "name of the wand"),
            may("from", Either.of(DEPTH, Choice.of("deepest")), "deepest", "insertion depth of the tip at the start"),
            need("to", DEPTH, "insertion depth at the end; not deeper than `from`"),
            may(
                    "draw_back",
                    Measure.of(Dimension.SPEED, "(0 mm/s .. 10 m/s]"),
                    "",
                    "draw-back rate; wanted unless `from` and `to` are equal"),
            may(
                    "clock",
                    Measure.of(Dimension.ANGLE, "[-360 deg .. 360 deg]"),
                    "0 deg",
                    "clock angle of the direction pin: 0 = up, clockwise seen from outside along the wand"),
            may("hold", WAIT, "0 s", "trigger time at the start depth before drawing back"),
            may("hang", WAIT, "0 s", "wait after this pass before the next"),
            may(
                    "sag",
                    Choice.of("on", "off"),
                    "",
                    "whether a straight wand's tip stands where it hangs; left out = on if the wand states its `material`"),
            may(
                    "aim",
                    Either.of(Choice.of("deepest", "central"), AimFormat.AIM),
                    "",
                    "which of all lines through the entry a straight wand takes; left out = the entry's direction"));

    private static final Group TARGETS = Group.of(
            "targets",
            "film builds that count",
            may("haze", THICKNESS, "1 um", "reached from here"),
            may("build", THICKNESS, "10 um", "protected from here"),
            may("excess", THICKNESS, "50 um", "run limit: too much from here"),
            may("seam_creep", PLACE, "5 mm", "how near to a seam film must lie to get into it"),
            may(
                    "bridge",
                    PLACE,
                    "10 mm",
                    "narrower film does not part a bare place, a narrower neck does not join two"),
            may("spot", PLACE, "20 mm", "bare places below a square of this side are spots"));

    private static final Group GRAVITY = Group.of(
            "gravity",
            "attitude of the structure",
            may("roll", ATTITUDE, "0 deg", "positive with the right (+y) side down"),
            may("pitch", ATTITUDE, "0 deg", "positive with the front (-x) end up"),
            may(
                    "g",
                    Measure.of(Dimension.ACCELERATION, "[0 m/s2 .. 100 m/s2]"),
                    "9.80665 m/s2",
                    "magnitude; another one serves verification"));

    private static final Choice AIR_MODE = Choice.of("auto", "resolved", "projected", "still");
    private static final String AIR_MODE_DOC =
            "`resolved` = transient flow; `projected` = fast field for ranking plans; `auto` = resolved where affordable; `still` = no air motion at all (verification)";

    private static final Group AIR = Group.of(
            "air",
            "how the air is treated",
            may("mode", AIR_MODE, "resolved", AIR_MODE_DOC),
            may(
                    "block",
                    Choice.of("auto", "1", "2", "3", "4"),
                    "auto",
                    "voxels along each side of a cell of resolved air; `auto` = by cells x steps"),
            may(
                    "quiet_diffusivity",
                    DIFFUSIVITY,
                    "",
                    "eddy diffusivity with the trigger off; left out = from the bay's size"),
            may("spray_diffusivity", DIFFUSIVITY, "", "the same with the trigger on; left out = from the jets' power"),
            may(
                    "pressure_limit",
                    Measure.of(Dimension.PRESSURE, "(0 Pa .. 1 MPa]"),
                    "10 kPa",
                    "gauge pressure in the cavity above which the run is refused"));

    private static final Group AMBIENT = Group.of(
            "ambient",
            "the air in and round the cavity; what is left out follows from temperature and pressure",
            may("temperature", Measure.of(Dimension.TEMPERATURE, "[-60 degC .. 80 degC]"), "20 degC", "temperature"),
            may(
                    "pressure",
                    Measure.of(Dimension.PRESSURE, "[20 kPa_abs .. 200 kPa_abs]"),
                    "101.325 kPa_abs",
                    "pressure"),
            may("density", Measure.of(Dimension.DENSITY, "[0.1 kg/m3 .. 10 kg/m3]"), "", "left out = by the gas law"),
            may(
                    "viscosity",
                    Measure.of(Dimension.DYNAMIC_VISCOSITY, "[0.001 mPa.s .. 0.1 mPa.s]"),
                    "",
                    "left out = by Sutherland's law"),
            may(
                    "mean_free_path",
                    Measure.of(Dimension.LENGTH, "[0.001 um .. 10 um]"),
                    "",
                    "of the molecules; left out = by kinetic theory"));

    private static final Group INITIAL_FOG = Group.of(
                    "initial_fog",
                    "fog present at the start: spread evenly, or released at a point",
                    may(
                            "concentration",
                            Measure.of(Dimension.CONCENTRATION, "(0 kg/m3 .. 10 kg/m3]"),
                            "",
                            "concentration over the whole cavity"),
                    may("point", CavityFormat.POINT, "", "place of a release, with `mass`"),
                    may("mass", Measure.of(Dimension.MASS, "(0 mg .. 10 kg]"), "", "mass released at `point`"))
            .oneOf("concentration", "point");

    private static final Group NUMERICS = Group.of(
            "numerics",
            "resolution of the computation",
            may("size_bins", new Count(1, 24), "10", "droplet size bins"),
            may("rays_per_jet", new Count(16, 100_000), "128", "rays that sample a jet at one station"),
            may(
                    "ray_seed",
                    new Count(0, 1_000_000),
                    "0",
                    "shifts the rays: what changes with it is the error of their number alone"),
            may(
                    "fog",
                    Choice.of("auto", "second_order", "first_order"),
                    "auto",
                    "transport of fog: `auto` = donor cells in single precision, audited (fast; smears fronts); `first_order` = the same in double"
                            + " precision, each size by itself (slower); `second_order` = limited slopes (sharp fronts, slowest)"),
            may(
                    "station_spacing",
                    Measure.of(Dimension.LENGTH, "[1 mm .. 10 m]"),
                    "",
                    "largest distance of spray stations; left out = chosen by the engine"));

    private static final Group BAY = Group.of(
            "bay",
            "the name that people have for a bay",
            need("name", Text.NAME, "its name in every table, picture and message"),
            need("at", CavityFormat.POINT, "a point in its air, half a voxel or more off the sheets"));

    static final Group SCENE = Group.of(
            "scene",
            "one job",
            need("baymist", new Count(1, 1), "version of the format"),
            need("title", Text.NAME, "what the job is, on one line"),
            may("story", Text.PROSE, "", "what it shows and why"),
            need("cavity", new FileOr(CavityFormat.CAVITY), "the structure"),
            may("cut", new ListOf(CavityFormat.OPENING, 0, 500), "", "openings besides those of the model"),
            may(
                    "openings",
                    new MapOf(CavityFormat.STATE, "the name of an opening"),
                    "",
                    "states of openings of the model, by name, that differ here"),
            may(
                    "bays",
                    new ListOf(BAY, 0, 500),
                    "",
                    "names of bays; left out = `bay 1` and so on, root or front first"),
            may(
                    "protected",
                    new ListOf(ItemFormat.PROTECTED, 0, 200),
                    "",
                    "what must not be sprayed, with a limit and perhaps a mask"),
            may(
                    "hinge",
                    ItemFormat.HINGE,
                    "",
                    "hinge line of a control surface; stated, the moment of the oil left is told"),
            may("obstacles", new ListOf(ItemFormat.OBSTACLE, 0, 200), "", "what stands outside in the way of wands"),
            may("wands", new ListOf(new FileOr(WandFormat.WAND), 0, 100), "", "wands at hand"),
            need("product", new FileOr(ModelFormat.PRODUCT), "what is sprayed"),
            need("supply", SUPPLY, "air, liquid and droplets"),
            may("entries", new ListOf(ENTRY, 0, 200), "", "openings that a wand may use"),
            may("passes", new ListOf(PASS, 0, 500), "", "what is done, in order"),
            may("hang", WAIT, "5 min", "wait after the last pass"),
            may("targets", TARGETS, "{}", "film builds that count"),
            may("gravity", GRAVITY, "{}", "attitude of the structure; left out = level"),
            may(
                    "voxel",
                    Either.of(Choice.of("auto"), VOXEL, new ListOf(VOXEL, 3, 3)),
                    "auto",
                    "voxel size, one or along x, y and z; the engine snaps it"),
            may(
                    "walls",
                    Choice.of("smooth", "bare_steel", "rough_lining"),
                    "smooth",
                    "deposition of fog on sheet in moving air: theory of smooth walls (a lower bound), or as measured in ducts"),
            may("air", Either.of(AIR_MODE, AIR), "resolved", "how the air is treated: the mode, or more"),
            may("ambient", AMBIENT, "{}", "state of the air in and round the cavity"),
            may("initial_fog", INITIAL_FOG, "", "fog present at the start"),
            may("numerics", NUMERICS, "{}", "resolution of the computation"),
            may(
                    "compare",
                    StudyFormat.COMPARE,
                    "",
                    "what `baymist compare` tries; left out = every entry with every wand"),
            may("drilling", StudyFormat.DRILLING, "", "where access holes may be thought of; left out = nowhere"),
            may("card", StudyFormat.CARD, "", "what the work card is told: interval, allowance, cup"),
            may("plan", StudyFormat.PLAN, "", "limits that a plan of passes keeps"));
}
