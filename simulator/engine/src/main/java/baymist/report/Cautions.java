package baymist.report;

import baymist.fog.Exposure;
import baymist.run.RunResult;
import baymist.scene.OpeningSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What every report says before somebody picks up a wand. */
public final class Cautions {
    /** Permissible exposure limit of mineral oil mist, 8 h average, kg/m³: 5 mg/m³ (29 CFR 1910.1000, table Z-1). */
    public static final double OIL_MIST_LIMIT_KG_PER_M3 = Exposure.LIMIT_KG_PER_M3;

    private Cautions() {}

    /** Cautions with this run's figures, one sentence or two each. */
    public static List<String> of(RunResult r) {
        List<String> all = new ArrayList<>();
        if (!r.scene().cuts().isEmpty()) {
            all.add("Cut openings: this job has openings that the structure itself has not ("
                    + r.scene().cuts().stream().map(OpeningSpec::name).collect(Collectors.joining(", ")) + "). "
                    + "A new hole in structure needs approved data and a licensed person.");
        }
        all.addAll(usual(r));
        return all;
    }

    private static List<String> usual(RunResult r) {
        double peak = RunFigures.peakMeanConcentrationKgPerM3(r);
        boolean over = peak >= Exposure.TENTH_OF_FLAMMABLE_KG_PER_M3;
        double roomM3 = r.ledger().oversprayKg() / OIL_MIST_LIMIT_KG_PER_M3;
        return List.of(
                "Local rules, the structure's approved data and the product's safety data sheet come first. This is a"
                        + " computed prediction, not an approval.",
                text(
                        "Oil mist: do not breathe it. The limit is 5 mg/m3 over 8 h (29 CFR 1910.1000); the %.3g g that"
                                + " leave through the openings need %.0f m3 of room air to stay below it.",
                        1e3 * r.ledger().oversprayKg(), roomM3),
                text(
                        "Ignition: keep sparks, hot work and live circuits away until the fog has gone. Mean fog in the"
                                + " cavity peaks at %.3g g/m3, %s 5 g/m3, a tenth of the lower flammable limit of oil mist"
                                + " (about 50 g/m3; 29 CFR 1910.146 draws its line there); near the jets it is denser.",
                        1e3 * peak, over ? "above" : "below"),
                "Oxygen: oil and oxygen equipment must never meet. Take out or mask lines, bottles and fittings.",
                "Compressed air: wear eye protection, never point the tip at a person; for blowing off, stay below 30 psi"
                        + " at the nozzle (29 CFR 1910.242(b)).");
    }

    /** What everybody who makes a wand is told. */
    public static List<String> wandMaking() {
        return List.of(
                "Local rules, approved data and the judgement of a qualified person come first. This is a computed proposal, not a"
                        + " design approval; tolerances are as agreed with who makes it.",
                "Pressure: use tube and fittings that their maker rates above the supply's highest pressure. Prove the finished wand by"
                        + " the shop's own rules, behind a shield and with liquid, before air goes in.",
                "Edges: deburr every orifice and end inside and outside, round the nose, flush the bore clean. A burr scores"
                        + " structure and a chip blocks an orifice.",
                "In the structure: drill or open up no hole for it without approved data and a licensed person; do not force it, keep hands off what you can't see, and count parts in and out.",
                "Electricity and oxygen: make sure that nothing live and no oxygen equipment lies where the wand goes; a metal wand"
                        + " conducts, and moving mist charges it: bond it as local rules ask.");
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
