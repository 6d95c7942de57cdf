package baymist.plan;

/**
 * What a plan is asked for.
 *
 * @param dose how finely doses are computed
 * @param store what keeps doses
 * @param triggerS most trigger time, s; not a number = what the scene states, or that of its own passes, or by area where it has none
 * @param productM3 most liquid, m³; not a number = what the scene states, or that of its own passes
 * @param passes most passes; 0 = what the scene states
 * @param runs most runs at planning resolution, at least 1
 * @param full whether the plan is verified by a run at the scene's own resolution
 * @param drill whether holes may be proposed where the scene's `drilling` allows them
 * @param fullRounds most further plans that are run in full where the full run reaches less than was promised, 0 or more
 * @param handRuns whether, with a full run, some of the jobs of sampled hands are run too
 */
public record PlanOptions(
        DoseSettings dose,
        DoseStore store,
        double triggerS,
        double productM3,
        int passes,
        int runs,
        boolean full,
        boolean drill,
        int fullRounds,
        boolean handRuns) {
    /** Runs at planning resolution that a plan may take. */
    public static final int RUNS = 48;

    /** Further plans run in full where the first one keeps less than it promised. */
    public static final int FULL_ROUNDS = 2;

    public static final PlanOptions DEFAULT =
            new PlanOptions(DoseSettings.DEFAULT, DoseStore.none(), Double.NaN, Double.NaN, 0, RUNS, true, false);

    /** With {@link #FULL_ROUNDS}. */
    public PlanOptions(
            DoseSettings dose,
            DoseStore store,
            double triggerS,
            double productM3,
            int passes,
            int runs,
            boolean full,
            boolean drill) {
        this(dose, store, triggerS, productM3, passes, runs, full, drill, FULL_ROUNDS, true);
    }

    public PlanOptions {
        if (fullRounds < 0 || runs < 1 || passes < 0 || triggerS <= 0 || productM3 <= 0) {
            throw new IllegalArgumentException(
                    runs + " runs, " + passes + " passes, " + triggerS + " s, " + productM3 + " m³");
        }
    }

    /** The same with another limit of product, m³, and none of trigger time. */
    public PlanOptions withProductM3(double most) {
        return new PlanOptions(
                dose, store, Double.POSITIVE_INFINITY, most, passes, runs, full, drill, fullRounds, handRuns);
    }

    /** The same without a full run. */
    public PlanOptions coarse() {
        return new PlanOptions(dose, store, triggerS, productM3, passes, runs, false, drill, fullRounds, handRuns);
    }

    /** The same with or without holes. */
    public PlanOptions withDrill(boolean holes) {
        return new PlanOptions(dose, store, triggerS, productM3, passes, runs, full, holes, fullRounds, handRuns);
    }

    /** The same without runs of sampled hands. */
    public PlanOptions withoutHandRuns() {
        return new PlanOptions(dose, store, triggerS, productM3, passes, runs, full, drill, fullRounds, false);
    }
}
