package baymist.plan;

import java.util.List;

/**
 * What human hands and uncertain droplets make of a plan, by the dose matrix.
 *
 * @param samples jobs tried
 * @param meanReached mean share of area at haze or above, 0..1
 * @param nineteenOfTwenty share that 19 of 20 jobs get at least
 * @param surely share of the area that is reached in at least 95 of 100 jobs
 * @param chance share of the jobs in which each surfel is reached, 0..1, [surfels]; read-only
 * @param byBay mean chance of each bay's area
 * @param habits what each habit alone costs, the most costly first
 */
public record HandsResult(
        int samples,
        double meanReached,
        double nineteenOfTwenty,
        double surely,
        double[] chance,
        List<BayChance> byBay,
        List<Habit> habits) {
    public HandsResult {
        byBay = List.copyOf(byBay);
        habits = List.copyOf(habits);
    }

    /** Chance of a bay's area to be reached, 0..1. */
    public record BayChance(String bay, double chance) {}

    /**
     * A habit by itself.
     *
     * @param lostReached what 19 of 20 jobs get less than the plan promises, share of area
     */
    public record Habit(String name, double lostReached) {}
}
