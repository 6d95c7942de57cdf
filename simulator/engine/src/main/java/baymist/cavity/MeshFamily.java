package baymist.cavity;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.Mesh;
import baymist.scene.MeshPose;
import baymist.scene.Turns;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Sheets from a mesh file: scaled to metres and laid into structure axes, vertices welded by exact coordinates, triangles
 * without area and duplicate triangles dropped (and remarked), gaps closed on request, closed loops of free edges capped as
 * gaps.
 */
final class MeshFamily {
    private static final int MOST_PLACES = 3;

    private final Mesh spec;
    private final RawMesh raw;
    /** Length of a file unit with the scale, m. */
    private final double unitM;

    private SheetModel model = new SheetModel();

    private MeshFamily(Mesh spec) {
        this.spec = spec;
        this.raw = MeshReader.read(spec);
        this.unitM = spec.unitM() * spec.pose().scale();
    }

    static SheetModel build(Mesh spec) {
        SpecCheck check = new SpecCheck(spec.place());
        if (!Double.isNaN(spec.unitM())) {
            check.positive("unit", spec.unitM());
        }
        check.notNegative("close_gaps", spec.closeGapsM());
        check.positive("gauge", spec.gaugeM());
        check.orThrow();
        return new MeshFamily(spec).build();
    }

    private SheetModel build() {
        if (Double.isNaN(spec.unitM())) {
            throw new SceneException("MSH-016", spec.place(), MeshExtent.question(raw));
        }
        MeshExtent.check(raw, unitM, source());
        parts();
        MeshImport imported = triangles();
        if (model.triangleCount() == 0) {
            throw new SceneException("MSH-003", source(), "none of the mesh's triangles has an area");
        }
        model.remarks.addAll(raw.remarks);
        model.imported = imported;
        if (spec.closeGapsM() > 0) {
            closeGaps(imported);
        }
        new GapFinder(model).find();
        return model;
    }

    private void closeGaps(MeshImport imported) {
        GapCloser.Outcome o = GapCloser.close(model, spec.closeGapsM());
        model = o.model();
        model.imported = imported.withClosed(model.triangleCount(), o.welded(), o.zipped(), o.widestM(), o.closedM());
        if (o.welded() + o.zipped() == 0) {
            model.remarks.add("no facing free edges lie within " + SpecCheck.mm(spec.closeGapsM())
                    + " of each other; close_gaps closed nothing");
            return;
        }
        model.remarks.add(String.format(
                Locale.ROOT,
                "close_gaps joined %d vertices and set %d into edges across gaps of up to %s; %.3f m of free edges are"
                        + " closed, first at %s",
                o.welded(),
                o.zipped(),
                SpecCheck.mm(o.widestM()),
                o.closedM(),
                o.places().stream().map(SpecCheck::at).collect(Collectors.joining(", "))));
    }

    private SourcePlace source() {
        return SourcePlace.of(String.valueOf(spec.file().getFileName()));
    }

    private void parts() {
        Set<String> taken = new HashSet<>();
        for (RawMesh.RawPart part : raw.parts) {
            String name = Names.friendly(part.name());
            if (name.isEmpty()) {
                name = "part " + (model.parts.size() + 1);
            }
            String unique = name;
            for (int k = 2; !taken.add(unique); k++) {
                unique = name + " (" + k + ")";
            }
            double gauge = part.gauge() > 0 ? part.gauge() * unitM : spec.gaugeM();
            if (part.gauge() <= 0) {
                model.remarks.add("part '" + unique + "' states a thickness of " + part.gauge() + "; "
                        + SpecCheck.mm(spec.gaugeM()) + " is used");
            }
            model.part(unique, Names.kind(unique), gauge);
        }
    }

    /** Adds the triangles in structure axes, those without area and second copies left out. */
    private MeshImport triangles() {
        TriangleSet seen = new TriangleSet();
        Dropped flat = new Dropped();
        Dropped twice = new Dropped();
        Vec3[] p = new Vec3[3];
        for (int t = 0; t < raw.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                p[k] = placed(raw.coordinate(t, k, 0), raw.coordinate(t, k, 1), raw.coordinate(t, k, 2));
            }
            int a = model.vertex(p[0]);
            int b = model.vertex(p[1]);
            int c = model.vertex(p[2]);
            Vec3 n = p[1].minus(p[0]).cross(p[2].minus(p[0]));
            if (a == b || b == c || c == a || n.length() == 0) {
                flat.add(p);
            } else if (!seen.add(a, b, c)) {
                twice.add(p);
            } else {
                model.triangle(raw.part(t), a, b, c);
            }
        }
        flat.remark(model, "without area");
        twice.remark(model, "given twice");
        return new MeshImport(model.triangleCount(), flat.done(), twice.done(), 0, 0, 0, 0);
    }

    private Vec3 placed(double x, double y, double z) {
        MeshPose pose = spec.pose();
        return Turns.turned(pose.laid(x * unitM, y * unitM, z * unitM), pose.rotationDeg())
                .plus(pose.originM());
    }

    /** Triangles left out for one reason: how many, and where the first few are. */
    private static final class Dropped {
        private int number;
        private final List<Vec3> places = new ArrayList<>();

        void add(Vec3[] p) {
            number++;
            if (places.size() < MOST_PLACES) {
                places.add(p[0].plus(p[1]).plus(p[2]).times(1.0 / 3.0));
            }
        }

        MeshImport.Dropped done() {
            return new MeshImport.Dropped(number, places);
        }

        void remark(SheetModel model, String reason) {
            if (number > 0) {
                model.remarks.add(
                        number + " triangle(s) " + reason + " left out, the first at " + SpecCheck.at(places.get(0)));
            }
        }
    }
}
