package baymist.report;

import baymist.coverage.ItemDose;
import baymist.geom.Vec3;
import baymist.run.Consequences;
import baymist.run.RunResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** What the job leaves behind: on protected items by pass, and as weight in the structure. */
final class ConsequenceReport {
    /** What must be said wherever a moment about a hinge line is told. */
    static final String BALANCE = "check balance against approved data";

    /** One ounce-force inch in N·m: 0.45359237/16 kg x 9.80665 m/s² x 0.0254 m, by the definitions of pound and inch (1959). */
    private static final double OUNCE_INCH_NM = 0.45359237 / 16 * 9.80665 * 0.0254;

    private static final double UM = 1e-6;

    private ConsequenceReport() {}

    static void text(Page page, RunResult r) {
        Consequences c = r.outlook().consequences();
        if (c.oil().isEmpty()) {
            return;
        }
        page.heading("Oil left in the structure");
        page.line(
                "%s %10s %10s  %-22s %s",
                Page.cell("a day after close-up", 22), "oil", "standing", "centre of gravity (mm)", "deepest (mm)");
        for (Consequences.Oil o : c.oil()) {
            if (o.bay().equals(Consequences.ALL) && c.oil().size() == 2) {
                continue;
            }
            page.line(
                    "%s %8.2f g %8.2f g  %-22s %.0f um at %s",
                    Page.cell("  " + o.bay(), 22),
                    1e3 * o.massKg(),
                    1e3 * o.standingKg(),
                    place(o.centreM()),
                    o.deepestM() / UM,
                    place(o.deepestAtM()));
        }
        page.line(
                "Standing is what lies deeper than the run limit of %s: in low corners, behind blocked drains. Dripped: %.2f g.",
                TextReport.film(r.scene().targets().excessM()),
                1e3 * (r.ledger().drippedKg() + r.outlook().drippedLaterKg()));
        Consequences.Hinge h = c.hinge();
        if (h != null) {
            page.line(
                    "About the hinge line: %.2f g, %.0f mm %s of it, %.4f N m (%.2f oz in), %s: %s.",
                    1e3 * h.massKg(),
                    1e3 * Math.abs(h.armM()),
                    h.armM() < 0 ? "ahead" : "aft",
                    Math.abs(h.momentNm()),
                    Math.abs(h.momentNm()) / OUNCE_INCH_NM,
                    h.momentNm() < 0 ? "aft edge up" : "aft edge down",
                    BALANCE);
        }
    }

    private static String place(Vec3 p) {
        return String.format(Locale.ROOT, "(%.0f, %.0f, %.0f)", 1e3 * p.x(), 1e3 * p.y(), 1e3 * p.z());
    }

    /** Which passes brought it, most first, and which mask keeps it off; "" for an item that got nothing. */
    static String cause(RunResult r, ItemDose dose) {
        List<Consequences.Arrival> of = r.outlook().consequences().arrivals().stream()
                .filter(a -> a.item().equals(dose.name()))
                .sorted(Comparator.comparingDouble((Consequences.Arrival a) -> -(a.jetKg() + a.fogKg()))
                        .thenComparing(Consequences.Arrival::pass))
                .toList();
        double perUm = r.scene().product().densityKgPerM3() * dose.areaM2() * UM;
        if (of.isEmpty() || !(perUm > 0)) {
            return "";
        }
        StringBuilder words = new StringBuilder();
        for (Consequences.Arrival a : of.subList(0, Math.min(3, of.size()))) {
            words.append(words.isEmpty() ? "" : "; ")
                    .append(String.format(
                            Locale.ROOT,
                            "%s: %.2f um by its jets, %.2f um as fog",
                            a.pass(),
                            a.jetKg() / perUm,
                            a.fogKg() / perUm));
        }
        if (of.size() > 3) {
            words.append("; ").append(of.size() - 3).append(" other passes less");
        }
        return words + advice(dose, of, perUm);
    }

    private static String advice(ItemDose dose, List<Consequences.Arrival> of, double perUm) {
        if (dose.masked()) {
            return ". All of it is on the mask.";
        }
        if (!dose.exceeded()) {
            return ".";
        }
        double fogUm = of.stream().mapToDouble(Consequences.Arrival::fogKg).sum() / perUm;
        double limitUm = dose.limitM() / UM;
        return fogUm > limitUm
                ? String.format(
                        Locale.ROOT,
                        ". Fog alone leaves %.2f um, more than the limit: a shield does not help, bag it closed all round (mask: bag).",
                        fogUm)
                : ". Fog alone stays below the limit on average: tape or a shield towards the tip keeps the rest off"
                        + " (mask: tape), or stop that pass short of it.";
    }

    static ArrayNode arrivals(RunResult r, String item) {
        ArrayNode a = Json.array();
        for (Consequences.Arrival x : r.outlook().consequences().arrivals()) {
            if (x.item().equals(item)) {
                ObjectNode o = a.addObject();
                o.put("pass", x.pass());
                Json.number(o, "jetKg", x.jetKg());
                Json.number(o, "fogKg", x.fogKg());
            }
        }
        return a;
    }

    /** Oil by bay and in all, and the moment about the hinge line or null. */
    static ObjectNode json(RunResult r) {
        Consequences c = r.outlook().consequences();
        ObjectNode root = Json.object();
        ArrayNode oil = root.putArray("oil");
        for (Consequences.Oil x : c.oil()) {
            ObjectNode o = oil.addObject();
            o.put("bay", x.bay());
            Json.number(o, "massKg", x.massKg());
            Json.number(o, "standingKg", x.standingKg());
            o.set("centreM", Json.vector(x.centreM()));
            Json.number(o, "deepestUm", x.deepestM() / UM);
            o.set("deepestAtM", Json.vector(x.deepestAtM()));
        }
        Json.number(root, "drippedKg", r.ledger().drippedKg() + r.outlook().drippedLaterKg());
        Consequences.Hinge h = c.hinge();
        if (h == null) {
            root.putNull("hinge");
        } else {
            ObjectNode o = root.putObject("hinge");
            Json.number(o, "massKg", h.massKg());
            Json.number(o, "armM", h.armM());
            Json.number(o, "momentNm", h.momentNm());
            o.put("advice", BALANCE);
        }
        return root;
    }
}
