package baymist.scene.io;

import baymist.units.Dimension;
import baymist.units.Quantities;

/**
 * Allowed range of a value, SI, written like {@code (0 mm .. 50 m]}: a round bracket leaves its end out.
 *
 * @param lowText, highText ends as a person would write them
 */
record Interval(double low, boolean lowIn, double high, boolean highIn, String lowText, String highText) {
    static Interval of(Dimension dimension, String text) {
        int dots = text.indexOf("..");
        String low = text.substring(1, dots).trim();
        String high = text.substring(dots + 2, text.length() - 1).trim();
        return new Interval(
                Quantities.parse(low, dimension),
                text.startsWith("["),
                Quantities.parse(high, dimension),
                text.endsWith("]"),
                low,
                high);
    }

    boolean holds(double value) {
        return (lowIn ? value >= low : value > low) && (highIn ? value <= high : value < high);
    }

    /** "above 0 mm and at most 50 m". */
    String words() {
        return (lowIn ? "at least " : "above ") + lowText + " and " + (highIn ? "at most " : "below ") + highText;
    }
}
