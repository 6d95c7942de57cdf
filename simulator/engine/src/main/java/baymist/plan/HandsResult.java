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
 * @param regions places that hang together and are not reached in 19 of 20 jobs, the largest first
 * @param habits what each habit alone costs, the most costly first
 * @param checks some of the jobs as runs found them; empty where none were asked for
 */
public record HandsResult(
        int samples,
        double meanReached,
        double nineteenOfTwenty,
        double surely,
        double[] chance,
        List<BayChance> byBay,
        List<RegionChance> regions,
        List<Habit> habits,
        List<Check> checks) {
    public HandsResult {
        byBay = List.copyOf(byBay);
        regions = List.copyOf(regions);
        habits = List.copyOf(habits);
        checks = List.copyOf(checks);
    }

    /**
     * One of the jobs run as it was sampled.
     *
     * @param rank share of the jobs that reach less, by the matrix, 0..1
     * @param byMatrix, byRun share of area reached
     * @param full whether at the scene's own resolution with its air, else at the matrix's
     */
    public record Check(double rank, double byMatrix, double byRun, boolean full) {}

    /** The same with checks. */
    HandsResult with(List<Check> runs) {
        return new HandsResult(samples, meanReached, nineteenOfTwenty, surely, chance, byBay, regions, habits, runs);
    }

    /**
     * A place that is not reached in 19 of 20 jobs.
     *
     * @param label stable name, as of a bare region of a run (docs/theory/coverage.md, section 3)
     * @param where in structure words
     * @param areaM2 its area, m²
     * @param chance mean chance of its area to be reached, 0..1
     */
    public record RegionChance(String label, String where, double areaM2, double chance) {}

    /** Chance of a bay's area to be reached, 0..1. */
    public record BayChance(String bay, double chance) {}

    /**
     * A habit by itself.
     *
     * @param lostReached what 19 of 20 jobs get less than the plan promises, share of area
     * @param varianceShare its share of the variance of the reached area between jobs, 0..1
     */
    public record Habit(String name, double lostReached, double varianceShare) {}
}
