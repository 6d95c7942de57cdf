package baymist.plan;

/**
 * What a plan brings.
 *
 * @param reached share of area at haze or above, 0..1
 * @param protectedShare share at the target build or above, 0..1
 * @param triggerS time with the trigger held, s
 * @param productM3 liquid sprayed, m³
 */
public record PlanScore(double reached, double protectedShare, double triggerS, double productM3) {
    /** What a point of protected area is worth in points of reached area (ASSUMED: coverage first, then build). */
    static final double BUILD_WORTH = 0.02;

    /** What using up the limit of trigger time or product costs (ASSUMED: a twentieth of a point of area). */
    static final double USE_WORTH = 0.0005;

    /** What a pass costs (ASSUMED: a twentieth of a point; each is another thing to do). */
    static final double PASS_WORTH = 0.0005;

    /** Reached shares that differ by no more count as the same coverage: then build, product and passes decide. */
    static final double SAME_REACHED = 0.0005;

    /** What no plan can be worth more than. */
    static final double MOST_WORTH = 1 + BUILD_WORTH;

    /** Nothing. */
    static final PlanScore NONE = new PlanScore(0, 0, 0, 0);

    /** Larger is better. */
    double worth(PlanLimits limits, int passes) {
        return reached
                + BUILD_WORTH * protectedShare
                - USE_WORTH * limits.use(triggerS, productM3)
                - PASS_WORTH * passes;
    }
}
