package baymist.plan;

/**
 * What a plan brings.
 *
 * @param reached share of area at haze or above, 0..1
 * @param protectedShare share at the target build or above, 0..1
 * @param triggerS time with the trigger held, s
 */
public record PlanScore(double reached, double protectedShare, double triggerS) {
    /** What a point of protected area is worth in points of reached area (ASSUMED: coverage first, then build). */
    static final double BUILD_WORTH = 0.2;

    /** What the trigger time costs: its whole limit is worth this much area (ASSUMED: half a point). */
    static final double TIME_WORTH = 0.005;

    /** What a pass costs (ASSUMED: a fifth of a point; each is another thing to do). */
    static final double PASS_WORTH = 0.002;

    /** Larger is better. */
    double worth(double limitS) {
        return reached + BUILD_WORTH * protectedShare - TIME_WORTH * triggerS / limitS;
    }
}
