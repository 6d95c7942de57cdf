package baymist.airflow;

import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;

/**
 * Friction speed at every surfel of one grid by {@link WallLaw}, with what does not change from field to field kept. Holds scratch space: used by one thread.
 */
final class WallSampler {
    /**
     * Least distance from wall to sampling point, as a share of the voxel along the normal. ASSUMED: where a sheet passes
     * close to a cell's centre, the air in the cell lies farther from it than the centre does.
     */
    private static final double LEAST_DISTANCE = 0.25;

    private final VoxelGrid grid;
    private final double viscosityM2PerS;
    private final WallDrag drag = new WallDrag();

    /** Distance from each surfel to the place its cell's speed belongs to, m, [surfels]. */
    private final double[] distanceM;

    /** One over the area that each cell's fluxes along each axis belong to, 1/m², [3 * cells]. */
    private final double[] perAreaM2;

    private final double[] sum;

    /** @param factor cells along a side of the blocks that the field comes from: its speeds belong to half a block */
    WallSampler(VoxelGrid grid, int factor, double kinematicViscosityM2PerS) {
        this.grid = grid;
        this.viscosityM2PerS = kinematicViscosityM2PerS;
        distanceM = new double[grid.surfels().count()];
        for (int s = 0; s < distanceM.length; s++) {
            distanceM[s] = distanceM(grid, s, factor);
        }
        sum = new double[3 * grid.cellCount()];
        perAreaM2 = WallLaw.velocityAreasM2(grid);
        for (int i = 0; i < perAreaM2.length; i++) {
            perAreaM2[i] = 1 / perAreaM2[i];
        }
    }

    private static double distanceM(VoxelGrid grid, int surfel, int factor) {
        SurfelSet surfels = grid.surfels();
        Vec3 n = new Vec3(surfels.normalX()[surfel], surfels.normalY()[surfel], surfels.normalZ()[surfel]);
        Vec3 wall = new Vec3(surfels.centreX()[surfel], surfels.centreY()[surfel], surfels.centreZ()[surfel]);
        double y = grid.centre(surfels.cell()[surfel]).minus(wall).dot(n);
        Vec3 h = grid.sizeM();
        double voxel = Math.abs(n.x()) * h.x() + Math.abs(n.y()) * h.y() + Math.abs(n.z()) * h.z();
        return Math.max(y, LEAST_DISTANCE * voxel) + 0.5 * (factor - 1) * voxel;
    }

    /**
     * Friction speeds under a field: tangential part of the cell's mean velocity, at the distance kept.
     *
     * @param fluxM3PerS [faces]
     * @return m/s, [surfels]
     */
    double[] frictionSpeeds(double[] fluxM3PerS) {
        double[] friction = new double[distanceM.length];
        raise(fluxM3PerS, friction);
        return friction;
    }

    /** Raises the friction speeds that lie below those of a field, m/s, [surfels]. */
    void raise(double[] fluxM3PerS, double[] friction) {
        WallLaw.sumCellFluxes(grid, fluxM3PerS, sum);
        SurfelSet surfels = grid.surfels();
        double[] nx = surfels.normalX();
        double[] ny = surfels.normalY();
        double[] nz = surfels.normalZ();
        for (int s = 0; s < friction.length; s++) {
            int c = 3 * surfels.cell()[s];
            double vx = sum[c] * perAreaM2[c];
            double vy = sum[c + 1] * perAreaM2[c + 1];
            double vz = sum[c + 2] * perAreaM2[c + 2];
            double across = vx * nx[s] + vy * ny[s] + vz * nz[s];
            double ux = vx - across * nx[s];
            double uy = vy - across * ny[s];
            double uz = vz - across * nz[s];
            double speed = Math.sqrt(ux * ux + uy * uy + uz * uz);
            double moving = drag.frictionSpeedMPerS(speed, distanceM[s], viscosityM2PerS);
            friction[s] = moving > friction[s] ? moving : friction[s];
        }
    }
}
