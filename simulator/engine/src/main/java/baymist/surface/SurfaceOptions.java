package baymist.surface;

/**
 * How finely a surface is drawn.
 *
 * @param maxTriangles most triangles, both sides of the sheets together; above it triangles grow, and below the sheets' own number the
 *     sheets are simplified
 * @param edgeM longest edge, m; 0 = 1.5 times the mean voxel size, about one vertex for each surfel
 * @param standOffM how far each side stands off its sheet along its normal, m, 0 or more; 0 suits a viewer that culls back faces
 */
public record SurfaceOptions(int maxTriangles, double edgeM, double standOffM) {
    /** As fine as the voxels, 200,000 triangles at most, on the sheets themselves. */
    public static final SurfaceOptions DEFAULT = new SurfaceOptions(200_000, 0, 0);

    public SurfaceOptions {
        if (maxTriangles < 100 || !(edgeM >= 0) || !(standOffM >= 0) || !Double.isFinite(edgeM + standOffM)) {
            throw new IllegalArgumentException(
                    "at most " + maxTriangles + " triangles of " + edgeM + " m, " + standOffM + " m off");
        }
    }

    public SurfaceOptions withMaxTriangles(int most) {
        return new SurfaceOptions(most, edgeM, standOffM);
    }

    public SurfaceOptions withStandOffM(double offM) {
        return new SurfaceOptions(maxTriangles, edgeM, offM);
    }
}
