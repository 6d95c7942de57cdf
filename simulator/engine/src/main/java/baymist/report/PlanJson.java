package baymist.report;

import baymist.plan.BlindBay;
import baymist.plan.HandsResult;
import baymist.plan.PlanResult;
import baymist.plan.PlanScore;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.study.HoleStudy;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A plan as JSON; keys in docs/formats/plan.md. */
final class PlanJson {
    private PlanJson() {}

    static void write(PlanResult r, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(r.stated()));
        ArrayNode passes = root.putArray("passes");
        r.planned().passes().forEach(p -> passes.add(pass(p)));
        root.put("keptOwn", r.keptOwn());
        root.set("panels", names(r.panels()));
        root.set("masked", names(r.masked()));
        root.set("holes", holes(r));
        if (!PlanReport.holes(r).isEmpty()) {
            root.put("caution", CompareReport.DRILLING);
        }
        root.set("blind", blind(r));
        root.set("predicted", score(r.predicted()));
        root.set("checked", score(r.checked()));
        root.set("own", score(r.own()));
        root.set("verified", verified(r.verified()));
        rounds(root.putArray("rounds"), r.rounds());
        rounds(root.putArray("fullRounds"), r.fullRounds());
        ObjectNode limits = root.putObject("limits");
        Json.number(limits, "slowestMPerS", r.limits().slowestMPerS());
        Json.number(limits, "fastestMPerS", r.limits().fastestMPerS());
        Json.number(limits, "triggerS", r.limits().triggerS());
        Json.number(limits, "productMl", 1e6 * r.limits().productM3());
        limits.put("passes", r.limits().passes());
        root.put("runs", r.runs());
        root.set("hands", hands(r.hands()));
        Json.write(root, out);
    }

    private static void rounds(ArrayNode array, List<PlanResult.Round> rounds) {
        for (PlanResult.Round round : rounds) {
            ObjectNode o = array.addObject();
            o.set("predicted", score(round.predicted()));
            o.set("found", score(round.found()));
        }
    }

    private static ObjectNode pass(PassSpec p) {
        ObjectNode o = Json.object();
        o.put("name", p.name());
        o.put("entry", p.entry());
        o.put("wand", p.wand());
        Json.number(o, "fromM", p.fromDepthM());
        Json.number(o, "toM", p.toDepthM());
        Json.number(o, "drawBackMPerS", p.drawBackMPerS());
        Json.number(o, "clockRad", p.clockRad());
        Json.number(o, "holdS", p.holdS());
        Json.number(o, "hangS", p.hangS());
        return o;
    }

    private static JsonNode score(@Nullable PlanScore s) {
        if (s == null) {
            return NullNode.getInstance();
        }
        ObjectNode o = Json.object();
        Json.number(o, "reached", s.reached());
        Json.number(o, "protected", s.protectedShare());
        Json.number(o, "triggerS", s.triggerS());
        Json.number(o, "productMl", 1e6 * s.productM3());
        return o;
    }

    private static ArrayNode names(List<String> all) {
        ArrayNode array = Json.object().putArray("names");
        all.forEach(array::add);
        return array;
    }

    private static ArrayNode holes(PlanResult r) {
        ArrayNode array = Json.object().putArray("holes");
        List<HoleStudy.Chosen> all = PlanReport.holes(r);
        for (HoleStudy.Chosen c : all) {
            ObjectNode o = array.addObject();
            HoleWords.json(o, c, all);
            o.put("where", c.site().words());
        }
        return array;
    }

    private static ArrayNode blind(PlanResult r) {
        ArrayNode array = Json.object().putArray("blind");
        for (BlindBay b : r.blind()) {
            ObjectNode o = array.addObject();
            o.put("bay", b.bay());
            Json.number(o, "areaM2", b.areaM2());
            Json.number(o, "share", b.share());
            Json.number(o, "atMost", b.atMost());
            o.put("why", b.why());
            o.put("needed", b.needed());
        }
        return array;
    }

    private static JsonNode verified(@Nullable RunResult run) {
        if (run == null) {
            return NullNode.getInstance();
        }
        ObjectNode o = Json.object();
        Json.number(o, "reached", run.coverage().total().reached());
        Json.number(o, "protected", run.coverage().total().protectedShare());
        Json.number(o, "productMl", PlanReport.productMl(run));
        o.put("air", run.record().settings().getOrDefault("air", ""));
        return o;
    }

    private static JsonNode hands(@Nullable HandsResult h) {
        if (h == null) {
            return NullNode.getInstance();
        }
        ObjectNode o = Json.object();
        o.put("samples", h.samples());
        Json.number(o, "meanReached", h.meanReached());
        Json.number(o, "nineteenOfTwenty", h.nineteenOfTwenty());
        Json.number(o, "surely", h.surely());
        ArrayNode bays = o.putArray("bays");
        for (HandsResult.BayChance b : h.byBay()) {
            ObjectNode x = bays.addObject();
            x.put("bay", b.bay());
            Json.number(x, "chance", b.chance());
        }
        ArrayNode regions = o.putArray("regions");
        for (HandsResult.RegionChance b : h.regions()) {
            ObjectNode x = regions.addObject();
            x.put("region", b.label());
            x.put("where", b.where());
            Json.number(x, "areaM2", b.areaM2());
            Json.number(x, "chance", b.chance());
        }
        ArrayNode habits = o.putArray("habits");
        for (HandsResult.Habit b : h.habits()) {
            ObjectNode x = habits.addObject();
            x.put("habit", b.name());
            Json.number(x, "lostReached", b.lostReached());
            Json.number(x, "varianceShare", b.varianceShare());
        }
        ArrayNode checks = o.putArray("checks");
        for (HandsResult.Check c : h.checks()) {
            ObjectNode x = checks.addObject();
            Json.number(x, "rank", c.rank());
            Json.number(x, "matrixReached", c.byMatrix());
            Json.number(x, "runReached", c.byRun());
            x.put("full", c.full());
        }
        return o;
    }
}
