package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.TriangleDistance;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;

/** The sheets of each part by themselves, each with a tree that is made when first asked for; belongs to one build and one thread. */
final class PartSheets {
    private final TriangleMesh sheets;
    private final int[] partOfSheet;
    private final double sizeM;
    private final Map<Integer, OnePart> parts = new HashMap<>();

    PartSheets(TriangleMesh sheets, int[] partOfSheet) {
        this.sheets = sheets;
        this.partOfSheet = partOfSheet.clone();
        this.sizeM = sheets.bounds().size().length();
    }

    private record OnePart(TriangleMesh mesh, Bvh tree, Box3 bounds) {}

    /** Diagonal of all sheets' box, m. */
    double sizeM() {
        return sizeM;
    }

    /** Box of a part's sheets; empty for a part without any. */
    Box3 bounds(int part) {
        return part(part).bounds;
    }

    /** Point of a part's sheets nearest to p; p itself for a part without sheets. */
    Vec3 nearest(int part, Vec3 p) {
        Bvh.Nearest nearest = part(part).tree.nearest(p);
        return nearest == null ? p : nearest.point();
    }

    /** Normal of a part's sheet at a point of it: mean over the triangles that touch it, each turned like the first. */
    Vec3 normalAt(int part, Vec3 p) {
        OnePart one = part(part);
        double touch = 1e-9 * sizeM;
        IntStream.Builder near = IntStream.builder();
        one.tree.forEachNear(Box3.EMPTY.including(p).grown(2 * touch), near::add);
        Vec3 first = Vec3.ZERO;
        Vec3 sum = Vec3.ZERO;
        for (int t : near.build().sorted().toArray()) {
            Vec3 q = TriangleDistance.closestPoint(p, one.mesh.point(t, 0), one.mesh.point(t, 1), one.mesh.point(t, 2));
            if (q.distance(p) <= touch) {
                Vec3 n = one.mesh.normal(t);
                first = first.equals(Vec3.ZERO) ? n : first;
                sum = sum.plus(n.dot(first) < 0 ? n.negate() : n);
            }
        }
        return sum.length() > 0 ? sum.unit() : first.unit();
    }

    private OnePart part(int part) {
        return parts.computeIfAbsent(part, this::made);
    }

    /** Triangles in the order that they have among all sheets. */
    private OnePart made(int part) {
        int[] own = IntStream.range(0, sheets.triangleCount())
                .filter(t -> partOfSheet[t] == part)
                .toArray();
        double[] xyz = new double[9 * own.length];
        int[] corners = new int[3 * own.length];
        Arrays.setAll(corners, c -> c);
        Box3 box = Box3.EMPTY;
        for (int c = 0; c < corners.length; c++) {
            Vec3 point = sheets.point(own[c / 3], c % 3);
            box = box.including(point);
            xyz[3 * c] = point.x();
            xyz[3 * c + 1] = point.y();
            xyz[3 * c + 2] = point.z();
        }
        TriangleMesh mesh = new TriangleMesh(xyz, corners);
        return new OnePart(mesh, Bvh.of(mesh), box);
    }
}
