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
 */
public record PlanOptions(
        DoseSettings dose,
        DoseStore store,
        double triggerS,
        double productM3,
        int passes,
        int runs,
        boolean full,
        boolean drill) {
    /** Runs at planning resolution that a plan may take. */
    public static final int RUNS = 48;

    public static final PlanOptions DEFAULT =
            new PlanOptions(DoseSettings.DEFAULT, DoseStore.none(), Double.NaN, Double.NaN, 0, RUNS, true, false);

    public PlanOptions {
        if (runs < 1 || passes < 0 || triggerS <= 0 || productM3 <= 0) {
            throw new IllegalArgumentException(
                    runs + " runs, " + passes + " passes, " + triggerS + " s, " + productM3 + " m³");
        }
    }

    /** The same with another limit of product, m³, and none of trigger time. */
    public PlanOptions withProductM3(double most) {
        return new PlanOptions(dose, store, Double.POSITIVE_INFINITY, most, passes, runs, full, drill);
    }

    /** The same without a full run. */
    public PlanOptions coarse() {
        return new PlanOptions(dose, store, triggerS, productM3, passes, runs, false, drill);
    }
}
