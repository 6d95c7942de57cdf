package baymist.spray;

import baymist.geom.Vec3;

/** Finds the voxel elements at a point of the exact geometry; safe to call from several threads. */
public interface SurfelFinder {
    /**
     * Surfel of a part at a point of its sheet, or -1 where the voxels hold none.
     *
     * @param towardsAir direction from the sheet into the air whose side is wanted
     */
    int surfelNear(Vec3 pointM, int part, Vec3 towardsAir);

    /** Surfel of the closed-off area of an opening at a point, or -1. */
    int closureNear(Vec3 pointM, int opening, Vec3 towardsAir);

    /**
     * Cavity cell at a point on a sheet, on the side to which {@code towardsAir} points, or -1.
     *
     * @param towardsAir normal of the sheet
     */
    int cellNear(Vec3 pointM, Vec3 towardsAir);
}
