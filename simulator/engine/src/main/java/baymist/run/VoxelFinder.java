package baymist.run;

import baymist.geom.Vec3;
import baymist.spray.SurfelFinder;
import baymist.voxel.SurfelLocator;

/** Finds voxel elements for the spray. */
record VoxelFinder(SurfelLocator locator) implements SurfelFinder {
    @Override
    public int surfelNear(Vec3 pointM, int part, Vec3 towardsAir) {
        return locator.surfelNear(pointM, part, towardsAir);
    }

    @Override
    public int closureNear(Vec3 pointM, int opening, Vec3 towardsAir) {
        return locator.closureNear(pointM, opening, towardsAir);
    }

    @Override
    public int cellNear(Vec3 pointM, Vec3 towardsAir) {
        return locator.cellNear(pointM, towardsAir);
    }
}
