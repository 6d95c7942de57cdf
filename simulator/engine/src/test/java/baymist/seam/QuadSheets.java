package baymist.seam;

import baymist.cavity.Cavity;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Sheets made of quadrilaterals by hand; each has corners of its own, so that nothing is shared but places. */
public final class QuadSheets {
    private final List<Part> parts = new ArrayList<>();
    private final List<Vec3> points = new ArrayList<>();
    private final List<Integer> partOf = new ArrayList<>();
    private UnaryOperator<Vec3> map = p -> p;

    /** Moves every corner from here on. */
    public QuadSheets moved(UnaryOperator<Vec3> by) {
        map = by;
        return this;
    }

    public QuadSheets quad(String part, PartKind kind, Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
        int p = 0;
        while (p < parts.size() && !parts.get(p).name().equals(part)) {
            p++;
        }
        if (p == parts.size()) {
            parts.add(new Part(part, kind, 0.001));
        }
        for (Vec3 corner : List.of(a, b, c, a, c, d)) {
            points.add(map.apply(corner));
        }
        partOf.add(p);
        partOf.add(p);
        return this;
    }

    /** A rectangle square to an axis: {@code at} along it, from low to high on the two others in the order x, y, z. */
    public QuadSheets plate(String part, int axis, double at, double lowU, double highU, double lowV, double highV) {
        return quad(
                part,
                PartKind.WALL,
                point(axis, at, lowU, lowV),
                point(axis, at, highU, lowV),
                point(axis, at, highU, highV),
                point(axis, at, lowU, highV));
    }

    private static Vec3 point(int axis, double at, double u, double v) {
        return axis == 0 ? new Vec3(at, u, v) : axis == 1 ? new Vec3(u, at, v) : new Vec3(u, v, at);
    }

    /** A closed box from the origin on: "x0", "x1", "y0" and so on, each a part. */
    public QuadSheets box(double a, double b, double c) {
        return plate("x0", 0, 0, 0, b, 0, c)
                .plate("x1", 0, a, 0, b, 0, c)
                .plate("y0", 1, 0, 0, a, 0, c)
                .plate("y1", 1, b, 0, a, 0, c)
                .plate("z0", 2, 0, 0, a, 0, b)
                .plate("z1", 2, c, 0, a, 0, b);
    }

    public Cavity build() {
        double[] xyz = new double[3 * points.size()];
        int[] corners = new int[points.size()];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = i;
            for (int axis = 0; axis < 3; axis++) {
                xyz[3 * i + axis] = points.get(i).get(axis);
            }
        }
        TriangleMesh mesh = new TriangleMesh(xyz, corners);
        int[] part = partOf.stream().mapToInt(Integer::intValue).toArray();
        TriangleMesh none = new TriangleMesh(new double[0], new int[0]);
        return new Cavity("sheets", parts, List.of(), mesh, part, mesh, part, none, new int[0], null, List.of());
    }
}
