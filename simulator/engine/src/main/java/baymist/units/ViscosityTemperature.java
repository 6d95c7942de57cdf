package baymist.units;

/**
 * Kinematic viscosity of a petroleum oil against temperature from two measured points.
 *
 * <p>ASTM D341 (2003 and later), Standard Practice for Viscosity-Temperature Charts for Liquid Petroleum Products: a straight line in
 * {@code log10 log10 Z = A - B log10 T}, with {@code Z = v + 0.7 + exp(-1.47 - 1.84 v - 0.51 v²)}, v in mm²/s (cSt) and T in K, and
 * back {@code v = (Z-0.7) - exp(-0.7487 - 3.295 (Z-0.7) + 0.6119 (Z-0.7)² - 0.3193 (Z-0.7)³)}. Valid for 0.21 to 2e7 mm²/s, between
 * the cloud point and the initial boiling point.
 *
 * @param a, b constants A and B of the line
 */
public record ViscosityTemperature(double a, double b) {
    /** Lowest and highest kinematic viscosity of the practice, m²/s. */
    public static final double MIN_M2_PER_S = 0.21e-6;

    public static final double MAX_M2_PER_S = 20.0;

    /** Least distance of the two points, K; ASSUMED: closer points turn a 1 % error of a viscometer into a wrong slope. */
    public static final double MIN_DISTANCE_K = 5;

    /**
     * Line through two points.
     *
     * @param t1K, t2K temperatures, K, at least {@link #MIN_DISTANCE_K} apart
     * @param v1M2PerS, v2M2PerS kinematic viscosities there, m²/s; the warmer one is the lower
     * @throws IllegalArgumentException when the points are no such pair
     */
    public static ViscosityTemperature through(double t1K, double v1M2PerS, double t2K, double v2M2PerS) {
        if (!(t1K > 0 && t2K > 0) || Math.abs(t1K - t2K) < MIN_DISTANCE_K) {
            throw new IllegalArgumentException("the two temperatures must be at least 5 K apart");
        }
        double y1 = doubleLog(v1M2PerS);
        double y2 = doubleLog(v2M2PerS);
        double x1 = Math.log10(t1K);
        double x2 = Math.log10(t2K);
        double slope = (y1 - y2) / (x2 - x1);
        if (!(slope > 0)) {
            throw new IllegalArgumentException("the viscosity must fall as the oil gets warmer");
        }
        return new ViscosityTemperature(y1 + slope * x1, slope);
    }

    /** Kinematic viscosity at a temperature, m²/s. */
    public double kinematicM2PerS(double temperatureK) {
        double z = Math.pow(10, Math.pow(10, a - b * Math.log10(temperatureK)));
        double w = z - 0.7;
        return 1e-6 * (w - Math.exp(-0.7487 - 3.295 * w + 0.6119 * w * w - 0.3193 * w * w * w));
    }

    private static double doubleLog(double m2PerS) {
        if (!(m2PerS >= MIN_M2_PER_S && m2PerS <= MAX_M2_PER_S)) {
            throw new IllegalArgumentException("ASTM D341 holds from 0.21 to 2e7 cSt");
        }
        double v = 1e6 * m2PerS;
        return Math.log10(Math.log10(v + 0.7 + Math.exp(-1.47 - 1.84 * v - 0.51 * v * v)));
    }
}
