package baymist.report;

import baymist.access.Insertion;
import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.coverage.Coverage;
import baymist.coverage.Fractions;
import baymist.ledger.MassLedger;
import baymist.problem.Finding;
import baymist.run.CoverageConvergence;
import baymist.run.RunRecord;
import baymist.run.RunResult;
import baymist.run.TimePoint;
import baymist.scene.Scene;
import baymist.scene.TargetSpec;
import baymist.voxel.Bay;
import baymist.voxel.VoxelGrid;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Writes a result as JSON. Keys, units and meanings: docs/formats/result.md. SI units, named in the key; shares are
 * fractions of area, 0..1; film in µm under keys that end in {@code Um}.
 */
public final class ResultJson {
    /** Format version: raised when a key goes or changes its meaning, not when one is added. */
    public static final int FORMAT = 1;

    private ResultJson() {}

    /** Writes the result; the writer is flushed and left open. */
    public static void write(RunResult r, Writer out) throws IOException {
        Json.write(tree(r), out);
    }

    /** Writes the result to a file, whole or not at all. */
    public static void write(RunResult r, Path file) throws IOException {
        AtomicFile.writeText(file, out -> write(r, out));
    }

    private static ObjectNode tree(RunResult r) {
        ObjectNode root = Json.object();
        root.put("baymist", FORMAT);
        root.put("engineVersion", r.record().engineVersion());
        root.set("scene", scene(r.scene()));
        root.set("grid", grid(r.grid(), r.coverage().total().areaM2()));
        ComputedReport.json(r, root);
        root.set("ledger", ledger(r));
        root.set("thresholds", thresholds(r.scene().targets()));
        root.set("coverage", coverage(r.coverage()));
        root.set("confidence", ConfidenceReport.json(r.confidence()));
        root.set("gates", ConfidenceReport.gates(r.gates()));
        root.set("unreached", RegionReport.json(r.coverage().unreached()));
        root.set("protected", ItemReport.json(r));
        root.set("outlook", OutlookReport.json(r));
        root.set("consequences", ConsequenceReport.json(r));
        CoverageConvergence convergence = r.convergence();
        root.set("convergence", convergence == null ? null : ConvergenceReport.json(convergence));
        ObjectNode job = root.putObject("job");
        job.put("product", r.scene().product().name());
        Json.number(job, "productMl", 1e6 * RunFigures.productM3(r));
        Json.number(job, "triggerS", RunFigures.triggerS(r));
        Json.number(job, "hangS", r.scene().hangS());
        Json.number(job, "peakGaugePa", RunFigures.peakGaugePa(r));
        Json.number(job, "peakMeanFogKgPerM3", RunFigures.peakMeanConcentrationKgPerM3(r));
        Json.number(job, "initialFogKg", RunFigures.initialFogKg(r));
        root.set("tips", ConfidenceReport.tips(r.scene()));
        root.set("bays", bays(r.grid()));
        root.set("openings", openings(r.cavity()));
        root.set("insertions", insertions(r.cavity(), r.insertions()));
        root.set("history", history(r.history()));
        root.set("findings", findings(r.findings()));
        ArrayNode cautions = root.putArray("cautions");
        Cautions.of(r).forEach(cautions::add);
        root.set("run", run(r.record()));
        ObjectNode film = root.putObject("film");
        film.put("file", FilmTable.FILE);
        film.put("sha256", FilmTable.hash(r));
        root.put("stateHash", r.record().stateHash());
        return root;
    }

    static ObjectNode scene(Scene s) {
        ObjectNode o = Json.object();
        o.put("title", s.title());
        o.put("file", s.file());
        o.put("hash", s.hash());
        return o;
    }

    static ObjectNode grid(VoxelGrid g, double areaM2) {
        ObjectNode o = Json.object();
        o.put("cells", g.cellCount());
        o.set("voxelM", Json.vector(g.sizeM()));
        Json.number(o, "volumeM3", g.totalVolumeM3());
        Json.number(o, "areaM2", areaM2);
        Json.number(o, "unresolvedAreaM2", g.unresolvedAreaM2());
        o.put("surfels", g.surfels().count());
        return o;
    }

    private static ObjectNode ledger(RunResult r) {
        MassLedger m = r.ledger();
        ObjectNode o = Json.object();
        Json.number(o, "sprayedKg", m.sprayedKg());
        Json.number(o, "filmKg", m.filmKg());
        Json.number(o, "airborneKg", m.airborneKg());
        Json.number(o, "oversprayKg", m.oversprayKg());
        Json.number(o, "drippedKg", m.drippedKg());
        Json.number(o, "maskedKg", m.maskedKg());
        if (r.grid().part() != null) {
            Json.number(o, "beyondKg", m.beyondKg());
        }
        Json.number(o, "closure", m.closure());
        Json.number(o, "auditedKg", m.auditedKg());
        return o;
    }

    private static ObjectNode thresholds(TargetSpec t) {
        ObjectNode o = Json.object();
        Json.number(o, "hazeM", t.hazeM());
        Json.number(o, "buildM", t.buildM());
        Json.number(o, "excessM", t.excessM());
        return o;
    }

    private static ObjectNode coverage(Coverage c) {
        ObjectNode o = fractions(c.total());
        o.remove("name");
        o.set("byPart", table(c.byPart()));
        o.set("byBay", table(c.byBay()));
        o.set("byFacing", table(c.byFacing()));
        o.set("seams", SeamReport.json(c.seams()));
        return o;
    }

    private static ArrayNode table(List<Fractions> rows) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        rows.forEach(f -> a.add(fractions(f)));
        return a;
    }

    private static ObjectNode fractions(Fractions f) {
        ObjectNode o = Json.object();
        o.put("name", f.name());
        Json.number(o, "areaM2", f.areaM2());
        Json.number(o, "reached", f.reached());
        Json.number(o, "protected", f.protectedShare());
        Json.number(o, "thin", f.thin());
        Json.number(o, "excess", f.excess());
        Json.number(o, "meanFilmUm", 1e6 * f.meanFilmM());
        return o;
    }

    static ArrayNode bays(VoxelGrid g) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (Bay b : g.bays()) {
            ObjectNode o = a.addObject();
            o.put("name", b.name());
            Json.number(o, "volumeM3", b.volumeM3());
            Json.number(o, "areaM2", b.areaM2());
            o.put("cells", b.cells());
        }
        return a;
    }

    static ArrayNode openings(Cavity cavity) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (Opening opening : cavity.openings()) {
            ObjectNode o = a.addObject();
            o.put("name", opening.name());
            o.put("part", cavity.parts().get(opening.part()).name());
            o.put("kind", word(opening.kind()));
            o.put("exterior", opening.exterior());
            Json.number(o, "areaM2", opening.areaM2());
            o.set("centreM", Json.vector(opening.place().centreM()));
            o.put("pass", word(opening.states().pass()));
            o.put("hang", word(opening.states().hang()));
            o.put("after", word(opening.states().after()));
        }
        return a;
    }

    static ArrayNode insertions(Cavity cavity, List<Insertion> insertions) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (Insertion i : insertions) {
            ObjectNode o = a.addObject();
            o.put("entry", i.entry());
            o.put("wand", i.wand());
            o.put("opening", cavity.openings().get(i.openingIndex()).name());
            o.put("feasible", i.feasible());
            Json.number(o, "maxDepthM", i.maxDepthM());
            o.put("stoppedBy", i.stoppedBy());
            Json.number(o, "edgeClearanceM", i.edgeClearanceM());
            o.set("originM", Json.vector(i.originM()));
            o.set("axis", Json.vector(i.axis()));
        }
        return a;
    }

    private static ArrayNode history(List<TimePoint> points) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (TimePoint p : points) {
            ObjectNode o = a.addObject();
            Json.number(o, "timeS", p.timeS());
            Json.number(o, "airborneKg", p.airborneKg());
            Json.number(o, "filmKg", p.filmKg());
            Json.number(o, "oversprayKg", p.oversprayKg());
            Json.number(o, "reached", p.reached());
            Json.number(o, "peakGaugePa", p.peakGaugePa());
        }
        return a;
    }

    static ArrayNode findings(List<Finding> findings) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (Finding f : findings) {
            ObjectNode o = a.addObject();
            o.put("id", f.id());
            o.put("severity", word(f.severity()));
            o.put("file", f.place().file());
            o.put("line", f.place().line());
            o.put("field", f.place().field());
            o.put("text", f.text());
        }
        return a;
    }

    private static ObjectNode run(RunRecord record) {
        ObjectNode o = Json.object();
        o.put("threads", record.threads());
        ObjectNode seconds = o.putObject("secondsByStage");
        record.secondsByStage().forEach((stage, s) -> Json.number(seconds, stage, s));
        ObjectNode settings = o.putObject("settings");
        record.settings().forEach(settings::put);
        return o;
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
