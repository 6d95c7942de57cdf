package baymist.picture;

import baymist.coverage.CoverageAssessor;
import baymist.coverage.Fractions;
import baymist.coverage.UnreachedRegion;
import baymist.picture.PanelLayout.Placed;
import baymist.report.AtomicFile;
import baymist.report.RunFigures;
import baymist.run.ComputedBays;
import baymist.run.RunResult;
import java.awt.geom.Line2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The coverage map: every inner face laid out flat, to scale, with its film, what is bare, and how to read it. */
public final class CoverageMap {
    /** Width of the picture unless asked for otherwise, pixels. */
    public static final int WIDTH = 2000;

    private static final int NARROWEST = 1500;
    private static final int WIDEST = 8000;
    private static final double MARGIN = 60;
    private static final double HEAD = 120;
    private static final double BODY = 17;
    private static final double ROW = 25;
    private static final double CHART_WIDTH = 700;
    private static final double CHART_HEIGHT = 360;
    private static final int REGIONS = 15;

    private CoverageMap() {}

    /** Writes the map as a PNG of {@link #WIDTH} pixels, whole or not at all. */
    public static void write(RunResult result, Path png) throws IOException {
        write(result, png, WIDTH);
    }

    /**
     * Writes the map as a PNG; its height follows from what there is to show.
     *
     * @param widthPx 1500 to 8000
     */
    public static void write(RunResult result, Path png, int widthPx) throws IOException {
        if (widthPx < NARROWEST || widthPx > WIDEST) {
            throw new IllegalArgumentException("widthPx " + widthPx + ", " + NARROWEST + " to " + WIDEST + " expected");
        }
        Canvas canvas = draw(result, widthPx, Lettering.load());
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    static Canvas draw(RunResult r, int width, Lettering lettering) throws IOException {
        double inner = width - 2 * MARGIN;
        PanelLayout layout = PanelLayout.of(new PanelFinder(r).find(), inner, lettering);
        double panelsTop = MARGIN + HEAD + Legend.HEIGHT + 24;
        double listTop = panelsTop + layout.heightPx() + 50;
        double listWidth = inner - CHART_WIDTH - 50;
        List<String> rows = regionRows(r, lettering, listWidth);
        double foot = Math.max(CHART_HEIGHT, 70 + ROW * rows.size());
        double height = listTop + foot + 90;
        Canvas canvas = new Canvas(width, (int) Math.ceil(height), lettering);
        head(canvas, r, width);
        FilmColours colours = new FilmColours(r.scene().targets());
        Legend.draw(canvas, colours, r.scene().targets(), layout.pixelsPerM(), MARGIN, MARGIN + HEAD, inner);
        PanelPainter painter = new PanelPainter(r, colours);
        for (Placed p : layout.placed()) {
            painter.paint(canvas, p, MARGIN, panelsTop, layout.pixelsPerM());
        }
        canvas.stroke(new Line2D.Double(MARGIN, listTop - 20, width - MARGIN, listTop - 20), Canvas.LINE, 1);
        regions(canvas, r, rows, listTop);
        TimeChart.draw(canvas, r, width - MARGIN - CHART_WIDTH, listTop, CHART_WIDTH, CHART_HEIGHT);
        foot(canvas, r, width, listTop + foot + 30);
        return canvas;
    }

    private static void head(Canvas c, RunResult r, int width) throws IOException {
        double size = 36;
        String title = r.scene().title();
        while (size > 18 && c.lettering().width(title, size) > width - 2 * MARGIN) {
            size -= 1;
        }
        c.text(title, MARGIN, MARGIN + 32, size, Canvas.INK, Canvas.Align.LEFT);
        String what = String.format(
                Locale.ROOT,
                "%.1f mL of %s, trigger %.1f s, hang %.0f s.  Inside surfaces of \u201c%s\u201d, %d voxels of %s \u00d7 %s \u00d7 %s mm.",
                1e6 * RunFigures.productM3(r),
                r.scene().product().name(),
                RunFigures.triggerS(r),
                r.scene().hangS(),
                r.cavity().name(),
                r.grid().cellCount(),
                Ticks.plain(1e3 * r.grid().sizeM().x(), 3),
                Ticks.plain(1e3 * r.grid().sizeM().y(), 3),
                Ticks.plain(1e3 * r.grid().sizeM().z(), 3));
        ComputedBays bays = ComputedBays.of(r.grid());
        what += bays.isWhole() ? "" : "  Only " + bays.words() + " computed.";
        c.text(what, MARGIN, MARGIN + 66, BODY + 1, Canvas.QUIET, Canvas.Align.LEFT);
        c.text(figures(r), MARGIN, MARGIN + 96, BODY + 3, Canvas.INK, Canvas.Align.LEFT);
    }

    private static String figures(RunResult r) {
        Fractions f = r.coverage().total();
        return String.format(
                Locale.ROOT,
                "reached %.1f %%     protected %.1f %%     thin %.1f %%     excess %.1f %%     bare %.1f %%     mean film %s \u00b5m (%s mil)",
                100 * f.reached(),
                100 * f.protectedShare(),
                100 * f.thin(),
                100 * f.excess(),
                100 * (1 - f.reached()),
                Ticks.plain(1e6 * f.meanFilmM(), 3),
                Ticks.plain(f.meanFilmM() / 25.4e-6, 2));
    }

    /** Rows of the list; a row that continues the one above starts with a tab. */
    private static List<String> regionRows(RunResult r, Lettering lettering, double width) throws IOException {
        List<String> rows = new ArrayList<>();
        List<UnreachedRegion> regions = r.coverage().unreached();
        for (UnreachedRegion u : regions.subList(0, Math.min(REGIONS, regions.size()))) {
            boolean scattered = u.where().startsWith(CoverageAssessor.SCATTERED);
            String words = String.format(Locale.ROOT, "%.0f cm\u00b2  ", 1e4 * u.areaM2()) + u.where();
            String lead = scattered ? "\u2013" : u.label();
            for (String row : lettering.wrap(words, BODY, width - 60)) {
                rows.add(lead + "\t" + row);
                lead = "";
            }
        }
        if (regions.size() > REGIONS) {
            rows.add("\tand " + (regions.size() - REGIONS) + " smaller ones, listed in result.json");
        }
        if (regions.isEmpty()) {
            rows.add("\tnone");
        }
        return rows;
    }

    private static void regions(Canvas c, RunResult r, List<String> rows, double top) throws IOException {
        int count = r.coverage().unreached().size();
        c.text(
                "Bare places" + (count == 0 ? "" : ", largest first"),
                MARGIN,
                top + 18,
                20,
                Canvas.INK,
                Canvas.Align.LEFT);
        double y = top + 52;
        for (String row : rows) {
            int tab = row.indexOf('\t');
            c.text(row.substring(0, tab), MARGIN + 46, y, BODY, Canvas.BARE, Canvas.Align.RIGHT);
            c.text(row.substring(tab + 1), MARGIN + 60, y, BODY, Canvas.INK, Canvas.Align.LEFT);
            y += ROW;
        }
    }

    private static void foot(Canvas c, RunResult r, int width, double y) throws IOException {
        String about = String.format(
                Locale.ROOT,
                "Baymist %s  \u00b7  scene %s  \u00b7  state %s  \u00b7  a computed prediction; local rules and approved data come first",
                r.record().engineVersion(),
                r.scene().file(),
                r.record().stateHash());
        double size = 14;
        while (size > 9 && c.lettering().width(about, size) > width - 2 * MARGIN) {
            size -= 0.5;
        }
        c.text(about, MARGIN, y, size, Canvas.QUIET, Canvas.Align.LEFT);
        double hidden = r.grid().unresolvedAreaM2();
        if (hidden > 0) {
            String more = String.format(
                    Locale.ROOT, "Not shown: %.0f cm\u00b2 of surface too narrow for the voxels.", 1e4 * hidden);
            c.text(more, MARGIN, y - 22, 14, Canvas.QUIET, Canvas.Align.LEFT);
        }
    }
}
