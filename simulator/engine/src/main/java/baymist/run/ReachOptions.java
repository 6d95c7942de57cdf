package baymist.run;

import baymist.scene.WandSpec;
import java.util.List;

/**
 * What a study of reach looks at besides the scene's own entries and wands.
 *
 * @param wands further wands
 * @param allOpenings whether every opening that leads outside is tried, square to its sheet, as if it were open
 * @param withinM distance from a place of the tip that counts as reached, m
 */
public record ReachOptions(List<WandSpec> wands, boolean allOpenings, double withinM) {
    /** 150 mm: within it a jet still strikes what it is turned to (ASSUMED, see docs/theory/access-sag.md). */
    public static final double WITHIN_M = 0.15;

    public static final ReachOptions DEFAULT = new ReachOptions(List.of(), false, WITHIN_M);

    public ReachOptions {
        wands = List.copyOf(wands);
        if (!(withinM > 0) || Double.isInfinite(withinM)) {
            throw new IllegalArgumentException("within " + withinM + " m, above 0 expected");
        }
    }
}
