package baymist.airflow;

import baymist.voxel.Bay;

/**
 * Turbulence of a bay as one number in time, k (m²/s²):
 *
 * <pre>  dk/dt = P / (rho V) - 0.1643 k^1.5 / l,   nu_t = 0.5477 sqrt(k) l,   D = nu_t / Sc_t</pre>
 *
 * One-equation closure of Prandtl (1945) with the constants of Launder and Spalding (1972), C_mu = 0.09: 0.09^(1/4) and
 * 0.09^(3/4). P is the power that the jets hand over where they have slowed to the cap. Bays exchange no k; inside a bay it is
 * uniform (ASSUMED: l/sqrt(k) times a few mixes a bay within the pass).
 */
public final class BulkTurbulence {
    private static final double C_MU = 0.09;

    /** {@code nu_t / (sqrt(k) l)}, 0.5477. */
    public static final double VISCOSITY_FACTOR = Math.pow(C_MU, 0.25);

    /** {@code epsilon l / k^1.5}, 0.1643. */
    public static final double DISSIPATION_FACTOR = Math.pow(C_MU, 0.75);

    /**
     * Length scale over hydraulic diameter: mixing length in the core of a pipe, 0.07 of its diameter (Nikuradse 1932; in
     * this form Versteeg and Malalasekera 2007, section 3.7). ASSUMED to hold for a bay of the same hydraulic diameter.
     */
    private static final double LENGTH_SHARE = 0.07;

    /** Turbulent Schmidt number; 0.7 to 1 are in use, 0.85 from heat transfer in air (Kays 1994). */
    public static final double SCHMIDT = 0.85;

    private static final double RELATIVE_TOLERANCE = 2e-4;
    private static final double ABSOLUTE_TOLERANCE = 1e-9;

    private BulkTurbulence() {}

    /** Hydraulic diameter of a bay, 4 V / A, m. */
    public static double hydraulicDiameterM(Bay bay) {
        return 4 * bay.volumeM3() / bay.areaM2();
    }

    /** Turbulent length scale of a bay, m. */
    public static double lengthM(Bay bay) {
        return LENGTH_SHARE * hydraulicDiameterM(bay);
    }

    /** Eddy viscosity, m²/s. */
    public static double eddyViscosityM2PerS(double kM2PerS2, double lengthM) {
        return VISCOSITY_FACTOR * Math.sqrt(kM2PerS2) * lengthM;
    }

    /** k at which dissipation balances the power, m²/s². */
    public static double steadyK(double powerWPerKg, double lengthM) {
        return Math.pow(powerWPerKg * lengthM / DISSIPATION_FACTOR, 2.0 / 3);
    }

    /**
     * k at the end of a window and its effect over it.
     *
     * @param endM2PerS2 k at the end
     * @param meanRootMPerS time mean of sqrt(k), for the mean eddy viscosity
     */
    public record State(double endM2PerS2, double meanRootMPerS) {}

    /**
     * Advances k over a window.
     *
     * @param startM2PerS2 k at the start, at least 0
     * @param powerWPerKg power handed over per mass of air, W/kg
     * @param lengthM turbulent length scale, above 0
     * @param durationS at least 0
     */
    public static State advance(double startM2PerS2, double powerWPerKg, double lengthM, double durationS) {
        if (durationS == 0) {
            return new State(startM2PerS2, Math.sqrt(startM2PerS2));
        }
        Relaxation balance = new Relaxation(
                k -> powerWPerKg - DISSIPATION_FACTOR * k * Math.sqrt(k) / lengthM,
                0,
                RELATIVE_TOLERANCE,
                ABSOLUTE_TOLERANCE);
        double[] root = new double[1];
        double end = balance.advance(
                startM2PerS2,
                durationS,
                (h, before, after) -> root[0] += 0.5 * h * (Math.sqrt(before) + Math.sqrt(after)));
        return new State(end, root[0] / durationS);
    }
}
