package baymist.field;

/**
 * What a reach field is asked for.
 *
 * @param region surfaces to be reached
 * @param confirm whether the best pose is held in a forward run
 */
public record FieldOptions(RegionChoice region, boolean confirm) {}
