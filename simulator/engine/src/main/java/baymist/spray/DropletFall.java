package baymist.spray;

import baymist.units.Air;

/**
 * A step of a drop's fall while air carries it sideways.
 *
 * <p>{@code dw/dt = g - w f/τ}, {@code dy/dt = w}, f = 1 + 0.15 Re^0.687 (Schiller and Naumann 1935) with the Reynolds number of
 * the whole speed
 * relative to the air. For f held over the step the solution is {@code w = w∞ + (w0 - w∞) e}, {@code y = y0 + w∞ dt + (w0 - w∞)(1
 * - e) τ/f}, w∞ =
 * g τ/f, e = exp(-dt f/τ): in the Stokes range (f = 1) exact for steps of any length. Buoyancy is neglected.
 */
final class DropletFall {
    private DropletFall() {}

    /**
     * Speed of fall (m/s) and distance sunk (m) after a step.
     *
     * @param fallMPerS,sunkM before it
     * @param alongMPerS speed relative to the air square to the fall, m/s
     * @param relaxationS Stokes relaxation time with slip, s, above 0
     */
    static double[] step(
            double fallMPerS,
            double sunkM,
            double dtS,
            double alongMPerS,
            double gravityMPerS2,
            double relaxationS,
            double diameterM,
            Air air) {
        double end = fallMPerS;
        double sunk = sunkM;
        // the drag that belongs to the speed at the end is found in a few rounds
        for (int n = 0; n < 4; n++) {
            double mean = 0.5 * (fallMPerS + end);
            double f = Droplet.dragFactor(Droplet.reynolds(diameterM, Math.hypot(alongMPerS, mean), air));
            double tau = relaxationS / f;
            double last = gravityMPerS2 * tau;
            double kept = Math.exp(-dtS / tau);
            end = last + (fallMPerS - last) * kept;
            sunk = sunkM + last * dtS - (fallMPerS - last) * tau * Math.expm1(-dtS / tau);
        }
        return new double[] {end, sunk};
    }
}
