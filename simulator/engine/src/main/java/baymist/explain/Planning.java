package baymist.explain;

import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.voxel.VoxelGrid;

/**
 * The resolution at which many runs are made: coarse enough that each takes seconds, fine enough to tell one change from another. What it
 * gives up is told by docs/theory/explain.md, section 2.
 */
final class Planning {
    /** Cells that a planning run should not exceed by much. */
    static final int CELLS = 12_000;
    /** Largest factor on the voxels of the scene. */
    static final double COARSEST = 2;

    static final int RAYS = 128;
    static final int BINS = 5;
    /** Stations along the longest way through the structure. */
    static final int STATIONS = 30;

    private Planning() {}

    /** The same job at planning resolution; {@code grid} is that of the scene as it stands. */
    static Scene scene(Scene scene, VoxelGrid grid) {
        double factor = Math.min(COARSEST, Math.max(1, Math.cbrt((double) grid.cellCount() / CELLS)));
        Vec3 size = grid.sizeM();
        SceneDraft draft = new SceneDraft(scene);
        draft.voxel = new VoxelSpec(factor * size.x(), factor * size.y(), factor * size.z());
        draft.rays = Math.min(RAYS, scene.raysPerJet());
        draft.bins = Math.min(BINS, scene.sizeBins());
        Vec3 span = new Vec3(grid.nx() * size.x(), grid.ny() * size.y(), grid.nz() * size.z());
        draft.spacingM = Math.max(scene.stationSpacingM(), Math.max(0.025, span.length() / STATIONS));
        if (scene.air().mode() != AirSpec.Mode.STILL) {
            draft.air = scene.air().withMode(AirSpec.Mode.PROJECTED, 0);
        }
        return draft.scene();
    }
}
