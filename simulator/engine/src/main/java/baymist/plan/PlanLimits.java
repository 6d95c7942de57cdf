package baymist.plan;

/**
 * What a plan has to keep.
 *
 * @param slowestMPerS slowest draw-back, m/s
 * @param fastestMPerS fastest draw-back, m/s
 * @param triggerS most time with the trigger held, s; infinite = no limit
 * @param productM3 most liquid, m³; infinite = no limit
 * @param passes most passes
 */
public record PlanLimits(double slowestMPerS, double fastestMPerS, double triggerS, double productM3, int passes) {
    /** What a hand can draw evenly, m/s (common practice, no source). */
    public static final double SLOWEST_M_PER_S = 0.05;

    public static final double FASTEST_M_PER_S = 0.5;

    /** Slack for rounding. */
    private static final double SLACK = 1 + 1e-9;

    public PlanLimits {
        if (!(slowestMPerS > 0 && slowestMPerS <= fastestMPerS && triggerS > 0 && productM3 > 0) || passes < 1) {
            throw new IllegalArgumentException("limits " + slowestMPerS + " to " + fastestMPerS + " m/s, " + triggerS
                    + " s, " + productM3 + " m³, " + passes + " passes");
        }
    }

    /** A rate held within the limits and rounded. */
    double held(double rateMPerS) {
        return Math.max(slowestMPerS, Math.min(fastestMPerS, rounded(rateMPerS)));
    }

    /** A rate to three figures and no finer than a tenth of a millimetre per second, rounded up so that a pass never takes longer; within the limits. */
    double rounded(double rateMPerS) {
        double step = rateMPerS >= 0.1 ? 1e-3 : 1e-4;
        double up = Math.ceil(rateMPerS / step - 1e-6) * step;
        return Math.max(slowestMPerS, Math.min(fastestMPerS, up));
    }

    /** Share of the tighter limit that is used; above 1 it is broken. */
    double use(double usedTriggerS, double usedProductM3) {
        return Math.max(usedTriggerS / triggerS, usedProductM3 / productM3);
    }

    /** Whether this much keeps the limits. */
    boolean keeps(double usedTriggerS, double usedProductM3) {
        return use(usedTriggerS, usedProductM3) <= SLACK;
    }
}
