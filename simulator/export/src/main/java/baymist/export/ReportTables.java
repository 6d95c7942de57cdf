package baymist.export;

import baymist.coverage.Fractions;
import baymist.coverage.SeamCoverage;
import baymist.coverage.UnreachedRegion;
import baymist.ledger.MassLedger;
import baymist.problem.Finding;
import baymist.run.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The tables of the page. */
final class ReportTables {
    private static final int SEAMS = 20;

    private ReportTables() {}

    static String all(RunResult r) {
        StringBuilder s = new StringBuilder();
        s.append("<h2>Coverage</h2>\n");
        s.append(coverage("By part", r.coverage().byPart()));
        s.append(coverage("By bay", r.coverage().byBay()));
        s.append(coverage("By way it faces", r.coverage().byFacing()));
        s.append(seams(r.coverage().seams()));
        s.append("<h2>Where the product went</h2>\n").append(ledger(r.ledger()));
        s.append(findings(r.findings()));
        return s.toString();
    }

    private static String coverage(String caption, List<Fractions> rows) {
        List<List<String>> table = new ArrayList<>();
        for (Fractions f : rows) {
            table.add(List.of(
                    f.name(),
                    Html.area(f.areaM2()),
                    Html.percent(f.reached()),
                    Html.percent(f.protectedShare()),
                    Html.percent(f.thin()),
                    Html.percent(f.excess()),
                    Html.film(f.meanFilmM())));
        }
        return Html.table(
                caption, List.of("", "area", "reached", "protected", "thin", "excess", "mean film"), List.of(), table);
    }

    private static String seams(SeamCoverage seams) {
        if (!(seams.lengthM() > 0)) {
            return "";
        }
        List<List<String>> table = new ArrayList<>();
        for (SeamCoverage.Seam s : seams.bySeam()) {
            if (s.bareM() >= 5e-3 && table.size() < SEAMS) {
                table.add(List.of(
                        s.parts(),
                        s.kind().word(),
                        s.bay(),
                        Html.length(s.lengthM()),
                        Html.length(s.bareM()),
                        Html.length(s.barestRunM())));
            }
        }
        String head = Html.format(
                "<h2>Seams</h2>\n<p>%s of lines where parts meet, %s counting either side of webs: reached on %s, protected on both"
                        + " sheets on %s.</p>\n",
                Html.length(seams.lineM()),
                Html.length(seams.lengthM()),
                Html.percent(seams.reached()),
                Html.percent(seams.protectedShare()));
        return table.isEmpty()
                ? head + "<p>No seam has a bare run worth telling.</p>\n"
                : head
                        + Html.table(
                                "Most exposed",
                                List.of("seam", "kind", "bay", "length", "bare", "longest bare run"),
                                List.of(0, 1, 2),
                                table);
    }

    private static String ledger(MassLedger m) {
        List<List<String>> table = new ArrayList<>();
        table.add(row("sprayed", m.sprayedKg(), m));
        table.add(row("film on the structure", m.filmKg(), m));
        table.add(row("still in the air at the end", m.airborneKg(), m));
        table.add(row("out through openings", m.oversprayKg(), m));
        table.add(row("dripped out", m.drippedKg(), m));
        table.add(row("on masks and plugs", m.maskedKg(), m));
        if (m.beyondKg() > 0) {
            table.add(row("into bays not computed", m.beyondKg(), m));
        }
        return Html.table("", List.of("", "mass", "of sprayed"), List.of(), table);
    }

    private static List<String> row(String where, double kg, MassLedger m) {
        return List.of(where, Html.mass(kg), Html.percent(m.sprayedKg() > 0 ? kg / m.sprayedKg() : Double.NaN));
    }

    private static String findings(List<Finding> findings) {
        if (findings.isEmpty()) {
            return "";
        }
        StringBuilder s = new StringBuilder("<h2>Warnings and notes</h2>\n<ul>\n");
        for (Finding f : findings) {
            s.append("<li><b>")
                    .append(Html.text(f.severity().name().toLowerCase(Locale.ROOT) + " " + f.id()))
                    .append("</b> ")
                    .append(Html.text(f.text()))
                    .append("</li>\n");
        }
        return s.append("</ul>\n").toString();
    }

    /** The bare places as a list that the view listens to. */
    static String places(RunResult r) {
        List<UnreachedRegion> regions = r.coverage().unreached();
        StringBuilder s = new StringBuilder("<section class=\"places\" id=\"places\"><h2>Bare places</h2>\n");
        if (regions.isEmpty()) {
            return s.append("<p>None: every surface that the voxels hold has at least ")
                    .append(Html.film(r.scene().targets().hazeM()))
                    .append(".</p></section>\n")
                    .toString();
        }
        s.append(
                "<p class=\"quiet\">Largest first; press one to see it. Its name is bay, part and the ninth of it.</p>\n<ol>\n");
        double total = r.coverage().total().areaM2();
        for (UnreachedRegion u : regions) {
            s.append(Html.format(
                    "<li><button type=\"button\" data-place=\"%d\"><b>%s</b><span>%s<br><small>%s, %s of the surface%s</small></span>"
                            + "</button></li>%n",
                    u.id(),
                    Html.text(u.label()),
                    Html.text(u.where()),
                    Html.area(u.areaM2()),
                    Html.percent(u.areaM2() / total),
                    Html.text(more(u))));
        }
        return s.append("</ol></section>\n").toString();
    }

    private static String more(UnreachedRegion u) {
        String words = u.seamM() >= 5e-4 ? "; " + Html.length(u.seamM()) + " of bare seam" : "";
        boolean one = !u.label().equals(UnreachedRegion.SPOTS);
        return one && !u.entry().isEmpty() ? words + "; " + Html.length(u.depthM()) + " in from " + u.entry() : words;
    }
}
