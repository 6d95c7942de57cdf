package baymist.report;

import baymist.coverage.UnreachedRegion;
import baymist.geom.Box3;
import baymist.run.RunResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;

/** The places that stay bare, as text and as JSON. */
final class RegionReport {
    private static final int REGIONS = 12;

    private RegionReport() {}

    static void text(Page page, RunResult r) {
        List<UnreachedRegion> regions = r.coverage().unreached();
        page.heading("Bare places");
        if (regions.isEmpty()) {
            page.line(
                    "None: every resolved surface has at least %s.",
                    TextReport.film(r.scene().targets().hazeM()));
        } else {
            page.line("A place is called by its bay and part and the ninth of it; the name stays from run to run.");
        }
        double total = r.coverage().total().areaM2();
        for (UnreachedRegion region : regions.subList(0, Math.min(REGIONS, regions.size()))) {
            String lead = String.format(
                    Locale.ROOT,
                    "%7s %9s %6s  ",
                    region.label(),
                    TextReport.area(region.areaM2()),
                    TextReport.percent(region.areaM2() / total));
            page.wrapped(lead, region.where() + more(region));
        }
        if (regions.size() > REGIONS) {
            double rest = regions.stream()
                    .skip(REGIONS)
                    .mapToDouble(UnreachedRegion::areaM2)
                    .sum();
            page.line(
                    "    and %d smaller ones, %s in all (listed in result.json)",
                    regions.size() - REGIONS, TextReport.area(rest));
        }
        double hidden = r.grid().unresolvedAreaM2();
        if (hidden > 0) {
            page.line(
                    "Another %s of surface is too narrow for the voxels and has no verdict; `check` says where.",
                    TextReport.area(hidden));
        }
    }

    /** Seams in it and the way from the nearest entry. */
    private static String more(UnreachedRegion r) {
        StringBuilder words = new StringBuilder();
        if (r.seamM() >= 5e-4) {
            words.append("; ").append(length(r.seamM())).append(" of bare seam");
        }
        if (!r.entry().isEmpty() && !r.label().equals(UnreachedRegion.SPOTS)) {
            words.append("; ").append(length(r.depthM())).append(" in from ").append(r.entry());
        }
        return words.toString();
    }

    private static String length(double lengthM) {
        return lengthM < 0.9995
                ? String.format(Locale.ROOT, "%.0f mm", 1e3 * lengthM)
                : String.format(Locale.ROOT, "%.2f m", lengthM);
    }

    static ArrayNode json(List<UnreachedRegion> regions) {
        ArrayNode a = JsonNodeFactory.instance.arrayNode();
        for (UnreachedRegion r : regions) {
            ObjectNode o = a.addObject();
            o.put("id", r.id());
            o.put("label", r.label());
            Json.number(o, "areaM2", r.areaM2());
            o.set("centroidM", Json.vector(r.centroidM()));
            o.put("where", r.where());
            ArrayNode parts = o.putArray("parts");
            r.parts().forEach(parts::add);
            ArrayNode bays = o.putArray("bays");
            r.bays().forEach(bays::add);
            Box3 box = r.extentM();
            o.set("extentMinM", Json.vector(box.min()));
            o.set("extentMaxM", Json.vector(box.max()));
            Json.number(o, "seamM", r.seamM());
            o.put("entry", r.entry());
            Json.number(o, "depthM", r.depthM());
        }
        return a;
    }
}
