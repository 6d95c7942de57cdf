package baymist.run;

/**
 * A number of the result that is held against a limit, whether or not it is met.
 *
 * @param name what is measured, in the words of the user
 * @param value measured, SI or a plain ratio; not a number where the job gives none
 * @param limit to which it is held
 * @param unit of both, "" for a ratio
 * @param finding id of the finding that a breach raises
 */
public record Gate(String name, double value, double limit, String unit, String finding) {
    /** Whether the value lies above its limit. */
    public boolean exceeded() {
        return value > limit;
    }
}
