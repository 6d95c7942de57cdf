package baymist.cavity;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.scene.CavitySpec.Plates;
import baymist.scene.FlatPlate;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Free plates. They are meshed so that they share vertices wherever they meet within the tolerance; then closed loops of edges
 * that only one plate has are places that no plate closes.
 */
final class PlatesFamily {
    /**
     * Plates given exactly are meshed to this first, m: a wide tolerance would also join corners that merely come close to each
     * other. Only if places stay open is the stated tolerance used.
     */
    private static final double EXACT_M = 1e-7;

    private final Plates spec;
    private SheetModel model = new SheetModel();

    private PlatesFamily(Plates spec) {
        this.spec = spec;
    }

    static SheetModel build(Plates spec) {
        return new PlatesFamily(spec).build();
    }

    private SheetModel build() {
        check();
        mesh(Math.min(EXACT_M, spec.toleranceM()));
        if (!model.gaps.isEmpty() && spec.toleranceM() > EXACT_M) {
            SheetModel exact = model;
            mesh(spec.toleranceM());
            model = model.gaps.size() < exact.gaps.size() || gapsM2(model) < gapsM2(exact) ? model : exact;
        }
        if (!spec.openGaps() && !model.gaps.isEmpty()) {
            SpecCheck check = new SpecCheck(spec.place());
            model.gaps.forEach(gap -> report(check, gap));
            check.orThrow();
        }
        return model;
    }

    private void mesh(double toleranceM) {
        model = new SheetModel();
        PlateMesher mesher = new PlateMesher(toleranceM);
        for (FlatPlate plate : spec.plates()) {
            mesher.plate(model.part(plate.name(), Names.kind(plate.name()), plate.gaugeM()), plate.corners());
        }
        mesher.mesh(model);
        new GapFinder(model).find();
    }

    private static double gapsM2(SheetModel model) {
        return model.gaps.stream()
                .mapToDouble(g -> g.place().outline().areaM2())
                .sum();
    }

    private void report(SpecCheck check, SheetModel.Gap gap) {
        Set<Vec3> rim = new HashSet<>();
        for (Vec3[] t : gap.cap()) {
            rim.add(t[1]);
        }
        String edges = edges(rim);
        check.error(
                "CAV-056",
                String.format(
                        Locale.ROOT,
                        "no plate closes a place of %.1f cm² at %s%s; a plate there, corners that meet within the"
                                + " tolerance of %s, or `gaps: open` expected",
                        1e4 * gap.place().outline().areaM2(),
                        SpecCheck.at(gap.place().centreM()),
                        edges,
                        SpecCheck.mm(spec.toleranceM())));
    }

    /** The free edges round a gap, by plate: length and middle. */
    private String edges(Set<Vec3> rim) {
        TriangleMesh mesh = model.mesh();
        EdgeTable edges = new EdgeTable(mesh);
        Map<Integer, double[]> byPart = new TreeMap<>();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                int a = mesh.corner(t, k);
                int b = mesh.corner(t, (k + 1) % 3);
                Vec3 p = mesh.vertex(a);
                Vec3 q = mesh.vertex(b);
                if (edges.usesBetween(a, b) == 1 && rim.contains(p) && rim.contains(q)) {
                    double[] sum = byPart.computeIfAbsent(model.partOf(t), part -> new double[4]);
                    double length = p.distance(q);
                    sum[0] += length;
                    for (int axis = 0; axis < 3; axis++) {
                        sum[1 + axis] += length * 0.5 * (p.get(axis) + q.get(axis));
                    }
                }
            }
        }
        StringBuilder text = new StringBuilder();
        for (var e : byPart.entrySet()) {
            double[] s = e.getValue();
            Vec3 middle = new Vec3(s[1], s[2], s[3]).times(1 / s[0]);
            text.append(text.isEmpty() ? "; its free edges: " : ", ")
                    .append(SpecCheck.mm(s[0]))
                    .append(" of '")
                    .append(model.parts.get(e.getKey()).name())
                    .append("' about ")
                    .append(SpecCheck.at(middle));
        }
        return text.toString();
    }

    private void check() {
        SpecCheck check = new SpecCheck(spec.place());
        if (!(spec.toleranceM() >= 1e-7 && spec.toleranceM() <= 0.01)) {
            check.error(
                    "CAV-055", "the tolerance is " + SpecCheck.mm(spec.toleranceM()) + "; 0.0001 mm to 10 mm expected");
        }
        Set<String> names = new HashSet<>();
        for (FlatPlate plate : spec.plates()) {
            if (!names.add(plate.name())) {
                check.error(
                        "CAV-055", plate.place(), "two plates are called '" + plate.name() + "'; names must differ");
            }
            checkPlate(check, plate);
        }
        check.orThrow();
    }

    private void checkPlate(SpecCheck check, FlatPlate plate) {
        List<Vec3> c = plate.corners();
        boolean good = c.size() >= 3 && plate.gaugeM() > 0;
        for (Vec3 p : c) {
            good &= Math.abs(p.x()) <= SpecCheck.LARGEST_M
                    && Math.abs(p.y()) <= SpecCheck.LARGEST_M
                    && Math.abs(p.z()) <= SpecCheck.LARGEST_M;
        }
        Vec3 area = good ? SheetCutter.areaVector(c) : Vec3.ZERO;
        for (int k = 0; k < c.size() && good; k++) {
            good = c.get(k).distance(c.get((k + 1) % c.size())) > 2 * spec.toleranceM();
        }
        if (!good || !(area.length() > 0)) {
            check.error(
                    "CAV-055",
                    plate.place(),
                    "plate '" + plate.name() + "' has " + c.size() + " corners and an area of "
                            + String.format(Locale.ROOT, "%.4g", 1e4 * area.length())
                            + " cm²; at least three corners within 1000 m, in turn, farther apart than twice the"
                            + " tolerance, and a thickness expected");
            return;
        }
        Vec3 middle = PlateMesher.middle(c);
        double off = 0;
        for (Vec3 p : c) {
            off = Math.max(off, Math.abs(p.minus(middle).dot(area.unit())));
        }
        if (off > spec.toleranceM()) {
            check.error(
                    "CAV-055",
                    plate.place(),
                    "plate '" + plate.name() + "' is not flat: a corner lies " + SpecCheck.mm(off)
                            + " off its plane, more than the tolerance of " + SpecCheck.mm(spec.toleranceM())
                            + "; measure again, or divide it into triangles");
        } else if (crossesItself(c)) {
            check.error(
                    "CAV-055",
                    plate.place(),
                    "the outline of plate '" + plate.name() + "' crosses itself; list its corners in turn");
        }
    }

    private static boolean crossesItself(List<Vec3> c) {
        List<List<double[]>> pieces =
                ConvexPieces.of(RibSheets.polygon(c, c.get(1).minus(c.get(0)), SheetCutter.areaVector(c))
                        .outline());
        double whole = SheetCutter.area(c);
        return Math.abs(ConvexPieces.area(pieces) - whole) > 1e-6 * whole;
    }
}
