package baymist.run;

/**
 * How far the shares of area could be off for two reasons: the droplets' median is known only within a factor, and the jets are
 * sampled by a finite number of rays. Theory and why it is done so: docs/theory/spray.md, 12 and 13.
 *
 * @param dv50Factor factor either way within which the median is known; 1 = nothing to vary
 * @param reachedLow,reachedHigh least and largest share reached while the median runs through that range
 * @param protectedLow,protectedHigh the same for the protected share
 * @param reachedRays standing error of the reached share by ray sampling, a share
 * @param protectedRays the same for the protected share
 */
public record Confidence(
        double dv50Factor,
        double reachedLow,
        double reachedHigh,
        double protectedLow,
        double protectedHigh,
        double reachedRays,
        double protectedRays) {
    /** Nothing is known about it. */
    public static final Confidence UNKNOWN =
            new Confidence(1, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    /** Whether there is anything to tell. */
    public boolean known() {
        return !Double.isNaN(reachedLow);
    }
}
