package baymist.card;

import baymist.card.WorkCard.Caution;
import baymist.fog.Exposure;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.scene.SupplySpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What is read before anything is opened. */
final class CardCautions {
    private CardCautions() {}

    static List<Caution> of(CardSource source, boolean controlSurface) {
        CardSource.Figures f = source.figures();
        List<Caution> all = new ArrayList<>();
        all.add(new Caution(
                "Local rules first",
                "Local rules, the structure's approved data and the product's safety data sheet come before this card. It is a"
                        + " computed proposal, not an approval, and a licensed person signs for the work."));
        if (f.peakFogKgPerM3() >= Exposure.TENTH_OF_FLAMMABLE_KG_PER_M3) {
            all.add(new Caution(
                    "FLAMMABLE MIST",
                    text(
                            "TREAT THE STRUCTURE AS A FLAMMABLE ATMOSPHERE until the mist has gone: the mist inside reaches %.2g g/m3 on"
                                    + " average, above %s of oil mist, and more near the tip. Power isolated, everything bonded, no"
                                    + " spark, lamp or tool that is not approved for it at any opening.",
                            1e3 * f.peakFogKgPerM3(),
                            f.peakFogKgPerM3() >= Exposure.FLAMMABLE_KG_PER_M3
                                    ? "50 g/m3, the usual lower flammable limit"
                                    : "5 g/m3, a tenth of the usual lower flammable limit")));
        }
        String doubts = doubts(source.findings());
        if (!doubts.isEmpty()) {
            all.add(new Caution("What this card is unsure of", doubts));
        }
        all.add(new Caution(
                "Ventilation and breathing",
                text(
                        "Extract at the openings or work in moving air, keep others away, and wear the respirator that the data sheet"
                                + " asks for. About %.2g g of mist leave the structure; %.0f m3 of room air keep that below 5 mg/m3"
                                + " (29 CFR 1910.1000).",
                        1e3 * f.oversprayKg(), Math.ceil(Exposure.roomM3(f.oversprayKg())))));
        all.add(
                new Caution(
                        "Eyes and skin",
                        "Goggles, gloves that resist the product, sleeves down. Barrier cream before, wash after; change soaked clothing."));
        all.add(new Caution(
                "Ignition and bonding",
                text(
                        "No sparks, hot work, heaters or live circuits near until the mist has gone. Isolate electrical power and"
                                + " batteries as approved data say. Bond structure, wand, cup and operator: moving mist charges what"
                                + " it touches. Mean mist inside: %.2g g/m3 at most; near the tip it is denser.",
                        1e3 * f.peakFogKgPerM3())));
        all.add(new Caution(
                "Oxygen systems",
                "Oil and oxygen equipment must never meet. Depressurise, take out or seal off lines, bottles and fittings before any"
                        + " product comes near, by approved data alone."));
        all.add(new Caution("Compressed air", air(source)));
        all.add(
                new Caution(
                        "Masking",
                        "Mask what the product must not reach: the items below, and belts, cables, pulleys, switches, bearings with grease of"
                                + " their own, static ports, window and seal rubber as approved data list them. Count masks and plugs in."));
        all.add(new Caution(
                "No drilling",
                "Use the openings that are there. A new or larger hole needs approved data and a licensed person; never drill from this"
                        + " card."));
        all.add(new Caution(
                "Paint and bonding after",
                "Paint, sealant and adhesive do not hold on an oiled surface. Finish such work first; mask or clean faying and repair"
                        + " areas by approved data."));
        all.add(new Caution(
                "Confined space",
                "Where a head or body goes in, confined-space rules hold (29 CFR 1910.146): air measured, a watch outside, a way out."
                        + " The spraying itself is done from outside."));
        if (controlSurface) {
            all.add(new Caution(
                    "Balance",
                    "This is a control surface: its balance is checked by approved data after treatment, before it moves in"
                            + " service. See the balance check below."));
        }
        return all;
    }

    /** The run's warnings, a sentence each; those about mist stand as a caution of their own. */
    private static String doubts(List<Finding> findings) {
        return findings.stream()
                .filter(f -> f.severity() == Severity.WARNING && !f.id().startsWith("MIST-"))
                .map(f -> Character.toUpperCase(f.text().charAt(0)) + f.text().substring(1) + ".")
                .distinct()
                .collect(Collectors.joining(" "));
    }

    private static String air(CardSource source) {
        String set = source.scene().supply() instanceof SupplySpec.Pressure p
                ? text("The job sets %.0f kPa (%.0f psi). ", 1e-3 * p.gaugePa(), p.gaugePa() / 6894.757)
                : "";
        return set
                + "Check hose, fittings and wand against their ratings. Never point the tip at a person or a hand over it; for"
                + " blowing off stay below 30 psi (29 CFR 1910.242(b)). Vent the line before a wand comes off.";
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
