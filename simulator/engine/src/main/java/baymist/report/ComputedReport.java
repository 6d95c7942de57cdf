package baymist.report;

import baymist.run.ComputedBays;
import baymist.run.RunResult;
import baymist.voxel.GridPart;
import baymist.voxel.VoxelGrid;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashSet;
import java.util.Set;

/** Which bays a result holds; silent where it holds them all. */
final class ComputedReport {
    private ComputedReport() {}

    static void text(Page page, RunResult r) {
        ComputedBays bays = ComputedBays.of(r.grid());
        if (!bays.isWhole()) {
            page.wrapped("", "Computed: " + bays.words() + ". Every share and sum here is of these alone.");
        }
    }

    /** The bays that a written result holds, of the whole grid. */
    static VoxelGrid part(VoxelGrid whole, JsonNode root) {
        JsonNode part = root.path("computedPart");
        if (part.isMissingNode()) {
            return whole;
        }
        Set<String> names = new HashSet<>();
        part.path("computed").forEach(n -> names.add(n.asText()));
        boolean[] kept = new boolean[whole.bays().size()];
        for (int b = 0; b < kept.length; b++) {
            kept[b] = names.contains(whole.bays().get(b).name());
        }
        return GridPart.of(whole, kept).grid();
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
