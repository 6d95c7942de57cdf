package baymist.units;

/**
 * Properties of the air in the cavity, SI.
 *
 * @param densityKgPerM3 kg/m³
 * @param viscosityPaS dynamic viscosity, Pa·s
 * @param meanFreePathM mean free path of the molecules, m
 * @param temperatureK K
 * @param pressurePa absolute ambient pressure, Pa
 */
public record Air(
        double densityKgPerM3, double viscosityPaS, double meanFreePathM, double temperatureK, double pressurePa) {
    /** Specific gas constant of dry air, J/(kg K) (US Standard Atmosphere 1976). */
    public static final double GAS_CONSTANT = 287.053;

    /** Ratio of specific heats of air. */
    public static final double GAMMA = 1.4;

    /** Standard gravity, m/s² (CGPM 1901: 9.80665). */
    public static final double GRAVITY = 9.80665;

    /** Boltzmann constant, J/K (SI 2019, exact). */
    public static final double BOLTZMANN = 1.380649e-23;

    /** Air at 20 °C and 101.325 kPa; mean free path 0.066 µm (Hinds 1999). */
    public static final Air STANDARD = new Air(1.204, 1.81e-5, 0.066e-6, 293.15, 101_325);

    /** Sutherland's temperature of air, K (US Standard Atmosphere 1976, eq. 51). */
    private static final double SUTHERLAND_K = 110.4;

    /**
     * Air at another temperature and pressure, scaled from {@link #STANDARD}: density by the gas law, viscosity by Sutherland's
     * law (US Standard Atmosphere 1976, eq. 51; 100 to 1900 K), mean free path as {@code (μ/p) √T} (kinetic theory, e.g.
     * Hinds 1999, ch. 2).
     *
     * @param temperatureK K, above 0
     * @param pressurePa absolute, Pa, above 0
     */
    public static Air at(double temperatureK, double pressurePa) {
        double t = temperatureK / STANDARD.temperatureK;
        double p = pressurePa / STANDARD.pressurePa;
        double viscosity = t * Math.sqrt(t) * (STANDARD.temperatureK + SUTHERLAND_K) / (temperatureK + SUTHERLAND_K);
        return new Air(
                STANDARD.densityKgPerM3 * (p / t),
                STANDARD.viscosityPaS * viscosity,
                STANDARD.meanFreePathM * (viscosity / p * Math.sqrt(t)),
                temperatureK,
                pressurePa);
    }

    public double kinematicViscosityM2PerS() {
        return viscosityPaS / densityKgPerM3;
    }
}
