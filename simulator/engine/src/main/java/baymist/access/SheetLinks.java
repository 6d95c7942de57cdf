package baymist.access;

import baymist.geom.TriangleMesh;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Which triangles continue each other as one sheet: those that share an edge, both ends alike to the last bit, with nothing
 * third at it. Any other edge is free: the rim of a hole, the end of a sheet, a joint of three.
 */
final class SheetLinks {
    /** Triangle across the edge from corner k to k + 1, -1 at a free edge, [3 * triangle + k]. */
    private final int[] across;

    private record Point(double x, double y, double z) {}

    private SheetLinks(int[] across) {
        this.across = across;
    }

    static SheetLinks of(TriangleMesh mesh) {
        int n = mesh.triangleCount();
        Map<Point, Integer> numbers = new HashMap<>();
        int[] vertex = new int[3 * n];
        for (int i = 0; i < 3 * n; i++) {
            int v = mesh.corner(i / 3, i % 3);
            // adding zero turns -0 into 0
            Point p = new Point(mesh.coordinate(v, 0) + 0.0, mesh.coordinate(v, 1) + 0.0, mesh.coordinate(v, 2) + 0.0);
            Integer number = numbers.putIfAbsent(p, numbers.size());
            vertex[i] = number == null ? numbers.size() - 1 : number;
        }
        int[] across = new int[3 * n];
        Arrays.fill(across, -1);
        // first two sides seen at an edge, and how many there are
        Map<Long, int[]> sides = new HashMap<>();
        for (int i = 0; i < 3 * n; i++) {
            int a = vertex[i];
            int b = vertex[3 * (i / 3) + (i + 1 - 3 * (i / 3)) % 3];
            long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
            int[] seen = sides.computeIfAbsent(key, k -> new int[] {-1, -1, 0});
            if (seen[2] < 2) {
                seen[seen[2]] = i;
            }
            seen[2]++;
        }
        for (int[] seen : sides.values()) {
            if (seen[2] == 2) {
                across[seen[0]] = seen[1] / 3;
                across[seen[1]] = seen[0] / 3;
            }
        }
        return new SheetLinks(across);
    }

    /** Triangle across an edge, -1 at a free edge. */
    int across(int triangle, int k) {
        return across[3 * triangle + k];
    }
}
