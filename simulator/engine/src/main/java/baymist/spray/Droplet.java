package baymist.spray;

import baymist.units.Air;

/**
 * What a single oil droplet does in air: slip, relaxation, settling, stopping, splashing. Rigid-sphere laws, which oil
 * drops below some 500 µm obey. A diameter of 0 marks a plain tracer that follows the air: every time and speed is 0.
 */
public final class Droplet {
    private Droplet() {}

    /**
     * Slip correction {@code Cc = 1 + (λ/d)(2.34 + 1.05 exp(-0.39 d/λ))}: Hinds (1999), eq. 3.20, after Allen and Raabe;
     * any diameter, 2 %.
     *
     * @param diameterM m, above 0
     * @return at least 1
     */
    public static double slip(double diameterM, Air air) {
        double r = diameterM / air.meanFreePathM();
        return 1 + (2.34 + 1.05 * Math.exp(-0.39 * r)) / r;
    }

    /** Relaxation time {@code τ = ρ d² Cc / (18 μ)} in the Stokes range, s (Hinds 1999, eq. 5.3). */
    public static double relaxationTimeS(double diameterM, double densityKgPerM3, Air air) {
        if (diameterM <= 0) {
            return 0;
        }
        return densityKgPerM3 * diameterM * diameterM * slip(diameterM, air) / (18 * air.viscosityPaS());
    }

    /** Reynolds number of a droplet that moves at {@code speedMPerS} relative to the air. */
    public static double reynolds(double diameterM, double speedMPerS, Air air) {
        return air.densityKgPerM3() * Math.abs(speedMPerS) * diameterM / air.viscosityPaS();
    }

    /** Factor on Stokes drag above the Stokes range, {@code 1 + 0.15 Re^0.687} (Schiller and Naumann 1935, Re below 1000). */
    public static double dragFactor(double reynolds) {
        return 1 + 0.15 * Math.pow(reynolds, 0.687);
    }

    /** Settling speed with Stokes drag and slip, m/s: {@code τ g}; reads 21 % too high at 100 µm. */
    public static double stokesSettlingMPerS(double diameterM, double densityKgPerM3, Air air, double gravityMPerS2) {
        return relaxationTimeS(diameterM, densityKgPerM3, air) * gravityMPerS2;
    }

    /**
     * Settling speed in still air, m/s, positive along gravity: Schiller-Naumann drag with slip at every size, so that there
     * is no step between two laws. Below 10 µm it lies within 0.3 % of {@link #stokesSettlingMPerS}. Buoyancy in air
     * (0.14 %) is neglected.
     */
    public static double settlingSpeedMPerS(double diameterM, double densityKgPerM3, Air air, double gravityMPerS2) {
        double stokes = stokesSettlingMPerS(diameterM, densityKgPerM3, air, gravityMPerS2);
        if (stokes == 0) {
            return 0;
        }
        // f(v) = v (1 + 0.15 Re^0.687) - v_Stokes is convex and rising: Newton from the right converges without
        // overshoot
        double v = stokes;
        for (int i = 0; i < 60; i++) {
            double excess = dragFactor(reynolds(diameterM, v, air)) - 1;
            double next = v - (v * (1 + excess) - stokes) / (1 + 1.687 * excess);
            if (Math.abs(next - v) <= 1e-14 * v) {
                return next;
            }
            v = next;
        }
        return v;
    }

    /**
     * Distance in which a droplet thrown at {@code speedMPerS} into still air comes to rest, m: {@code V τ} below Re 1, and
     * Mercer (1973) above, {@code (ρp d/ρ)(Re^(1/3) - √6 atan(Re^(1/3)/√6))}, 3 % for 1 &lt; Re &lt; 400.
     */
    public static double stoppingDistanceM(double diameterM, double densityKgPerM3, Air air, double speedMPerS) {
        double re = reynolds(diameterM, speedMPerS, air);
        if (re <= 1) {
            return Math.abs(speedMPerS) * relaxationTimeS(diameterM, densityKgPerM3, air);
        }
        double root = Math.cbrt(re);
        double six = Math.sqrt(6);
        return densityKgPerM3 * diameterM / air.densityKgPerM3() * (root - six * Math.atan(root / six));
    }

    /**
     * Splash number {@code K = We^0.5 Re^0.25} of a drop that strikes dry sheet; above {@link #SPLASH_LIMIT} it splashes
     * (Mundo, Sommerfeld and Tropea 1995).
     */
    public static double splashNumber(
            double diameterM,
            double speedMPerS,
            double densityKgPerM3,
            double viscosityPaS,
            double surfaceTensionNPerM) {
        double we = densityKgPerM3 * speedMPerS * speedMPerS * diameterM / surfaceTensionNPerM;
        double re = densityKgPerM3 * speedMPerS * diameterM / viscosityPaS;
        return Math.sqrt(we) * Math.pow(re, 0.25);
    }

    /** Splash number above which a drop breaks up on the wall (Mundo, Sommerfeld and Tropea 1995). */
    public static final double SPLASH_LIMIT = 57.7;
}
