package baymist.voxel;

import baymist.geom.Vec3;

/**
 * Points that stand for the centres of cells where lines of sight end. A sheet may pass exactly through a centre, or within
 * rounding of it; which side counts as the centre's was decided by exact signs, and the blocked faces remember it: a sheet
 * that a cell sees at hardly any distance on one side lies on that side. The point is moved away from it.
 */
final class Aim {
    /** How near a sheet must be, and how far the point is moved, pitches (ASSUMED: far above rounding). */
    static final double NEAR = 1e-4;

    private final Lattice lattice;
    private final BlockedFaces blocked;

    Aim(Lattice lattice, BlockedFaces blocked) {
        this.lattice = lattice;
        this.blocked = blocked;
    }

    Vec3 at(int latticeCell) {
        Vec3 centre = lattice.centre(latticeCell);
        double[] moved = new double[3];
        for (int d = 0; d < 6; d++) {
            int slot = blocked.slot(lattice.faceKey(latticeCell, d));
            if (slot >= 0) {
                boolean high = (d & 1) == 1;
                double away = high ? blocked.position(2 * slot) : 1 - blocked.position(2 * slot + 1);
                if (away < NEAR) {
                    moved[d >> 1] += high ? -NEAR : NEAR;
                }
            }
        }
        return centre.plus(
                new Vec3(moved[0] * lattice.pitchM(0), moved[1] * lattice.pitchM(1), moved[2] * lattice.pitchM(2)));
    }
}
