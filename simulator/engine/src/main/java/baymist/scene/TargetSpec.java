package baymist.scene;

/**
 * What counts as covered, and what counts as one place.
 *
 * @param hazeM film from which a surface is reached, m
 * @param buildM target build from which it is protected, m
 * @param excessM run limit, above which film is excess, m
 * @param seamCreepM how near to a seam film must lie to get into it, m
 * @param bridgeM film narrower than this does not part a bare region, nor does a neck of bare sheet narrower than this join two, m
 * @param spotM side of the square below whose area a bare region is a spot, m
 */
public record TargetSpec(double hazeM, double buildM, double excessM, double seamCreepM, double bridgeM, double spotM) {
    /** ASSUMED: oil runs into a fillet from as far as this, a few times its capillary length of 2 mm. */
    public static final double SEAM_CREEP_M = 5e-3;
    /** ASSUMED: about what a finger's tip covers. */
    public static final double BRIDGE_M = 10e-3;
    /** ASSUMED: less than a technician finds on the structure. */
    public static final double SPOT_M = 20e-3;

    /** Haze 1 µm (reached), target build 10 µm (protected), excess 50 µm. */
    public static final TargetSpec DEFAULT = new TargetSpec(1e-6, 10e-6, 50e-6);

    /** Film thresholds with the usual rules for places. */
    public TargetSpec(double hazeM, double buildM, double excessM) {
        this(hazeM, buildM, excessM, SEAM_CREEP_M, BRIDGE_M, SPOT_M);
    }
}
