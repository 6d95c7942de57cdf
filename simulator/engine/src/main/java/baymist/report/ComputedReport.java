package baymist.report;

import baymist.run.ComputedBays;
import baymist.run.RunResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Which bays a result holds; silent where it holds them all. */
final class ComputedReport {
    private ComputedReport() {}

    static void text(Page page, RunResult r) {
        ComputedBays bays = ComputedBays.of(r.grid());
        if (!bays.isWhole()) {
            page.wrapped("", "Computed: " + bays.words() + ". Every share and sum here is of these alone.");
        }
    }

    static void json(RunResult r, ObjectNode root) {
        ComputedBays bays = ComputedBays.of(r.grid());
        if (!bays.isWhole()) {
            ObjectNode o = root.putObject("computedPart");
            ArrayNode names = o.putArray("computed");
            bays.names().forEach(names::add);
            ArrayNode rest = o.putArray("notComputed");
            bays.leftOut().forEach(rest::add);
        }
    }
}
