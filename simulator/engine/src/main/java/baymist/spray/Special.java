package baymist.spray;

/** Two special functions that the JDK lacks. */
final class Special {
    private static final double[] LANCZOS = {
        0.9999999999998099,
        676.5203681218851,
        -1259.1392167224028,
        771.3234287776531,
        -176.6150291621406,
        12.507343278686905,
        -0.13857109526572012,
        9.984369578019572e-06,
        1.5056327351493116e-07
    };

    private Special() {}

    /** Gamma function for x above 0, about 14 digits (Lanczos 1964 with g = 7, nine terms). */
    static double gamma(double x) {
        if (x < 0.5) {
            return Math.PI / (Math.sin(Math.PI * x) * gamma(1 - x));
        }
        double z = x - 1;
        double sum = LANCZOS[0];
        for (int i = 1; i < LANCZOS.length; i++) {
            sum += LANCZOS[i] / (z + i);
        }
        double t = z + 7.5;
        return Math.sqrt(2 * Math.PI) * Math.pow(t, z + 0.5) * Math.exp(-t) * sum;
    }

    /** Standard normal distribution function, absolute error below 1e-15 (series of Marsaglia 2004, J. Stat. Softw. 11-4). */
    static double normalBelow(double x) {
        if (x < -8) {
            return 0;
        }
        if (x > 8) {
            return 1;
        }
        double term = x;
        double sum = x;
        for (int k = 3; sum + term != sum; k += 2) {
            term *= x * x / k;
            sum += term;
        }
        return 0.5 + sum * Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    }
}
