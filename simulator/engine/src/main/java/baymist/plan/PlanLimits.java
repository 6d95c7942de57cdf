package baymist.plan;

/**
 * What a plan has to keep.
 *
 * @param slowestMPerS slowest draw-back, m/s
 * @param fastestMPerS fastest draw-back, m/s
 * @param triggerS most time with the trigger held, s
 * @param passes most passes
 */
public record PlanLimits(double slowestMPerS, double fastestMPerS, double triggerS, int passes) {
    /** What a hand can draw evenly, m/s (common practice, no source). */
    public static final double SLOWEST_M_PER_S = 0.05;

    public static final double FASTEST_M_PER_S = 0.5;

    /** Passes that a work card still holds (ASSUMED). */
    public static final int PASSES = 12;

    public PlanLimits {
        if (!(slowestMPerS > 0 && slowestMPerS <= fastestMPerS && triggerS > 0) || passes < 1) {
            throw new IllegalArgumentException("limits " + slowestMPerS + " to " + fastestMPerS + " m/s, " + triggerS
                    + " s, " + passes + " passes");
        }
    }

    /** A rate held within the limits, to the millimetre per second. */
    double held(double rateMPerS) {
        double within = Math.max(slowestMPerS, Math.min(fastestMPerS, rateMPerS));
        double rounded = Math.round(1e3 * within) / 1e3;
        return Math.max(slowestMPerS, Math.min(fastestMPerS, rounded));
    }
}
