package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Unit normals of the sheets, and which parts are wound consistently: no directed edge occurs twice in the part. On a
 * consistent part front and back tell two sheets of one part apart however close they lie (a trailing edge).
 */
final class SheetOrientation {
    private final double[] normal;
    private final boolean[] consistent;
    /** Side of each part's triangles that lies in a protected item, 0 front or 1 back; -1 for all else. */
    private final int[] within;

    private record Corner(double x, double y, double z) {}

    SheetOrientation(Cavity cavity) {
        TriangleMesh mesh = cavity.sheets();
        int n = mesh.triangleCount();
        normal = new double[3 * n];
        for (int t = 0; t < n; t++) {
            var unit = mesh.normal(t);
            normal[3 * t] = unit.x();
            normal[3 * t + 1] = unit.y();
            normal[3 * t + 2] = unit.z();
        }
        consistent = new boolean[cavity.parts().size()];
        Arrays.fill(consistent, true);
        within = new int[consistent.length];
        Arrays.fill(within, -1);
        checkEdges(cavity, mesh);
    }

    private void checkEdges(Cavity cavity, TriangleMesh mesh) {
        int[] welded = weld(mesh);
        int n = mesh.triangleCount();
        // triangles part by part, so that one sorted run of edges serves each part
        int[][] byPart = new int[consistent.length][];
        int[] counts = new int[consistent.length];
        for (int t = 0; t < n; t++) {
            if (cavity.partOfSheet(t) >= 0) {
                counts[cavity.partOfSheet(t)]++;
            }
        }
        for (int p = 0; p < byPart.length; p++) {
            byPart[p] = new int[counts[p]];
        }
        Arrays.fill(counts, 0);
        for (int t = 0; t < n; t++) {
            int p = cavity.partOfSheet(t);
            if (p >= 0) {
                byPart[p][counts[p]++] = t;
            }
        }
        for (int p = 0; p < byPart.length; p++) {
            long[] edges = new long[3 * byPart[p].length];
            for (int i = 0; i < edges.length; i++) {
                int t = byPart[p][i / 3];
                long from = welded[mesh.corner(t, i % 3)];
                edges[i] = from << 32 | welded[mesh.corner(t, (i + 1) % 3)];
            }
            Arrays.sort(edges);
            for (int i = 1; i < edges.length; i++) {
                consistent[p] &= edges[i] != edges[i - 1];
            }
            if (consistent[p] && cavity.parts().get(p).kind() == PartKind.PROTECTED && isClosed(edges)) {
                within[p] = volumeM3(mesh, byPart[p]) > 0 ? 1 : 0;
            }
        }
    }

    /** Whether every directed edge has its counterpart; the edges are sorted. */
    private static boolean isClosed(long[] edges) {
        for (long e : edges) {
            if (Arrays.binarySearch(edges, e << 32 | e >>> 32) < 0) {
                return false;
            }
        }
        return edges.length > 0;
    }

    /** Signed volume of a closed part, positive if wound outward. */
    private static double volumeM3(TriangleMesh mesh, int[] triangles) {
        Vec3 base = mesh.point(triangles[0], 0);
        double six = 0;
        for (int t : triangles) {
            Vec3 a = mesh.point(t, 0).minus(base);
            six += a.dot(mesh.point(t, 1).minus(base).cross(mesh.point(t, 2).minus(base)));
        }
        return six / 6;
    }

    /** The lowest vertex number at each vertex's position. */
    private static int[] weld(TriangleMesh mesh) {
        Map<Corner, Integer> first = new HashMap<>();
        int[] welded = new int[mesh.vertexCount()];
        for (int v = 0; v < welded.length; v++) {
            Corner c =
                    new Corner(mesh.coordinate(v, 0) + 0.0, mesh.coordinate(v, 1) + 0.0, mesh.coordinate(v, 2) + 0.0);
            Integer earlier = first.putIfAbsent(c, v);
            welded[v] = earlier == null ? v : earlier;
        }
        return welded;
    }

    /** Component of a sheet triangle's unit normal. */
    double normal(int triangle, int axis) {
        return normal[3 * triangle + axis];
    }

    /** Cosine between a sheet triangle's normal and a direction. */
    double dot(int triangle, double x, double y, double z) {
        return normal[3 * triangle] * x + normal[3 * triangle + 1] * y + normal[3 * triangle + 2] * z;
    }

    /** Side of a part (0 front, 1 back) that lies within a closed protected item and has no air; -1 if there is none. */
    int withinItem(int part) {
        return part < 0 ? -1 : within[part];
    }

    boolean consistent(int part) {
        return part >= 0 && consistent[part];
    }
}
