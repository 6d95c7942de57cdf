package baymist.fog;

/**
 * Flux of a drifting, diffusing quantity between two points, exact for constant drift and diffusivity: Scharfetter and
 * Gummel (1969), IEEE Trans. Electron Devices 16, 64-77, equation (4) of docs/theory/fog.md.
 *
 * <p>flux = G [B(-P) c_low - B(P) c_high] with P = F/G and B(x) = x/(e^x - 1), F the drift and G the conductance, both
 * m³/s. Both coefficients are positive whatever P is; P to infinity is the donor cell, P = 0 is plain diffusion.
 */
final class ExponentialFlux {
    /** Drift over conductance from which what goes against the drift is below 1e-17 of it: no sum with the drift would show it. */
    private static final double NONE = 43;

    /** The same in single precision: below 1e-9 of it. */
    private static final double NONE_SINGLE = 21;

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
        if (f >= NONE * conductance) {
            return 0;
        }
        double p = f / conductance;
        if (p < 1) {
            return conductance * (even(p * p) - p / 2);
        }
        double e = Math.exp(-p);
        return f * e / (1 - e);
    }

    /**
     * The same to the seven digits of single precision, for less work.
     *
     * @param drift F, m³/s, either sign
     * @param conductance G, m³/s, 0 or more
     */
    static double againstDriftSingle(double drift, double conductance) {
        double f = Math.abs(drift);
        if (f >= NONE_SINGLE * conductance) {
            return 0;
        }
        double p = f / conductance;
        if (p < 1) {
            double square = p * p;
            double s = 1 / 47900160.0;
            s = s * square - 1 / 1209600.0;
            s = s * square + 1 / 30240.0;
            s = s * square - 1 / 720.0;
            s = s * square + 1 / 12.0;
            return conductance * (s * square + 1 - p / 2);
        }
        double e = Math.exp(-p);
        return f * e / (1 - e);
    }

    /**
     * B(p) + p/2 for p below 1: the even terms B_n p^n / n! of Bernoulli's numbers (Abramowitz and Stegun 23.1.1 and table 23.2), to rounding.
     */
    private static double even(double square) {
        double s = 43867 / 5109094217170944000.0;
        s = s * square - 3617 / 10670622842880000.0;
        s = s * square + 1 / 74724249600.0;
        s = s * square - 691 / 1307674368000.0;
        s = s * square + 1 / 47900160.0;
        s = s * square - 1 / 1209600.0;
        s = s * square + 1 / 30240.0;
        s = s * square - 1 / 720.0;
        s = s * square + 1 / 12.0;
        return s * square + 1;
    }
}
