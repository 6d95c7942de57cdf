package baymist.picture;

import baymist.coverage.CoverageAssessor;
import baymist.coverage.Verdict;
import baymist.picture.PanelLayout.Placed;
import baymist.report.AtomicFile;
import baymist.report.RunDifference;
import baymist.run.RunResult;
import baymist.voxel.SurfelSet;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/** Every inner face laid out flat, with what changed from an earlier run: more film, less film, and what fell bare. */
public final class DifferenceMap {
    private static final double MARGIN = 60;
    private static final double HEAD = 130;
    private static final double KEY = 100;
    private static final double BODY = 18;
    private static final double BAR = 640;
    private static final int NO_COUNTERPART = 0xC8C8C8;

    private DifferenceMap() {}

    /** Writes the map as a PNG of 2000 pixels' width, whole or not at all. */
    public static void write(RunResult now, RunDifference d, Path png) throws IOException {
        Canvas canvas = draw(now, d, CoverageMap.WIDTH, Lettering.load());
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    static Canvas draw(RunResult now, RunDifference d, int width, Lettering lettering) throws IOException {
        double inner = width - 2 * MARGIN;
        PanelLayout layout = PanelLayout.of(new PanelFinder(now).find(), inner, lettering);
        double top = MARGIN + HEAD + KEY + 30;
        Canvas canvas = new Canvas(width, (int) Math.ceil(top + layout.heightPx() + 60), lettering);
        head(canvas, now, d, width);
        key(canvas, layout.pixelsPerM(), MARGIN, MARGIN + HEAD, inner);
        DifferenceColours colours = new DifferenceColours(now.scene().targets().hazeM());
        SurfelSet surfels = now.grid().surfels();
        int[] lost = lost(now, d);
        for (Placed at : layout.placed()) {
            double x0 = Math.rint(MARGIN + at.x());
            double y0 = Math.rint(top + at.y());
            Panel panel = at.panel();
            canvas.text(panel.title(), x0, y0 - 27, PanelLayout.TITLE_SIZE, Canvas.INK, Canvas.Align.LEFT);
            canvas.text(panel.view(), x0, y0 - 8, PanelLayout.VIEW_SIZE, Canvas.QUIET, Canvas.Align.LEFT);
            PanelRaster raster = new PanelRaster(panel, surfels, now.cavity(), layout.pixelsPerM());
            PanelImage image = new PanelImage(raster, surfels, lost, s -> {
                double before = d.beforeM()[s];
                return Double.isNaN(before) ? NO_COUNTERPART : colours.rgb(before, now.filmM()[s]);
            });
            canvas.graphics().drawImage(image.paint(), (int) x0, (int) y0, null);
        }
        return canvas;
    }

    /** 1 for what was reached and is bare now, [surfels]. */
    private static int[] lost(RunResult now, RunDifference d) {
        int[] lost = new int[d.beforeM().length];
        for (int s = 0; s < lost.length; s++) {
            boolean was = !Double.isNaN(d.beforeM()[s])
                    && CoverageAssessor.verdict(d.beforeM()[s], now.scene().targets()) != Verdict.UNREACHED;
            lost[s] = was && now.coverage().verdict()[s] == Verdict.UNREACHED ? 1 : 0;
        }
        return lost;
    }

    private static void head(Canvas c, RunResult now, RunDifference d, int width) throws IOException {
        fitted(c, now.scene().title(), 36, MARGIN + 32, width);
        fitted(c, "against: " + d.past().title(), 22, MARGIN + 68, width);
        RunDifference.Change t = d.total();
        double area = Math.max(t.areaM2(), Double.MIN_NORMAL);
        String figures = String.format(
                Locale.ROOT,
                "reached %.1f %% \u2192 %.1f %%     protected %.1f %% \u2192 %.1f %%     gained %.0f cm\u00b2     lost %.0f cm\u00b2%s",
                100 * t.reachedBeforeM2() / area,
                100 * t.reachedNowM2() / area,
                100 * t.protectedBeforeM2() / area,
                100 * t.protectedNowM2() / area,
                1e4 * t.gainedM2(),
                1e4 * t.lostM2(),
                d.sameVoxels() ? "" : "     (other voxels: nearest places compared)");
        c.text(figures, MARGIN, MARGIN + 104, BODY + 2, Canvas.INK, Canvas.Align.LEFT);
    }

    private static void fitted(Canvas c, String words, double most, double y, int width) throws IOException {
        double size = most;
        while (size > 14 && c.lettering().width(words, size) > width - 2 * MARGIN) {
            size -= 1;
        }
        c.text(words, MARGIN, y, size, Canvas.INK, Canvas.Align.LEFT);
    }

    private static void key(Canvas c, double pixelsPerM, double x, double y, double width) throws IOException {
        c.text("film now against before", x, y + 14, BODY, Canvas.INK, Canvas.Align.LEFT);
        double barY = y + 28;
        for (int i = 0; i < (int) BAR; i++) {
            Color colour =
                    new Color(DifferenceColours.colour(2 * (i + 0.5) / BAR - 1).toRgb());
            c.fill(new Rectangle2D.Double(x + i, barY, 1, 24), colour);
        }
        c.stroke(new Rectangle2D.Double(x, barY, BAR, 24), Canvas.QUIET, 1);
        String[] words = {"a fifth or less", "half", "the same", "twice", "five times or more"};
        double[] ratios = {1 / DifferenceColours.MOST, 0.5, 1, 2, DifferenceColours.MOST};
        for (int i = 0; i < words.length; i++) {
            double tx = x + BAR * 0.5 * (1 + Math.log(ratios[i]) / Math.log(DifferenceColours.MOST));
            Canvas.Align align = i == 0 ? Canvas.Align.LEFT : i == 4 ? Canvas.Align.RIGHT : Canvas.Align.CENTRE;
            c.stroke(new Line2D.Double(tx, barY + 24, tx, barY + 30), Canvas.QUIET, 1);
            c.text(words[i], tx, barY + 47, 15, Canvas.INK, align);
        }
        double sx = x + BAR + 90;
        Rectangle2D box = new Rectangle2D.Double(sx, barY, 44, 24);
        c.fill(box, new Color(0xFFF6F0));
        Shape old = c.graphics().getClip();
        c.graphics().clip(box);
        for (double k = -24; k < 44; k += 8) {
            c.stroke(new Line2D.Double(sx + k + 24, barY, sx + k, barY + 24), Canvas.BARE, 1.6);
        }
        c.graphics().setClip(old);
        c.stroke(box, Canvas.BARE, 2.4);
        c.text("reached before, bare now", sx + 58, barY + 18, 15, Canvas.INK, Canvas.Align.LEFT);
        Legend.scaleBar(c, pixelsPerM, x + width, y + 34);
    }
}
