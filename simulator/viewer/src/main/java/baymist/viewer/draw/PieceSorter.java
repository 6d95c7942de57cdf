package baymist.viewer.draw;

import baymist.geom.Vec3;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the triangles of pieces in drawing order while the eye moves. Sorting all of them for every picture would take too long; so
 * each call sorts the pieces first whose order is the most out of date, until its time is up, and the rest waits for the next picture.
 */
public final class PieceSorter {
    /** A piece seen from within this angle of where it was sorted for is left alone, cosine. */
    private static final double STILL_SORTED = Math.cos(Math.toRadians(4));

    private final float[][] centroids;
    private final boolean[] leave;
    private final Vec3[] sortedFor;
    private final int[][] order;

    /** @param centroids middles of the triangles of each piece, m, [pieces][3 * triangles] */
    public PieceSorter(float[][] centroids) {
        this(centroids, new boolean[centroids.length]);
    }

    /**
     * @param centroids middles of the triangles of each piece, m, [pieces][3 * triangles]
     * @param leave pieces that need no order, see {@link PieceSight#neverHidesItself}
     */
    public PieceSorter(float[][] centroids, boolean[] leave) {
        this.leave = leave.clone();
        this.centroids = centroids.clone();
        sortedFor = new Vec3[centroids.length];
        order = new int[centroids.length][];
    }

    /** What takes a piece's new order, if it is another one: places of its triangles, farthest first. */
    @FunctionalInterface
    public interface Sorted {
        void piece(int piece, int[] order);
    }

    /**
     * Sorts what is most out of date.
     *
     * @param towards direction from the eye to each piece, unit vectors, [pieces]; null where a piece is not shown
     * @param most triangles sorted in this call at most; at least one piece is sorted if any needs it
     * @return number of pieces left out of date
     */
    public int sort(@Nullable Vec3[] towards, int most, Sorted sorted) {
        float[] off = new float[towards.length];
        int stale = 0;
        for (int p = 0; p < off.length; p++) {
            double cos = towards[p] == null || leave[p] ? 1 : sortedFor[p] == null ? -1 : towards[p].dot(sortedFor[p]);
            off[p] = cos < STILL_SORTED ? (float) (1 - cos) : 0;
            stale += off[p] > 0 ? 1 : 0;
        }
        int left = most;
        for (int p : DrawOrder.farthestFirst(off)) {
            int count = centroids[p].length / 3;
            if (!(off[p] > 0) || (left < count && left < most)) {
                break;
            }
            int[] now = DrawOrder.farthestFirst(depths(centroids[p], towards[p]));
            sortedFor[p] = towards[p];
            if (!Arrays.equals(now, order[p])) {
                order[p] = now;
                sorted.piece(p, now);
            }
            left -= count;
            stale--;
        }
        return stale;
    }

    private static float[] depths(float[] centroids, Vec3 d) {
        float x = (float) d.x();
        float y = (float) d.y();
        float z = (float) d.z();
        float[] depth = new float[centroids.length / 3];
        for (int i = 0; i < depth.length; i++) {
            depth[i] = x * centroids[3 * i] + y * centroids[3 * i + 1] + z * centroids[3 * i + 2];
        }
        return depth;
    }
}
