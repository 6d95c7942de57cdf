package baymist.fog;

/**
 * Flux of a drifting, diffusing quantity between two points, exact for constant drift and diffusivity: Scharfetter and
 * Gummel (1969), IEEE Trans. Electron Devices 16, 64-77, equation (4) of docs/theory/fog.md.
 *
 * <p>flux = G [B(-P) c_low - B(P) c_high] with P = F/G and B(x) = x/(e^x - 1), F the drift and G the conductance, both
 * m³/s. Both coefficients are positive whatever P is; P to infinity is the donor cell, P = 0 is plain diffusion.
 */
final class ExponentialFlux {
    private ExponentialFlux() {}

    /**
     * The smaller of the two coefficients, that against the drift, m³/s. The other is this plus |F|, so that uniform fog
     * is carried with the drift to rounding.
     *
     * @param drift F, m³/s, either sign
     * @param conductance G, m³/s, 0 or more
     */
    static double againstDrift(double drift, double conductance) {
        double f = Math.abs(drift);
        if (f >= 700 * conductance) {
            return 0;
        }
        double p = f / conductance;
        if (p < 0.02) {
            return conductance * (1 - p / 2 + p * p / 12 * (1 - p * p / 60));
        }
        return f / Math.expm1(p);
    }
}
