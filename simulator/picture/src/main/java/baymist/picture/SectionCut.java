package baymist.picture;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;

/** Exact cut of triangles by a plane square to an axis. */
final class SectionCut {
    private SectionCut() {}

    /**
     * A straight piece of a cut sheet.
     *
     * @param owner part or opening that the triangle belongs to
     */
    record Segment(Vec3 a, Vec3 b, int owner) {}

    /** The pieces in the order of the triangles; a triangle that only touches the plane, or lies in it, gives none. */
    static List<Segment> of(TriangleMesh mesh, IntUnaryOperator owner, int axis, double atM) {
        List<Segment> segments = new ArrayList<>();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            Vec3 first = null;
            Vec3 second = null;
            for (int k = 0; k < 3; k++) {
                Vec3 p = mesh.point(t, k);
                Vec3 q = mesh.point(t, (k + 1) % 3);
                // half-open, so that a corner on the plane counts once
                if (p.get(axis) < atM != q.get(axis) < atM) {
                    double share = (atM - p.get(axis)) / (q.get(axis) - p.get(axis));
                    Vec3 cut = p.plus(share, q.minus(p));
                    if (first == null) {
                        first = cut;
                    } else {
                        second = cut;
                    }
                }
            }
            if (first != null && second != null) {
                segments.add(new Segment(first, second, owner.applyAsInt(t)));
            }
        }
        return segments;
    }
}
