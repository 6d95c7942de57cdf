package baymist.scene;

import java.util.List;

/** A spray tip as a list of jets. */
public record TipSpec(String name, List<Jet> jets) {
    public TipSpec {
        jets = List.copyOf(jets);
    }

    /**
     * One jet of a tip.
     *
     * @param offAxisRad angle from the wand's forward axis: 0 = straight ahead, pi/2 = square to the wand
     * @param clockRad angle round the wand from the direction pin, clockwise seen looking forward along the wand
     * @param orificeM air orifice diameter, m
     * @param airShare share of the tip's air, 0..1; shares of all jets sum to 1
     * @param liquidShare share of the tip's liquid, 0..1; shares of all jets sum to 1
     */
    public record Jet(double offAxisRad, double clockRad, double orificeM, double airShare, double liquidShare) {}
}
