package baymist.card;

import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.List;

/** Whether it matters how a wand is turned. */
public final class Turning {
    /** From so many jets on, spaced evenly, what lies between two of them is wet by both: 30 degrees apart. ASSUMED. */
    private static final int CLOSE = 12;

    private Turning() {}

    /** Whether a wand sprays elsewhere when turned: a bent one always does. */
    public static boolean matters(WandSpec wand) {
        return wand.kind() == WandSpec.Kind.BENT || matters(wand.tip());
    }

    /**
     * Whether a tip sprays differently when turned: not for one jet straight ahead, nor for many spaced evenly round it. A ring of few
     * jets does: whether one of six looks along a flat bay or past it decides over its seams.
     */
    static boolean matters(TipSpec tip) {
        List<TipSpec.Jet> aside =
                tip.jets().stream().filter(j -> Math.sin(j.offAxisRad()) > 1e-6).toList();
        if (aside.isEmpty()) {
            return false;
        }
        double x = 0;
        double y = 0;
        for (TipSpec.Jet j : aside) {
            x += j.liquidShare() * Math.sin(j.offAxisRad()) * Math.cos(j.clockRad());
            y += j.liquidShare() * Math.sin(j.offAxisRad()) * Math.sin(j.clockRad());
        }
        return aside.size() < CLOSE || Math.hypot(x, y) > 0.02;
    }
}
