package baymist.fog;

import baymist.spray.Droplet;
import baymist.units.Air;

/**
 * One size of droplet in still air: slip, relaxation time, settling speed, as {@link Droplet} gives them.
 *
 * @param diameterM diameter, m; 0 = plain tracer that follows the air and never deposits
 * @param slip Cunningham factor, 1 and above
 * @param relaxationS Stokes relaxation time with slip, s
 * @param settlingMPerS terminal speed along gravity, m/s, 0 and above
 */
record FogDroplet(double diameterM, double slip, double relaxationS, double settlingMPerS) {
    /** Reynolds number up to which Schiller and Naumann's drag holds. */
    private static final double LARGEST_REYNOLDS = 1000;

    FogDroplet {
        if (!(diameterM >= 0 && slip >= 1 && relaxationS >= 0 && settlingMPerS >= 0) || Double.isInfinite(diameterM)) {
            throw new IllegalArgumentException("droplet of diameter " + diameterM + " m, slip " + slip
                    + ", relaxation time " + relaxationS + " s, settling speed " + settlingMPerS + " m/s");
        }
    }

    /**
     * @param diameterM 0 or 1e-8 to 1e-3 m
     * @param densityKgPerM3 density of the liquid, kg/m³
     * @param gravityMPerS2 strength of gravity, m/s², 0 allowed
     */
    static FogDroplet of(double diameterM, double densityKgPerM3, Air air, double gravityMPerS2) {
        if (diameterM == 0) {
            return new FogDroplet(0, 1, 0, 0);
        }
        double settling = Droplet.settlingSpeedMPerS(diameterM, densityKgPerM3, air, gravityMPerS2);
        double reynolds = Droplet.reynolds(diameterM, settling, air);
        if (reynolds > LARGEST_REYNOLDS) {
            throw new IllegalArgumentException("a droplet of " + diameterM + " m falls at Reynolds number " + reynolds
                    + ", beyond the drag law's " + LARGEST_REYNOLDS);
        }
        double relaxationS = Droplet.relaxationTimeS(diameterM, densityKgPerM3, air);
        return new FogDroplet(diameterM, Droplet.slip(diameterM, air), relaxationS, settling);
    }
}
