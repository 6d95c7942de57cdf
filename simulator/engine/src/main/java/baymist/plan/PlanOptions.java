package baymist.plan;

/**
 * What a plan is asked for.
 *
 * @param dose how finely doses are computed
 * @param store what keeps doses
 * @param triggerS most trigger time, s; not a number = that of the scene's own passes, or by area where it has none
 * @param passes most passes
 * @param rounds most rounds of plan and planning run, at least 1
 * @param full whether the plan is verified by a run at the scene's own resolution
 */
public record PlanOptions(DoseSettings dose, DoseStore store, double triggerS, int passes, int rounds, boolean full) {
    public static final PlanOptions DEFAULT =
            new PlanOptions(DoseSettings.DEFAULT, DoseStore.none(), Double.NaN, PlanLimits.PASSES, 3, true);

    public PlanOptions {
        if (rounds < 1 || passes < 1 || triggerS <= 0) {
            throw new IllegalArgumentException(rounds + " rounds, " + passes + " passes, " + triggerS + " s");
        }
    }
}
