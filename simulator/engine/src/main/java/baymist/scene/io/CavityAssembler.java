package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.io.Value.Fields;
import java.util.ArrayList;
import java.util.List;

/** Makes the cavity of one of the families and checks what its numbers must satisfy together. */
final class CavityAssembler {
    private final SourceFiles files;
    private final Problems problems;
    private final OpeningAssembler openings;

    CavityAssembler(SourceFiles files, Problems problems, OpeningAssembler openings) {
        this.files = files;
        this.problems = problems;
        this.openings = openings;
    }

    CavitySpec cavity(Fields f) {
        return switch (f.group()) {
            case "control_surface" -> new ControlSurfaceAssembler(problems, openings).controlSurface(f);
            case "wing_box" -> new WingBoxAssembler(problems, openings).wingBox(f);
            case "block" -> block(f);
            case "round" -> round(f);
            case "shell" -> new ShellFormat(openings, problems).shell(f, ports(f));
            case "box_section" -> new BoxSectionFormat(openings, new ShellFormat(openings, problems)).box(f, ports(f));
            case "tube_frame" -> new TubeFrameFormat(problems, openings).frame(f, ports(f));
            case "mesh" -> new MeshAssembler(files, problems).mesh(f, rotationDeg(f), vector(f, "origin"), ports(f));
            case "door" -> new DoorFormat(problems, openings).door(f);
            case "stiffened_void" -> new VoidFormat(openings).space(f);
            case "plates" -> new PlatesFormat(problems, openings).plates(f);
            case "bodies" -> new BodiesFormat(files, problems).bodies(f);
            default -> throw new IllegalArgumentException("no cavity family " + f.group());
        };
    }

    private CavitySpec block(Fields f) {
        return new CavitySpec.Block(
                f.text("name"),
                vector(f, "size"),
                rotationDeg(f),
                vector(f, "origin"),
                f.si("gauge"),
                ports(f),
                f.place());
    }

    private CavitySpec round(Fields f) {
        return new CavitySpec.Round(
                f.text("name"),
                f.si("length"),
                f.si("radius"),
                f.whole("segments"),
                rotationDeg(f),
                vector(f, "origin"),
                f.si("gauge"),
                ports(f),
                f.place());
    }

    private List<OpeningSpec> ports(Fields f) {
        return openings.openings(new ArrayList<>(f.list("ports")));
    }

    static Vec3 vector(Fields f, String key) {
        Vec3 v = f.vector(key);
        return v == null ? Vec3.ZERO : v;
    }

    private static Vec3 rotationDeg(Fields f) {
        return rotationDeg(f, "rotation");
    }

    static Vec3 rotationDeg(Fields f, String key) {
        Vec3 v = vector(f, key);
        return new Vec3(degrees(v.x()), degrees(v.y()), degrees(v.z()));
    }

    /** Whole right angles come back as such: the builder turns those exactly. */
    private static double degrees(double rad) {
        double deg = Math.toDegrees(rad);
        double near = Math.rint(deg * 1e9) / 1e9;
        return Math.abs(near - deg) < 1e-11 ? near : deg;
    }
}
