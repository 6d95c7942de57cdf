package baymist.size;

import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A wand but for its length.
 *
 * @param hook its bend, or null for a straight one
 */
public record Design(Tube tube, @Nullable Hook hook, Pattern pattern, WandMaterial material) {
    /** "6.35/3 mm, ring of 6" and its bend. */
    public String words() {
        return tube.words() + ", " + pattern.name() + (hook == null ? "" : ", " + hook.words());
    }

    /** Thickest place, m. */
    public double thickestM() {
        return Math.max(tube.outerM(), pattern.tipOuterM());
    }

    /** Why it can't be made, or null. */
    public @Nullable String unmakeable() {
        double needs = pattern.needsOuterM();
        if (needs > thickestM() + 1e-9) {
            return "its orifices would stand too close: they need a tip of " + Tube.mm(needs) + " mm to keep a"
                    + " diameter of metal between them";
        }
        Hook h = hook;
        if (h != null && h.radiusM() < tube.outerM()) {
            return "a bend of radius " + Tube.mm(h.radiusM()) + " mm folds a tube of " + Tube.mm(tube.outerM())
                    + " mm flat";
        }
        return null;
    }

    /** Shortest length that it can have, m: its bend and as much again to hold it by. */
    public double leastM() {
        return hook == null ? 0 : hook.tubeM() + hook.radiusM();
    }

    /** Depth that it must get beyond before it sprays at all, m: a bend must be inside. */
    double leastDepthM() {
        return hook == null ? 0 : hook.tubeM();
    }

    /** The wand of this length, m. */
    public WandSpec wand(double lengthM) {
        double tip = pattern.tipOuterM();
        return new WandSpec(
                "sized " + words() + " x " + Math.round(1e3 * lengthM) + " mm",
                lengthM,
                tube.outerM(),
                tube.boreM(),
                pattern.tip(),
                pieces(lengthM),
                material,
                null,
                List.of(),
                tip > tube.outerM() ? tip : tube.outerM(),
                tip > tube.outerM() ? pattern.tipLengthM() : 0);
    }

    private List<WandPiece> pieces(double lengthM) {
        Hook h = hook;
        if (h == null) {
            return List.of(new WandPiece.Straight(lengthM));
        }
        List<WandPiece> pieces = new ArrayList<>();
        pieces.add(new WandPiece.Straight(lengthM - h.tubeM()));
        pieces.add(new WandPiece.Bend(h.radiusM(), h.angleRad(), 0));
        if (h.legM() > 0) {
            pieces.add(new WandPiece.Straight(h.legM()));
        }
        return pieces;
    }
}
