package baymist.seam;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.geom.PairKey;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Each edge of the structure's cut sheets once, whatever the number of triangles at it; corners are told apart by their coordinates. */
final class MeshEdges {
    /** Triangles lower than this are left out: they have no plane to speak of, m. */
    private static final double FLAT_M = 1e-8;

    /**
     * An edge.
     *
     * @param shared whether triangles of two parts or more have it
     * @param rim whether one triangle alone has it
     */
    record Edge(Vec3 from, Vec3 to, boolean shared, boolean rim) {}

    private MeshEdges() {}

    /** Edges in the order of their first triangle, those of several parts first. */
    static List<Edge> of(Cavity cavity) {
        TriangleMesh mesh = cavity.cutSheets();
        Map<Vec3, Integer> numbers = new HashMap<>();
        int[] number = new int[mesh.vertexCount()];
        for (int v = 0; v < number.length; v++) {
            Vec3 p = mesh.vertex(v);
            // adding zero makes one zero of both
            number[v] = numbers.computeIfAbsent(new Vec3(p.x() + 0.0, p.y() + 0.0, p.z() + 0.0), k -> numbers.size());
        }
        Map<Long, int[]> found = new LinkedHashMap<>(); // ends -> {triangle, corner, part, shared, more}
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (!counts(cavity, t)) {
                continue;
            }
            for (int k = 0; k < 3; k++) {
                int a = number[mesh.corner(t, k)];
                int b = number[mesh.corner(t, (k + 1) % 3)];
                long key = PairKey.of(a, b);
                int[] known = found.putIfAbsent(key, new int[] {t, k, cavity.partOfCut(t), 0, 0});
                if (known != null) {
                    known[3] |= known[2] != cavity.partOfCut(t) ? 1 : 0;
                    known[4] = 1;
                }
            }
        }
        List<Edge> shared = new ArrayList<>();
        List<Edge> own = new ArrayList<>();
        for (int[] e : found.values()) {
            Edge edge = new Edge(mesh.point(e[0], e[1]), mesh.point(e[0], (e[1] + 1) % 3), e[3] == 1, e[4] == 0);
            (edge.shared ? shared : own).add(edge);
        }
        shared.addAll(own);
        return shared;
    }

    /** Whether a triangle of the cut sheets is structure with a plane. */
    static boolean counts(Cavity cavity, int triangle) {
        int part = cavity.partOfCut(triangle);
        if (part < 0 || cavity.parts().get(part).kind() == PartKind.PROTECTED) {
            return false;
        }
        TriangleMesh mesh = cavity.cutSheets();
        double longest = 0;
        for (int k = 0; k < 3; k++) {
            longest = Math.max(longest, mesh.point(triangle, k).distance(mesh.point(triangle, (k + 1) % 3)));
        }
        return mesh.doubleAreaVector(triangle).length() > FLAT_M * longest;
    }
}
