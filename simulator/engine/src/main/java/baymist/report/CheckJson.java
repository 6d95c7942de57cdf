package baymist.report;

import baymist.airflow.ResolvedCost;
import baymist.cavity.CavityHealth;
import baymist.cavity.MeshHealth;
import baymist.coverage.BayDescriber;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.run.MemoryEstimate;
import baymist.run.RunEstimate;
import baymist.voxel.FinerVoxels;
import baymist.voxel.Leak;
import baymist.voxel.OpeningUse;
import baymist.voxel.UnresolvedArea;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;

/** A check as JSON; keys in docs/formats/result.md. */
final class CheckJson {
    private CheckJson() {}

    static void write(CheckResult c, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(c.scene()));
        root.set("grid", ResultJson.grid(c.grid(), CheckAreas.resolvedM2(c.grid())));
        MeshHealth health = MeshHealth.of(c.cavity());
        if (health != null) {
            root.set("mesh", MeshReport.json(health));
        }
        memory(root, c);
        unresolved(root, c);
        leaks(root, c);
        CheckAreas areas = new CheckAreas(c.cavity(), c.grid());
        root.set("bays", bays(c, areas));
        root.set("parts", parts(c, areas));
        root.set("openings", openings(c));
        root.set("insertions", ResultJson.insertions(c.cavity(), c.insertions()));
        root.set("findings", ResultJson.findings(c.findings()));
        Json.write(root, out);
    }

    private static void memory(ObjectNode root, CheckResult c) {
        RunEstimate estimate = c.estimate();
        MemoryEstimate m =
                estimate == null ? MemoryEstimate.of(c.grid(), c.scene().sizeBins()) : estimate.memory();
        ObjectNode o = root.putObject("memory");
        o.put("gridBytes", m.gridBytes());
        o.put("fogBytes", m.fogBytes());
        o.put("airBytes", m.airBytes());
        if (estimate != null) {
            ObjectNode e = root.putObject("estimate");
            Json.number(e, "seconds", estimate.seconds());
            ResolvedCost air = estimate.air();
            if (air != null) {
                e.put("airBlock", air.factor());
                e.put("airCells", air.cells());
                e.put("airSteps", air.steps());
            }
        }
    }

    private static void unresolved(ObjectNode root, CheckResult c) {
        ArrayNode unresolved = root.putArray("unresolved");
        for (UnresolvedArea u : c.grid().unresolved()) {
            ObjectNode o = unresolved.addObject();
            o.put("part", c.cavity().parts().get(u.part()).name());
            Json.number(o, "areaM2", u.areaM2());
            o.set("centroidM", Json.vector(u.centroidM()));
            o.put("cause", u.cause().name().toLowerCase(Locale.ROOT));
            if (u.axis() >= 0) {
                o.put("axis", "xyz".substring(u.axis(), u.axis() + 1));
                Json.number(o, "spanM", u.spanM());
            }
        }
        ArrayNode finer = root.putArray("finerVoxels");
        for (double share : new double[] {0.5, 0.9}) {
            FinerVoxels f = FinerVoxels.of(c.grid(), share);
            if (f.share() > 0) {
                ObjectNode o = finer.addObject();
                o.set(
                        "voxelM",
                        Json.vector(
                                new Vec3(f.size().xM(), f.size().yM(), f.size().zM())));
                Json.number(o, "share", f.share());
                o.put("cells", f.cells());
            }
        }
    }

    private static void leaks(ObjectNode root, CheckResult c) {
        ArrayNode leaks = root.putArray("leaks");
        for (Leak leak : c.grid().leaks()) {
            ObjectNode o = leaks.addObject();
            o.put("where", leak.where());
            o.set("positionM", Json.vector(leak.positionM()));
            ArrayNode way = o.putArray("wayM");
            leak.wayM().forEach(p -> way.add(Json.vector(p)));
        }
    }

    private static ArrayNode bays(CheckResult c, CheckAreas areas) {
        ArrayNode bays = ResultJson.bays(c.grid());
        List<String> where = BayDescriber.describe(c.cavity(), c.grid());
        for (int b = 0; b < bays.size(); b++) {
            ObjectNode o = (ObjectNode) bays.get(b);
            o.put("where", where.get(b));
            ObjectNode byPart = o.putObject("areaM2ByPart");
            for (int p = 0; p < areas.byBay[b].length; p++) {
                if (areas.byBay[b][p] > 0) {
                    byPart.put(c.cavity().parts().get(p).name(), areas.byBay[b][p]);
                }
            }
        }
        return bays;
    }

    private static ArrayNode parts(CheckResult c, CheckAreas areas) {
        ArrayNode parts = Json.array();
        List<CavityHealth.PartArea> sheets = CavityHealth.of(c.cavity()).parts();
        for (int p = 0; p < sheets.size(); p++) {
            ObjectNode o = parts.addObject();
            o.put("name", sheets.get(p).part());
            Json.number(o, "gaugeM", sheets.get(p).gaugeM());
            Json.number(o, "sheetM2", sheets.get(p).cutM2());
            Json.number(o, "resolvedM2", areas.resolved[p]);
            Json.number(o, "unresolvedM2", areas.unresolved[p]);
        }
        return parts;
    }

    private static ArrayNode openings(CheckResult c) {
        ArrayNode openings = ResultJson.openings(c.cavity());
        for (OpeningUse use : OpeningUse.of(c.cavity(), c.grid())) {
            ObjectNode o = (ObjectNode) openings.get(use.opening());
            Json.number(
                    o,
                    "hydraulicDiameterM",
                    CheckTables.hydraulicM(c.cavity().openings().get(use.opening())));
            ArrayNode joins = o.putArray("joins");
            use.bays().forEach(b -> joins.add(c.grid().bays().get(b).name()));
            if (use.outside()) {
                joins.add("outside");
            }
            o.put("faces", use.faces());
        }
        return openings;
    }
}
