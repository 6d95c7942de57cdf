package baymist.report;

import baymist.coverage.ItemAssessor;
import baymist.coverage.ItemDose;
import baymist.run.RunResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** Protected items and their film, as text and as JSON. */
final class ItemReport {
    private ItemReport() {}

    private static List<ItemDose> doses(RunResult r) {
        return ItemAssessor.assess(r.scene(), r.cavity(), r.grid(), r.filmM());
    }

    static void text(Page page, RunResult r) {
        List<ItemDose> doses = doses(r);
        if (doses.isEmpty()) {
            return;
        }
        page.heading("Protected items");
        page.line("%s %10s %10s %10s %10s", Page.cell("", 30), "surface", "limit", "mean", "most");
        for (ItemDose d : doses) {
            page.line(
                    "%s %10s %7.1f um %7.2f um %7.2f um  %s",
                    Page.cell("  " + d.name(), 30),
                    TextReport.area(d.areaM2()),
                    1e6 * d.limitM(),
                    1e6 * d.meanM(),
                    1e6 * d.maxM(),
                    d.masked() ? "masked" : d.exceeded() ? "EXCEEDED" : "ok");
            String cause = ConsequenceReport.cause(r, d);
            if (!cause.isEmpty()) {
                page.wrapped("    ", cause);
            }
        }
        page.line("No part of the coverage above. Product on masks counts with tape, plugs and covers.");
    }

    static ArrayNode json(RunResult r) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (ItemDose d : doses(r)) {
            ObjectNode o = a.addObject();
            o.put("name", d.name());
            Json.number(o, "limitUm", 1e6 * d.limitM());
            Json.number(o, "meanUm", 1e6 * d.meanM());
            Json.number(o, "maxUm", 1e6 * d.maxM());
            o.put("masked", d.masked());
            o.put("exceeded", d.exceeded());
            Json.number(o, "areaM2", d.areaM2());
            Json.number(o, "unresolvedAreaM2", d.unresolvedM2());
            Json.number(o, "filmKg", d.filmKg());
            o.set("arrivals", ConsequenceReport.arrivals(r, d.name()));
        }
        return a;
    }
}
