package baymist.fog;

import baymist.scene.WallFinish;
import baymist.units.Air;
import java.util.Arrays;

/** Deposition speed of a droplet bin on a wall; a seam that lets exact solutions with other wall conditions be checked. */
@FunctionalInterface
interface WallSpeed {
    /**
     * Speed at which droplets of a bin reach a surfel.
     *
     * @param frictionSpeedMPerS u* at the surfel, m/s
     * @param normalUp component of the surfel's normal against gravity, -1..1
     * @return m/s, 0 or more
     */
    double speedMPerS(int surfel, int bin, double frictionSpeedMPerS, double normalUp);

    /** Whether two surfels of equal friction speed and normal may differ. */
    default boolean dependsOnPlace() {
        return true;
    }

    /** By {@link DepositionLaw}; bins by their droplets. */
    static WallSpeed of(FogDroplet[] droplets, Air air, WallFinish finish) {
        DepositionLaw[] laws = Arrays.stream(droplets)
                .map(d -> new DepositionLaw(d, air, finish))
                .toArray(DepositionLaw[]::new);
        return new WallSpeed() {
            @Override
            public double speedMPerS(int surfel, int bin, double frictionSpeedMPerS, double normalUp) {
                return laws[bin].speedMPerS(frictionSpeedMPerS, normalUp);
            }

            @Override
            public boolean dependsOnPlace() {
                return false;
            }
        };
    }
}
