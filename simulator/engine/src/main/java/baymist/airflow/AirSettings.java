package baymist.airflow;

import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.units.Air;

/**
 * Settings of the air stage.
 *
 * @param spec mode, diffusivity overrides and pressure limit from the scene
 * @param air properties of the air
 * @param gravity direction of gravity, unit vector
 * @param gravityMPerS2 its magnitude, m/s², 0 allowed (no residual convection)
 * @param tolerance relative residual of the Poisson solves
 */
public record AirSettings(AirSpec spec, Air air, Vec3 gravity, double gravityMPerS2, double tolerance) {
    public static AirSettings of(Scene scene, Air air) {
        return new AirSettings(scene.air(), air, scene.gravity(), scene.gravityMPerS2(), AirProjector.TOLERANCE);
    }

    /** Whether temperature differences keep the air moving: not in STILL mode, nor when quiet diffusivity is set to 0. */
    boolean residualConvection() {
        return spec.mode() != AirSpec.Mode.STILL && spec.quietDiffusivityM2PerS() != 0 && gravityMPerS2 > 0;
    }
}
