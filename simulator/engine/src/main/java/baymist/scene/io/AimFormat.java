package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.Measure;
import baymist.units.Dimension;

/** The format of what a wand is aimed at, and of what lines its entry. */
final class AimFormat {
    private AimFormat() {}

    private static final Group REGION = Group.of(
            "region",
            "a box along the axes of the structure",
            need("low", CavityFormat.POINT, "its corner with the smallest coordinates"),
            need("high", CavityFormat.POINT, "its corner with the largest coordinates"));

    static final Group AIM = Group.of(
                    "aim",
                    "a place that the tip is to come nearest to on its way",
                    may("near", CavityFormat.POINT, "", "a point"),
                    may("region", REGION, "", "a box; within it, every place is as good"))
            .oneOf("near", "region");

    static final Group GROMMET = Group.of(
            "grommet",
            "a grommet, bush or edge lining in a hole",
            need("bore", Measure.of(Dimension.LENGTH, "(0 mm .. 1 m]"), "diameter that it leaves"),
            need(
                    "thickness",
                    Measure.of(Dimension.LENGTH, "(0 mm .. 200 mm]"),
                    "length of its bore along the hole, half on either side of the sheet"));

    static final Group SECOND_PLATE = Group.of(
            "second_plate",
            "a second plate parallel to the opening's sheet, its hole opposite the opening's middle",
            need(
                    "distance",
                    Measure.of(Dimension.LENGTH, "[-1 m .. 1 m]"),
                    "distance from the opening, positive further in, negative outside"),
            need("shape", CavityFormat.OUTLINE, "outline of its hole, lengthwise as the opening's"),
            may("gauge", Measure.of(Dimension.LENGTH, "[0 mm .. 100 mm]"), "1 mm", "its thickness"));
}
