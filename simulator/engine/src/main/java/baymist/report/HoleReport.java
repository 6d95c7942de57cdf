package baymist.report;

import baymist.study.HoleStudy;
import baymist.study.StudyResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;

/** Access holes that would help a job, as text and as JSON. docs/guide/drilling.md reads it. */
public final class HoleReport {
    private HoleReport() {}

    /** Plain text, at most 100 columns, ASCII. */
    public static String text(HoleStudy.Holes h) {
        Page page = new Page();
        page.line("%s", h.scene().title());
        page.line(
                "%s",
                "=".repeat(Math.min(Page.WIDTH, Math.max(1, h.scene().title().length()))));
        StudyResult before = h.before();
        StudyResult after = h.after();
        if (h.chosen().isEmpty()) {
            page.line("No access hole is proposed: %s.", h.stop());
        } else {
            page.line(
                    "%d access hole%s would lift the job from %s reached to %s (protected %s to %s).",
                    h.chosen().size(),
                    h.chosen().size() == 1 ? "" : "s",
                    TextReport.percent(before.reached()),
                    TextReport.percent(after.reached()),
                    TextReport.percent(before.protectedShare()),
                    TextReport.percent(after.protectedShare()));
        }
        page.wrapped("", CompareReport.DRILLING);
        page.line("Figures are those of planning: %s.", h.planning().words());
        if (!h.chosen().isEmpty()) {
            table(page, h);
        }
        page.heading("How they were found");
        page.line("%d places keep the rules; %d jobs with a hole were run.", h.places(), h.tried());
        page.line("It ends there because %s.", h.stop());
        page.wrapped(
                "* ",
                "Rules: 2 D from edges and openings, 3 D from other holes (AC 43.13-1B), clear of members, doublers and protected"
                        + " items, never in parts marked primary or pressurised, free way for the drill outside. What lies"
                        + " outside of the modelled cavity (wiring, lines, the next bay) is not known here: look before anybody"
                        + " drills.");
        left(page, after);
        return page.toString();
    }

    private static void table(Page page, HoleStudy.Holes h) {
        page.heading("Holes, in order of use");
        for (int i = 0; i < h.chosen().size(); i++) {
            HoleStudy.Chosen c = h.chosen().get(i);
            page.wrapped(String.format(Locale.ROOT, "%2d  ", i + 1), c.site().words() + ", for " + c.wand() + ".");
            page.wrapped("    ", HoleWords.gains(c));
            page.wrapped("    ", HoleWords.keeps(c, h.chosen()));
        }
    }

    private static void left(Page page, StudyResult after) {
        page.heading("What stays bare");
        List<StudyResult.Bare> bare = after.bare();
        if (bare.isEmpty()) {
            page.line("nothing");
        }
        for (StudyResult.Bare b : bare.subList(0, Math.min(6, bare.size()))) {
            page.wrapped(String.format(Locale.ROOT, "%8.1f cm2  ", 1e4 * b.areaM2()), b.where());
        }
    }

    /** The same as JSON; keys in docs/formats/compare.md. */
    public static void json(HoleStudy.Holes h, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(h.scene()));
        root.set("planning", CompareJson.planning(h.planning()));
        root.put("caution", CompareReport.DRILLING);
        CompareJson.figures(root.putObject("before"), h.before());
        CompareJson.figures(root.putObject("after"), h.after());
        ArrayNode holes = root.putArray("holes");
        for (HoleStudy.Chosen c : h.chosen()) {
            HoleWords.json(holes.addObject(), c, h.chosen());
        }
        root.put("places", h.places());
        root.put("tried", h.tried());
        root.put("stop", h.stop());
        Json.write(root, out);
    }
}
