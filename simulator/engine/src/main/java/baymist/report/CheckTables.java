package baymist.report;

import baymist.cavity.CavityHealth;
import baymist.cavity.Opening;
import baymist.coverage.BayDescriber;
import baymist.run.CheckResult;
import baymist.scene.PhaseStates;
import baymist.voxel.Bay;
import baymist.voxel.OpeningUse;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** The tables of a check: openings, bays, parts. */
final class CheckTables {
    /** Longer tables are cut; --json has all. */
    private static final int ROWS = 60;

    private static final int BAYS_BY_PART = 12;

    private CheckTables() {}

    static void openings(Page page, CheckResult c) {
        page.heading("Openings");
        if (c.cavity().openings().isEmpty()) {
            page.line("None.");
            return;
        }
        page.line(
                "%s %s %s %10s %8s %5s %s",
                Page.cell("name", 20),
                Page.cell("what", 19),
                Page.cell("joins", 15),
                "area",
                "4A/P mm",
                "faces",
                "state");
        List<OpeningUse> uses = OpeningUse.of(c.cavity(), c.grid());
        int shown = Math.min(ROWS, uses.size());
        for (OpeningUse use : uses.subList(0, shown)) {
            Opening o = c.cavity().openings().get(use.opening());
            page.line(
                    "%s %s %s %10s %8.1f %5d %s",
                    Page.cell(o.name(), 20),
                    Page.cell(what(c, o), 19),
                    Page.cell(joins(c, use), 15),
                    TextReport.area(o.areaM2()),
                    1e3 * hydraulicM(o),
                    use.faces(),
                    states(o.states()));
        }
        more(page, uses.size() - shown);
        page.line("4A/P: effective (hydraulic) diameter. State: spraying/hanging/afterwards, or one for all.");
        List<String> lost = uses.stream()
                .filter(u -> u.faces() == 0)
                .map(u -> c.cavity().openings().get(u.opening()).name())
                .toList();
        if (!lost.isEmpty()) {
            page.wrapped("! ", "Held by no voxel face, so taken as closed: " + String.join(", ", lost));
        }
    }

    /** Four times area over perimeter, m. */
    static double hydraulicM(Opening o) {
        return 4 * o.areaM2() / o.place().outline().perimeterM();
    }

    private static String what(CheckResult c, Opening o) {
        String part = c.cavity().parts().get(o.part()).name();
        return switch (o.kind()) {
            case HOLE -> "hole in " + part;
            case PORT -> "port in " + part;
            case SHORT_MEMBER -> "space by " + part;
            case GAP -> "gap at " + part;
        };
    }

    static String joins(CheckResult c, OpeningUse use) {
        List<String> ends = new ArrayList<>();
        for (int bay : use.bays()) {
            ends.add(c.grid().bays().get(bay).name());
        }
        if (use.outside()) {
            ends.add("outside");
        }
        if (ends.size() == 2
                && !use.outside()
                && ends.get(1).startsWith("bay ")
                && ends.get(0).startsWith("bay ")) {
            return "bays " + ends.get(0).substring(4) + " - " + ends.get(1).substring(4);
        }
        return ends.isEmpty() ? "nothing" : String.join(" - ", ends);
    }

    private static String states(PhaseStates s) {
        if (s.pass() == s.hang() && s.hang() == s.after()) {
            return word(s.pass());
        }
        return word(s.pass()) + "/" + word(s.hang()) + "/" + word(s.after());
    }

    static void bays(Page page, CheckResult c) {
        page.heading("Bays");
        page.line("%s %12s %12s %9s", Page.cell("name", 16), "volume", "surface", "cells");
        List<String> where = BayDescriber.describe(c.cavity(), c.grid());
        List<Bay> bays = c.grid().bays();
        int shown = Math.min(ROWS, bays.size());
        for (int b = 0; b < shown; b++) {
            Bay bay = bays.get(b);
            String lead = String.format(
                    Locale.ROOT,
                    "%s %12s %12s %9d  ",
                    Page.cell(bay.name(), 16),
                    TextReport.volume(bay.volumeM3()),
                    TextReport.area(bay.areaM2()),
                    bay.cells());
            page.wrapped(lead, where.get(b));
        }
        more(page, bays.size() - shown);
        if (bays.size() > 1 && bays.size() <= BAYS_BY_PART) {
            byPart(page, c);
        }
    }

    private static void byPart(Page page, CheckResult c) {
        page.heading("Inside surface by bay and part");
        CheckAreas areas = new CheckAreas(c.cavity(), c.grid());
        for (int b = 0; b < areas.byBay.length; b++) {
            double[] row = areas.byBay[b];
            List<String> words = IntStream.range(0, row.length)
                    .filter(p -> row[p] > 0)
                    .boxed()
                    .sorted(Comparator.comparingDouble(p -> -row[p]))
                    .map(p -> c.cavity().parts().get(p).name() + " " + TextReport.area(row[p]))
                    .toList();
            page.wrapped(Page.cell(c.grid().bays().get(b).name(), 9) + " ", String.join(", ", words));
        }
    }

    static void parts(Page page, CheckResult c) {
        page.heading("Parts");
        page.line(
                "%s %9s %13s %14s %14s",
                Page.cell("name", 28), "gauge", "sheet, 1 side", "inside surface", "not resolved");
        CheckAreas areas = new CheckAreas(c.cavity(), c.grid());
        List<CavityHealth.PartArea> parts = CavityHealth.of(c.cavity()).parts();
        int shown = 0;
        int inside = 0;
        for (int p = 0; p < parts.size(); p++) {
            double area = areas.resolved[p] + areas.unresolved[p];
            inside += area > 0 ? 1 : 0;
            if (area > 0 && shown++ < ROWS) {
                CavityHealth.PartArea part = parts.get(p);
                page.line(
                        "%s %6s mm %13s %14s %14s",
                        Page.cell(part.part(), 28),
                        TextReport.significant(1e3 * part.gaugeM(), 3),
                        TextReport.area(part.cutM2()),
                        TextReport.area(area),
                        areas.unresolved[p] > 0 ? TextReport.area(areas.unresolved[p]) : "-");
            }
        }
        more(page, inside - ROWS);
        if (inside < parts.size()) {
            page.line("%d other parts have no surface in this cavity.", parts.size() - inside);
        }
    }

    private static void more(Page page, int rows) {
        if (rows > 0) {
            page.line("and %d more (all with --json)", rows);
        }
    }

    private static String word(Enum<?> state) {
        return state.name().toLowerCase(Locale.ROOT);
    }
}
