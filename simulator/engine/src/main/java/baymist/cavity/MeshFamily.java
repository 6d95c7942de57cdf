package baymist.cavity;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.Mesh;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Sheets from a mesh file: scaled to metres, vertices welded by exact coordinates, triangles without area and duplicate
 * triangles dropped (and remarked), closed loops of free edges capped as gaps.
 */
final class MeshFamily {
    /** Extent of a structure, m; outside of this the unit of the file is most likely stated wrongly. */
    private static final double SMALLEST_M = 2e-3;

    private static final double FARTHEST_M = 100_000;

    private final Mesh spec;
    private final RawMesh raw;
    private final SheetModel model = new SheetModel();

    private MeshFamily(Mesh spec) {
        this.spec = spec;
        this.raw = MeshReader.read(spec);
    }

    static SheetModel build(Mesh spec) {
        SpecCheck check = new SpecCheck(spec.place());
        check.positive("unit", spec.unitM());
        check.positive("gauge", spec.gaugeM());
        check.orThrow();
        return new MeshFamily(spec).build();
    }

    private SheetModel build() {
        checkExtent();
        parts();
        triangles();
        if (model.triangleCount() == 0) {
            throw new SceneException("MSH-003", source(), "none of the mesh's triangles has an area");
        }
        model.remarks.addAll(raw.remarks);
        new GapFinder(model).find();
        return model;
    }

    private SourcePlace source() {
        return SourcePlace.of(String.valueOf(spec.file().getFileName()));
    }

    private void checkExtent() {
        double[] low = new double[3];
        double[] high = new double[3];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int t = 0; t < raw.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                for (int axis = 0; axis < 3; axis++) {
                    double c = raw.coordinate(t, k, axis) * spec.unitM();
                    low[axis] = Math.min(low[axis], c);
                    high[axis] = Math.max(high[axis], c);
                }
            }
        }
        double extent = 0;
        double farthest = 0;
        for (int axis = 0; axis < 3; axis++) {
            extent = Math.max(extent, high[axis] - low[axis]);
            farthest = Math.max(farthest, Math.max(Math.abs(low[axis]), Math.abs(high[axis])));
        }
        if (!(extent >= SMALLEST_M && extent <= SpecCheck.LARGEST_M)) {
            throw new SceneException(
                    "MSH-015",
                    source(),
                    "with a unit of " + spec.unitM() + " m the mesh is " + extent
                            + " m long; 2 mm to 1000 m expected: is the unit right?");
        }
        if (farthest > FARTHEST_M) {
            throw new SceneException(
                    "MSH-015",
                    source(),
                    "with a unit of " + spec.unitM() + " m the mesh lies " + farthest
                            + " m from the origin; at most 100 km expected: is the unit right?");
        }
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
            double gauge = part.gauge() > 0 ? part.gauge() * spec.unitM() : spec.gaugeM();
            if (part.gauge() <= 0) {
                model.remarks.add("part '" + unique + "' states a thickness of " + part.gauge() + "; "
                        + SpecCheck.mm(spec.gaugeM()) + " is used");
            }
            model.part(unique, Names.kind(unique), gauge);
        }
    }

    private void triangles() {
        Set<Corners> seen = new HashSet<>();
        Dropped flat = new Dropped();
        Dropped twice = new Dropped();
        for (int t = 0; t < raw.triangles(); t++) {
            Vec3[] p = new Vec3[3];
            for (int k = 0; k < 3; k++) {
                p[k] = new Vec3(raw.coordinate(t, k, 0), raw.coordinate(t, k, 1), raw.coordinate(t, k, 2))
                        .times(spec.unitM());
            }
            int a = model.vertex(p[0]);
            int b = model.vertex(p[1]);
            int c = model.vertex(p[2]);
            Vec3 n = p[1].minus(p[0]).cross(p[2].minus(p[0]));
            if (a == b || b == c || c == a || n.length() == 0) {
                flat.add(p);
            } else if (!seen.add(Corners.of(a, b, c))) {
                twice.add(p);
            } else {
                model.triangle(raw.part(t), a, b, c);
            }
        }
        flat.remark(model, "without area");
        twice.remark(model, "given twice");
    }

    /** A triangle's vertices, sorted. */
    private record Corners(int low, int middle, int high) {
        static Corners of(int a, int b, int c) {
            int low = Math.min(a, Math.min(b, c));
            int high = Math.max(a, Math.max(b, c));
            return new Corners(low, a + b + c - low - high, high);
        }
    }

    /** Triangles left out for one reason: how many, and where the first is. */
    private static final class Dropped {
        private int number;
        private Vec3 first = Vec3.ZERO;

        void add(Vec3[] p) {
            if (number++ == 0) {
                first = p[0].plus(p[1]).plus(p[2]).times(1.0 / 3.0);
            }
        }

        void remark(SheetModel model, String reason) {
            if (number > 0) {
                model.remarks.add(number + " triangle(s) " + reason + " left out, the first at " + SpecCheck.at(first));
            }
        }
    }

    /** Number of triangles at each edge of a mesh; the key is the pair of vertex numbers, lower first. */
    static Map<Long, Integer> edgeUses(TriangleMesh mesh) {
        Map<Long, Integer> uses = new HashMap<>();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                uses.merge(edge(mesh.corner(t, k), mesh.corner(t, (k + 1) % 3)), 1, Integer::sum);
            }
        }
        return uses;
    }

    static long edge(int a, int b) {
        return ((long) Math.min(a, b) << 32) | Math.max(a, b);
    }
}
