package baymist.report;

import baymist.study.CompareRow;
import baymist.study.Compared;
import baymist.study.StudyResult;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A comparison as text and as JSON. docs/guide/compare.md reads it, docs/formats/compare.md names the keys. */
public final class CompareReport {
    /** Columns for the names of entry and wand together. */
    private static final int NAMES = 47;

    private CompareReport() {}

    /** What stands with every hole that is proposed. */
    public static final String DRILLING =
            "Drilling: no hole is approved by this list. A new hole in structure needs approved data and a licensed person;"
                    + " deburr it on both sides, keep swarf out of the cavity or take it out again, protect the bare edge,"
                    + " and close the hole as the approved data say.";

    /** Plain text, at most 100 columns, ASCII. */
    public static String text(Compared c) {
        Page page = new Page();
        page.line("%s", c.scene().title());
        page.line(
                "%s",
                "=".repeat(Math.min(Page.WIDTH, Math.max(1, c.scene().title().length()))));
        head(page, c);
        List<CompareRow> ran = c.rows().stream().filter(CompareRow::ran).toList();
        if (!ran.isEmpty()) {
            coverage(page, ran);
            cost(page, ran);
            full(page, c);
            own(page, c);
            left(page, c.rows().get(0));
        }
        notRun(page, c, ran.size());
        cautions(page, c);
        return page.toString();
    }

    /** The same as JSON. */
    public static void json(Compared c, Writer out) throws IOException {
        CompareJson.write(c, out);
    }

    private static void head(Page page, Compared c) {
        CompareRow best = c.best();
        if (best == null) {
            page.line(
                    "None of the %d candidates can be done; the reasons stand below.",
                    c.rows().size());
            return;
        }
        StudyResult r = best.full() == null ? best.outcome() : best.full();
        page.line(
                "Best of %d: %s. It reaches %s of the inside and protects %s with %s mL in %s s of trigger.",
                c.rows().size(),
                best.candidate().words(),
                percent(r.reached()),
                percent(r.protectedShare()),
                TextReport.significant(1e6 * r.productM3(), 3),
                TextReport.significant(r.triggerS(), 3));
        page.line(
                "One pass each, ranked at planning resolution: %s.",
                c.planning().words());
        if (!c.shut().isEmpty()) {
            page.wrapped(
                    "",
                    "No candidate gets into "
                            + c.shut().stream()
                                    .map(b -> b.name() + " (" + percent(b.share()) + " of the surface)")
                                    .collect(Collectors.joining(", "))
                            + ": nothing that is open leads there from where a tip can stand. It takes another entry, an"
                            + " opening left open, or an access hole (--drill).");
        }
        if (c.alike() > 0) {
            page.line(
                    "%d clock angle%s left out: turned so, the tip looks the same.",
                    c.alike(), c.alike() == 1 ? "" : "s");
        }
    }

    private static void coverage(Page page, List<CompareRow> ran) {
        page.heading("Coverage");
        int entries = width(ran.stream().map(r -> r.candidate().entry()).toList());
        int wands = width(ran.stream().map(r -> r.candidate().wand()).toList());
        entries = Math.min(Math.max(entries, 5), Math.max(NAMES - wands, NAMES / 2));
        wands = Math.min(Math.max(wands, 4), NAMES - entries);
        page.line(
                "    %s %s %5s %7s %7s %6s %4s %6s %6s",
                Page.cell("entry", entries),
                Page.cell("wand", wands),
                "clock",
                "reached",
                "protect",
                "seams",
                "bare",
                "thin",
                "excess");
        for (int i = 0; i < ran.size(); i++) {
            CompareRow row = ran.get(i);
            StudyResult r = row.outcome();
            page.line(
                    "%s",
                    String.format(
                            Locale.ROOT,
                            "%3d%s%s %s %5.0f %7s %7s %6s %4d %6s %6s",
                            i + 1,
                            row.pareto() ? "*" : " ",
                            Page.cell(row.candidate().entry(), entries),
                            Page.cell(row.candidate().wand(), wands),
                            Math.toDegrees(row.candidate().clockRad()),
                            percent(r.reached()),
                            percent(r.protectedShare()),
                            percent(r.seamsReached()),
                            r.bareRegions(),
                            percent(r.thin()),
                            percent(r.excess())));
        }
        page.line("* = Pareto: none is as good in coverage, seams, product, time, panels, holes and items.");
        page.line("Clock in degrees; bare = number of bare regions; seams reached on one side at least.");
    }

    private static int width(List<String> names) {
        return names.stream().mapToInt(String::length).max().orElse(1);
    }

    private static void cost(Page page, List<CompareRow> ran) {
        page.heading("What it takes");
        page.line(
                "    %10s %9s %7s %11s %7s %7s %5s",
                "product mL", "trigger s", "hang s", "overspray g", "panels", "drilled", "hit");
        for (int i = 0; i < ran.size(); i++) {
            CompareRow row = ran.get(i);
            StudyResult r = row.outcome();
            String figures = String.format(
                    Locale.ROOT,
                    "%3d %10.1f %9.1f %7.0f %11.2f %7d %7d %5d  ",
                    i + 1,
                    1e6 * r.productM3(),
                    r.triggerS(),
                    r.hangS(),
                    1e3 * r.oversprayKg(),
                    row.candidate().panels().size(),
                    row.candidate().holes().size(),
                    r.items().size());
            String names = names(row);
            if (names.isEmpty()) {
                page.line("%s", figures.stripTrailing());
            } else {
                page.wrapped(figures, names);
            }
        }
        page.line("panels = openings to take off; drilled = holes to cut; hit = protected items with too much film.");
    }

    /** What has to be opened and cut and what is hit, by name. */
    private static String names(CompareRow row) {
        List<String> words = new ArrayList<>();
        row.candidate().panels().forEach(p -> words.add("off: " + p));
        row.candidate().holes().forEach(h -> words.add("drill: " + h.name()));
        row.outcome().items().forEach(i -> words.add("hit: " + i));
        return String.join("; ", words);
    }

    private static void full(Page page, Compared c) {
        List<CompareRow> rows = c.rows().stream().filter(r -> r.full() != null).toList();
        if (rows.isEmpty()) {
            return;
        }
        page.heading("Finalists in full");
        page.line(
                "The best %d within %.0f points at planning resolution, run at the scene's own resolution, projected air:",
                rows.size(), 100 * Compared.MARGIN);
        for (int i = 0; i < rows.size(); i++) {
            StudyResult f = rows.get(i).full();
            if (f != null) {
                page.line(
                        "%3d  reached %s, protected %s, seams %s",
                        i + 1, percent(f.reached()), percent(f.protectedShare()), percent(f.seamsReached()));
            }
        }
    }

    private static void own(Page page, Compared c) {
        double miss = c.worstMiss();
        if (miss > Compared.MARGIN) {
            page.line(
                    "Planning was off by up to %.0f points here, more than the %.0f that it is given: others may be as good."
                            + " Compare again with --planning 1.",
                    100 * miss, 100 * Compared.MARGIN);
        }
        StudyResult o = c.own();
        if (o != null) {
            page.line(
                    "The best one with the scene's own air: reached %s, protected %s, seams %s.",
                    percent(o.reached()), percent(o.protectedShare()), percent(o.seamsReached()));
        }
    }

    private static void left(Page page, CompareRow best) {
        page.heading("What the best leaves bare");
        List<StudyResult.Bare> bare = (best.full() == null ? best.outcome() : best.full()).bare();
        if (bare.isEmpty()) {
            page.line("nothing");
        }
        for (StudyResult.Bare b : bare.subList(0, Math.min(6, bare.size()))) {
            page.wrapped(String.format(Locale.ROOT, "%8.1f cm2  ", 1e4 * b.areaM2()), b.where());
        }
    }

    private static void notRun(Page page, Compared c, int ran) {
        List<CompareRow> rest = c.rows().subList(ran, c.rows().size());
        if (rest.isEmpty()) {
            return;
        }
        page.heading("Not run");
        String before = "";
        int more = 0;
        for (CompareRow row : rest) {
            String what = row.candidate().wand() + " at '" + row.candidate().entry() + "': " + row.why();
            if (what.equals(before)) {
                more++;
                continue;
            }
            tellMore(page, more);
            page.wrapped("* ", what);
            before = what;
            more = 0;
        }
        tellMore(page, more);
    }

    private static void tellMore(Page page, int more) {
        if (more > 0) {
            page.line("  (and at %d other clock angle%s)", more, more == 1 ? "" : "s");
        }
    }

    private static void cautions(Page page, Compared c) {
        page.heading("Before anybody sprays");
        cautions(c).forEach(words -> page.wrapped("* ", words));
    }

    /** What stands with every comparison, and with holes and panels where it has any. */
    static List<String> cautions(Compared c) {
        List<String> all = new ArrayList<>();
        all.add(
                "A ranking is a computed prediction at coarse resolution, not an approval. Local rules, the structure's approved"
                        + " data and the product's safety data sheet come first; run the chosen job in full and read its"
                        + " cautions on mist, ignition, oxygen and compressed air.");
        if (c.rows().stream().anyMatch(r -> !r.candidate().holes().isEmpty())) {
            all.add(DRILLING);
        }
        if (c.rows().stream().anyMatch(r -> !r.candidate().panels().isEmpty())) {
            all.add("Panels: open and close them by the maintenance manual, and check that nothing is left inside.");
        }
        return all;
    }

    private static String percent(double share) {
        return TextReport.percent(share);
    }
}
