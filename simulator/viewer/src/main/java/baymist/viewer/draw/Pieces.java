package baymist.viewer.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Parts a run of triangles into pieces by halving the longest way until each is small enough. */
public final class Pieces {
    private final float[] xyz;
    private final int[] corners;
    private final int most;

    /**
     * @param xyz corners' coordinates, m, [3 * vertices]
     * @param corners corner numbers, [3 * triangles]
     * @param most triangles in a piece at most, at least 1
     */
    public Pieces(float[] xyz, int[] corners, int most) {
        if (most < 1) {
            throw new IllegalArgumentException("at most " + most + " triangles a piece, at least 1 expected");
        }
        this.xyz = xyz;
        this.corners = corners;
        this.most = most;
    }

    /** Pieces of triangles {@code first} to {@code first + count - 1}, each triangle in one. */
    public List<Piece> of(int group, int first, int count) {
        int[] all = new int[count];
        Arrays.setAll(all, i -> first + i);
        return of(group, all);
    }

    /** Pieces of these triangles, each triangle in one. */
    public List<Piece> of(int group, int[] triangles) {
        List<Piece> pieces = new ArrayList<>();
        split(group, triangles, pieces);
        return pieces;
    }

    private void split(int group, int[] triangles, List<Piece> pieces) {
        if (triangles.length == 0) {
            return;
        }
        float[] low = {Float.MAX_VALUE, Float.MAX_VALUE, Float.MAX_VALUE};
        float[] high = {-Float.MAX_VALUE, -Float.MAX_VALUE, -Float.MAX_VALUE};
        for (int t : triangles) {
            for (int a = 0; a < 3; a++) {
                float c = middle(t, a);
                low[a] = Math.min(low[a], c);
                high[a] = Math.max(high[a], c);
            }
        }
        if (triangles.length <= most) {
            float[] centre = {(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2};
            pieces.add(new Piece(group, triangles, centre));
            return;
        }
        int axis = 0;
        for (int a = 1; a < 3; a++) {
            if (high[a] - low[a] > high[axis] - low[axis]) {
                axis = a;
            }
        }
        int[] sorted = sorted(triangles, axis);
        int half = sorted.length / 2;
        split(group, Arrays.copyOfRange(sorted, 0, half), pieces);
        split(group, Arrays.copyOfRange(sorted, half, sorted.length), pieces);
    }

    private int[] sorted(int[] triangles, int axis) {
        long[] keys = new long[triangles.length];
        for (int i = 0; i < keys.length; i++) {
            keys[i] = DrawOrder.key(middle(triangles[i], axis), i);
        }
        Arrays.sort(keys);
        int[] out = new int[keys.length];
        for (int i = 0; i < keys.length; i++) {
            out[i] = triangles[DrawOrder.index(keys[i])];
        }
        return out;
    }

    private float middle(int triangle, int axis) {
        int c = 3 * triangle;
        return (xyz[3 * corners[c] + axis] + xyz[3 * corners[c + 1] + axis] + xyz[3 * corners[c + 2] + axis]) / 3;
    }
}
