package baymist.verify;

import baymist.geom.Bvh;
import baymist.geom.Predicates;
import baymist.geom.RodClearance;
import baymist.geom.TriangleDistance;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Closed forms of points, segments and rods. */
final class GeometryQuantities {
    private GeometryQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put(
                "segmentDistance",
                in -> TriangleDistance.segmentSegmentM(in.vector("a"), in.vector("b"), in.vector("c"), in.vector("d")));
        all.put(
                "pointTriangleDistance",
                in -> in.vector("p")
                        .distance(TriangleDistance.closestPoint(
                                in.vector("p"), in.vector("a"), in.vector("b"), in.vector("c"))));
        all.put("sideOfLine", GeometryQuantities::sideOfLine);
        all.put("rodMeetsSlantedSheet", GeometryQuantities::rodMeetsSlantedSheet);
        return all;
    }

    /** Sign of a point just off a diagonal, counted in units of 2^-53 from (0.5, 0.5). */
    private static double sideOfLine(Inputs in) {
        double unit = 0x1p-53;
        return Predicates.orient2d(
                0.5 + in.number("i") * unit,
                0.5 + in.number("j") * unit,
                in.number("x1"),
                in.number("y1"),
                in.number("x2"),
                in.number("y2"));
    }

    /** Depth at which a rod along x meets a wide plane that cuts its axis {@code distance} ahead at {@code angle}. */
    private static double rodMeetsSlantedSheet(Inputs in) {
        double distance = in.lengthM("distance");
        double angle = in.si("angle", baymist.units.Dimension.ANGLE);
        double s = 10 * distance;
        double dx = s * Math.cos(angle);
        double dz = s * Math.sin(angle);
        TriangleMesh sheet = new TriangleMesh(
                new double[] {distance - dx, -s, -dz, distance + dx, -s, dz, distance + dx, s, dz, distance - dx, s, -dz
                },
                new int[] {0, 1, 2, 0, 2, 3});
        return RodClearance.firstContact(Vec3.ZERO, Vec3.X, in.lengthM("rod") / 2, s, sheet, Bvh.of(sheet));
    }
}
