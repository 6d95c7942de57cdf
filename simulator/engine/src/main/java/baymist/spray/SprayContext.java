package baymist.spray;

import baymist.units.Air;
import baymist.voxel.VoxelGrid;

/**
 * What every cast of a job shares; immutable.
 *
 * @param relaxationS Stokes relaxation time of each size bin, s, [bins]
 * @param rangeM length after which a ray counts as having met nothing, m
 */
record SprayContext(
        VoxelGrid grid,
        SheetRays rays,
        SurfelFinder finder,
        SizeBins bins,
        double[] relaxationS,
        double liquidDensityKgPerM3,
        Air air,
        RaySet raySet,
        double rangeM) {}
