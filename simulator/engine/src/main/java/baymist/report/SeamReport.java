package baymist.report;

import baymist.coverage.SeamCoverage;
import baymist.geom.Vec3;
import baymist.run.RunResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Coverage by length of seam, as text and as JSON. */
final class SeamReport {
    private static final int SEAMS = 6;
    /** Bare runs below this are not told one by one, m. */
    private static final double TOLD_M = 5e-3;

    private SeamReport() {}

    static void text(Page page, RunResult r) {
        SeamCoverage s = r.coverage().seams();
        if (!(s.lengthM() > 0)) {
            return;
        }
        page.heading("Seams");
        page.line(
                "%.2f m of lines where parts meet, %.2f m counting either side of webs: film within %.0f mm on one sheet at least"
                        + " on %s, protected on both sheets on %s.",
                s.lineM(),
                s.lengthM(),
                1e3 * r.scene().targets().seamCreepM(),
                TextReport.percent(s.reached()),
                TextReport.percent(s.protectedShare()));
        if (s.unresolvedM() > 0.005 * s.lengthM()) {
            page.line("%.2f m of it lie where the voxels hold no sheet, and count as not reached.", s.unresolvedM());
        }
        StringBuilder kinds = new StringBuilder();
        for (SeamCoverage.Share k : s.byKind()) {
            kinds.append(kinds.isEmpty() ? "By kind: " : "; ")
                    .append(k.name())
                    .append(String.format(
                            Locale.ROOT, " %.2f m, reached %s", k.lengthM(), TextReport.percent(k.reached())));
        }
        page.line("%s.", kinds);
        page.line(
                "Beside reached seams it is enough to fill a lap of %.0f um some %.1f mm deep within a day.",
                1e6 * baymist.run.Outlook.LAP_GAP_M, 1e3 * r.outlook().seamDepthM());
        exposed(page, s);
    }

    private static void exposed(Page page, SeamCoverage s) {
        List<SeamCoverage.Seam> bare =
                s.bySeam().stream().filter(x -> x.bareM() > TOLD_M).toList();
        if (bare.isEmpty()) {
            page.line("No seam has a bare run worth telling.");
            return;
        }
        page.line("%s %7s %8s  %s", Page.cell("Most exposed", 50), "bare", "of", "longest bare run, about (mm)");
        for (SeamCoverage.Seam seam : bare.subList(0, Math.min(SEAMS, bare.size()))) {
            String name = seam.parts() + ", " + seam.kind().word() + ", " + seam.bay();
            page.line(
                    "%s %5.2f m %6.2f m  %4.0f mm (%s)",
                    Page.cell("  " + name, 50),
                    seam.bareM(),
                    seam.lengthM(),
                    1e3 * seam.barestRunM(),
                    millimetres(seam.barestM()));
        }
        if (bare.size() > SEAMS) {
            double rest = bare.stream()
                    .skip(SEAMS)
                    .mapToDouble(SeamCoverage.Seam::bareM)
                    .sum();
            page.line("  and %.3f m bare in %d other seams (listed in result.json)", rest, bare.size() - SEAMS);
        }
    }

    private static String millimetres(Vec3 p) {
        return String.format(Locale.ROOT, "%.0f, %.0f, %.0f", 1e3 * p.x(), 1e3 * p.y(), 1e3 * p.z());
    }

    /** Length and reached share of a row of the coverage table, 15 wide; empty without seams. */
    static String columns(SeamCoverage.@Nullable Share row) {
        return row == null || !(row.lengthM() > 0)
                ? " ".repeat(15)
                : String.format(
                        Locale.ROOT,
                        row.lengthM() < 99.995 ? "%5.2f m %7s" : "%5.1f m %7s",
                        row.lengthM(),
                        TextReport.percent(row.reached()));
    }

    static SeamCoverage.Share total(SeamCoverage s) {
        return new SeamCoverage.Share("all seams", s.lengthM(), s.reached(), s.protectedShare(), s.unresolvedM());
    }

    static ObjectNode json(SeamCoverage s) {
        ObjectNode o = Json.object();
        Json.number(o, "lengthM", s.lengthM());
        Json.number(o, "lineM", s.lineM());
        Json.number(o, "reached", s.reached());
        Json.number(o, "protected", s.protectedShare());
        Json.number(o, "unresolvedM", s.unresolvedM());
        o.set("byPart", table(s.byPart()));
        o.set("byBay", table(s.byBay()));
        o.set("byKind", table(s.byKind()));
        ArrayNode seams = o.putArray("bySeam");
        for (SeamCoverage.Seam seam : s.bySeam()) {
            ObjectNode a = seams.addObject();
            a.put("parts", seam.parts());
            a.put("kind", seam.kind().word());
            a.put("bay", seam.bay());
            Json.number(a, "lengthM", seam.lengthM());
            Json.number(a, "reached", seam.reached());
            Json.number(a, "protected", seam.protectedShare());
            Json.number(a, "unresolvedM", seam.unresolvedM());
            Json.number(a, "bareM", seam.bareM());
            Json.number(a, "barestRunM", seam.barestRunM());
            a.set("barestM", Json.vector(seam.barestM()));
        }
        ArrayNode lines = o.putArray("lines");
        for (SeamCoverage.Line line : s.lines()) {
            ObjectNode a = lines.addObject();
            a.put("parts", line.parts());
            a.put("kind", line.kind().word());
            ArrayNode bays = a.putArray("bays");
            line.bays().forEach(bays::add);
            Json.number(a, "lengthM", line.lengthM());
            Json.number(a, "reached", line.reached());
            Json.number(a, "protected", line.protectedShare());
            ArrayNode points = a.putArray("pointsM");
            line.pointsM().forEach(p -> points.add(Json.vector(p)));
        }
        return o;
    }

    private static ArrayNode table(List<SeamCoverage.Share> rows) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (SeamCoverage.Share row : rows) {
            ObjectNode o = a.addObject();
            o.put("name", row.name());
            Json.number(o, "lengthM", row.lengthM());
            Json.number(o, "reached", row.reached());
            Json.number(o, "protected", row.protectedShare());
            Json.number(o, "unresolvedM", row.unresolvedM());
        }
        return a;
    }
}
