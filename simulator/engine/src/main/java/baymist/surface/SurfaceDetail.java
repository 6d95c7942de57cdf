package baymist.surface;

import java.util.Locale;

/**
 * What a surface shows of the structure that was computed.
 *
 * @param triangles drawn, both sides of the sheets
 * @param sheetTriangles of the cut sheets as they were built
 * @param edgeM longest edge aimed at, m
 * @param voxelM mean voxel size, m
 * @param simplified whether points of the sheets were merged to stay below the limit
 * @param keptShare vertices drawn over surfels, about; 1 = as fine as the voxels
 */
public record SurfaceDetail(
        int triangles, int sheetTriangles, double edgeM, double voxelM, boolean simplified, double keptShare) {
    /** The fact in one sentence for those who look at it. */
    public String sentence() {
        if (keptShare >= 1) {
            return String.format(
                    Locale.ROOT,
                    "Drawn in %,d triangles with edges of at most %.3g mm, as fine as the voxels.",
                    triangles,
                    1e3 * edgeM);
        }
        return String.format(
                Locale.ROOT,
                "Drawn coarser than computed: %,d triangles with edges of about %.3g mm, %s %% of what voxels of %.3g"
                        + " mm would take; film is averaged over that length%s.",
                triangles,
                1e3 * edgeM,
                keptShare < 0.01 ? "under 1" : String.format(Locale.ROOT, "%.0f", 100 * keptShare),
                1e3 * voxelM,
                simplified ? ", and points of the sheets nearer than that were merged" : "");
    }
}
