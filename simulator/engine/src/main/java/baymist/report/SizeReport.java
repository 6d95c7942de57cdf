package baymist.report;

import baymist.size.Bore;
import baymist.size.Candidate;
import baymist.size.Design;
import baymist.size.DesignResult;
import baymist.size.Hook;
import baymist.size.SizeRequest;
import baymist.size.SizeResult;
import baymist.size.Tube;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** A sizing of wands as text and as JSON. docs/guide/size.md reads it. */
public final class SizeReport {
    private static final int TIP = 19;
    private static final int BEND = 11;

    private SizeReport() {}

    /** Plain text, at most 100 columns, ASCII. */
    public static String text(SizeResult r) {
        Page page = new Page();
        String title = r.scene().title();
        page.line("%s", title);
        page.line("%s", "=".repeat(Math.min(Page.WIDTH, Math.max(1, title.length()))));
        goal(page, r);
        designs(page, r);
        Candidate chosen = r.shortest();
        if (chosen != null) {
            lengths(page, r, chosen);
        }
        page.heading("In words");
        for (String words : SizeWords.of(r)) {
            page.wrapped("* ", words);
        }
        page.heading("Before you make it");
        for (String caution : Cautions.wandMaking()) {
            page.wrapped("* ", caution);
        }
        return page.toString();
    }

    /** The same as JSON. */
    public static void json(SizeResult r, Writer out) throws IOException {
        SizeJson.write(r, out);
    }

    private static void goal(Page page, SizeResult r) {
        SizeRequest q = r.request();
        String seams = q.seamsReached() > 0 ? " and " + TextReport.percent(q.seamsReached()) + " of the seams" : "";
        page.line(
                "Goal: %s of the surface%s reached by the job of the scene with one wand of %s.",
                TextReport.percent(q.reached()), seams, q.material().name());
        page.line(
                "Lengths in marks of %s mm; %d designs, %d runs (%s).",
                mm(q.markM()), r.designs().size(), r.jobs(), r.planning());
    }

    private static void designs(Page page, SizeResult r) {
        page.heading("Designs, each at the shortest length that meets the goal, else at its best");
        page.line(
                "  outer/bore %s %s  length reached   seams  sag  liquid  loss  mass  hole",
                Page.cell("tip", TIP), Page.cell("bend", BEND));
        page.line(
                "          mm %s %s      mm                    mm  mL/min   kPa     g    mm",
                Page.cell("", TIP), Page.cell("", BEND));
        for (DesignResult d : r.designs()) {
            Candidate c = d.shortest() == null ? d.best() : d.shortest();
            page.line("%s", row(d, c, d.design().equals(chosenDesign(r))));
        }
        page.line("* the wand to make   + meets the goal   - does not   hole = smallest that it passes, without play");
    }

    private static @Nullable Design chosenDesign(SizeResult r) {
        return r.shortest() == null ? null : r.shortest().design();
    }

    private static String row(DesignResult d, @Nullable Candidate c, boolean chosen) {
        Design w = d.design();
        String head = String.format(
                Locale.ROOT,
                "%s %10s %s %s",
                chosen ? "*" : d.shortest() != null ? "+" : "-",
                mm(w.tube().outerM()) + "/" + mm(w.tube().boreM()),
                Page.cell(w.pattern().name(), TIP),
                Page.cell(bend(w.hook()), BEND));
        if (c == null) {
            return head + "  cut";
        }
        return head + figures(c);
    }

    private static String figures(Candidate c) {
        Bore b = c.bore();
        return String.format(
                Locale.ROOT,
                " %7.0f %7s %7s %4s %7s %5.0f %5.0f %5s",
                1e3 * c.lengthM(),
                TextReport.percent(c.at().reached()),
                TextReport.percent(c.at().seamsReached()),
                Double.isNaN(c.sagM()) ? "-" : String.format(Locale.ROOT, "%.0f", 1e3 * Math.abs(c.sagM())),
                mlPerMin(b),
                1e-3 * b.liquidLossPa(),
                1e3 * c.filledKg(),
                mm(c.holeM()));
    }

    static String mlPerMin(Bore b) {
        return TextReport.significant(60e6 * b.liquidM3PerS(), 3);
    }

    static String bend(@Nullable Hook h) {
        return h == null
                ? "straight"
                : String.format(
                        Locale.ROOT,
                        "%.0f r%.0f +%.0f",
                        Math.toDegrees(h.angleRad()),
                        1e3 * h.radiusM(),
                        1e3 * h.legM());
    }

    private static void lengths(Page page, SizeResult r, Candidate chosen) {
        page.heading("Length by length: " + chosen.design().words());
        page.line("    length  best stop  reached    seams  sag mm  liquid mL/min  loss kPa  mass g");
        for (DesignResult d : r.designs()) {
            if (!d.design().equals(chosen.design())) {
                continue;
            }
            for (Candidate c : d.sweep()) {
                page.line(
                        "%s %6.0f mm %7.0f mm  %7s  %7s %7s %14s %9.0f %7.0f",
                        c.meets() ? "+" : "-",
                        1e3 * c.lengthM(),
                        1e3 * c.stopM(),
                        TextReport.percent(c.at().reached()),
                        TextReport.percent(c.at().seamsReached()),
                        Double.isNaN(c.sagM()) ? "-" : String.format(Locale.ROOT, "%.1f", 1e3 * Math.abs(c.sagM())),
                        mlPerMin(c.bore()),
                        1e-3 * c.bore().liquidLossPa(),
                        1e3 * c.filledKg());
            }
        }
        List<SizeResult.Verified> full = r.verified();
        for (SizeResult.Verified v : full) {
            page.line(
                    "%s %6.0f mm  in full:    %7s  %7s",
                    v.meets() ? "+" : "-",
                    1e3 * v.lengthM(),
                    TextReport.percent(v.result().reached()),
                    TextReport.percent(v.result().seamsReached()));
        }
    }

    static String mm(double m) {
        return Tube.mm(m);
    }
}
