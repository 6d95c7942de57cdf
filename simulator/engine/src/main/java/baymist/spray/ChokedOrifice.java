package baymist.spray;

import baymist.units.Air;

/**
 * Compressed air through a small orifice into the cavity: mass flow, exit state and thrust.
 *
 * <p>Isentropic flow of a perfect gas from rest to the throat, times a discharge coefficient. Choked when the ratio of
 * ambient to supply pressure lies below {@code (2/(γ+1))^(γ/(γ-1))} = 0.5283: {@code m = Cd A p0 √(γ/(R T0))
 * (2/(γ+1))^((γ+1)/(2(γ-1)))} (Shapiro 1953, eq. 4.17); otherwise the subsonic form. The jet leaves under-expanded; its
 * momentum far from the orifice is the thrust {@code J = m Ue + Cd A (pe - pa)} (control volume round the expansion).
 *
 * @param massKgPerS air mass flow, kg/s
 * @param exitSpeedMPerS speed at the throat, m/s
 * @param exitPressurePa absolute pressure at the throat, Pa
 * @param thrustN J, N
 * @param choked whether the throat is sonic
 */
public record ChokedOrifice(
        double massKgPerS, double exitSpeedMPerS, double exitPressurePa, double thrustN, boolean choked) {
    /** Ratio of ambient to supply pressure below which the flow is choked: {@code (2/(γ+1))^(γ/(γ-1))}. */
    public static final double CRITICAL_RATIO = Math.pow(2 / (Air.GAMMA + 1), Air.GAMMA / (Air.GAMMA - 1));

    /**
     * Flow through one orifice.
     *
     * @param diameterM orifice diameter, m
     * @param dischargeCoefficient 0..1 (0.6 sharp-edged to 0.97 rounded)
     * @param gaugePa supply pressure above ambient, Pa, not negative
     * @param supplyK supply (stagnation) temperature, K
     * @param ambientPa absolute ambient pressure, Pa
     */
    public static ChokedOrifice of(
            double diameterM, double dischargeCoefficient, double gaugePa, double supplyK, double ambientPa) {
        if (!(gaugePa >= 0)) {
            throw new IllegalArgumentException("gauge pressure " + gaugePa + " Pa, 0 or more expected");
        }
        double g = Air.GAMMA;
        double p0 = ambientPa + gaugePa;
        double area = dischargeCoefficient * Math.PI / 4 * diameterM * diameterM;
        boolean choked = ambientPa / p0 < CRITICAL_RATIO;
        double pe = choked ? p0 * CRITICAL_RATIO : ambientPa;
        double te = supplyK * Math.pow(pe / p0, (g - 1) / g);
        double speed = Math.sqrt(2 * g / (g - 1) * Air.GAS_CONSTANT * Math.max(0, supplyK - te));
        double mass = area * pe / (Air.GAS_CONSTANT * te) * speed;
        double thrust = mass * speed + area * (pe - ambientPa);
        return new ChokedOrifice(mass, speed, pe, thrust, choked);
    }

    /** Speed of the fully expanded jet that carries the same momentum with the same mass, {@code J/m}, m/s; 0 without flow. */
    public double effectiveSpeedMPerS() {
        return massKgPerS > 0 ? thrustN / massKgPerS : 0;
    }
}
