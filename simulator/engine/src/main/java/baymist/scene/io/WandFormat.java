package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Either;
import baymist.scene.io.Shape.FileOr;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;

/** The format of wands: straight, bent once and for all, or flexible. */
final class WandFormat {
    private WandFormat() {}

    /** Along the wand, from the tip. */
    private static final Measure FROM_TIP = Measure.of(Dimension.LENGTH, "[0 mm .. 10 m]");

    private static final Group BEND = Group.of(
            "bend",
            "a bend made in a rigid tube",
            need("from_tip", FROM_TIP, "length of tube between the tip and the near end of the bend, along the tube"),
            need("radius", Measure.of(Dimension.LENGTH, "(0 mm .. 10 m]"), "radius of the tube's centre line"),
            need("angle", Measure.of(Dimension.ANGLE, "(0 deg .. 180 deg]"), "angle that the tube turns by"),
            may(
                    "roll",
                    Measure.of(Dimension.ANGLE, "[-360 deg .. 360 deg]"),
                    "0 deg",
                    "way that it turns to, from the direction pin, clockwise seen along the wand; the pin follows earlier bends"));

    private static final Group FLEXIBLE = Group.of(
            "flexible",
            "what a flexible wand allows",
            need(
                    "bend_radius",
                    Measure.of(Dimension.LENGTH, "(0 mm .. 10 m]"),
                    "smallest radius of its centre line that it takes"),
            may(
                    "total_bend",
                    Measure.of(Dimension.ANGLE, "[0 deg .. 3600 deg]"),
                    "360 deg",
                    "largest sum of all bends along it"),
            may(
                    "push",
                    Measure.of(Dimension.FORCE, "(0 N .. 1000 N]"),
                    "",
                    "largest push at the outside end; left out = no limit"),
            may(
                    "friction",
                    Measure.of(Dimension.FRACTION, "[0 .. 2]"),
                    "0.3",
                    "coefficient of friction against the sheet"));

    private static final Group MATERIAL = Group.of(
            "material",
            "what the tube is made of",
            need("name", Text.NAME, "name of the material"),
            need("density", Measure.of(Dimension.DENSITY, "[100 kg/m3 .. 25000 kg/m3]"), "density"),
            need("modulus", Measure.of(Dimension.PRESSURE, "[1 MPa .. 1000 GPa]"), "Young's modulus"),
            need("yield", Measure.of(Dimension.PRESSURE, "[0.1 MPa .. 5 GPa]"), "stress at which it stays bent"));

    private static final Group COUPLING = Group.of(
            "coupling",
            "a place where a wand comes apart",
            need("from_tip", FROM_TIP, "distance of its middle from the tip, along the wand"),
            may("outer_diameter", ModelFormat.DIAMETER, "", "outside diameter of the fitting; left out = as the tube"),
            may("length", Measure.of(Dimension.LENGTH, "(0 mm .. 500 mm]"), "20 mm", "length of the fitting"));

    static final Group WAND = Group.of(
                    "wand",
                    "a wand: straight, unless `bends` or `flexible` say otherwise",
                    ModelFormat.VERSION,
                    need("name", Text.NAME, "name by which passes call it"),
                    need(
                            "length",
                            Measure.of(Dimension.LENGTH, "(0 mm .. 10 m]"),
                            "usable length from the tip, along the tube"),
                    need("outer_diameter", ModelFormat.DIAMETER, "outside diameter"),
                    need(
                            "bore",
                            Measure.of(Dimension.LENGTH, "(0 mm .. 100 mm)"),
                            "liquid bore, smaller than the outside"),
                    need("tip", new FileOr(ModelFormat.TIP), "the spray tip at its end"),
                    may("bends", new ListOf(BEND, 1, 12), "", "bends of a rigid wand (hook tube), in any order"),
                    may("flexible", FLEXIBLE, "", "a wand that bends as it goes in"),
                    may(
                            "material",
                            Either.of(
                                    Choice.of("stainless", "steel", "brass", "aluminium", "nylon", "ptfe", "peek"),
                                    MATERIAL),
                            "",
                            "material of the tube; left out = `stainless`, of a flexible wand `nylon`"),
                    may("couplings", new ListOf(COUPLING, 1, 20), "", "places where it comes apart"))
            .atMostOneOf("bends", "flexible");
}
