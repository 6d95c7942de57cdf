package baymist.report;

import baymist.explain.Explanation;
import baymist.explain.Fact;
import baymist.explain.MaskAdvice;
import baymist.explain.PatchFilm;
import baymist.explain.Remedy;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;

/** Why a place stays bare: as text that reads aloud and as JSON (docs/formats/explain.md). */
public final class ExplainReport {
    private ExplainReport() {}

    /** Plain text, at most 100 columns, ASCII: a paragraph, the facts, the changes. */
    public static String text(Explanation e) {
        Page page = new Page();
        page.line("%s", e.base().scene().title());
        page.line(
                "%s",
                "="
                        .repeat(Math.min(
                                Page.WIDTH, Math.max(1, e.base().scene().title().length()))));
        page.line("%s", ExplainWords.summary(e));
        page.heading("What was found");
        e.facts().forEach(f -> fact(page, f, 0));
        remedies(page, e);
        page.heading("How far to trust this");
        bullet(
                page,
                String.format(
                        Locale.ROOT,
                        "%d runs at planning resolution: %d cells of about %.0f mm, %d rays a jet, %d sizes, projected"
                                + " air. Confirm what you mean to do with `run` on the changed scene.",
                        e.runs(),
                        e.base().grid().cellCount(),
                        1e3
                                * Math.cbrt(e.base().grid().sizeM().x()
                                        * e.base().grid().sizeM().y()
                                        * e.base().grid().sizeM().z()),
                        e.base().scene().raysPerJet(),
                        e.base().scene().sizeBins()));
        return page.toString();
    }

    private static void fact(Page page, Fact f, int depth) {
        page.wrapped("  ".repeat(depth) + (depth == 0 ? "* " : "- "), f.says());
        f.facts().forEach(child -> fact(page, child, depth + 1));
    }

    private static void remedies(Page page, Explanation e) {
        page.heading("What was tried");
        if (e.remedies().isEmpty()) {
            page.line("No change was run.");
            return;
        }
        page.line("%s %12s %17s   %s", "  ", "mean film um", "reached %", "change");
        List<String> cautions = e.remedies().stream()
                .map(Remedy::caution)
                .filter(c -> !c.isEmpty())
                .distinct()
                .toList();
        boolean rest = false;
        for (Remedy r : e.remedies()) {
            if (!r.holds() && !rest) {
                rest = true;
                page.line("%s", "Too little, or none:");
            }
            page.wrapped(
                    String.format(
                            Locale.ROOT,
                            "%s %5s -> %5s %5.0f -> %5.0f      ",
                            r.equals(e.recommended()) ? "->" : "  ",
                            um(r.before()),
                            um(r.after()),
                            100 * r.before().reached(),
                            100 * r.after().reached()),
                    r.change() + (r.caution().isEmpty() ? "" : " (" + (cautions.indexOf(r.caution()) + 1) + ")"));
        }
        if (!cautions.isEmpty()) {
            page.blank();
            for (int n = 0; n < cautions.size(); n++) {
                page.wrapped("(" + (n + 1) + ") ", cautions.get(n));
            }
        }
        Remedy best = e.recommended();
        if (best != null) {
            page.heading("To try what the arrow marks, change in the scene file");
            best.sceneLines().forEach(l -> bullet(page, l));
        }
        if (!e.notRun().isEmpty()) {
            page.heading("Not run");
            e.notRun().forEach(n -> bullet(page, n));
        }
    }

    private static void bullet(Page page, String words) {
        page.wrapped("* ", words);
    }

    private static String um(PatchFilm f) {
        double um = 1e6 * f.meanM();
        return String.format(Locale.ROOT, um < 9.95 ? "%.1f" : "%.0f", um);
    }

    /** The same as JSON. */
    public static void json(Explanation e, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(e.base().scene()));
        ObjectNode region = root.putObject("region");
        region.put("id", e.region().id());
        region.put("label", e.region().label());
        region.put("where", e.region().where());
        Json.number(region, "areaM2", e.region().areaM2());
        region.set("centroidM", Json.vector(e.region().centroidM()));
        ArrayNode parts = region.putArray("parts");
        e.region().parts().forEach(parts::add);
        Json.number(region, "filmUm", 1e6 * e.film().meanM());
        Json.number(region, "reached", e.film().reached());
        root.put("cause", e.cause().word());
        root.put("proved", e.proved());
        root.put("because", e.because());
        root.put("summary", ExplainWords.summary(e));
        ArrayNode sentences = root.putArray("sentences");
        e.sentences().forEach(sentences::add);
        root.set("facts", facts(e.facts()));
        ArrayNode remedies = root.putArray("remedies");
        e.remedies().forEach(r -> remedies.add(remedy(r, r.equals(e.recommended()))));
        ArrayNode items = root.putArray("items");
        e.items().forEach(i -> items.add(item(i)));
        ArrayNode not = root.putArray("notRun");
        e.notRun().forEach(not::add);
        root.put("runs", e.runs());
        root.set("findings", ResultJson.findings(e.findings()));
        Json.write(root, out);
    }

    private static ArrayNode facts(List<Fact> facts) {
        ArrayNode all = Json.array();
        for (Fact f : facts) {
            ObjectNode o = Json.object();
            o.put("id", f.id());
            o.put("says", f.says());
            ObjectNode numbers = o.putObject("numbers");
            f.numbers().forEach((name, value) -> Json.number(numbers, name, value));
            o.set("facts", facts(f.facts()));
            all.add(o);
        }
        return all;
    }

    private static ObjectNode item(MaskAdvice i) {
        ObjectNode o = Json.object();
        o.put("item", i.item());
        Json.number(o, "limitUm", 1e6 * i.limitM());
        o.put("maskedNow", i.maskedNow());
        Json.number(o, "bareUm", 1e6 * i.bareM());
        Json.number(o, "onMaskKg", i.onMaskKg());
        o.put("maskNeeded", i.needed());
        return o;
    }

    private static ObjectNode remedy(Remedy r, boolean recommended) {
        ObjectNode o = Json.object();
        o.put("change", r.change());
        o.put("kind", r.kind().word());
        Json.number(o, "filmBeforeUm", 1e6 * r.before().meanM());
        Json.number(o, "filmAfterUm", 1e6 * r.after().meanM());
        Json.number(o, "reachedBefore", r.before().reached());
        Json.number(o, "reachedAfter", r.after().reached());
        Json.number(o, "wholeReachedBefore", r.wholeBefore());
        Json.number(o, "wholeReachedAfter", r.wholeAfter());
        o.put("holds", r.holds());
        o.put("recommended", recommended);
        o.put("drills", r.kind().drills());
        o.put("single", r.single());
        ArrayNode over = o.putArray("overLimit");
        r.overLimit().forEach(over::add);
        if (!r.caution().isEmpty()) {
            o.put("caution", r.caution());
        }
        ArrayNode lines = o.putArray("sceneLines");
        r.sceneLines().forEach(lines::add);
        return o;
    }
}
