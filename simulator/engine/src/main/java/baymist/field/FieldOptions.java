package baymist.field;

import baymist.study.Planning;

/**
 * What a reach field is asked for.
 *
 * @param region surfaces to be reached
 * @param confirm whether best pose and pass are tried in forward runs
 * @param planning resolution of field and runs
 */
public record FieldOptions(RegionChoice region, boolean confirm, Planning planning) {
    /** Voxels twice as long as in a full run, enough rays for a tip of one jet. */
    public static final Planning COARSE = new Planning(2, 6, 256, 1);

    /** At the resolution of {@link #COARSE}. */
    public FieldOptions(RegionChoice region, boolean confirm) {
        this(region, confirm, COARSE);
    }
}
