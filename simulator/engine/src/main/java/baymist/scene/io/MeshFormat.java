package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Field;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Real;
import baymist.scene.io.Shape.Text;
import baymist.units.Dimension;

/** The format of cavities that come from a mesh file. */
final class MeshFormat {
    private MeshFormat() {}

    private static final Choice WAY = Choice.of("aft", "forward", "right", "left", "up", "down");

    static final Group ORIENTATION = Group.of(
            "orientation",
            "which way the axes of a mesh file point in the structure",
            may("x", WAY, "aft", "way that the file's x axis points"),
            may("y", WAY, "right", "way that the file's y axis points"),
            may("z", WAY, "up", "way that the file's z axis points"));

    /** The mesh family; the fields that all families share are handed in. */
    static Group group(Field version, Field name, Field rotation, Field ports, Measure gauge) {
        return Group.of(
                "mesh",
                "sheets from a file: STL, OBJ or shell bulk data",
                version,
                name,
                need(
                        "file",
                        new Text("[^\\n]*\\S[^\\n]*", "the name of a mesh file"),
                        "mesh file, relative to this file"),
                may(
                        "unit",
                        Choice.of("m", "cm", "mm", "in", "ft"),
                        "",
                        "length unit of its coordinates; left out = asked for, with the sizes that each would give"),
                may("orientation", ORIENTATION, "{}", "which way its axes point; left out = x aft, y right, z up"),
                may("scale", Real.of("(0 .. 1e6]"), "1", "factor on its lengths beside the unit"),
                rotation,
                may("origin", CavityFormat.POINT, "", "place of the file's origin; left out = `[0, 0, 0]`"),
                may(
                        "close_gaps",
                        Measure.of(Dimension.LENGTH, "[0 mm .. 100 mm]"),
                        "0 mm",
                        "facing free edges up to this far apart are joined"),
                may("inside", CavityFormat.POINT, "", "a point in the cavity; left out = everything enclosed"),
                may("gauge", gauge, "1 mm", "thickness of the sheet where the file states none"),
                ports);
    }
}
