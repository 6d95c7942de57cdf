package baymist.report;

import baymist.run.Confidence;
import baymist.run.Gate;
import baymist.run.Nozzles;
import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.spray.TipFlow;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** How sure the shares are, the numbers held against limits, and what the tips get, for both reports. */
final class ConfidenceReport {
    private ConfidenceReport() {}

    static ObjectNode json(Confidence c) {
        ObjectNode o = Json.object();
        Json.number(o, "dv50Factor", c.dv50Factor());
        range(o.putObject("reached"), c.reachedLow(), c.reachedHigh(), c.reachedRays());
        range(o.putObject("protected"), c.protectedLow(), c.protectedHigh(), c.protectedRays());
        return o;
    }

    private static void range(ObjectNode o, double low, double high, double rays) {
        Json.number(o, "low", low);
        Json.number(o, "high", high);
        Json.number(o, "rayError", rays);
    }

    static ArrayNode gates(Iterable<Gate> gates) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (Gate g : gates) {
            ObjectNode o = a.addObject();
            o.put("name", g.name());
            Json.number(o, "value", g.value());
            Json.number(o, "limit", g.limit());
            o.put("unit", g.unit());
            o.put("exceeded", g.exceeded());
            o.put("finding", g.finding());
        }
        return a;
    }

    static ArrayNode tips(Scene scene) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        if (scene.passes().isEmpty()) {
            return a;
        }
        Nozzles.flows(scene).forEach((wand, tip) -> a.add(tip(wand, tip)));
        return a;
    }

    private static ObjectNode tip(String wand, TipFlow tip) {
        ObjectNode o = Json.object();
        o.put("wand", wand);
        if (tip.supply() instanceof SupplySpec.Pressure p) {
            Json.number(o, "gaugePa", p.gaugePa());
        }
        Json.number(o, "airKgPerS", tip.airKgPerS());
        Json.number(o, "liquidKgPerS", tip.supply().liquidKgPerS());
        Json.number(o, "airLiquidRatio", tip.airLiquidRatio());
        Json.number(o, "thrustN", tip.thrustN());
        Json.number(o, "airBoreLossPa", tip.airLossPa());
        Json.number(o, "liquidBoreLossPa", tip.liquidLossPa());
        return o;
    }

    static void text(Page page, Confidence c) {
        if (!c.known()) {
            return;
        }
        if (c.dv50Factor() > 1) {
            page.line(
                    "Droplets known within a factor of %s: reached %s to %s, protected %s to %s.",
                    TextReport.significant(c.dv50Factor(), 3),
                    TextReport.percent(c.reachedLow()),
                    TextReport.percent(c.reachedHigh()),
                    TextReport.percent(c.protectedLow()),
                    TextReport.percent(c.protectedHigh()));
        }
        page.line(
                "Error of sampling the jets by rays: reached %.1f points, protected %.1f points.",
                100 * c.reachedRays(), 100 * c.protectedRays());
    }
}
