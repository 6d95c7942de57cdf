package baymist.picture;

import baymist.cavity.Cavity;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Edges that a draughtsman would draw: rims, folds, and lines where parts meet. */
final class FeatureEdges {
    /** Sheets that turn less than this are smooth: cosine of 25 degrees (ASSUMED). */
    private static final double SMOOTH = 0.906;
    /** Meshes beyond this are drawn without edges: they would only blacken the page. */
    private static final int MOST_TRIANGLES = 300_000;

    private FeatureEdges() {}

    /** An edge and how many triangles it has so far. */
    private static final class Use {
        final Vec3 a;
        final Vec3 b;
        final Vec3 normal;
        final int part;
        int triangles = 1;
        boolean drawn = true;

        Use(Vec3 a, Vec3 b, Vec3 normal, int part) {
            this.a = a;
            this.b = b;
            this.normal = normal;
            this.part = part;
        }

        void meet(Vec3 other, int otherPart) {
            triangles++;
            boolean smooth = Math.abs(normal.dot(other)) > SMOOTH && part == otherPart;
            drawn = triangles > 2 || !smooth;
        }
    }

    private record Key(Vec3 low, Vec3 high) {}

    static List<Vec3[]> of(Cavity cavity) {
        // whole sheets: cutting leaves edges that lie on no line of the structure
        TriangleMesh mesh = cavity.sheets();
        Map<Key, Use> uses = new HashMap<>();
        List<Use> order = new ArrayList<>();
        for (int t = 0; t < mesh.triangleCount() && mesh.triangleCount() <= MOST_TRIANGLES; t++) {
            Vec3 n = mesh.normal(t);
            for (int k = 0; k < 3; k++) {
                Vec3 a = mesh.point(t, k);
                Vec3 b = mesh.point(t, (k + 1) % 3);
                Key key = before(a, b) ? new Key(a, b) : new Key(b, a);
                Use use = uses.get(key);
                if (use == null) {
                    use = new Use(a, b, n, cavity.partOfSheet(t));
                    uses.put(key, use);
                    order.add(use);
                } else {
                    use.meet(n, cavity.partOfSheet(t));
                }
            }
        }
        return order.stream()
                .filter(u -> u.drawn)
                .map(u -> new Vec3[] {u.a, u.b})
                .toList();
    }

    private static boolean before(Vec3 a, Vec3 b) {
        int order = Double.compare(a.x(), b.x());
        order = order != 0 ? order : Double.compare(a.y(), b.y());
        order = order != 0 ? order : Double.compare(a.z(), b.z());
        return order < 0;
    }
}
