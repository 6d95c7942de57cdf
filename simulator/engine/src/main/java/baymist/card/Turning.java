package baymist.card;

import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.List;

/** Whether it matters how a wand is turned. */
public final class Turning {
    private Turning() {}

    /** Whether a wand sprays elsewhere when turned: a bent one always does. */
    public static boolean matters(WandSpec wand) {
        return wand.kind() == WandSpec.Kind.BENT || matters(wand.tip());
    }

    /** Whether a tip sprays differently when turned: not for jets spaced evenly round it, nor for one straight ahead. */
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
        return aside.size() < 3 || Math.hypot(x, y) > 0.02;
    }
}
