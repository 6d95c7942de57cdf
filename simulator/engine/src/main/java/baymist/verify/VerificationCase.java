package baymist.verify;

/**
 * One row of the verification table.
 *
 * @param id unique
 * @param stage stage of the engine that it checks
 * @param quantity name of a formula or scene quantity
 * @param inputs what the quantity is evaluated for
 * @param expected published value, SI or the unit that the quantity states
 * @param tolerance allowed deviation: relative, or absolute where {@code absolute}
 * @param kind exact, published or practice
 * @param source publication
 * @param known how the expected value is known: seen, derived or memory
 */
public record VerificationCase(
        String id,
        String stage,
        String quantity,
        Inputs inputs,
        double expected,
        double tolerance,
        boolean absolute,
        String kind,
        String source,
        String known) {
    /** Deviation of a computed value in the tolerance's own measure. */
    public double deviation(double value) {
        double off = Math.abs(value - expected);
        return absolute || expected == 0 ? off : off / Math.abs(expected);
    }

    /** Whether a computed value passes; not-a-number never does. */
    public boolean accepts(double value) {
        return deviation(value) <= tolerance;
    }
}
