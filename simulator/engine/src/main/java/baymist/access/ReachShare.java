package baymist.access;

import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * How much of a cavity lies near a place of the tip and in its sight.
 *
 * <p>A piece of surface (or air) counts when a tip place lies within a stated distance of it and the straight line between them meets
 * no sheet. It is a measure of access, not of film: fog goes round corners, a jet may be turned the wrong way.
 *
 * @param surface share of the inside surface that the voxels hold, 0..1
 * @param volume share of the air, 0..1
 */
public record ReachShare(double surface, double volume) {
    public static final ReachShare NONE = new ReachShare(0, 0);

    /** Pieces that are looked at; of more every second, third .. is taken. */
    private static final int SAMPLES = 4000;
    /** A surfel is looked at from this far in front of its sheet, m (ASSUMED: above the rounding of its centroid). */
    private static final double BEFORE_M = 1e-3;

    /**
     * Measures.
     *
     * @param places where the tip can be, m
     * @param withinM distance that counts as near, m
     */
    public static ReachShare of(VoxelGrid grid, Surroundings around, List<Vec3> places, double withinM) {
        if (places.isEmpty()) {
            return NONE;
        }
        NearTips near = new NearTips(around, places, withinM);
        return new ReachShare(surface(grid, near), volume(grid, near));
    }

    private static double surface(VoxelGrid grid, NearTips near) {
        SurfelSet s = grid.surfels();
        int step = 1 + s.count() / SAMPLES;
        double sum = 0;
        double hit = 0;
        for (int i = 0; i < s.count(); i += step) {
            Vec3 at = new Vec3(
                    s.centreX()[i] + BEFORE_M * s.normalX()[i],
                    s.centreY()[i] + BEFORE_M * s.normalY()[i],
                    s.centreZ()[i] + BEFORE_M * s.normalZ()[i]);
            sum += s.areaM2()[i];
            hit += near.sees(at) ? s.areaM2()[i] : 0;
        }
        return sum > 0 ? hit / sum : 0;
    }

    private static double volume(VoxelGrid grid, NearTips near) {
        int step = 1 + grid.cellCount() / SAMPLES;
        double sum = 0;
        double hit = 0;
        for (int c = 0; c < grid.cellCount(); c += step) {
            sum += grid.volumeM3(c);
            hit += near.sees(grid.centre(c)) ? grid.volumeM3(c) : 0;
        }
        return sum > 0 ? hit / sum : 0;
    }
}
