package baymist.report;

import baymist.size.Candidate;
import baymist.size.Design;
import baymist.size.DesignResult;
import baymist.size.Hook;
import baymist.size.SizeRequest;
import baymist.size.SizeResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import org.jspecify.annotations.Nullable;

/** A sizing of wands as JSON; keys in docs/formats/size.md. */
final class SizeJson {
    private SizeJson() {}

    static void write(SizeResult r, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(r.scene()));
        SizeRequest q = r.request();
        ObjectNode goal = root.putObject("goal");
        Json.number(goal, "reached", q.reached());
        Json.number(goal, "seamsReached", q.seamsReached());
        Json.number(root, "markM", q.markM());
        root.put("material", q.material().name());
        root.put("planning", r.planning());
        root.put("runs", r.jobs());
        ArrayNode sweep = root.putArray("sweep");
        ArrayNode designs = root.putArray("designs");
        for (DesignResult d : r.designs()) {
            d.sweep().forEach(c -> sweep.add(candidate(c)));
            designs.add(design(d));
        }
        root.set("shortest", orNull(r.shortest()));
        root.set("thinnest", orNull(r.thinnest()));
        ArrayNode verified = root.putArray("verified");
        for (SizeResult.Verified v : r.verified()) {
            ObjectNode o = verified.addObject();
            Json.number(o, "lengthM", v.lengthM());
            Json.number(o, "reached", v.result().reached());
            Json.number(o, "seamsReached", v.result().seamsReached());
            o.put("meets", v.meets());
        }
        ArrayNode words = root.putArray("explanation");
        SizeWords.of(r).forEach(words::add);
        ArrayNode cautions = root.putArray("cautions");
        Cautions.wandMaking().forEach(cautions::add);
        Json.write(root, out);
    }

    private static com.fasterxml.jackson.databind.JsonNode orNull(@Nullable Candidate c) {
        return c == null ? Json.object().nullNode() : candidate(c);
    }

    private static void wand(ObjectNode o, Design d) {
        Json.number(o, "outerM", d.tube().outerM());
        Json.number(o, "boreM", d.tube().boreM());
        o.put("pattern", d.pattern().name());
        Json.number(o, "orificeM", d.pattern().widestM());
        o.put("jets", d.pattern().tip().jets().size());
        Hook h = d.hook();
        if (h == null) {
            o.putNull("bend");
        } else {
            ObjectNode bend = o.putObject("bend");
            Json.number(bend, "angleRad", h.angleRad());
            Json.number(bend, "radiusM", h.radiusM());
            Json.number(bend, "fromTipM", h.legM());
        }
    }

    private static ObjectNode candidate(Candidate c) {
        ObjectNode o = Json.object();
        Json.number(o, "lengthM", c.lengthM());
        wand(o, c.design());
        Json.number(o, "depthM", c.depthM());
        Json.number(o, "stopM", c.stopM());
        Json.number(o, "reached", c.at().reached());
        Json.number(o, "protected", c.at().protectedShare());
        Json.number(o, "seamsReached", c.at().seamsReached());
        Json.number(o, "productMl", 1e6 * c.at().productM3());
        Json.number(o, "triggerS", c.at().triggerS());
        Json.number(o, "sagM", c.sagM());
        Json.number(o, "holeM", c.holeM());
        Json.number(o, "liquidMlPerMin", 60e6 * c.bore().liquidM3PerS());
        Json.number(o, "liquidLossPa", c.bore().liquidLossPa());
        Json.number(o, "airLossPa", c.bore().airLossPa());
        Json.number(o, "tubeKg", c.tubeKg());
        Json.number(o, "filledKg", c.filledKg());
        o.put("meets", c.meets());
        if (!c.at().done()) {
            o.put("refused", c.at().refused());
        }
        return o;
    }

    private static ObjectNode design(DesignResult d) {
        ObjectNode o = Json.object();
        wand(o, d.design());
        Json.number(o, "deepestM", d.deepestM());
        o.put("endedBy", d.endedBy());
        Json.number(o, "holeM", d.holeM());
        o.put("cut", d.cut());
        if (d.shortest() == null) {
            o.putNull("lengthM");
        } else {
            Json.number(o, "lengthM", d.shortest().lengthM());
        }
        o.put("verdict", d.verdict());
        return o;
    }
}
