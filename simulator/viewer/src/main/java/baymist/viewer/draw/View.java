package baymist.viewer.draw;

import java.util.Locale;

/** Sides from which a cavity is looked at. */
public enum View {
    /** From behind, left and above. */
    ISO,
    /** From above; the longer way of the cavity lies across the picture, ahead or the right side on top. */
    TOP,
    /** From the left, aft to the right. */
    SIDE,
    /** From ahead, looking aft. */
    FRONT;

    /** As a user writes it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
