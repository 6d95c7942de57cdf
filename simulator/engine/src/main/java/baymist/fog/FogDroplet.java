package baymist.fog;

import baymist.units.Air;

/**
 * One size of droplet in still air: slip, relaxation time, settling speed.
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
        double slip = slip(diameterM, air.meanFreePathM());
        double relaxationS = densityKgPerM3 * diameterM * diameterM * slip / (18 * air.viscosityPaS());
        return new FogDroplet(diameterM, slip, relaxationS, settling(diameterM, relaxationS * gravityMPerS2, air));
    }

    /** Slip correction, Hinds (1999) eq. 3.20 after Allen and Raabe; any size, within 2 %. */
    static double slip(double diameterM, double meanFreePathM) {
        return 1 + meanFreePathM / diameterM * (2.34 + 1.05 * Math.exp(-0.39 * diameterM / meanFreePathM));
    }

    /**
     * Terminal speed with Schiller and Naumann (1933) drag, Re below 1000. The Stokes speed is the upper bound; the
     * balance v (1 + 0.15 Re^0.687) = v_Stokes rises with v, so bisection cannot miss.
     */
    private static double settling(double diameterM, double stokesMPerS, Air air) {
        double reynoldsPerSpeed = diameterM / air.kinematicViscosityM2PerS();
        double low = 0;
        double high = stokesMPerS;
        for (int i = 0; i < 200 && high - low > 1e-15 * high; i++) {
            double v = 0.5 * (low + high);
            if (v * (1 + 0.15 * Math.pow(reynoldsPerSpeed * v, 0.687)) > stokesMPerS) {
                high = v;
            } else {
                low = v;
            }
        }
        if (high * reynoldsPerSpeed > LARGEST_REYNOLDS) {
            throw new IllegalArgumentException("a droplet of " + diameterM + " m falls at Reynolds number "
                    + high * reynoldsPerSpeed + ", beyond the drag law's " + LARGEST_REYNOLDS);
        }
        return high;
    }
}
