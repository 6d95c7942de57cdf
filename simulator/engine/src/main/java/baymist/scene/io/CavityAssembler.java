package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import baymist.units.Quantities;
import java.nio.file.Path;
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
            case "control_surface" -> controlSurface(f);
            case "wing_box" -> wingBox(f);
            case "block" -> block(f);
            case "round" -> round(f);
            case "mesh" -> mesh(f);
            case "door" -> new DoorFormat(problems, openings).door(f);
            case "stiffened_void" -> new VoidFormat(openings).space(f);
            case "plates" -> new PlatesFormat(problems, openings).plates(f);
            case "bodies" -> new BodiesFormat(files, problems).bodies(f);
            default -> throw new IllegalArgumentException("no cavity family " + f.group());
        };
    }

    private CavitySpec controlSurface(Fields f) {
        double rootChord = f.si("root_chord");
        double rootDepth = f.si("root_depth");
        double tipChord = f.si("tip_chord", rootChord);
        double tipDepth = f.si("tip_depth", rootDepth);
        double edge = f.si("edge_depth");
        if (edge > Math.min(rootDepth, tipDepth)) {
            problems.add(
                    SceneProblem.SECTION,
                    f.at("edge_depth"),
                    "the trailing edge is deeper (" + f.written("edge_depth") + ") than the spar; at most "
                            + Quantities.length(Math.min(rootDepth, tipDepth)) + " is wanted");
        }
        Ribs ribs = new Ribs(f, problems, openings);
        double span = f.si("span");
        List<CavitySpec.Rib> made = ribs.inSections(
                (y, aft) -> {
                    double t = y / span;
                    double chord = rootChord + t * (tipChord - rootChord);
                    double spar = rootDepth + t * (tipDepth - rootDepth);
                    return spar + aft / chord * (edge - spar);
                },
                y -> rootChord + y / span * (tipChord - rootChord));
        return new CavitySpec.ControlSurface(
                f.text("name"),
                span,
                rootChord,
                tipChord,
                rootDepth,
                tipDepth,
                edge,
                f.si("gauge"),
                made,
                ports(f),
                f.place());
    }

    private CavitySpec wingBox(Fields f) {
        double front = f.si("front_spar");
        double rear = f.si("rear_spar");
        if (front >= rear) {
            problems.add(
                    SceneProblem.SPARS,
                    f.at("rear_spar"),
                    "the rear spar (" + f.written("rear_spar") + ") is not aft of the front spar ("
                            + f.written("front_spar") + "); wanted: 0 < front_spar < rear_spar < 1");
        }
        double rootChord = f.si("root_chord");
        double tipChord = f.si("tip_chord", rootChord);
        double span = f.si("span");
        String naca = f.text("naca");
        double thickness = naca.length() == 4 ? Integer.parseInt(naca.substring(2)) / 100.0 : Double.NaN;
        if (thickness == 0) {
            problems.add(
                    SceneProblem.SECTION,
                    f.at("naca"),
                    "`" + naca + "` has no thickness; its last two digits must not be 00");
        }
        Fields stringers = f.fields("stringers");
        double height = stringers == null ? 0 : stringers.si("height");
        if (stringers != null && height > 0.45 * thickness * Math.min(rootChord, tipChord)) {
            problems.add(
                    SceneProblem.STRINGERS,
                    stringers.at("height"),
                    "a stringer of " + stringers.written("height") + " is nearly as high as half of the box; at most "
                            + Quantities.length(0.45 * thickness * Math.min(rootChord, tipChord)) + " is wanted");
        }
        // The greatest depth of the section bounds every place of it; the builder of the geometry checks the place
        // itself.
        List<CavitySpec.Rib> ribs = new Ribs(f, problems, openings)
                .inSections(
                        (y, aft) -> thickness * (rootChord + y / span * (tipChord - rootChord)),
                        y -> (front < rear ? rear - front : Double.NaN)
                                * (rootChord + y / span * (tipChord - rootChord)));
        return new CavitySpec.WingBox(
                f.text("name"),
                naca,
                span,
                rootChord,
                tipChord,
                f.si("sweep"),
                f.si("dihedral"),
                front,
                rear,
                f.si("gauge"),
                stringers == null ? 0 : stringers.whole("upper"),
                stringers == null ? 0 : stringers.whole("lower"),
                height,
                ribs,
                ports(f),
                f.place());
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

    private CavitySpec mesh(Fields f) {
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
