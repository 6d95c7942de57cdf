package baymist.report;

import baymist.numeric.GridConvergence;
import baymist.run.CoverageConvergence;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;

/** Coverage at three voxel sizes: in the summary, in JSON, and as a Markdown table. */
public final class ConvergenceReport {
    private ConvergenceReport() {}

    static void text(Page page, CoverageConvergence c) {
        page.heading("Voxel size");
        page.line("%s %8s %9s %9s %9s", Page.cell("", 30), "cells", "reached", "protect", "mean");
        for (CoverageConvergence.Grid g : c.grids()) {
            page.line(
                    "%s %8d %9s %9s %6.2f um",
                    Page.cell("  " + TextReport.voxel(g.voxelM()), 30),
                    g.cells(),
                    TextReport.percent(g.reached()),
                    TextReport.percent(g.protectedShare()),
                    1e6 * g.meanFilmM());
        }
        row(
                page,
                "spread",
                c.reached().spread(),
                c.protectedShare().spread(),
                c.meanFilmM().spread());
        page.line(
                "%s %8s %9s %9s %9s",
                Page.cell("  observed order", 30),
                "",
                order(c.reached()),
                order(c.protectedShare()),
                order(c.meanFilmM()));
        row(
                page,
                "grid convergence index",
                c.reached().index(),
                c.protectedShare().index(),
                c.meanFilmM().index());
        page.line("%s.", sentence(c));
        page.line("Index: half-width about the finest value (Roache 1994); none where the three show no order.");
    }

    private static void row(Page page, String name, double reached, double covered, double filmM) {
        page.line("%s %8s %9s %9s %9s", Page.cell("  " + name, 30), "", points(reached), points(covered), film(filmM));
    }

    private static String sentence(CoverageConvergence c) {
        String verdict = c.verdict();
        return Character.toUpperCase(verdict.charAt(0)) + verdict.substring(1);
    }

    private static String points(double share) {
        return Double.isFinite(share) ? String.format(Locale.ROOT, "%.2f pt", 100 * share) : "-";
    }

    private static String film(double filmM) {
        return Double.isFinite(filmM) ? String.format(Locale.ROOT, "%.2f um", 1e6 * filmM) : "-";
    }

    private static String order(GridConvergence g) {
        return Double.isFinite(g.order()) ? String.format(Locale.ROOT, "%.2f", g.order()) : "-";
    }

    static ObjectNode json(CoverageConvergence c) {
        ObjectNode o = Json.object();
        o.put("converged", c.converged());
        Json.number(o, "largestSpreadAllowed", CoverageConvergence.LARGEST_SPREAD);
        ArrayNode grids = o.putArray("grids");
        for (CoverageConvergence.Grid g : c.grids()) {
            ObjectNode a = grids.addObject();
            a.set("voxelM", Json.vector(g.voxelM()));
            a.put("cells", g.cells());
            Json.number(a, "reached", g.reached());
            Json.number(a, "protected", g.protectedShare());
            Json.number(a, "meanFilmUm", 1e6 * g.meanFilmM());
        }
        o.set("reached", json(c.reached(), 1));
        o.set("protected", json(c.protectedShare(), 1));
        o.set("meanFilmUm", json(c.meanFilmM(), 1e6));
        return o;
    }

    private static ObjectNode json(GridConvergence g, double unit) {
        ObjectNode o = Json.object();
        Json.number(o, "spread", unit * g.spread());
        o.put("monotone", g.monotone());
        Json.number(o, "order", g.order());
        Json.number(o, "extrapolated", unit * g.extrapolated());
        Json.number(o, "index", unit * g.index());
        return o;
    }

    /** One scene's rows of a Markdown table with the columns of {@link #MARKDOWN_HEAD}. */
    public static String markdown(String scene, CoverageConvergence c) {
        StringBuilder text = new StringBuilder();
        for (CoverageConvergence.Grid g : c.grids()) {
            text.append(String.format(
                    Locale.ROOT,
                    "| %s | %s | %d | %s | %s | %.2f µm |\n",
                    scene,
                    TextReport.voxel(g.voxelM()),
                    g.cells(),
                    TextReport.percent(g.reached()),
                    TextReport.percent(g.protectedShare()),
                    1e6 * g.meanFilmM()));
        }
        text.append(String.format(
                Locale.ROOT,
                "| %s | spread | | %s | %s | %s |\n",
                scene,
                points(c.reached().spread()),
                points(c.protectedShare().spread()),
                film(c.meanFilmM().spread()).replace("um", "µm")));
        text.append(String.format(
                Locale.ROOT,
                "| %s | order | | %s | %s | %s |\n",
                scene,
                order(c.reached()),
                order(c.protectedShare()),
                order(c.meanFilmM())));
        text.append(String.format(
                Locale.ROOT,
                "| %s | index | | %s | %s | %s |\n",
                scene,
                points(c.reached().index()),
                points(c.protectedShare().index()),
                film(c.meanFilmM().index()).replace("um", "µm")));
        return text.append(String.format(
                        Locale.ROOT, "| %s | **%s** | | | | |\n", scene, c.converged() ? "converged" : "not converged"))
                .toString();
    }

    /** Head of the table of {@link #markdown}. */
    public static final String MARKDOWN_HEAD =
            "| scene | voxels | cells | reached | protected | mean film |\n|---|---|---|---|---|---|\n";
}
