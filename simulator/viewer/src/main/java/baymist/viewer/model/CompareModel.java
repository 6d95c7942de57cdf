package baymist.viewer.model;

import baymist.recording.Recording;
import org.jspecify.annotations.Nullable;

/**
 * Two set-ups side by side.
 *
 * @param firstName,secondName what they are called
 * @param linked whether both views move together
 * @param asDifference whether the second view shows the difference instead of its film
 */
public record CompareModel(
        String firstName,
        Recording first,
        String secondName,
        @Nullable Recording second,
        @Nullable Difference difference,
        boolean linked,
        boolean asDifference) {
    /** One set-up, nothing beside it yet. */
    public static CompareModel of(String name, Recording first) {
        return new CompareModel(name, first, "", null, null, true, false);
    }

    /** Another set-up beside the first. */
    public CompareModel with(String name, Recording other) {
        return new CompareModel(firstName, first, name, other, Difference.of(first, other), linked, asDifference);
    }

    public CompareModel withLinked(boolean other) {
        return new CompareModel(firstName, first, secondName, second, difference, other, asDifference);
    }

    public CompareModel withDifferenceShown(boolean other) {
        return new CompareModel(firstName, first, secondName, second, difference, linked, other);
    }

    /** Largest film lost or gained anywhere, m, for a colour scale that is even about zero; 0 without a second set-up. */
    public double largestM() {
        double largest = 0;
        if (difference != null) {
            for (float d : difference.filmM()) {
                largest = Float.isNaN(d) ? largest : Math.max(largest, Math.abs(d));
            }
        }
        return largest;
    }
}
