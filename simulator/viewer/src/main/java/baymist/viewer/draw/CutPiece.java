package baymist.viewer.draw;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a plane leaves of a piece. Each point lies on an edge between two vertices of the surface (twice the same vertex where nothing is
 * cut), so that positions and colours follow alike.
 *
 * @param from,to vertices of the surface, [points]
 * @param share place of each point between them, 0..1, [points]
 * @param corners points of the triangles, wound as the piece is, [3 * triangles]
 * @param start offsets into the triangles: those that came of each triangle of the piece, [piece's triangles + 1]
 */
public record CutPiece(int[] from, int[] to, float[] share, int[] corners, int[] start) {
    /** The piece as a plane leaves it, or whole where {@code cut} is null. */
    public static CutPiece of(Piece piece, float[] xyz, int[] corners, @Nullable Cut cut) {
        return new Cutter(piece, xyz, corners, cut).cut();
    }

    public int points() {
        return from.length;
    }

    public int triangles() {
        return corners.length / 3;
    }

    /** A coordinate or colour of a point by linear interpolation. */
    public float at(int point, float atFrom, float atTo) {
        return atFrom + share[point] * (atTo - atFrom);
    }

    private static final class Cutter {
        private final Piece piece;
        private final float[] xyz;
        private final int[] surface;
        private final @Nullable Cut cut;
        private final Map<Long, Integer> known = new HashMap<>();
        private int[] from = new int[64];
        private int[] to = new int[64];
        private float[] share = new float[64];
        private int points;
        private int[] out = new int[192];
        private int size;

        Cutter(Piece piece, float[] xyz, int[] surface, @Nullable Cut cut) {
            this.piece = piece;
            this.xyz = xyz;
            this.surface = surface;
            this.cut = cut;
        }

        CutPiece cut() {
            int[] start = new int[piece.triangles().length + 1];
            for (int i = 0; i < piece.triangles().length; i++) {
                triangle(piece.triangles()[i]);
                start[i + 1] = size / 3;
            }
            return new CutPiece(
                    Arrays.copyOf(from, points),
                    Arrays.copyOf(to, points),
                    Arrays.copyOf(share, points),
                    Arrays.copyOf(out, size),
                    start);
        }

        private void triangle(int t) {
            int[] left = new int[4];
            int n = 0;
            for (int k = 0; k < 3; k++) {
                int a = surface[3 * t + k];
                int b = surface[3 * t + (k + 1) % 3];
                double beyondA = beyond(a);
                double beyondB = beyond(b);
                if (beyondA <= 0) {
                    left[n++] = point(a, a, 0);
                }
                if (beyondA <= 0 != beyondB <= 0) {
                    // the lower vertex first, so that neighbours find the same point
                    left[n++] = a < b
                            ? point(a, b, beyondA / (beyondA - beyondB))
                            : point(b, a, beyondB / (beyondB - beyondA));
                }
            }
            for (int k = 2; k < n; k++) {
                add(left[0], left[k - 1], left[k]);
            }
        }

        private double beyond(int v) {
            return cut == null ? -1 : cut.beyondM(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]);
        }

        private int point(int a, int b, double at) {
            Integer there = known.get((long) a << 32 | b);
            if (there != null) {
                return there;
            }
            if (points == from.length) {
                from = Arrays.copyOf(from, 2 * points);
                to = Arrays.copyOf(to, 2 * points);
                share = Arrays.copyOf(share, 2 * points);
            }
            from[points] = a;
            to[points] = b;
            share[points] = (float) at;
            known.put((long) a << 32 | b, points);
            return points++;
        }

        private void add(int a, int b, int c) {
            if (size + 3 > out.length) {
                out = Arrays.copyOf(out, 2 * out.length);
            }
            out[size++] = a;
            out[size++] = b;
            out[size++] = c;
        }
    }
}
