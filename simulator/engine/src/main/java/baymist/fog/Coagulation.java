package baymist.fog;

import baymist.units.Air;

/**
 * How fast droplets of one size meet and merge: docs/theory/fog.md, section 5. Monodisperse coagulation (Smoluchowski 1917; Hinds 1999,
 * Aerosol Technology, ch. 12):
 *
 * <pre> dN/dt = -K N²,   N/N0 = 1/(1 + K N0 t),   d/d0 = (1 + K N0 t)^(1/3) </pre>
 */
public final class Coagulation {
    /** sqrt(8 pi/15) of Saffman and Turner's shear kernel. */
    static final double SHEAR = Math.sqrt(8 * Math.PI / 15);

    private Coagulation() {}

    /**
     * Brownian coefficient, m³/s: 4 k_B T Cc/(3 mu), for droplets of 1 µm and more (Fuchs' correction is 1 there); Hinds (1999), eq. 12.9.
     *
     * @param slip Cunningham factor
     */
    public static double brownianM3PerS(double slip, Air air) {
        return 4 * Air.BOLTZMANN * air.temperatureK() * slip / (3 * air.viscosityPaS());
    }

    /**
     * Turbulent-shear coefficient, m³/s: half of 1.294 d³ sqrt(eps/nu) (Saffman and Turner 1956, J. Fluid Mech. 1, 16). Droplets smaller than
     * the Kolmogorov length that follow the air; an upper bound at small inertia, too small where the relaxation time nears Kolmogorov's.
     *
     * @param dissipationWPerKg eps, W/kg
     */
    public static double turbulentM3PerS(double diameterM, double dissipationWPerKg, Air air) {
        return 0.5 * SHEAR * Math.pow(diameterM, 3) * Math.sqrt(dissipationWPerKg / air.kinematicViscosityM2PerS());
    }

    /** Number of droplets in a volume of air, 1/m³. */
    public static double numberPerM3(double concentrationKgPerM3, double diameterM, double liquidDensityKgPerM3) {
        return concentrationKgPerM3 / (liquidDensityKgPerM3 * Math.PI / 6 * Math.pow(diameterM, 3));
    }

    /** Share of the number that is left, 0..1, after the integral of K N0 over time. */
    public static double numberLeft(double meetings) {
        return 1 / (1 + meetings);
    }

    /** Mean diameter over that at the start. */
    public static double growth(double meetings) {
        return Math.cbrt(1 + meetings);
    }
}
