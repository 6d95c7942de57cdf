package baymist.scene;

import baymist.geom.Vec3;
import org.jspecify.annotations.Nullable;

/**
 * Fog present at the start (verification and what-if).
 *
 * @param concentrationKgPerM3 uniform concentration over the whole cavity; 0 when a point release is stated
 * @param pointM place of a point release, or null
 * @param pointMassKg mass of the point release, kg
 */
public record InitialFog(
        double concentrationKgPerM3, @Nullable Vec3 pointM, double pointMassKg) {}
