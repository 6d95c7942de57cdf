package baymist.voxel;

import baymist.geom.Vec3;

/**
 * Interior sheet area that no voxel faces: pieces of one part in one place.
 *
 * @param part part index
 * @param areaM2 area, m²
 * @param centroidM centroid, m
 * @param cause why no voxel faces it
 * @param axis lattice axis along which the voxels are too long there, 0..2; -1 where no size helps or none is known
 * @param spanM free way between sheets along that axis at the place (mean by area), or width of the part, m; a pitch up to
 *     it would hold a cell's centre there
 */
public record UnresolvedArea(int part, double areaM2, Vec3 centroidM, Cause cause, int axis, double spanM) {
    /** Why no voxel faces a piece of sheet. */
    public enum Cause {
        /** Sheets stand closer together than the voxels are long: a trailing edge, a narrow gap. */
        NARROW,
        /** Another part lies on it, closer than the two gauges: a lap, a doubler, a foot. No voxel size shows it. */
        LAP,
        /** The part itself is narrower than the voxels: a clip, a toe, the edge of a flange. */
        SMALL
    }

    /** An area of which nothing but its place is known. */
    public UnresolvedArea(int part, double areaM2, Vec3 centroidM) {
        this(part, areaM2, centroidM, Cause.NARROW, -1, Double.NaN);
    }
}
