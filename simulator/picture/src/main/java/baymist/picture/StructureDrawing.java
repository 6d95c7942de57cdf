package baymist.picture;

import baymist.geom.Vec3;
import baymist.picture.PanelLayout.Placed;
import baymist.report.AtomicFile;
import baymist.run.CheckResult;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Plan, side and section views of a cavity, to one scale: cut sheets, openings, bays, wands. */
public final class StructureDrawing {
    /** Width of the picture, pixels. */
    public static final int WIDTH = 2000;

    private static final double MARGIN = 60;
    private static final double HEAD = 100;
    private static final double KEY = 84;
    /** Rounds in which scale and rows of names are brought together. */
    private static final int ROUNDS = 4;

    private StructureDrawing() {}

    /** Writes the drawing as a PNG, whole or not at all. */
    public static void write(CheckResult check, Path png) throws IOException {
        Canvas canvas = draw(check, Lettering.load());
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    static Canvas draw(CheckResult check, Lettering lettering) throws IOException {
        return draw(check, new WandLayer(check), headline(check), lettering);
    }

    /** The structure with a layer over it and a line of words under its name. */
    static Canvas draw(CheckResult check, SectionLayer layer, String words, Lettering lettering) throws IOException {
        return draw(check, new SectionFinder(check).find(), layer, words, lettering);
    }

    /** The same in views of one's own. */
    static Canvas draw(
            CheckResult check, List<SectionView> views, SectionLayer layer, String words, Lettering lettering)
            throws IOException {
        SectionPainter painter = new SectionPainter(check, layer);
        double inner = WIDTH - 2 * MARGIN;
        double widest =
                views.stream().mapToDouble(v -> v.highU() - v.lowU()).max().orElse(1);
        double scale = inner / widest;
        for (int round = 0; round < ROUNDS; round++) {
            // the names need room of their own, which takes some from the drawings
            PanelLayout next =
                    PanelLayout.of(panels(views, labels(painter, views, scale, lettering), scale), inner, lettering);
            scale = Math.min(scale, next.pixelsPerM());
        }
        List<LeaderLabels> labels = labels(painter, views, scale, lettering);
        PanelLayout layout = PanelLayout.at(panels(views, labels, scale), scale, inner, lettering);
        Canvas c = paint(check, views, labels, painter, layout, scale, lettering);
        head(c, check, words);
        layer.key(c, MARGIN + 540, MARGIN + HEAD + 46);
        return c;
    }

    private static List<LeaderLabels> labels(
            SectionPainter painter, List<SectionView> views, double scale, Lettering lettering) throws IOException {
        List<LeaderLabels> labels = new ArrayList<>();
        for (SectionView v : views) {
            labels.add(painter.labels(v, scale, lettering));
        }
        return labels;
    }

    private static List<Panel> panels(List<SectionView> views, List<LeaderLabels> labels, double scale) {
        List<Panel> panels = new ArrayList<>();
        for (int i = 0; i < views.size(); i++) {
            panels.add(panel(views.get(i), labels.get(i), scale));
        }
        return panels;
    }

    /** Room for a view and its names at a scale. */
    private static Panel panel(SectionView v, LeaderLabels l, double scale) {
        double width = Math.max((v.highU() - v.lowU()) * scale, l.reach()) / scale;
        double height = (v.highV() - v.lowV()) + (l.heightAbove() + l.heightBelow()) / scale;
        return new Panel(
                v.title(),
                v.view(),
                -1,
                new int[0],
                List.of(),
                v.right(),
                v.up(),
                Vec3.Z,
                0,
                width,
                0,
                height,
                0,
                0,
                0);
    }

    private static Canvas paint(
            CheckResult check,
            List<SectionView> views,
            List<LeaderLabels> labels,
            SectionPainter painter,
            PanelLayout layout,
            double scale,
            Lettering lettering)
            throws IOException {
        double top = MARGIN + HEAD + KEY;
        Canvas c = new Canvas(WIDTH, (int) Math.ceil(top + layout.heightPx() + 70), lettering);
        key(c, MARGIN, MARGIN + HEAD);
        Legend.scaleBar(c, scale, WIDTH - MARGIN, MARGIN + HEAD + 14);
        for (int i = 0; i < views.size(); i++) {
            Placed at = layout.placed().get(i);
            double x = MARGIN + at.x();
            double y = top + at.y();
            c.text(views.get(i).title(), x, y - 28, PanelLayout.TITLE_SIZE, Canvas.INK, Canvas.Align.LEFT);
            c.text(views.get(i).view(), x, y - 9, PanelLayout.VIEW_SIZE, Canvas.QUIET, Canvas.Align.LEFT);
            double drawing = y + labels.get(i).heightAbove();
            SectionPainter.Place place = new SectionPainter.Place(views.get(i), x, drawing, scale);
            painter.paint(c, place, labels.get(i));
            labels.get(i).draw(c, x, drawing, place.height());
        }
        String foot = "Lines are the exact sheets cut by the plane.  Scene "
                + check.scene().file();
        c.text(foot, MARGIN, c.image().getHeight() - 24, 13, Canvas.QUIET, Canvas.Align.LEFT);
        return c;
    }

    private static String headline(CheckResult check) {
        return String.format(
                Locale.ROOT,
                "%s.  %.2f L of air in %d bay%s, %d openings, %d parts.",
                check.scene().title(),
                1e3 * check.grid().totalVolumeM3(),
                check.grid().bays().size(),
                check.grid().bays().size() == 1 ? "" : "s",
                check.cavity().openings().size(),
                check.cavity().parts().size());
    }

    private static void head(Canvas c, CheckResult check, String line) throws IOException {
        double size = 34;
        String title = check.cavity().name();
        while (size > 16 && c.lettering().width(title, size) > WIDTH - 2 * MARGIN) {
            size -= 1;
        }
        c.text(title, MARGIN, MARGIN + 30, size, Canvas.INK, Canvas.Align.LEFT);
        double small = 18;
        while (small > 10 && c.lettering().width(line, small) > WIDTH - 2 * MARGIN) {
            small -= 0.5;
        }
        c.text(line, MARGIN, MARGIN + 64, small, Canvas.QUIET, Canvas.Align.LEFT);
    }

    private static void key(Canvas c, double x, double y) throws IOException {
        double size = 14;
        double b = y + 22;
        c.stroke(new Line2D.Double(x, b - 5, x + 40, b - 5), Canvas.INK, 2.6);
        c.text("sheet that is cut", x + 50, b, size, Canvas.INK, Canvas.Align.LEFT);
        c.stroke(new Line2D.Double(x, b + 19, x + 40, b + 19), new java.awt.Color(0xC4C9D0), 1);
        c.text("edge behind it", x + 50, b + 24, size, Canvas.INK, Canvas.Align.LEFT);
        double o = x + 230;
        c.stroke(new Line2D.Double(o, b - 5, o + 40, b - 5), SectionPainter.OPEN, 1.4, 1.5f, 4f);
        c.text("opening that is cut", o + 50, b, size, Canvas.INK, Canvas.Align.LEFT);
        c.stroke(new Line2D.Double(o, b + 19, o + 40, b + 19), SectionPainter.OPEN, 4.1, 5f, 5f);
        c.text("the same, closed while spraying", o + 50, b + 24, size, Canvas.INK, Canvas.Align.LEFT);
        double q = x + 540;
        c.stroke(new Ellipse2D.Double(q, b - 14, 16, 16), SectionPainter.OPEN, 1.6);
        c.stroke(new Ellipse2D.Double(q + 22, b - 14, 16, 16), SectionPainter.OPEN, 1.6, 6f, 4f);
        c.text("opening behind / in front of the plane", q + 50, b, size, Canvas.INK, Canvas.Align.LEFT);
        c.text(
                "sizes in mm: \u00f8 diameter, length \u00d7 width; scales in mm from the origin",
                x + 1110,
                b,
                size,
                Canvas.QUIET,
                Canvas.Align.LEFT);
    }
}
