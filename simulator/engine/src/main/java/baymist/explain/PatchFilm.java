package baymist.explain;

/**
 * Film on the region.
 *
 * @param meanM mean wet build, m
 * @param reached share of its area at or above haze, 0..1
 * @param filled mean over its area of min(film / target, 1), 0..1: what of the wanted film is there
 * @param directM the part of the mean that jets threw, m
 */
public record PatchFilm(double meanM, double reached, double filled, double directM) {
    /** A change speaks for a cause if it multiplies the mean film by this, however little there is ... */
    public static final double TIMES = 2;
    /** ... or raises the reached share by this. */
    public static final double POINTS = 0.20;

    /** Whether {@code after} depends so much on what was changed that the change speaks for a cause. */
    boolean dependsOn(PatchFilm after) {
        return (after.meanM >= TIMES * meanM && after.meanM > 0) || after.reached - reached >= POINTS;
    }

    /**
     * Whether {@code after} is so much more than this that the change is worth making: twice the mean film and at least a haze more, or the
     * points.
     *
     * @param hazeM film from which a surface counts as reached, m: twice next to nothing is still nothing
     */
    boolean holds(PatchFilm after, double hazeM) {
        boolean doubled = after.meanM >= TIMES * meanM && after.meanM - meanM >= hazeM;
        return doubled || after.reached - reached >= POINTS;
    }

    /** Whether most of what {@code after} has more came from jets. */
    boolean byJets(PatchFilm after) {
        return after.directM - directM >= 0.5 * (after.meanM - meanM);
    }
}
