package baymist.scene;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A wand: a tube that is straight, bent once and for all (a hook), or flexible, with a spray tip at its end.
 *
 * @param lengthM usable length along the centre line from the tip, m
 * @param outerM outside diameter of the tube, m
 * @param boreM liquid bore, m, smaller than the outside
 * @param tip the spray tip at its end; its jets leave from the wand's axis at the tip
 * @param pieces centre line as made, from the outside end to the tip; the lengths sum to {@code lengthM}
 * @param flexibility what a flexible wand allows; null = rigid
 * @param couplings where it comes apart, in order from the tip
 * @param tipOuterM outside diameter of the tip, m
 * @param tipLengthM length of the tip along the wand, m, 0 where the tip is not thicker than the tube
 */
public record WandSpec(
        String name,
        double lengthM,
        double outerM,
        double boreM,
        TipSpec tip,
        List<WandPiece> pieces,
        WandMaterial material,
        @Nullable Flexibility flexibility,
        List<Coupling> couplings,
        double tipOuterM,
        double tipLengthM) {
    /** How a wand is built. */
    public enum Kind {
        STRAIGHT,
        BENT,
        FLEXIBLE
    }

    /**
     * A place where a wand comes apart.
     *
     * @param fromTipM distance of its middle from the tip along the wand, m
     * @param outerM outside diameter of the fitting, m, at least that of the tube
     * @param lengthM length of the fitting along the wand, m
     */
    public record Coupling(double fromTipM, double outerM, double lengthM) {}

    public WandSpec {
        pieces = List.copyOf(pieces);
        couplings = couplings.stream()
                .sorted(Comparator.comparingDouble(Coupling::fromTipM))
                .toList();
    }

    /** A straight rigid wand in one piece, of stainless steel (assumed), with a tip no thicker than the tube. */
    public WandSpec(String name, double lengthM, double outerM, double boreM, TipSpec tip) {
        this(
                name,
                lengthM,
                outerM,
                boreM,
                tip,
                List.of(new WandPiece.Straight(lengthM)),
                WandMaterial.STAINLESS.assumed(),
                null,
                List.of(),
                outerM,
                0);
    }

    public Kind kind() {
        if (flexibility != null) {
            return Kind.FLEXIBLE;
        }
        return pieces.stream().anyMatch(WandPiece.Bend.class::isInstance) ? Kind.BENT : Kind.STRAIGHT;
    }

    /** Largest outside diameter of tube and tip, m: what a hole must pass before anything sprays. */
    public double thickestM() {
        return Math.max(outerM, tipOuterM);
    }

    /** Largest outside diameter of anything within {@code depthM} of the tip, couplings included, m. */
    public double thickestWithinM(double depthM) {
        double most = thickestM();
        for (Coupling c : couplings) {
            if (c.fromTipM() - 0.5 * c.lengthM() < depthM) {
                most = Math.max(most, c.outerM());
            }
        }
        return most;
    }

    /**
     * How deep it can be fed with so much free length outside, m: it is fed in section by section, each coupled on when the one
     * before is in, so that a whole section must find room outside. 0 if not even the first does.
     */
    public double feedableM(double freeOutsideM) {
        double from = 0;
        for (Coupling c : couplings) {
            if (c.fromTipM() - from > freeOutsideM) {
                return from;
            }
            from = c.fromTipM();
        }
        return lengthM - from > freeOutsideM ? from : lengthM;
    }

    /** Sum of the angles of all bends as made, rad. */
    public double madeBendRad() {
        return pieces.stream()
                .filter(WandPiece.Bend.class::isInstance)
                .mapToDouble(p -> ((WandPiece.Bend) p).angleRad())
                .sum();
    }
}
