package baymist.picture;

import baymist.scene.TargetSpec;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;

/** The key to a coverage map: film scale in micrometres and mils, signs, scale bar. */
final class Legend {
    static final double HEIGHT = 118;
    private static final double BAR_WIDTH = 640;
    private static final double BAR_HEIGHT = 24;
    private static final double SIZE = 15;
    private static final double UM = 1e-6;
    /** 1 mil = 25.4 µm exactly. */
    private static final double MIL = 25.4e-6;

    private Legend() {}

    /** Draws the key with its top left corner at (x, y) over a width. */
    static void draw(
            Canvas c, FilmColours colours, TargetSpec target, double pixelsPerM, double x, double y, double width)
            throws IOException {
        film(c, colours, target, x, y);
        double signsX = x + 76 + BAR_WIDTH + 90;
        bareSign(c, signsX, y, "bare, with its name in the list");
        signs(c, signsX, y);
        scaleBar(c, pixelsPerM, x + width, y + 48);
    }

    /** The same for pictures that show film and bare surface alone. */
    static void drawFilm(
            Canvas c, FilmColours colours, TargetSpec target, double pixelsPerM, double x, double y, double width)
            throws IOException {
        film(c, colours, target, x, y);
        bareSign(c, x + 76 + BAR_WIDTH + 90, y + 34, "bare: less than the film that counts as reached");
        scaleBar(c, pixelsPerM, x + width, y + 48);
    }

    private static void film(Canvas c, FilmColours colours, TargetSpec target, double x, double y) throws IOException {
        double barY = y + 44;
        c.text("wet film", x, barY + 17, SIZE, Canvas.INK, Canvas.Align.LEFT);
        double barX = x + 76;
        bar(c, barX, barY);
        for (double um : Ticks.decades(colours.lowM() / UM, colours.highM() / UM)) {
            tick(c, barX + BAR_WIDTH * colours.place(um * UM), barY + BAR_HEIGHT, Ticks.plain(um, 3));
        }
        c.text("\u00b5m", barX + BAR_WIDTH + 20, barY + BAR_HEIGHT + 20, SIZE, Canvas.INK, Canvas.Align.LEFT);
        for (double mil : new double[] {0.05, 0.1, 0.2, 0.5, 1, 2, 5}) {
            double film = mil * MIL;
            if (film >= colours.lowM() && film <= colours.highM()) {
                double tx = barX + BAR_WIDTH * colours.place(film);
                c.text(Ticks.plain(mil, 2), tx, barY + BAR_HEIGHT + 40, 13, Canvas.QUIET, Canvas.Align.CENTRE);
            }
        }
        c.text("mil", barX + BAR_WIDTH + 20, barY + BAR_HEIGHT + 40, 13, Canvas.QUIET, Canvas.Align.LEFT);
        threshold(c, barX, barY, colours.place(target.hazeM()), "reached", Canvas.Align.LEFT);
        threshold(c, barX, barY, colours.place(target.buildM()), "protected", Canvas.Align.CENTRE);
        threshold(c, barX, barY, colours.place(target.excessM()), "excess", Canvas.Align.CENTRE);
    }

    private static void bar(Canvas c, double x, double y) {
        for (int i = 0; i < (int) BAR_WIDTH; i++) {
            Color colour = new Color(FilmColours.colour((i + 0.5) / BAR_WIDTH).toRgb());
            c.fill(new Rectangle2D.Double(x + i, y, 1, BAR_HEIGHT), colour);
        }
        c.stroke(new Rectangle2D.Double(x, y, BAR_WIDTH, BAR_HEIGHT), Canvas.QUIET, 1);
    }

    private static void tick(Canvas c, double x, double y, String words) throws IOException {
        c.stroke(new Line2D.Double(x, y, x, y + 5), Canvas.QUIET, 1);
        c.text(words, x, y + 20, SIZE, Canvas.INK, Canvas.Align.CENTRE);
    }

    private static void threshold(Canvas c, double x, double y, double place, String words, Canvas.Align align)
            throws IOException {
        double tx = x + BAR_WIDTH * place;
        c.stroke(new Line2D.Double(tx, y - 8, tx, y + BAR_HEIGHT), Canvas.INK, 2);
        c.text(words + " \u2192", tx, y - 14, SIZE, Canvas.INK, align);
    }

    private static void bareSign(Canvas c, double x, double y, String words) throws IOException {
        Rectangle2D box = new Rectangle2D.Double(x, y + 10, 44, 24);
        c.fill(box, new Color(0xFFF6F0));
        Shape old = c.graphics().getClip();
        c.graphics().clip(box);
        for (double d = -24; d < 44; d += 8) {
            c.stroke(new Line2D.Double(x + d + 24, y + 10, x + d, y + 34), Canvas.BARE, 1.6);
        }
        c.graphics().setClip(old);
        c.stroke(box, Canvas.BARE, 2.4);
        c.text(words, x + 58, y + 28, SIZE, Canvas.INK, Canvas.Align.LEFT);
    }

    private static void signs(Canvas c, double x, double y) throws IOException {
        c.stroke(new Ellipse2D.Double(x + 1, y + 47, 18, 18), Canvas.INK, 1.8);
        c.stroke(new Ellipse2D.Double(x + 25, y + 47, 18, 18), Canvas.INK, 1.8, 5f, 4f);
        c.text("opening: open / closed while spraying", x + 58, y + 61, SIZE, Canvas.INK, Canvas.Align.LEFT);
        c.stroke(new Line2D.Double(x + 4, y + 89, x + 36, y + 89), Canvas.WAND, 2.6);
        c.fill(new Ellipse2D.Double(x, y + 84, 10, 10), Canvas.WAND);
        c.fill(PanelPainter.arrow(x, y + 89, x + 38, y + 89), Canvas.WAND);
        c.text("path of the tip with the trigger held", x + 58, y + 94, SIZE, Canvas.INK, Canvas.Align.LEFT);
    }

    /** A bar of a round length near 200 pixels that ends at {@code right}. */
    static void scaleBar(Canvas c, double pixelsPerM, double right, double y) throws IOException {
        double mm = Ticks.roundDown(260 / pixelsPerM * 1000);
        double length = mm / 1000 * pixelsPerM;
        double x = right - length;
        c.fill(new Rectangle2D.Double(x, y, length / 2, 9), Canvas.INK);
        c.stroke(new Rectangle2D.Double(x, y, length, 9), Canvas.INK, 1.4);
        c.text("0", x, y + 27, SIZE, Canvas.INK, Canvas.Align.CENTRE);
        c.text(Ticks.plain(mm, 3) + " mm", right, y + 27, SIZE, Canvas.INK, Canvas.Align.RIGHT);
        c.text("all panels to one scale", right, y - 10, 14, Canvas.QUIET, Canvas.Align.RIGHT);
    }
}
