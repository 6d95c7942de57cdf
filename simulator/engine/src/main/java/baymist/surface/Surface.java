package baymist.surface;

import baymist.cavity.Cavity;
import baymist.voxel.VoxelGrid;
import java.util.BitSet;
import java.util.List;

/**
 * The structure as triangles that carry surfel values, for drawing and for files. Immutable; arrays are shared and must not be written to.
 *
 * <p>It depends on the geometry alone: built once for a grid, it maps the film of any time, or any other quantity of surfels, on its
 * vertices with {@link #onVertices(double[])}.
 */
public final class Surface {
    private final float[] xyz;
    private final float[] normals;
    private final int[] corners;
    private final int[] surfelOfTriangle;
    private final List<Patch> patches;
    /** Offsets into {@code surfel} and {@code weight}, [vertexCount + 1]; empty on OUTSIDE patches. */
    private final int[] start;

    private final int[] surfel;
    private final float[] weight;
    private final int surfelCount;
    private final SurfaceDetail detail;

    Surface(
            float[] xyz,
            float[] normals,
            int[] corners,
            int[] surfelOfTriangle,
            List<Patch> patches,
            int[] start,
            int[] surfel,
            float[] weight,
            int surfelCount,
            SurfaceDetail detail) {
        this.xyz = xyz;
        this.normals = normals;
        this.corners = corners;
        this.surfelOfTriangle = surfelOfTriangle;
        this.patches = List.copyOf(patches);
        this.start = start;
        this.surfel = surfel;
        this.weight = weight;
        this.surfelCount = surfelCount;
        this.detail = detail;
    }

    /** The surface of a cavity as its grid sees it. */
    public static Surface of(Cavity cavity, VoxelGrid grid, SurfaceOptions options) {
        return new SurfaceBuilder(cavity, grid, options).build();
    }

    public int vertexCount() {
        return xyz.length / 3;
    }

    public int triangleCount() {
        return corners.length / 3;
    }

    /** Vertices, m, [3 * vertexCount], x aft, y right, z up. */
    public float[] xyz() {
        return xyz;
    }

    /** Unit normals out of the drawn side, on CAVITY patches into the air, [3 * vertexCount]. */
    public float[] normals() {
        return normals;
    }

    /** Corner vertices, [3 * triangleCount], counter-clockwise as seen from the drawn side. */
    public int[] corners() {
        return corners;
    }

    /** Sides of parts, CAVITY first, then by part and bay; together they hold every vertex and every triangle once. */
    public List<Patch> patches() {
        return patches;
    }

    /** The surfel that a triangle shows, nearest to its middle; -1 on OUTSIDE patches. */
    public int surfel(int triangle) {
        return surfelOfTriangle[triangle];
    }

    /** Surfels of the grid that it was made for. */
    public int surfelCount() {
        return surfelCount;
    }

    /** Surfels whose values show on some vertex. */
    BitSet surfelsUsed() {
        BitSet used = new BitSet();
        for (int s : surfel) {
            used.set(s);
        }
        return used;
    }

    /** What is drawn of what was computed. */
    public SurfaceDetail detail() {
        return detail;
    }

    /**
     * A quantity of surfels at the vertices: the mean over the surfels round each vertex, by area and nearness. Never beyond the values
     * that it averages.
     *
     * @param perSurfel [surfels]
     * @return [vertexCount] in the same unit; NaN on OUTSIDE patches
     */
    public float[] onVertices(double[] perSurfel) {
        float[] out = new float[vertexCount()];
        for (int v = 0; v < out.length; v++) {
            double sum = 0;
            for (int n = start[v]; n < start[v + 1]; n++) {
                sum += weight[n] * perSurfel[surfel[n]];
            }
            out[v] = start[v] == start[v + 1] ? Float.NaN : (float) sum;
        }
        return out;
    }

    /** The same for values kept short. */
    public float[] onVertices(float[] perSurfel) {
        float[] out = new float[vertexCount()];
        for (int v = 0; v < out.length; v++) {
            float sum = 0;
            for (int n = start[v]; n < start[v + 1]; n++) {
                sum += weight[n] * perSurfel[surfel[n]];
            }
            out[v] = start[v] == start[v + 1] ? Float.NaN : sum;
        }
        return out;
    }

    /** Area of a patch, m². */
    public double areaM2(Patch patch) {
        double sum = 0;
        for (int t = patch.firstTriangle(); t < patch.firstTriangle() + patch.triangleCount(); t++) {
            sum += areaM2(t);
        }
        return sum;
    }

    /** Area of a triangle, m². */
    public double areaM2(int t) {
        int a = 3 * corners[3 * t];
        int b = 3 * corners[3 * t + 1];
        int c = 3 * corners[3 * t + 2];
        double ux = (double) xyz[b] - xyz[a];
        double uy = (double) xyz[b + 1] - xyz[a + 1];
        double uz = (double) xyz[b + 2] - xyz[a + 2];
        double vx = (double) xyz[c] - xyz[a];
        double vy = (double) xyz[c + 1] - xyz[a + 1];
        double vz = (double) xyz[c + 2] - xyz[a + 2];
        double x = uy * vz - uz * vy;
        double y = uz * vx - ux * vz;
        double z = ux * vy - uy * vx;
        return 0.5 * Math.sqrt(x * x + y * y + z * z);
    }
}
