package baymist.surface;

import java.util.Arrays;

/** Lines on a surface where a quantity crosses a level, by linear interpolation along the edges of each triangle. */
public final class Contour {
    private Contour() {}

    /**
     * Where a value of the vertices crosses a level, on CAVITY patches.
     *
     * @param perVertex [vertexCount]; triangles with a NaN corner are passed over
     * @return segments, m, x y z of one end then of the other, [6 * segments]
     */
    public static float[] of(Surface surface, float[] perVertex, double level) {
        Segments out = new Segments();
        float[] xyz = surface.xyz();
        int[] corners = surface.corners();
        for (Patch patch : surface.patches()) {
            if (patch.side() != Patch.Side.CAVITY) {
                continue;
            }
            for (int t = patch.firstTriangle(); t < patch.firstTriangle() + patch.triangleCount(); t++) {
                for (int k = 0; k < 3; k++) {
                    int a = corners[3 * t + k];
                    int b = corners[3 * t + (k + 1) % 3];
                    int c = corners[3 * t + (k + 2) % 3];
                    boolean above = perVertex[a] >= level;
                    // a is the corner that stands alone; a NaN compares as below, so look for it first
                    if (!Float.isNaN(perVertex[a] + perVertex[b] + perVertex[c])
                            && above != perVertex[b] >= level
                            && above != perVertex[c] >= level) {
                        out.add(xyz, a, b, share(perVertex, a, b, level));
                        out.add(xyz, a, c, share(perVertex, a, c, level));
                    }
                }
            }
        }
        return out.toArray();
    }

    /** Outline of a set of surfels, such as those of a bare region. */
    public static float[] region(Surface surface, int[] surfels) {
        float[] member = new float[surface.surfelCount()];
        for (int s : surfels) {
            member[s] = 1;
        }
        return of(surface, surface.onVertices(member), 0.5);
    }

    private static double share(float[] values, int from, int to, double level) {
        double rise = (double) values[to] - values[from];
        return rise == 0 ? 0 : Math.max(0, Math.min(1, (level - values[from]) / rise));
    }

    private static final class Segments {
        private float[] values = new float[600];
        private int size;

        void add(float[] xyz, int a, int b, double share) {
            if (size + 3 > values.length) {
                values = Arrays.copyOf(values, 2 * values.length);
            }
            for (int axis = 0; axis < 3; axis++) {
                double from = xyz[3 * a + axis];
                values[size++] = (float) (from + share * (xyz[3 * b + axis] - from));
            }
        }

        float[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }
}
