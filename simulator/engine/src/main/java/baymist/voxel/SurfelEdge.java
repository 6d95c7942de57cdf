package baymist.voxel;

import baymist.geom.Vec3;

/**
 * Edges that neighbouring surfels share: how long, and how far it is across. Lengths are those of the lattice edge (exact on sheet along the
 * lattice; a staircase on oblique sheet, up to the square root of two too long); surfels on one side of one cell share its edges in
 * proportion to area.
 */
public final class SurfelEdge {
    private final SurfelSet surfels;
    private final Vec3 sizeM;

    /** Area of all surfels on each side of each cell, m², [6 * cells]. */
    private final double[] sideAreaM2;

    public SurfelEdge(VoxelGrid grid) {
        this.surfels = grid.surfels();
        this.sizeM = grid.sizeM();
        this.sideAreaM2 = new double[6 * grid.cellCount()];
        for (int s = 0; s < surfels.count(); s++) {
            sideAreaM2[side(s)] += surfels.areaM2()[s];
        }
    }

    /** Length of the edge that two neighbours share, m. */
    public double lengthM(int s, int other) {
        int axis = surfels.direction()[s] / 2;
        int across = surfels.direction()[other] / 2;
        if (across == axis) {
            Vec3 towards = centre(other).minus(centre(s));
            int p = (axis + 1) % 3;
            int q = (axis + 2) % 3;
            across = Math.abs(towards.get(p)) >= Math.abs(towards.get(q)) ? p : q;
        }
        double length = sizeM.get(3 - axis - across);
        // Surfels that share one side of a cell share its edges.
        return length
                * (surfels.areaM2()[s] / sideAreaM2[side(s)] * (surfels.areaM2()[other] / sideAreaM2[side(other)]));
    }

    /** Way from the centre of one to that of its neighbour along the sheet, m: in the plane of the one, then out of it. */
    public double wayM(int s, int other) {
        Vec3 towards = centre(other).minus(centre(s));
        Vec3 n = new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]);
        double out = towards.dot(n);
        return towards.plus(-out, n).length() + Math.abs(out);
    }

    private int side(int s) {
        return 6 * surfels.cell()[s] + surfels.direction()[s];
    }

    private Vec3 centre(int s) {
        return new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
    }
}
