package baymist.access;

/**
 * How finely a search looks.
 *
 * @param resolutionM size of what may be overlooked, m, see {@link WandReach#resolutionM}
 * @param budget most bodies (lines, nodes) that are tried before the search stops with what it has
 * @param tips most tip poses that are kept
 */
public record ReachSettings(double resolutionM, int budget, int tips) {
    /** 2 mm is finer than a hand holds a wand (ASSUMED). */
    public static final ReachSettings DEFAULT = new ReachSettings(2e-3, 30_000, 400);

    public ReachSettings {
        if (!(resolutionM > 0) || budget < 1 || tips < 1) {
            throw new IllegalArgumentException("a positive resolution, budget and number of tips expected");
        }
    }
}
