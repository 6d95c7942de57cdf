package baymist.airflow;

import baymist.units.Air;

/**
 * Discharge of air through a sharp-edged opening in thin sheet.
 *
 * <p>Two forms. The incompressible one, {@code Q = Cd A sqrt(2 dp / rho)} (Bernoulli with a contraction coefficient; any
 * handbook), holds below a pressure ratio of 5 %. The mass form is the isentropic orifice (de Saint-Venant and Wantzel
 * 1839; e.g. White, Fluid Mechanics, chapter 9) with the choked limit below the critical ratio 0.5283. As the pressure
 * difference vanishes the mass form becomes the incompressible one, so the pressure balance uses it throughout: a switch at
 * 5 % would jump by 3 % and trip the integrator.
 *
 * <p>Not modelled: rise of Cd to 0.7 or 0.8 in holes deeper than wide, rise of Cd with compression (Perry 1949: towards
 * 0.85 when choked), holes at low Reynolds number (below about 1e4). All three make the flow larger than computed and the
 * pressure smaller, or concern flows too small to matter.
 */
public final class Orifice {
    /** Discharge coefficient of a sharp-edged hole: 0.60 to 0.65, 0.61 usual (Kirchhoff 1869: pi/(pi+2) = 0.611). */
    public static final double DISCHARGE = 0.61;

    /** Downstream to upstream pressure below which air flows at the speed of sound, 0.52828. */
    public static final double CRITICAL_RATIO = Math.pow(2 / (Air.GAMMA + 1), Air.GAMMA / (Air.GAMMA - 1));

    private Orifice() {}

    /** Volume flow {@code Cd A sqrt(2 dp / rho)}, m³/s, with the sign of the pressure difference; |dp|/p below 0.05. */
    public static double volumeFlowM3PerS(double areaM2, double pressureDifferencePa, double densityKgPerM3) {
        double speed = Math.sqrt(2 * Math.abs(pressureDifferencePa) / densityKgPerM3);
        return Math.copySign(DISCHARGE * areaM2 * speed, pressureDifferencePa);
    }

    /** Pressure difference that drives a volume flow, Pa (inverse of {@link #volumeFlowM3PerS}); infinite without area. */
    public static double pressureDifferencePa(double areaM2, double flowM3PerS, double densityKgPerM3) {
        double speed = flowM3PerS / (DISCHARGE * areaM2);
        return Math.copySign(0.5 * densityKgPerM3 * speed * speed, flowM3PerS);
    }

    /**
     * Mass flow of air from one side to the other, kg/s, positive from inside to outside, subsonic or choked.
     *
     * @param effectiveAreaM2 discharge coefficient times area, m²
     * @param insidePa,outsidePa absolute pressures, Pa, positive
     * @param temperatureK stagnation temperature on both sides, K
     */
    public static double massFlowKgPerS(
            double effectiveAreaM2, double insidePa, double outsidePa, double temperatureK) {
        return massFlow(effectiveAreaM2, insidePa - outsidePa, outsidePa, temperatureK);
    }

    /** As {@link #massFlowKgPerS} from the gauge pressure inside, which keeps its digits near ambient. */
    static double massFlow(double effectiveAreaM2, double gaugePa, double outsidePa, double temperatureK) {
        double upstream = outsidePa + Math.max(gaugePa, 0);
        double drop = Math.min(Math.abs(gaugePa) / upstream, 1 - CRITICAL_RATIO);
        double logRatio = Math.log1p(-drop);
        double g = Air.GAMMA;
        // psi² = 2g/(g-1) (r^(2/g) - r^((g+1)/g)), written so that small drops do not cancel.
        double psi2 = 2 * g / (g - 1) * Math.exp(2 / g * logRatio) * -Math.expm1((g - 1) / g * logRatio);
        double flow = effectiveAreaM2 * upstream * Math.sqrt(psi2 / (Air.GAS_CONSTANT * temperatureK));
        return Math.copySign(flow, gaugePa);
    }
}
