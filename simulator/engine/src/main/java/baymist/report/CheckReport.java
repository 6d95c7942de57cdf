package baymist.report;

import baymist.access.Insertion;
import baymist.cavity.MeshHealth;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.run.MemoryEstimate;
import baymist.run.RunEstimate;
import baymist.voxel.Leak;
import baymist.voxel.VoxelGrid;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What the geometry of a scene came to, before anything is sprayed: as text and as JSON. docs/guide/check.md reads it. */
public final class CheckReport {
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
                TextReport.volume(g.totalVolumeM3()),
                TextReport.area(CheckAreas.resolvedM2(g) + CheckAreas.unresolvedM2(c.cavity(), g)),
                c.cavity().parts().size(),
                g.bays().size());
        RunEstimate estimate = c.estimate();
        MemoryEstimate memory =
                estimate == null ? MemoryEstimate.of(g, c.scene().sizeBins()) : estimate.memory();
        page.line(
                "Grid: %d cells of %s, %d surfels.",
                g.cellCount(), TextReport.voxel(g.sizeM()), g.surfels().count());
        page.line(
                "A run needs about %s beside Java's own 40 MB: %s for the grid, %s for fog in %d sizes, %s for air.",
                bytes(memory.totalBytes()),
                bytes(memory.gridBytes()),
                bytes(memory.fogBytes()),
                c.scene().sizeBins(),
                bytes(memory.airBytes()));
        if (estimate != null) {
            page.line("It takes about %s on two cores, within a factor of two.", roughly(estimate.seconds()));
            page.line("Its air is %s.", estimate.airLine(c.scene().air()));
        }
        MeshHealth health = MeshHealth.of(c.cavity());
        if (health != null) {
            MeshReport.text(page, health);
        }
        leaks(page, g.leaks());
        UnresolvedText.write(page, c);
        CheckTables.openings(page, c);
        insertions(page, c);
        CheckTables.bays(page, c);
        CheckTables.parts(page, c);
        TextReport.findings(page, c.findings());
        return page.toString();
    }

    /** Seconds or minutes, one or two digits: an estimate. */
    static String roughly(double seconds) {
        return seconds < 90
                ? String.format(Locale.ROOT, "%.0f s", seconds < 10 ? Math.ceil(seconds) : 5 * Math.round(seconds / 5))
                : String.format(Locale.ROOT, "%.0f min", seconds / 60);
    }

    /** The same as JSON with the keys of result.json where they mean the same. */
    public static void json(CheckResult c, Writer out) throws IOException {
        CheckJson.write(c, out);
    }

    private static void leaks(Page page, List<Leak> leaks) {
        if (leaks.isEmpty()) {
            page.line("No leaks: with every opening shut no outside air gets in.");
            return;
        }
        page.heading("Leaks");
        for (Leak leak : leaks) {
            page.wrapped("* ", leak.where() + " at " + mm(leak.positionM()));
            if (leak.wayM().size() > 1) {
                String way = leak.wayM().stream().map(CheckReport::bare).collect(Collectors.joining(" to "));
                page.wrapped("  ", "the air's way in: " + way + " mm");
            }
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
                            "does not go in: %s (%.2f mm at the edge of the hole)",
                            i.stoppedBy(),
                            1e3 * i.edgeClearanceM());
            page.wrapped("* ", lead + words);
        }
    }

    /** Bytes in MB or GB of powers of ten, two digits or more. */
    static String bytes(long count) {
        return count >= 1e9
                ? String.format(Locale.ROOT, "%.1f GB", count * 1e-9)
                : String.format(Locale.ROOT, count >= 1e7 ? "%.0f MB" : "%.1f MB", count * 1e-6);
    }

    static String mm(Vec3 p) {
        return bare(p) + " mm";
    }

    private static String bare(Vec3 p) {
        return String.format(
                Locale.ROOT, "[%d, %d, %d]", Math.round(1e3 * p.x()), Math.round(1e3 * p.y()), Math.round(1e3 * p.z()));
    }
}
