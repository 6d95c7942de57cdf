package baymist.size;

import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A tip with its orifices.
 *
 * @param name as tables and drawings show it
 * @param tipOuterM outside diameter of a tip thicker than the tube, m; 0 = as the tube
 * @param tipLengthM its length, m
 */
public record Pattern(String name, TipSpec tip, double tipOuterM, double tipLengthM) {
    /** A tip no thicker than its tube. */
    public Pattern(String name, TipSpec tip) {
        this(name, tip, 0, 0);
    }

    /** The tip of a wand that is at hand. */
    public static Pattern of(WandSpec wand) {
        boolean thick = wand.tipOuterM() > wand.outerM();
        return new Pattern(
                wand.tip().name(), wand.tip(), thick ? wand.tipOuterM() : 0, thick ? wand.tipLengthM() : 0);
    }

    /** Jets evenly round the wand. */
    public static Pattern ring(int jets, double orificeM) {
        return round("ring of " + jets, jets, Math.PI / 2, orificeM);
    }

    /** Jets evenly on a cone about straight ahead, rad from side to side; a single one stands on the axis. */
    public static Pattern forward(int jets, double coneRad, double orificeM) {
        return round(jets == 1 ? "forward jet" : "forward " + jets, jets, jets == 1 ? 0 : coneRad / 2, orificeM);
    }

    private static Pattern round(String name, int jets, double offAxisRad, double orificeM) {
        List<TipSpec.Jet> all = new ArrayList<>();
        for (int i = 0; i < jets; i++) {
            all.add(new TipSpec.Jet(offAxisRad, 2 * Math.PI * i / jets, orificeM, 1.0 / jets, 1.0 / jets));
        }
        return new Pattern(name, new TipSpec(name, all));
    }

    /** Patterns that are tried besides that of the scene's own wands. */
    public static List<Pattern> usual() {
        return List.of(ring(6, 0.0004), forward(3, Math.toRadians(40), 0.0007));
    }

    /** The same pattern with every orifice of another diameter, m. */
    public Pattern withOrificeM(double orificeM) {
        List<TipSpec.Jet> jets = tip.jets().stream()
                .map(j -> new TipSpec.Jet(j.offAxisRad(), j.clockRad(), orificeM, j.airShare(), j.liquidShare()))
                .toList();
        String newName = name + " x " + Tube.mm(orificeM);
        return new Pattern(newName, new TipSpec(newName, jets), tipOuterM, tipLengthM);
    }

    /** Largest orifice, m; 0 without jets. */
    public double widestM() {
        return tip.jets().stream().mapToDouble(TipSpec.Jet::orificeM).max().orElse(0);
    }

    /**
     * Least diameter of tip on which the orifices have at least one diameter of metal between them (common practice, no source): those that look
     * sideways lie round the tube, those that look ahead within 45 deg on a circle of half of the nose's diameter.
     */
    public double needsOuterM() {
        return Math.max(needsM(true), needsM(false));
    }

    private double needsM(boolean ahead) {
        double circle = ahead ? 0.5 : 1;
        List<TipSpec.Jet> jets = tip.jets().stream()
                .filter(j -> ahead == j.offAxisRad() < Math.PI / 4)
                .sorted(Comparator.comparingDouble(j -> turned(j.clockRad())))
                .toList();
        if (jets.size() < 2) {
            return jets.isEmpty() ? 0 : 2 * jets.get(0).orificeM();
        }
        double needs = 0;
        for (int i = 0; i < jets.size(); i++) {
            TipSpec.Jet a = jets.get(i);
            TipSpec.Jet b = jets.get((i + 1) % jets.size());
            double gap = turned(b.clockRad() - a.clockRad());
            double chord = Math.sin(0.5 * (jets.size() == 1 || gap == 0 ? 2 * Math.PI : gap));
            double apart = a.orificeM() + b.orificeM();
            if (Math.abs(a.offAxisRad() - b.offAxisRad()) < 1e-6) {
                needs = Math.max(needs, apart / Math.max(1e-9, Math.abs(chord)) / circle);
            }
        }
        return needs;
    }

    private static double turned(double rad) {
        double t = rad % (2 * Math.PI);
        return t < -1e-12 ? t + 2 * Math.PI : Math.max(0, t);
    }
}
