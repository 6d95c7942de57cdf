package baymist.cavity;

import baymist.geom.TriangleMesh;
import java.util.Arrays;

/** Edges of a mesh and how many triangles meet at each; immutable. */
final class EdgeTable {
    /** Lower vertex number in the upper half, ascending, each edge once, [edges]. */
    private final long[] key;
    /** Triangles at each edge, [edges]. */
    private final int[] uses;

    EdgeTable(TriangleMesh mesh) {
        this(mesh, mesh.triangleCount());
    }

    /** Edges of the first so many triangles. */
    EdgeTable(TriangleMesh mesh, int triangles) {
        long[] all = new long[3 * triangles];
        for (int i = 0; i < all.length; i++) {
            all[i] = key(mesh.corner(i / 3, i % 3), mesh.corner(i / 3, (i + 1) % 3));
        }
        Arrays.sort(all);
        int distinct = 0;
        int[] counts = new int[all.length];
        for (int i = 0; i < all.length; i++) {
            if (i > 0 && all[i] == all[i - 1]) {
                counts[distinct - 1]++;
            } else {
                all[distinct] = all[i];
                counts[distinct++] = 1;
            }
        }
        key = Arrays.copyOf(all, distinct);
        uses = Arrays.copyOf(counts, distinct);
    }

    static long key(int a, int b) {
        return ((long) Math.min(a, b) << 32) | Math.max(a, b);
    }

    int count() {
        return key.length;
    }

    int low(int edge) {
        return (int) (key[edge] >>> 32);
    }

    int high(int edge) {
        return (int) key[edge];
    }

    /** Triangles at an edge by its place in the table. */
    int uses(int edge) {
        return uses[edge];
    }

    /** Place of the edge between two vertices in the table; negative if there is none. */
    int indexOf(int a, int b) {
        return Arrays.binarySearch(key, key(a, b));
    }

    /** Triangles at the edge between two vertices; 0 if there is no such edge. */
    int usesBetween(int a, int b) {
        int at = indexOf(a, b);
        return at < 0 ? 0 : uses[at];
    }
}
