package baymist.scene;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a control surface may have beyond its plain measures.
 *
 * @param upper, lower beads of each skin; null = plain
 * @param nose closed nose ahead of the spar, from the root to the tip or to the horn; null = none
 * @param horn box ahead of the spar at the tip; null = none
 * @param sparHoles holes in the spar: hinge cut-outs, ways into the nose and the horn
 */
public record ControlSurfaceDetail(
        @Nullable Beads upper,
        @Nullable Beads lower,
        @Nullable Nose nose,
        @Nullable Horn horn,
        List<CavitySpec.SparHole> sparHoles) {
    /** A plain wedge. */
    public static final ControlSurfaceDetail PLAIN = new ControlSurfaceDetail(null, null, null, null, List.of());

    public ControlSurfaceDetail {
        sparHoles = List.copyOf(sparHoles);
    }

    /** Which way beads run. */
    public enum Run {
        SPANWISE,
        CHORDWISE
    }

    /** Cross-section of a bead. */
    public enum Form {
        /** Flat crest, straight flanks. */
        TRAPEZOID,
        /** One full wave of a cosine from edge to edge; with width = pitch a corrugated sheet. */
        SINE
    }

    /**
     * Beads pressed into a skin. Chordwise measures hold at the root and shrink with the chord.
     *
     * @param pitchM middle to middle; widthM at the foot, at most the pitch
     * @param depthM height of the crest over the sheet, square to the chord plane; negative = pressed inward
     * @param flankM breadth of each sloping flank of a trapezoid, at most half of the width
     * @param fromM, toM the stretch aft of the spar that has beads (chordwise beads end there)
     * @param runOutM length over which a bead fades out at its ends; 0 = it runs through
     * @param clearOfRibsM distance that beads keep from ribs; 0 = spanwise beads run through the ribs
     */
    public record Beads(
            Run run,
            Form form,
            double pitchM,
            double widthM,
            double depthM,
            double flankM,
            double fromM,
            double toM,
            double runOutM,
            double clearOfRibsM) {}

    /**
     * A nose ahead of the spar, as deep as the spar there.
     *
     * @param rootLengthM, tipLengthM spar to the foremost point at the ends of the surface
     * @param radiusM radius of the leading edge at the root, with flats that touch it; it shrinks with the depth; 0 = half
     *     an ellipse
     * @param ribs inner nose ribs, in order of y; the ends are closed anyway
     */
    public record Nose(double rootLengthM, double tipLengthM, double radiusM, List<CavitySpec.Rib> ribs) {
        public Nose {
            ribs = List.copyOf(ribs);
        }
    }

    /**
     * A horn at the tip: a box ahead of the spar, tapering forward, that may end in a bay for the counterweight.
     *
     * @param widthM breadth along the span, from the tip inboard
     * @param lengthM spar to the horn's front
     * @param frontDepthM inside depth at its front; 0 = the skins meet there
     * @param bulkheadM distance of a bulkhead ahead of the spar, which parts the counterweight's bay; 0 = none
     * @param bulkheadHoles holes in the bulkhead
     */
    public record Horn(
            double widthM,
            double lengthM,
            double frontDepthM,
            double bulkheadM,
            List<CavitySpec.SparHole> bulkheadHoles) {
        public Horn {
            bulkheadHoles = List.copyOf(bulkheadHoles);
        }
    }
}
