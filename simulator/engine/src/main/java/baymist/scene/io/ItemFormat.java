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

/** The format of protected items and of obstacles. */
final class ItemFormat {
    private ItemFormat() {}

    private static final Measure SIZE = Measure.of(Dimension.LENGTH, "(0 mm .. 100 m]");

    private static final Field SPHERE = may(
            "sphere",
            Group.of(
                    "sphere",
                    "a ball",
                    need("at", CavityFormat.POINT, "its centre"),
                    need("diameter", SIZE, "its diameter")),
            "",
            "a ball");

    private static final Field BOX = may(
            "box",
            Group.of(
                    "box",
                    "a box",
                    need("at", CavityFormat.POINT, "its centre"),
                    need("size", new ListOf(SIZE, 3, 3), "lengths along x, y and z before it is turned"),
                    may(
                            "rotate",
                            new ListOf(Measure.of(Dimension.ANGLE, "[-360 deg .. 360 deg]"), 3, 3),
                            "",
                            "turns about x, y and z, in that order; left out = none")),
            "",
            "a box");

    private static final Field CYLINDER = may(
            "cylinder",
            Group.of(
                    "cylinder",
                    "a straight cylinder with flat ends",
                    need("from", CavityFormat.POINT, "middle of one end"),
                    need("to", CavityFormat.POINT, "middle of the other end"),
                    need("diameter", SIZE, "its diameter")),
            "",
            "a cylinder");

    static final Group PROTECTED = Group.of(
                    "protected_item",
                    "something in the cavity that the product must not reach, or only so much",
                    need("name", Text.NAME, "its name"),
                    SPHERE,
                    BOX,
                    CYLINDER,
                    may("part", Text.NAME, "", "a part of the structure's own model, such as a group of a mesh"),
                    may(
                            "limit",
                            Measure.of(Dimension.LENGTH, "[0 um .. 10 mm]"),
                            "1 um",
                            "film above which it counts as exceeded"),
                    may("mask", Choice.of("none", "bag", "tape"), "none", "what covers it during the job"))
            .oneOf("sphere", "box", "cylinder", "part");

    static final Group OBSTACLE = Group.of(
                    "obstacle",
                    "something outside in the way of a wand",
                    need("name", Text.NAME, "its name"),
                    SPHERE,
                    BOX,
                    CYLINDER)
            .oneOf("sphere", "box", "cylinder");

    static final Group HINGE = Group.of(
            "hinge",
            "the line that a control surface turns about",
            need("from", CavityFormat.POINT, "a point on it"),
            need("to", CavityFormat.POINT, "another point on it"));
}
