package baymist.verify;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.RayHit;
import baymist.geom.TriangleFilter;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;

/** Sheets and openings as built. */
final class GeometryReadings {
    private GeometryReadings() {}

    static Map<String, ToDoubleBiFunction<CheckResult, Inputs>> all() {
        Map<String, ToDoubleBiFunction<CheckResult, Inputs>> all = new TreeMap<>();
        all.put("sectionOrdinate", (r, in) -> sectionOrdinate(r.cavity(), in));
        all.put("openingArea", (r, in) -> opening(r.cavity(), in).areaM2());
        all.put(
                "openingPerimeter",
                (r, in) -> opening(r.cavity(), in).place().outline().perimeterM());
        all.put("sheetArea", (r, in) -> sheetArea(r.cavity(), in));
        all.put("cutSheetArea", (r, in) -> cutSheetArea(r.cavity(), in));
        all.put("enclosedVolume", (r, in) -> enclosedVolume(r.cavity().sheets()));
        all.put("extent", (r, in) -> extent(r.cavity(), in));
        all.put("rayDistance", (r, in) -> rayDistance(r.cavity(), in));
        return all;
    }

    private static int part(Cavity cavity, Inputs in) {
        String name = in.word("part");
        for (int p = 0; p < cavity.parts().size(); p++) {
            if (cavity.parts().get(p).name().equals(name)) {
                return p;
            }
        }
        throw new IllegalArgumentException("part \"" + name + "\" is not one of " + cavity.parts());
    }

    static Opening opening(Cavity cavity, Inputs in) {
        int index = cavity.openingIndex(in.word("opening"));
        if (index < 0) {
            throw new IllegalArgumentException("opening \"" + in.word("opening") + "\" is not there");
        }
        return cavity.openings().get(index);
    }

    /** Height of a skin's corner at a chordwise place, both in chords of one metre. */
    private static double sectionOrdinate(Cavity cavity, Inputs in) {
        int part = part(cavity, in);
        double x = in.number("x");
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            for (int k = 0; k < 3 && cavity.partOfSheet(t) == part; k++) {
                Vec3 p = cavity.sheets().point(t, k);
                if (Math.abs(p.x() - x) < 1e-9) {
                    return p.z();
                }
            }
        }
        throw new IllegalArgumentException("no corner of the skin stands at " + x + " of the chord");
    }

    private static double sheetArea(Cavity cavity, Inputs in) {
        int part = part(cavity, in);
        double area = 0;
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            area += cavity.partOfSheet(t) == part ? cavity.sheets().areaM2(t) : 0;
        }
        return area;
    }

    private static double cutSheetArea(Cavity cavity, Inputs in) {
        int part = part(cavity, in);
        double area = 0;
        for (int t = 0; t < cavity.cutSheets().triangleCount(); t++) {
            area += cavity.partOfCut(t) == part ? cavity.cutSheets().areaM2(t) : 0;
        }
        return area;
    }

    /** Volume by the divergence theorem, for a body whose triangles all turn the same way. */
    private static double enclosedVolume(TriangleMesh mesh) {
        double six = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            six += mesh.point(t, 0).dot(mesh.point(t, 1).cross(mesh.point(t, 2)));
        }
        return Math.abs(six) / 6;
    }

    private static double extent(Cavity cavity, Inputs in) {
        Box3 box = cavity.sheets().bounds();
        return box.size().get(in.whole("axis"));
    }

    private static double rayDistance(Cavity cavity, Inputs in) {
        RayHit hit = Bvh.of(cavity.sheets())
                .closestHit(
                        in.vector("from"), in.vector("along").unit(), 0, Double.POSITIVE_INFINITY, TriangleFilter.ALL);
        return hit == null ? Double.NaN : hit.t();
    }
}
