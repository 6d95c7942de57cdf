package baymist.airflow;

/**
 * What the unresolved motion of one window does.
 *
 * @param diffusivityM2PerS eddy diffusivity, [cells]
 * @param quietFrictionMPerS friction speed of the residual convection, a floor to the resolved one, [surfels]
 * @param kinematicViscosityM2PerS of the air
 */
public record Mixing(double[] diffusivityM2PerS, double[] quietFrictionMPerS, double kinematicViscosityM2PerS) {}
