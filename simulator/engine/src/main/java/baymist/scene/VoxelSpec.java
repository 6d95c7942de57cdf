package baymist.scene;

/**
 * Wanted voxel size along x, y, z, m; the voxeliser snaps it so that whole cells span the cavity. A value of 0 lets it
 * choose from the geometry.
 */
public record VoxelSpec(double xM, double yM, double zM) {
    public static final VoxelSpec AUTO = new VoxelSpec(0, 0, 0);
}
