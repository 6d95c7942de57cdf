package baymist.report;

import baymist.card.WorkCard;
import baymist.scene.CardSpec;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/** A work card as JSON; keys in docs/formats/card.md. */
public final class CardJson {
    private CardJson() {}

    /** Writes the card; the writer is flushed and left open. */
    public static void write(WorkCard card, Writer out) throws IOException {
        Json.write(tree(card), out);
    }

    private static ObjectNode tree(WorkCard c) {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.put("kind", c.touchUp() ? "touch-up card" : "work card");
        WorkCard.Origin from = c.origin();
        ObjectNode origin = root.putObject("origin");
        origin.put("title", from.title());
        origin.put("structure", from.structure());
        origin.put("scene", from.sceneFile());
        origin.put("sceneHash", from.sceneHash());
        origin.put("engineVersion", from.engineVersion());
        origin.put("stateHash", from.stateHash());
        ObjectNode settings = origin.putObject("settings");
        from.settings().forEach(settings::put);
        ArrayNode cautions = root.putArray("cautions");
        c.cautions().forEach(x -> cautions.addObject().put("about", x.about()).put("text", x.text()));
        items(c, root.putArray("items"));
        wands(c, root);
        product(c.product(), root.putObject("product"));
        openings(c, root.putArray("openings"));
        steps(c, root.putArray("passes"));
        root.put("orderChanged", c.orderChanged());
        ObjectNode times = root.putObject("times");
        Json.number(times, "triggerS", c.times().triggerS());
        Json.number(times, "waitsS", c.times().waitsS());
        Json.number(times, "hangS", c.times().hangS());
        Json.number(times, "totalS", c.times().totalS());
        ObjectNode masks = root.putObject("masks");
        masks.put("tapes", c.masks().tapes());
        masks.put("plugs", c.masks().plugs());
        masks.put("items", c.masks().bags());
        Json.number(root, "dripMl", 1e6 * c.dripM3());
        WorkCard.Balance b = c.balance();
        if (b == null) {
            root.putNull("balance");
        } else {
            ObjectNode o = root.putObject("balance");
            Json.number(o, "oilKg", b.oilKg());
            Json.number(o, "armM", b.armM());
            Json.number(o, "momentNm", b.momentNm());
        }
        points(c, root.putArray("points"));
        due(c.due(), root.putObject("due"));
        return root;
    }

    private static void items(WorkCard c, ArrayNode a) {
        for (WorkCard.Item i : c.items()) {
            ObjectNode o = a.addObject();
            o.put("name", i.name());
            o.put("mask", word(i.mask()));
            Json.number(o, "limitM", i.limitM());
            o.set("centreM", Json.vector(i.centreM()));
        }
    }

    private static void wands(WorkCard c, ObjectNode root) {
        ArrayNode wands = root.putArray("wands");
        for (WorkCard.Wand w : c.wands()) {
            ObjectNode o = wands.addObject();
            o.put("name", w.name());
            o.put("kind", word(w.kind()));
            Json.number(o, "lengthM", w.lengthM());
            Json.number(o, "thickestM", w.thickestM());
            ArrayNode passes = o.putArray("passes");
            w.steps().forEach(passes::add);
        }
        ArrayNode supply = root.putArray("supply");
        for (WorkCard.Supply s : c.supply()) {
            ObjectNode o = supply.addObject();
            o.put("wand", s.wand());
            Json.number(o, "gaugePa", s.gaugePa());
            o.put("atHoseEnd", s.atHoseEnd());
            Json.number(o, "freeAirM3PerS", s.freeAirM3PerS());
            Json.number(o, "airKgPerS", s.airKgPerS());
            Json.number(o, "liquidM3PerS", s.liquidM3PerS());
        }
    }

    private static void product(WorkCard.Product p, ObjectNode o) {
        o.put("name", p.name());
        Json.number(o, "temperatureK", p.temperatureK());
        Json.number(o, "sprayedMl", 1e6 * p.sprayedM3());
        Json.number(o, "boresMl", 1e6 * p.boresM3());
        Json.number(o, "allowance", p.allowance());
        Json.number(o, "neededMl", 1e6 * p.neededM3());
        Json.number(o, "cupMl", 1e6 * p.cupM3());
        o.put("refills", p.refills());
        ArrayNode bays = o.putArray("bays");
        for (WorkCard.BayShare s : p.bays()) {
            ObjectNode bay = bays.addObject();
            bay.put("name", s.name());
            Json.number(bay, "areaM2", s.areaM2());
            Json.number(bay, "filmMl", 1e6 * s.filmM3());
            Json.number(bay, "reached", s.reached());
        }
    }

    private static void openings(WorkCard c, ArrayNode a) {
        for (WorkCard.Opening x : c.openings()) {
            ObjectNode o = a.addObject();
            o.put("name", x.name());
            o.put("use", word(x.use()));
            o.put("part", x.part());
            o.set("centreM", Json.vector(x.centreM()));
            Json.number(o, "lengthM", x.lengthM());
            Json.number(o, "widthM", x.widthM());
            o.put("pass", word(x.pass()));
            o.put("hang", word(x.hang()));
            o.put("after", word(x.after()));
        }
    }

    private static void steps(WorkCard c, ArrayNode a) {
        for (WorkCard.Step s : c.steps()) {
            ObjectNode o = a.addObject();
            o.put("number", s.number());
            o.put("name", s.name());
            o.put("entry", s.entry());
            o.put("opening", s.opening());
            o.put("wand", s.wand());
            Json.number(o, "fromM", s.fromM());
            Json.number(o, "toM", s.toM());
            o.put("stoppedBy", s.stopped());
            Json.number(o, "drawBackMPerS", s.drawBackMPerS());
            Json.number(o, "secondsPerHalfMetre", s.secondsPerHalfMetre());
            Json.number(o, "holdS", s.holdS());
            Json.number(o, "triggerS", s.triggerS());
            Json.number(o, "waitS", s.waitS());
            Json.number(o, "clockRad", s.clockRad());
            o.put("clockFrom", s.up() ? "up" : "forward");
            o.put("pin", s.pin());
            o.put("clockMatters", s.turned());
            Json.number(o, "heightM", s.heightM());
            Json.number(o, "productMl", 1e6 * s.productM3());
        }
    }

    private static void points(WorkCard c, ArrayNode a) {
        for (WorkCard.Point p : c.points()) {
            ObjectNode o = a.addObject();
            o.put("number", p.number());
            o.put("doubt", word(p.doubt()));
            o.put("where", p.where());
            o.put("label", p.label());
            o.set("atM", Json.vector(p.atM()));
            Json.number(o, p.doubt() == WorkCard.Doubt.SEAM_BARE ? "lengthM" : "areaM2", p.size());
            Json.number(o, "filmM", p.filmM());
            o.put("reason", p.reason());
        }
    }

    private static void due(WorkCard.Due due, ObjectNode o) {
        o.put("interval", due.interval() == null ? null : CardSpec.words(due.interval()));
        o.put("workDate", due.workDate() == null ? null : due.workDate().toString());
        o.put("next", due.next() == null ? null : due.next().toString());
    }

    private static String word(Enum<?> e) {
        return e.name().toLowerCase(Locale.ROOT);
    }
}
