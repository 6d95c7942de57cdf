package baymist.export;

import baymist.coverage.Fractions;
import baymist.picture.FilmColours;
import baymist.report.AtomicFile;
import baymist.report.Cautions;
import baymist.report.RunFigures;
import baymist.run.ComputedBays;
import baymist.run.RunResult;
import baymist.scene.TargetSpec;
import baymist.surface.SurfaceOptions;
import java.io.IOException;
import java.nio.file.Path;

/**
 * A result as one page for a browser: film in three dimensions, bare places, tables, curves, cautions. The page holds all that it needs,
 * and forbids itself the network by a content security policy (W3C, Content Security Policy Level 3).
 */
public final class HtmlReport {
    /** Most triangles of the view: below it a page stays some megabytes and turns smoothly on a plain machine. */
    static final int MAX_TRIANGLES = 90_000;

    private static final String POLICY =
            "default-src 'none'; script-src 'unsafe-inline' data:; style-src 'unsafe-inline'; img-src data: blob:";

    private HtmlReport() {}

    /** Writes the page, whole or not at all. */
    public static void write(RunResult result, Path file) throws IOException {
        String page = of(result);
        AtomicFile.writeText(file, out -> out.write(page));
    }

    static String of(RunResult r) throws IOException {
        FilmMesh mesh = FilmMesh.of(r, SurfaceOptions.DEFAULT.withMaxTriangles(MAX_TRIANGLES));
        ThreeLibrary three = ThreeLibrary.load();
        StringBuilder s = new StringBuilder();
        s.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        s.append("<meta http-equiv=\"Content-Security-Policy\" content=\"")
                .append(POLICY)
                .append("\">\n");
        s.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        s.append("<title>").append(Html.text(r.scene().title())).append("</title>\n");
        s.append("<link rel=\"icon\" href=\"data:,\">\n");
        s.append("<style>\n")
                .append(ThreeLibrary.text("baymist/export/report.css"))
                .append("</style>\n");
        s.append("<script type=\"importmap\">")
                .append(three.importMap())
                .append("</script>\n</head>\n<body>\n<main>\n");
        head(s, r);
        cautions(s, r);
        view(s, r, mesh);
        s.append("<h2>Over time</h2>\n").append(TimeLines.svg(r));
        s.append(ReportTables.all(r));
        foot(s, r, three);
        s.append("</main>\n<script type=\"application/json\" id=\"view-data\">")
                .append(ViewData.of(r, mesh))
                .append("</script>\n<script type=\"module\">\n")
                .append(ThreeLibrary.text("baymist/export/report.js"))
                .append("</script>\n</body>\n</html>\n");
        return s.toString();
    }

    private static void head(StringBuilder s, RunResult r) {
        Fractions f = r.coverage().total();
        s.append("<h1>").append(Html.text(r.scene().title())).append("</h1>\n");
        s.append("<p class=\"quiet\">")
                .append(Html.text(r.cavity().name()))
                .append(Html.format(
                        ": %s of inner surface in %d bay%s%s. A computed prediction.</p>%n",
                        Html.area(f.areaM2()),
                        r.grid().bays().size(),
                        r.grid().bays().size() == 1 ? "" : "s",
                        Html.text(notComputed(r))));
        s.append("<ul class=\"figures\">\n");
        figure(s, Html.percent(f.reached()), "reached");
        figure(s, Html.percent(f.protectedShare()), "protected");
        figure(s, Html.percent(f.excess()), "with excess");
        figure(s, Html.film(f.meanFilmM()), "mean film");
        if (r.coverage().seams().lengthM() > 0) {
            figure(s, Html.percent(r.coverage().seams().reached()), "of seams reached");
        }
        figure(s, Html.format("%.0f mL", 1e6 * RunFigures.productM3(r)), "product");
        figure(s, Html.format("%.0f s", RunFigures.triggerS(r)), "trigger held");
        s.append("</ul>\n");
    }

    private static String notComputed(RunResult r) {
        ComputedBays bays = ComputedBays.of(r.grid());
        return bays.isWhole() ? "" : ": " + bays.sentence();
    }

    private static void figure(StringBuilder s, String value, String words) {
        s.append("<li><b>")
                .append(Html.text(value))
                .append("</b><span>")
                .append(Html.text(words))
                .append("</span></li>\n");
    }

    private static void cautions(StringBuilder s, RunResult r) {
        s.append("<section class=\"cautions\" id=\"cautions\"><h2>Before anybody picks up a wand</h2>\n<ul>\n");
        Cautions.of(r).forEach(c -> s.append("<li>").append(Html.text(c)).append("</li>\n"));
        s.append("</ul></section>\n");
    }

    private static void view(StringBuilder s, RunResult r, FilmMesh mesh) {
        s.append("""
                <h2>Film on the inside</h2>
                <p>Sheets are drawn where they face the cavity and left out where they turn their backs, so the view looks in.</p>
                <div class="view">
                <div>
                <div class="stage" id="stage"><span class="axes">in mm: x aft, y right, z up</span></div>
                <p class="under" id="under">Loading the view.</p>
                <div class="tools">
                <span>Look from</span>
                <button type="button" id="view-whole">corner</button>
                <button type="button" id="view-above">above</button>
                <button type="button" id="view-below">below</button>
                <button type="button" id="view-left">left</button>
                <button type="button" id="view-aft">aft</button>
                <label><input type="checkbox" id="tags" checked> names</label>
                <label><input type="checkbox" id="show-wand" checked> wand</label>
                <label><input type="checkbox" id="show-edges" checked> edges</label>
                <label><input type="checkbox" id="show-seams"> seams</label>
                </div>
                """);
        s.append("<p class=\"quiet\">")
                .append(Html.text(mesh.surface().detail().sentence()))
                .append("</p>\n</div>\n<div>\n");
        legend(s, r.scene().targets());
        s.append(ReportTables.places(r)).append("</div>\n</div>\n");
    }

    private static void legend(StringBuilder s, TargetSpec t) {
        FilmColours colours = new FilmColours(t);
        StringBuilder ramp = new StringBuilder();
        for (int i = 0; i <= 20; i++) {
            ramp.append(Html.format("%s#%06X", i == 0 ? "" : ",", FilmColours.rgbAt(i / 20.0)));
        }
        s.append(
                        "<section class=\"legend\" id=\"legend\"><b>Wet film, \u00b5m</b>\n<div class=\"bar\" style=\"background:")
                .append("linear-gradient(to right,")
                .append(ramp)
                .append(")\"></div>\n<div class=\"ticks\">");
        tick(s, colours, t.hazeM(), "reached", "first");
        tick(s, colours, t.buildM(), "protected", "");
        tick(s, colours, t.excessM(), "excess", "last");
        s.append("</div>\n<span class=\"swatch\"></span>bare: less than ")
                .append(Html.plain(1e6 * t.hazeM()))
                .append(" \u00b5m")
                .append("</section>\n");
    }

    private static void tick(StringBuilder s, FilmColours colours, double filmM, String words, String side) {
        s.append(Html.format(
                "<span class=\"%s\" style=\"left:%.2f%%\">%s<br>%s</span>",
                side, 100 * colours.place(filmM), Html.plain(1e6 * filmM), words));
    }

    private static void foot(StringBuilder s, RunResult r, ThreeLibrary three) {
        s.append("<footer>\n<p>Baymist ")
                .append(Html.text(r.record().engineVersion()))
                .append("; scene ")
                .append(Html.text(r.scene().file()))
                .append(", SHA-256 ")
                .append(Html.text(r.scene().hash()))
                .append("; state ")
                .append(Html.text(r.record().stateHash()))
                .append(".</p>\n<details><summary>The 3-D view is drawn with three.js ")
                .append(Html.text(three.version()))
                .append(" (MIT licence)</summary><pre>")
                .append(Html.text(three.licence()))
                .append("</pre></details>\n</footer>\n");
    }
}
