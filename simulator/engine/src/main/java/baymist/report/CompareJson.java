package baymist.report;

import baymist.scene.OpeningSpec;
import baymist.study.CompareRow;
import baymist.study.Compared;
import baymist.study.Planning;
import baymist.study.ShutBay;
import baymist.study.StudyResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;

/** A comparison as JSON; keys in docs/formats/compare.md. */
final class CompareJson {
    private CompareJson() {}

    static void write(Compared c, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(c.scene()));
        root.set("planning", planning(c.planning()));
        ArrayNode candidates = root.putArray("candidates");
        for (CompareRow row : c.rows()) {
            candidates.add(candidate(row));
        }
        root.put("alikeClocks", c.alike());
        StudyResult own = c.own();
        if (own == null) {
            root.putNull("own");
        } else {
            figures(root.putObject("own"), own);
        }
        ArrayNode shut = root.putArray("shutBays");
        for (ShutBay bay : c.shut()) {
            ObjectNode o = shut.addObject();
            o.put("name", bay.name());
            Json.number(o, "share", bay.share());
        }
        ArrayNode cautions = root.putArray("cautions");
        CompareReport.cautions(c).forEach(cautions::add);
        Json.write(root, out);
    }

    static ObjectNode planning(Planning p) {
        ObjectNode o = Json.object();
        Json.number(o, "voxelFactor", p.voxelFactor());
        o.put("sizeBins", p.sizeBins());
        o.put("raysPerJet", p.raysPerJet());
        Json.number(o, "stationFactor", p.stationFactor());
        o.put("air", "projected");
        return o;
    }

    private static ObjectNode candidate(CompareRow row) {
        ObjectNode o = Json.object();
        o.put("number", row.candidate().number());
        o.put("entry", row.candidate().entry());
        o.put("wand", row.candidate().wand());
        Json.number(o, "clockDeg", Math.toDegrees(row.candidate().clockRad()));
        ArrayNode holes = o.putArray("holes");
        row.candidate().holes().forEach(h -> holes.add(hole(h)));
        ArrayNode panels = o.putArray("panels");
        row.candidate().panels().forEach(panels::add);
        o.put("ran", row.ran());
        o.put("cut", row.cut());
        o.put("why", row.why());
        StudyResult r = row.result();
        if (r != null) {
            figures(o, r);
        }
        StudyResult full = row.full();
        if (full == null) {
            o.putNull("full");
        } else {
            figures(o.putObject("full"), full);
        }
        o.put("pareto", row.pareto());
        return o;
    }

    static ObjectNode hole(OpeningSpec h) {
        ObjectNode o = Json.object();
        o.put("name", h.name());
        o.put("part", h.part());
        o.set("atM", Json.vector(h.centreM()));
        Json.number(o, "diameterM", 2 * h.outline().reachM());
        return o;
    }

    /** Keys that every result of a study has. */
    static void figures(ObjectNode o, StudyResult r) {
        Json.number(o, "reached", r.reached());
        Json.number(o, "protected", r.protectedShare());
        Json.number(o, "thin", r.thin());
        Json.number(o, "excess", r.excess());
        Json.number(o, "seamsReached", r.seamsReached());
        Json.number(o, "seamsProtected", r.seamsProtected());
        Json.number(o, "productMl", 1e6 * r.productM3());
        Json.number(o, "triggerS", r.triggerS());
        Json.number(o, "hangS", r.hangS());
        Json.number(o, "oversprayKg", r.oversprayKg());
        o.put("bareRegions", r.bareRegions());
        ArrayNode bare = o.putArray("bare");
        for (StudyResult.Bare b : r.bare()) {
            ObjectNode x = bare.addObject();
            x.put("where", b.where());
            Json.number(x, "areaM2", b.areaM2());
        }
        ArrayNode items = o.putArray("itemsHit");
        List<String> hit = r.items();
        hit.forEach(items::add);
    }
}
