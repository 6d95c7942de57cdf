package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.MeshPose;
import baymist.scene.OpeningSpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import baymist.units.Quantities;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Makes the cavity of a mesh file with its place in the structure. */
final class MeshAssembler {
    private static final Map<String, Vec3> WAYS = Map.of(
            "aft",
            Vec3.X,
            "forward",
            new Vec3(-1, 0, 0),
            "right",
            Vec3.Y,
            "left",
            new Vec3(0, -1, 0),
            "up",
            Vec3.Z,
            "down",
            new Vec3(0, 0, -1));

    private final SourceFiles files;
    private final Problems problems;

    MeshAssembler(SourceFiles files, Problems problems) {
        this.files = files;
        this.problems = problems;
    }

    CavitySpec mesh(Fields f, Vec3 rotationDeg, Vec3 originM, List<OpeningSpec> ports) {
        SourcePlace at = f.at("file");
        Path named = Path.of(f.place().file());
        Path file = f.text("file").isEmpty() ? null : files.resolve(named, f.text("file"), at);
        if (file != null) {
            files.include(file, at);
        }
        double unit = f.text("unit").isEmpty() ? Double.NaN : Quantities.parse("1 " + f.text("unit"), Dimension.LENGTH);
        return new CavitySpec.Mesh(
                f.text("name"),
                file == null ? named : file,
                unit,
                f.vector("inside"),
                f.si("gauge"),
                ports,
                f.place(),
                pose(f, rotationDeg, originM),
                f.si("close_gaps"));
    }

    private MeshPose pose(Fields f, Vec3 rotationDeg, Vec3 originM) {
        Fields o = f.fields("orientation");
        Vec3 x = way(o, "x", Vec3.X);
        Vec3 y = way(o, "y", Vec3.Y);
        Vec3 z = way(o, "z", Vec3.Z);
        double turn = x.cross(y).dot(z);
        if (o != null && turn != 1) {
            String found = "x " + o.text("x") + ", y " + o.text("y") + ", z " + o.text("z");
            problems.add(
                    SceneProblem.ORIENTATION,
                    o.place(),
                    turn == 0
                            ? "two axes of the mesh point along one line (" + found
                                    + "); three ways square to each other are wanted"
                            : "the ways " + found
                                    + " would mirror the structure, left for right; turn one of them about");
        }
        return new MeshPose(x, y, z, rotationDeg, originM, f.si("scale"));
    }

    private static Vec3 way(@org.jspecify.annotations.Nullable Fields o, String key, Vec3 usual) {
        return o == null ? usual : WAYS.getOrDefault(o.text(key), usual);
    }
}
