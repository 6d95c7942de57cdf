package baymist.report;

import baymist.access.AccessFinder;
import baymist.access.ReachShare;
import baymist.access.SagResult;
import baymist.access.WandStop;
import baymist.run.ReachLine;
import baymist.run.ReachResult;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;

/** Where the wands of a scene get to: as text and as JSON. docs/guide/reach.md reads it. */
public final class ReachReport {
    private static final int NAME = 26;

    private ReachReport() {}

    /** Plain text, at most 100 columns, ASCII. */
    public static String text(ReachResult r) {
        Page page = new Page();
        page.line("%s", r.scene().title());
        page.line(
                "%s",
                "=".repeat(Math.min(Page.WIDTH, Math.max(1, r.scene().title().length()))));
        long entries = r.lines().stream().map(ReachLine::entry).distinct().count();
        page.line(
                "Cavity \"%s\": %d way%s in, %d insertions.",
                r.cavity().name(), entries, entries == 1 ? "" : "s", r.lines().size());
        page.line(
                "Reached = within %s mm of a place of the tip and in its sight: %s of the surface, %s of the air by all"
                        + " together.",
                TextReport.significant(1e3 * r.withinM(), 3),
                TextReport.percent(r.together().surface()),
                TextReport.percent(r.together().volume()));
        tables(page, r);
        words(page, r);
        TextReport.findings(page, r.findings());
        return page.toString();
    }

    /** The same as JSON. */
    public static void json(ReachResult r, Writer out) throws IOException {
        ReachJson.write(r, out);
    }

    private static void tables(Page page, ReachResult r) {
        String entry = "";
        for (ReachLine l : r.lines()) {
            if (!l.entry().name().equals(entry)) {
                entry = l.entry().name();
                page.heading("Entry: " + entry + (l.opened() ? " (shut in the scene)" : ""));
                page.line(
                        "%s %8s %8s %7s %7s  %s",
                        Page.cell("wand", NAME), "depth mm", "surface", "air", "sag mm", "ended by");
            }
            page.line("%s", row(l));
        }
    }

    private static String row(ReachLine l) {
        if (!l.reach().feasible()) {
            return Page.cell(l.wand().name(), NAME) + "        -        -       -       -  does not go in";
        }
        SagResult sag = l.sag();
        ReachShare s = l.share();
        String by = stoppedBy(l);
        return String.format(
                Locale.ROOT,
                "%s %8.0f %8s %7s %7s  %s",
                Page.cell(l.wand().name(), NAME),
                1e3 * l.reach().maxDepthM(),
                TextReport.percent(s.surface()),
                TextReport.percent(s.volume()),
                sag == null ? "-" : String.format(Locale.ROOT, "%.1f", 1e3 * sag.dropM()),
                by.length() <= 36 ? by : by.substring(0, 34) + "..");
    }

    /** What ends the insertion: a part, a closed opening, the wand's length; for one that does not go in, the reason. */
    static String stoppedBy(ReachLine l) {
        WandStop stop = l.reach().stop();
        if (stop == null) {
            return "";
        }
        boolean named = !stop.partName().isEmpty()
                && (l.reach().feasible() || stop.why().isEmpty());
        return named || stop.partName().equals(AccessFinder.WAND_LENGTH) ? stop.partName() : stop.why();
    }

    private static void words(Page page, ReachResult r) {
        page.heading("In words");
        List<ReachLine> lines = r.lines();
        for (ReachLine l : lines) {
            page.wrapped("* ", ReachWords.of(l));
        }
    }
}
