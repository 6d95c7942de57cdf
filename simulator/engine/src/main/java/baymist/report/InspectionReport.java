package baymist.report;

import baymist.card.WorkCard;
import baymist.inspect.FilmSpread;
import baymist.inspect.InspectionResult;
import baymist.inspect.Refit;
import baymist.inspect.TouchUp;
import baymist.scene.Inspection;
import baymist.scene.Inspection.Seen;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/** Findings against a run, as text and as JSON (docs/formats/findings.md). */
public final class InspectionReport {
    private InspectionReport() {}

    /** The text. */
    public static String text(InspectionResult r) {
        Page page = new Page();
        String title = r.inspection().title();
        page.heading("Findings" + (title.isEmpty() ? "" : ": " + title));
        table(page, r);
        page.line(
                "%d of %d places were seen as predicted.%s",
                r.table().hits(), r.table().all(), dry(r));
        page.line(
                "Brier score %.3f (0 = always certain and right, 2 = always certain and wrong); the bare frequencies score %.3f.",
                r.brier(), r.brierOfFrequencies());
        misses(page, r);
        Refit.Result fit = r.refit();
        if (fit != null) {
            refit(page, r, fit);
        }
        TouchUp.Result touchUp = r.touchUp();
        if (touchUp != null) {
            touchUp(page, r, touchUp);
        }
        return page.toString();
    }

    private static void table(Page page, InspectionResult r) {
        page.line("%-16s %8s %8s %8s", "predicted", "wet", "thin", "dry   seen");
        for (Seen p : Seen.values()) {
            page.line(
                    "  %-14s %8d %8d %8d",
                    word(p),
                    r.table().count(p, Seen.WET),
                    r.table().count(p, Seen.THIN),
                    r.table().count(p, Seen.DRY));
        }
    }

    private static String dry(InspectionResult r) {
        String found = Double.isNaN(r.table().dryFound())
                ? ""
                : String.format(
                        Locale.ROOT,
                        " Of the dry ones %.0f %% were predicted dry.",
                        100 * r.table().dryFound());
        String alarms = Double.isNaN(r.table().falseAlarms())
                ? ""
                : String.format(
                        Locale.ROOT,
                        " Of those predicted dry %.0f %% were not.",
                        100 * r.table().falseAlarms());
        return found + alarms;
    }

    private static void misses(Page page, InspectionResult r) {
        int told = 0;
        for (int i = 0; i < r.filmM().length; i++) {
            Inspection.Place p = r.inspection().places().get(i);
            Seen predicted =
                    FilmSpread.expected(r.filmM()[i], r.source().scene().targets());
            if (predicted != p.seen()) {
                if (told == 0) {
                    page.line("Seen otherwise than predicted:");
                }
                if (++told <= 12) {
                    page.wrapped(
                            String.format(Locale.ROOT, "  %3d  ", i + 1),
                            r.where().get(i) + ": " + word(p.seen()) + ", predicted " + word(predicted) + " ("
                                    + TextReport.significant(1e6 * r.filmM()[i], 2) + " um)");
                }
            }
        }
        if (told > 12) {
            page.line("       and %d more", told - 12);
        }
    }

    private static void refit(Page page, InspectionResult r, Refit.Result fit) {
        page.heading("Setting that the findings speak for");
        page.line(
                "Liquid rate x %.2f (%.2f to %.2f), droplets x %.2f (%.2f to %.2f), by %d runs at planning resolution.",
                fit.best().liquid(),
                fit.liquidLow(),
                fit.liquidHigh(),
                fit.best().size(),
                fit.sizeLow(),
                fit.sizeHigh(),
                fit.runs());
        page.line(
                "Sought within a factor of %.3g for the rate and %.3g for the droplets.",
                Refit.LIQUID_FACTOR, fit.sizeRange());
        page.line("Misfit %.1f as stated, %.1f at this setting.", fit.misfitBefore(), fit.misfitAfter());
        page.line(
                fit.speaks()
                        ? "The findings speak for this setting; the touch-up is worked out with it."
                        : "The findings do not speak clearly for it; the touch-up keeps the stated setting.");
        if (fit.atEnd()) {
            page.line(
                    "The fit stands at the end of its range: something else may be off. Check rate, pressure and passes.");
        }
        if (r.inspection().places().size() < 10) {
            page.line(
                    "So few findings leave much open; ten or more, measured and dry ones among them, would tell more.");
        }
    }

    private static void touchUp(Page page, InspectionResult r, TouchUp.Result t) {
        page.heading("Touch-up");
        Scene scene = t.scene();
        if (scene == null) {
            page.line("No jet of these wands reaches any of the places found thin or dry within a bearable time.");
        } else {
            for (PassSpec p : scene.passes()) {
                page.line(
                        "  %-12s %s, %s: %.0f to %.0f mm, pin at %.0f deg, %s",
                        p.name(),
                        p.entry(),
                        p.wand(),
                        1e3 * p.fromDepthM(),
                        1e3 * p.toDepthM(),
                        Math.toDegrees(p.clockRad()) % 360,
                        p.holdS() > 0
                                ? String.format(Locale.ROOT, "held %.1f s", p.holdS())
                                : String.format(
                                        Locale.ROOT,
                                        "%.1f s of trigger",
                                        (p.fromDepthM() - p.toDepthM()) / p.drawBackMPerS()));
            }
            double target = scene.targets().buildM();
            long done = r.touchUpPlaces().stream()
                    .filter(p -> p.filmM() >= scene.targets().hazeM())
                    .count();
            long full =
                    r.touchUpPlaces().stream().filter(p -> p.filmM() >= target).count();
            page.line(
                    "Of %d places found thin or dry %d are reached by it, %d with the target build (run at planning resolution).",
                    r.touchUpPlaces().size(), done, full);
        }
        for (int i : t.unserved()) {
            page.wrapped("  no jet gets there: ", r.where().get(i));
        }
        if (!t.unserved().isEmpty()) {
            page.line("For these `baymist explain` and `baymist field` look for another way.");
        }
    }

    /** Writes the result as JSON; the writer is flushed and left open. */
    public static void json(InspectionResult r, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(r.source().scene()));
        root.put("title", r.inspection().title());
        ArrayNode places = root.putArray("places");
        for (int i = 0; i < r.filmM().length; i++) {
            Inspection.Place p = r.inspection().places().get(i);
            ObjectNode o = places.addObject();
            o.put("where", r.where().get(i));
            o.put("seen", word(p.seen()));
            o.put(
                    "predicted",
                    word(FilmSpread.expected(r.filmM()[i], r.source().scene().targets())));
            Json.number(o, "filmM", r.filmM()[i]);
            Json.number(o, "measuredM", p.filmM());
        }
        ObjectNode counts = root.putObject("table");
        for (Seen p : Seen.values()) {
            ObjectNode row = counts.putObject(word(p));
            for (Seen s : Seen.values()) {
                row.put(word(s), r.table().count(p, s));
            }
        }
        Json.number(root, "brier", r.brier());
        Json.number(root, "brierOfFrequencies", r.brierOfFrequencies());
        Refit.Result fit = r.refit();
        if (fit != null) {
            ObjectNode o = root.putObject("refit");
            Json.number(o, "liquid", fit.best().liquid());
            Json.number(o, "liquidLow", fit.liquidLow());
            Json.number(o, "liquidHigh", fit.liquidHigh());
            Json.number(o, "size", fit.best().size());
            Json.number(o, "sizeLow", fit.sizeLow());
            Json.number(o, "sizeHigh", fit.sizeHigh());
            Json.number(o, "misfitBefore", fit.misfitBefore());
            Json.number(o, "misfitAfter", fit.misfitAfter());
            o.put("atEnd", fit.atEnd());
            o.put("speaks", fit.speaks());
        }
        TouchUp.Result t = r.touchUp();
        if (t != null) {
            touchUp(r, t, root.putObject("touchUp"));
        }
        Json.write(root, out);
    }

    private static void touchUp(InspectionResult r, TouchUp.Result t, ObjectNode o) {
        ArrayNode passes = o.putArray("passes");
        Scene scene = t.scene();
        if (scene != null) {
            for (PassSpec p : scene.passes()) {
                ObjectNode x = passes.addObject();
                x.put("name", p.name());
                x.put("entry", p.entry());
                x.put("wand", p.wand());
                Json.number(x, "fromM", p.fromDepthM());
                Json.number(x, "toM", p.toDepthM());
                Json.number(x, "drawBackMPerS", p.drawBackMPerS());
                Json.number(x, "holdS", p.holdS());
                Json.number(x, "clockRad", p.clockRad());
            }
        }
        ArrayNode places = o.putArray("places");
        for (WorkCard.Point p : r.touchUpPlaces()) {
            ObjectNode x = places.addObject();
            x.put("where", p.where());
            Json.number(x, "filmAfterM", p.filmM());
        }
        ArrayNode unserved = o.putArray("notReached");
        t.unserved().forEach(i -> unserved.add(r.where().get(i)));
    }

    private static String word(Seen s) {
        return s.name().toLowerCase(Locale.ROOT);
    }
}
