package baymist.report;

import baymist.size.Candidate;
import baymist.size.DesignResult;
import baymist.size.SizeResult;
import baymist.size.SizeResult.Verified;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A sizing of wands in sentences. */
final class SizeWords {
    private SizeWords() {}

    static List<String> of(SizeResult r) {
        List<String> words = new ArrayList<>();
        Candidate c = r.shortest();
        if (c == null) {
            words.add(none(r));
        } else {
            words.add(chosen(c));
            full(r, words);
            Candidate thin = r.thinnest();
            if (thin != null && thin.design().thickestM() < c.design().thickestM()) {
                words.add(String.format(
                        Locale.ROOT,
                        "Thinner but longer: %s meets the goal from %s mm on, and passes a hole of %s mm.",
                        thin.design().words(),
                        SizeReport.mm(thin.lengthM()),
                        SizeReport.mm(thin.holeM())));
            }
        }
        failures(r, words);
        return words;
    }

    private static String none(SizeResult r) {
        Candidate best = null;
        for (DesignResult d : r.designs()) {
            Candidate c = d.best();
            best = c != null && (best == null || c.at().reached() > best.at().reached()) ? c : best;
        }
        String most = best == null
                ? "none could be run at all"
                : String.format(
                        Locale.ROOT,
                        "the best, %s, reaches %s with %s mm",
                        best.design().words(),
                        TextReport.percent(best.at().reached()),
                        SizeReport.mm(best.lengthM()));
        return "No wand of those tried meets the goal: " + most
                + ". Another entry, a slower draw-back, more passes or a lower goal may.";
    }

    private static String chosen(Candidate c) {
        String sag = Double.isNaN(c.sagM())
                ? "It is bent, so that no sag is given."
                : String.format(
                        Locale.ROOT,
                        "Held in line at the entry its tip hangs %.0f mm off that line.",
                        1e3 * Math.abs(c.sagM()));
        return String.format(
                Locale.ROOT,
                "Make: %s, %s mm long. Stopped at %s mm it reaches %s of the surface and %s of the seams. It passes a hole of %s mm"
                        + " (without play). %s Its bore passes %s mL/min and takes %.0f kPa to do so; it weighs %.0f g, full of"
                        + " oil %.0f g.",
                c.design().words(),
                SizeReport.mm(c.lengthM()),
                SizeReport.mm(c.stopM()),
                TextReport.percent(c.at().reached()),
                TextReport.percent(c.at().seamsReached()),
                SizeReport.mm(c.holeM()),
                sag,
                SizeReport.mlPerMin(c.bore()),
                1e-3 * c.bore().liquidLossPa(),
                1e3 * c.tubeKg(),
                1e3 * c.filledKg());
    }

    private static void full(SizeResult r, List<String> words) {
        if (r.verified().isEmpty()) {
            words.add(
                    "This was not run in full; coarse runs rank, they do not decide. Run the scene with the wand file before"
                            + " you cut tube.");
            return;
        }
        Verified last = r.verified().get(r.verified().size() - 1);
        String text = String.format(
                Locale.ROOT,
                "Run in full, %s mm reach %s of the surface",
                SizeReport.mm(last.lengthM()),
                TextReport.percent(last.result().reached()));
        words.add(
                last.meets()
                        ? text + ": the goal is met there too."
                        : text
                                + ": less than the goal. Do not rely on the sweep here; ask for a little more (--target), or"
                                + " look at the scene.");
    }

    /** Why designs fail, those with the same reason together. */
    private static void failures(SizeResult r, List<String> words) {
        Map<String, List<String>> why = new LinkedHashMap<>();
        for (DesignResult d : r.designs()) {
            if (d.shortest() == null) {
                why.computeIfAbsent(d.verdict(), k -> new ArrayList<>())
                        .add(d.design().words());
            }
        }
        why.forEach((reason, who) -> words.add("Fails: " + String.join("; ", who) + ": " + reason + "."));
    }
}
