package baymist.spray;

import baymist.geom.Vec3;
import baymist.scene.ProductSpec;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;

/**
 * What every cast of a job shares; immutable.
 *
 * @param relaxationS Stokes relaxation time of each size bin, s, [bins]
 * @param raySet rays of a jet's air
 * @param liquidSet rays of a jet's liquid
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
        CastSettings settings,
        RaySet raySet,
        RaySet liquidSet,
        double rangeM) {
    /** The same with the sets of rays of a station. */
    SprayContext at(long station) {
        int count = settings.raysPerJet();
        return new SprayContext(
                grid,
                rays,
                finder,
                bins,
                relaxationS,
                product,
                air,
                settings,
                RaySet.ofAir(count, station, settings.seed()),
                RaySet.ofLiquid(count, station, settings.seed()),
                rangeM);
    }

    Vec3 gravityMPerS2() {
        return settings.gravityMPerS2();
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
