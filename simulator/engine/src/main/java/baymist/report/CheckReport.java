package baymist.report;

import baymist.access.Insertion;
import baymist.cavity.MeshHealth;
import baymist.cavity.Opening;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.voxel.Bay;
import baymist.voxel.Leak;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** What the geometry of a scene came to, before anything is sprayed: as text and as JSON. */
public final class CheckReport {
    private static final int PLACES = 8;

    private CheckReport() {}

    /** Plain text, at most 100 columns, ASCII. */
    public static String text(CheckResult c) {
        Page page = new Page();
        VoxelGrid g = c.grid();
        page.line("%s", c.scene().title());
        page.line(
                "%s",
                "=".repeat(Math.min(Page.WIDTH, Math.max(1, c.scene().title().length()))));
        page.line(
                "Cavity \"%s\": %s of air, %s of inside surface, %d parts, %d bays.",
                c.cavity().name(),
                volume(g.totalVolumeM3()),
                TextReport.area(structureAreaM2(g)),
                c.cavity().parts().size(),
                g.bays().size());
        page.line(
                "Grid: %d cells of %s, %d surfels.",
                g.cellCount(), TextReport.voxel(g.sizeM()), g.surfels().count());
        MeshHealth health = MeshHealth.of(c.cavity());
        if (health != null) {
            MeshReport.text(page, health);
        }
        leaks(page, g.leaks());
        unresolved(page, c);
        openings(page, c);
        insertions(page, c);
        bays(page, g.bays());
        TextReport.findings(page, c.findings());
        return page.toString();
    }

    private static void leaks(Page page, List<Leak> leaks) {
        if (leaks.isEmpty()) {
            page.line("No leaks: with every opening shut no outside air gets in.");
            return;
        }
        page.heading("Leaks");
        for (Leak leak : leaks) {
            page.wrapped("* ", leak.where() + " at " + mm(leak.positionM()));
        }
    }

    private static void unresolved(Page page, CheckResult c) {
        double total = c.grid().unresolvedAreaM2();
        if (total <= 0) {
            page.line("Every part of the inside surface is resolved by the voxels.");
            return;
        }
        page.heading("Surface too narrow for the voxels");
        page.line(
                "%s, %s of the inside surface, gets no verdict. A smaller voxel resolves more.",
                TextReport.area(total), TextReport.percent(total / (total + structureAreaM2(c.grid()))));
        List<UnresolvedArea> places = new ArrayList<>(c.grid().unresolved());
        places.sort(
                Comparator.comparingDouble((UnresolvedArea u) -> -u.areaM2()).thenComparingInt(UnresolvedArea::part));
        for (UnresolvedArea u : places.subList(0, Math.min(PLACES, places.size()))) {
            page.line(
                    "  %9s  %s near %s",
                    TextReport.area(u.areaM2()),
                    c.cavity().parts().get(u.part()).name(),
                    mm(u.centroidM()));
        }
        if (places.size() > PLACES) {
            page.line("  and %d more places", places.size() - PLACES);
        }
    }

    private static void openings(Page page, CheckResult c) {
        page.heading("Openings");
        if (c.cavity().openings().isEmpty()) {
            page.line("None.");
            return;
        }
        page.line(
                "%s %s %s %11s  %s",
                Page.cell("name", 24), Page.cell("in", 20), Page.cell("leads", 9), "area", "pass / hang / after");
        for (Opening o : c.cavity().openings()) {
            page.line(
                    "%s %s %s %11s  %s / %s / %s",
                    Page.cell(o.name(), 24),
                    Page.cell(c.cavity().parts().get(o.part()).name(), 20),
                    Page.cell(o.exterior() ? "outside" : "inside", 8),
                    TextReport.area(o.areaM2()),
                    word(o.states().pass()),
                    word(o.states().hang()),
                    word(o.states().after()));
        }
    }

    private static void insertions(Page page, CheckResult c) {
        page.heading("Wands");
        if (c.insertions().isEmpty()) {
            page.line("No wand enters the cavity.");
        }
        for (Insertion i : c.insertions()) {
            String lead = String.format(Locale.ROOT, "%s in %s: ", i.wand(), i.entry());
            String words = i.feasible()
                    ? String.format(
                            Locale.ROOT,
                            "goes in %.0f mm, stopped by %s; %.2f mm left to the edge of the hole",
                            1e3 * i.maxDepthM(),
                            i.stoppedBy(),
                            1e3 * i.edgeClearanceM())
                    : String.format(
                            Locale.ROOT,
                            "does not go in, kept out by %s (%.2f mm at the edge of the hole)",
                            i.stoppedBy(),
                            1e3 * i.edgeClearanceM());
            page.wrapped("* ", lead + words);
        }
    }

    private static void bays(Page page, List<Bay> bays) {
        page.heading("Bays");
        page.line("%s %12s %12s %9s", Page.cell("name", 24), "volume", "surface", "cells");
        for (Bay b : bays) {
            page.line(
                    "%s %12s %12s %9d",
                    Page.cell(b.name(), 24), volume(b.volumeM3()), TextReport.area(b.areaM2()), b.cells());
        }
    }

    /** The same as JSON with the keys of result.json where they mean the same. */
    public static void json(CheckResult c, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(c.scene()));
        root.set("grid", ResultJson.grid(c.grid(), structureAreaM2(c.grid())));
        MeshHealth health = MeshHealth.of(c.cavity());
        if (health != null) {
            root.set("mesh", MeshReport.json(health));
        }
        ArrayNode unresolved = root.putArray("unresolved");
        for (UnresolvedArea u : c.grid().unresolved()) {
            ObjectNode o = unresolved.addObject();
            o.put("part", c.cavity().parts().get(u.part()).name());
            Json.number(o, "areaM2", u.areaM2());
            o.set("centroidM", Json.vector(u.centroidM()));
        }
        ArrayNode leaks = root.putArray("leaks");
        for (Leak leak : c.grid().leaks()) {
            ObjectNode o = leaks.addObject();
            o.put("where", leak.where());
            o.set("positionM", Json.vector(leak.positionM()));
        }
        root.set("bays", ResultJson.bays(c.grid()));
        root.set("openings", ResultJson.openings(c.cavity()));
        root.set("insertions", ResultJson.insertions(c.cavity(), c.insertions()));
        root.set("findings", ResultJson.findings(c.findings()));
        Json.write(root, out);
    }

    private static double structureAreaM2(VoxelGrid g) {
        double[] area = g.surfels().areaM2();
        double sum = 0;
        for (int s = 0; s < area.length; s++) {
            sum += g.surfels().isStructure(s) ? area[s] : 0;
        }
        return sum;
    }

    /** Litres up to a cubic metre, m3 from there. */
    private static String volume(double m3) {
        return m3 < 1 ? String.format(Locale.ROOT, "%.3f L", 1e3 * m3) : String.format(Locale.ROOT, "%.3f m3", m3);
    }

    private static String word(Enum<?> state) {
        return state.name().toLowerCase(Locale.ROOT);
    }

    static String mm(Vec3 p) {
        double[] mm = {1e3 * p.x(), 1e3 * p.y(), 1e3 * p.z()};
        return Arrays.stream(mm)
                        .mapToObj(v -> String.format(Locale.ROOT, "%.0f", v))
                        .toList() + " mm";
    }
}
