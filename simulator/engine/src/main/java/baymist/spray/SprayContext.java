package baymist.spray;

import baymist.scene.ProductSpec;
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
        ProductSpec product,
        Air air,
        RaySet raySet,
        double rangeM) {
    /** The same with another set of rays. */
    SprayContext with(RaySet other) {
        return new SprayContext(grid, rays, finder, bins, relaxationS, product, air, other, rangeM);
    }

    double liquidDensityKgPerM3() {
        return product.densityKgPerM3();
    }

    /** Whether a drop of a bin that strikes at this speed splashes; never where the product states no surface tension. */
    boolean splashes(int bin, double normalMPerS) {
        double d = bins.diameterM()[bin];
        return product.surfaceTensionNPerM() > 0
                && Droplet.splashNumber(
                                d,
                                normalMPerS,
                                product.densityKgPerM3(),
                                product.viscosityPaS(),
                                product.surfaceTensionNPerM())
                        > Droplet.SPLASH_LIMIT;
    }
}
