package baymist.scene;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a wing box may have beyond its plain measures.
 *
 * @param root heights measured at the root in place of a NACA section, in order of the stations; empty = NACA
 * @param tip likewise at the tip; empty = the root's heights scaled with the chord
 * @param straight whether the skin runs straight between measured stations; false = on a smooth curve through them
 * @param falseSpars spars between the front and the rear one, in order of their chord fraction
 * @param notch cut-outs in the inner ribs where stringers pass; null = blade and rib simply cross
 * @param openRoot whether the first rib is left out: the whole section is the opening "open root"
 * @param openTip likewise the last rib: "open tip"
 */
public record WingBoxDetail(
        List<Station> root,
        List<Station> tip,
        boolean straight,
        List<FalseSpar> falseSpars,
        @Nullable Notch notch,
        boolean openRoot,
        boolean openTip) {
    /** A NACA box with closed ends, without false spars and notches. */
    public static final WingBoxDetail PLAIN =
            new WingBoxDetail(List.of(), List.of(), false, List.of(), null, false, false);

    public WingBoxDetail {
        root = List.copyOf(root);
        tip = List.copyOf(tip);
        falseSpars = List.copyOf(falseSpars);
    }

    /** Whether heights were measured. */
    public boolean measured() {
        return !root.isEmpty();
    }

    /**
     * A measured place of a section.
     *
     * @param aftM distance aft of that section's leading edge, m
     * @param upperM, lowerM heights of the skins' inner faces above the chord line, m
     */
    public record Station(double aftM, double upperM, double lowerM) {}

    /**
     * A spar of full depth between front and rear spar.
     *
     * @param name part name, or null for "false spar n"
     * @param at chord fraction
     * @param fromRib, toRib first and last rib that it meets, 1 = root
     */
    public record FalseSpar(@Nullable String name, double at, int fromRib, int toRib, List<CavitySpec.SparHole> holes) {
        public FalseSpar {
            holes = List.copyOf(holes);
        }
    }

    /**
     * Rectangular cut-outs round the blades, open towards the skin.
     *
     * @param clearanceM between the blade's faces and top and the rib
     */
    public record Notch(double clearanceM, PhaseStates states) {}
}
