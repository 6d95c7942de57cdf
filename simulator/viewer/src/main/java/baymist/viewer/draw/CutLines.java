package baymist.viewer.draw;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** What a plane leaves of line segments. */
public final class CutLines {
    private CutLines() {}

    /**
     * Segments on the side of the plane that is kept.
     *
     * @param segments m, x y z of one end then of the other
     */
    public static float[] of(float[] segments, @Nullable Cut cut) {
        if (cut == null) {
            return segments;
        }
        float[] out = new float[segments.length];
        int size = 0;
        for (int s = 0; s + 5 < segments.length; s += 6) {
            double a = cut.beyondM(segments[s], segments[s + 1], segments[s + 2]);
            double b = cut.beyondM(segments[s + 3], segments[s + 4], segments[s + 5]);
            if (a > 0 && b > 0) {
                continue;
            }
            for (int k = 0; k < 6; k++) {
                double beyond = k < 3 ? a : b;
                double other = k < 3 ? b : a;
                float here = segments[s + k];
                float there = segments[s + (k + 3) % 6];
                out[size++] = beyond > 0 ? (float) (here + beyond / (beyond - other) * (there - here)) : here;
            }
        }
        return Arrays.copyOf(out, size);
    }
}
