package baymist.report;

import java.util.List;
import java.util.Locale;

/** What changed from an earlier run, in plain text. */
public final class DifferenceReport {
    private static final int REGIONS = 10;
    private static final double TOLD = 5e-4;

    private DifferenceReport() {}

    /** The whole comparison, lines of at most 100 characters. */
    public static String of(RunDifference d) {
        Page page = new Page();
        RunDifference.Change t = d.total();
        page.heading("Against " + Page.cell(d.past().title(), 70).strip());
        page.line("%s, state %s", d.past().file(), d.past().stateHash());
        page.line(
                "Reached %s before, %s now; protected %s before, %s now. %s gained film, %s lost it.",
                share(t.reachedBeforeM2(), t),
                share(t.reachedNowM2(), t),
                share(t.protectedBeforeM2(), t),
                share(t.protectedNowM2(), t),
                TextReport.area(t.gainedM2()),
                TextReport.area(t.lostM2()));
        if (!d.sameVoxels()) {
            page.line(
                    "The runs have other voxels: each place is set against the nearest one of the same part and side%s.",
                    d.unmatchedM2() > 0 ? "; " + TextReport.area(d.unmatchedM2()) + " have none and are left out" : "");
        }
        page.line(
                "%s %17s %17s %10s %10s %9s",
                Page.cell("", 30), "reached: was, is", "prot.: was, is", "gained", "lost", "mean");
        row(page, t);
        page.line("by part");
        d.byPart().forEach(c -> row(page, c));
        if (d.byBay().size() > 1) {
            page.line("by bay");
            d.byBay().forEach(c -> row(page, c));
        }
        seams(page, d.seams());
        regions(page, d.regions());
        return page.toString();
    }

    private static String share(double part, RunDifference.Change of) {
        return TextReport.percent(of.areaM2() > 0 ? part / of.areaM2() : 0);
    }

    private static void row(Page page, RunDifference.Change c) {
        double mean = c.areaM2() > 0 ? 1e6 * (c.filmNowM3() - c.filmBeforeM3()) / c.areaM2() : 0;
        page.line(
                "%s %8s %8s %8s %8s %10s %10s %+6.1f um",
                Page.cell("  " + c.name(), 30),
                share(c.reachedBeforeM2(), c),
                share(c.reachedNowM2(), c),
                share(c.protectedBeforeM2(), c),
                share(c.protectedNowM2(), c),
                TextReport.area(c.gainedM2()),
                TextReport.area(c.lostM2()),
                mean);
    }

    private static void seams(Page page, List<RunDifference.Seams> seams) {
        page.line("seams reached");
        for (RunDifference.Seams s : seams) {
            boolean told = s.name().equals("all") || !(Math.abs(s.now() - s.before()) < TOLD);
            if (told) {
                page.line(
                        "%s %8s %8s",
                        Page.cell("  " + s.name(), 30),
                        Double.isNaN(s.before()) ? "new" : TextReport.percent(s.before()),
                        TextReport.percent(s.now()));
            }
        }
    }

    private static void regions(Page page, List<RunDifference.Region> regions) {
        List<RunDifference.Region> changed = regions.stream()
                .filter(r -> Math.abs(r.nowM2() - r.beforeM2()) > 1e-9)
                .toList();
        page.line("bare places%s", changed.isEmpty() ? ": none changed" : "");
        for (RunDifference.Region r : changed.subList(0, Math.min(REGIONS, changed.size()))) {
            String what = r.beforeM2() == 0
                    ? "new"
                    : r.nowM2() == 0
                            ? "gone"
                            : String.format(Locale.ROOT, "%+.0f %%", 100 * (r.nowM2() / r.beforeM2() - 1));
            page.line(
                    "%s %10s %10s  %s",
                    Page.cell("  " + r.label(), 28), TextReport.area(r.beforeM2()), TextReport.area(r.nowM2()), what);
        }
        if (changed.size() > REGIONS) {
            page.line("  and %d others that changed less", changed.size() - REGIONS);
        }
    }
}
