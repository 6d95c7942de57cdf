package baymist.viewer.draw;

import java.util.Locale;

/** Sides from which a cavity is looked at. */
public enum View {
    /** From ahead, left and above. */
    ISO,
    /** From above; the longer way of the cavity lies across the picture. */
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
