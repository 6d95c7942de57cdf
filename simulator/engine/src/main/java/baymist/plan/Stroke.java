package baymist.plan;

/**
 * A draw-back over some stations of a line with the trigger held.
 *
 * @param line index of the line
 * @param first station at which it begins, the deepest
 * @param last station at which it ends, not before the first
 * @param rateMPerS draw-back rate, m/s
 */
public record Stroke(int line, int first, int last, double rateMPerS) {
    public Stroke {
        if (line < 0 || first < 0 || last < first || !(rateMPerS > 0)) {
            throw new IllegalArgumentException(
                    "stroke on line " + line + " from " + first + " to " + last + " at " + rateMPerS + " m/s");
        }
    }
}
