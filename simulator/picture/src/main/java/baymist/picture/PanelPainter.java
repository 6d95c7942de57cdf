package baymist.picture;

import baymist.access.Station;
import baymist.cavity.Opening;
import baymist.coverage.CoverageAssessor;
import baymist.coverage.UnreachedRegion;
import baymist.geom.Vec3;
import baymist.picture.PanelLayout.Placed;
import baymist.run.RunResult;
import baymist.scene.OpeningState;
import baymist.voxel.SurfelSet;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;

/** Paints one panel: film, bare regions with their numbers, openings and the path of the tip. */
final class PanelPainter {
    /** Regions with a higher number are in result.json only. */
    private static final int NUMBERED = 40;
    /** How close the tip's path must come to a sheet that it runs square to, to be drawn on its panel, m. */
    private static final double NEAR_M = 0.03;

    private final RunResult result;
    private final SurfelSet surfels;
    private final FilmColours colours;
    private final int[] regionOf;

    PanelPainter(RunResult result, FilmColours colours) {
        this.result = result;
        this.surfels = result.grid().surfels();
        this.colours = colours;
        regionOf = new int[surfels.count()];
        for (UnreachedRegion r : result.coverage().unreached()) {
            for (int s : r.surfels()) {
                regionOf[s] = r.id();
            }
        }
    }

    /** Paints the panel with its two lines of title; {@code left}, {@code top} is the corner of all panels. */
    void paint(Canvas canvas, Placed at, double left, double top, double pixelsPerM) throws IOException {
        Panel panel = at.panel();
        double x0 = Math.rint(left + at.x());
        double y0 = Math.rint(top + at.y());
        canvas.text(panel.title(), x0, y0 - 27, PanelLayout.TITLE_SIZE, Canvas.INK, Canvas.Align.LEFT);
        canvas.text(panel.view(), x0, y0 - 8, PanelLayout.VIEW_SIZE, Canvas.QUIET, Canvas.Align.LEFT);
        PanelRaster raster = new PanelRaster(panel, surfels, result.cavity(), pixelsPerM);
        PanelImage image = new PanelImage(raster, surfels, regionOf, s -> colours.rgb(result.filmM()[s]));
        canvas.graphics().drawImage(image.paint(), (int) x0, (int) y0, null);
        bays(canvas, raster, x0, y0);
        Labels labels = new Labels();
        Rectangle2D page = new Rectangle2D.Double(x0 - 20, y0 - 4, at.width() + 40, at.height() + 8);
        openings(canvas, panel, raster, x0, y0, labels);
        Shape whole = canvas.graphics().getClip();
        canvas.graphics().clip(new Rectangle2D.Double(x0 - 20, y0 - 4, at.width() + 40, at.height() + 8));
        wand(canvas, panel, raster, x0, y0);
        canvas.graphics().setClip(whole);
        numbers(canvas, image, x0, y0, labels, page);
        names(canvas, panel, raster, x0, y0, labels, page);
    }

    private void openings(Canvas canvas, Panel panel, PanelRaster raster, double x0, double y0, Labels labels) {
        for (Opening o : panel.openings()) {
            Shape outline = outline(o, raster, x0, y0);
            boolean open = o.states().pass() == OpeningState.OPEN;
            canvas.fill(outline, open ? Color.WHITE : new Color(0xE4E7EB));
            if (open) {
                canvas.stroke(outline, Canvas.INK, 1.8);
            } else {
                canvas.stroke(outline, Canvas.INK, 1.8, 5f, 4f);
            }
            if (outline.getBounds2D().getWidth() < 60) {
                labels.keepFree(outline.getBounds2D());
            }
        }
    }

    private static Shape outline(Opening o, PanelRaster raster, double x0, double y0) {
        Path2D path = new Path2D.Double();
        List<double[]> points = o.place().outline().polygon(64);
        for (int i = 0; i < points.size(); i++) {
            Vec3 p = o.place().point(points.get(i)[0], points.get(i)[1]);
            if (i == 0) {
                path.moveTo(x0 + raster.x(p), y0 + raster.y(p));
            } else {
                path.lineTo(x0 + raster.x(p), y0 + raster.y(p));
            }
        }
        path.closePath();
        return path;
    }

    private void wand(Canvas canvas, Panel panel, PanelRaster raster, double x0, double y0) {
        int pass = -1;
        Path2D path = new Path2D.Double();
        Vec3 first = Vec3.ZERO;
        Vec3 last = Vec3.ZERO;
        for (Station s : result.stations()) {
            Vec3 p = s.pose().positionM();
            if (s.pass() != pass) {
                drawPass(canvas, panel, raster, path, first, last, pass, x0, y0);
                path = new Path2D.Double();
                path.moveTo(x0 + raster.x(p), y0 + raster.y(p));
                first = p;
                pass = s.pass();
            } else {
                path.lineTo(x0 + raster.x(p), y0 + raster.y(p));
            }
            last = p;
        }
        drawPass(canvas, panel, raster, path, first, last, pass, x0, y0);
    }

    private void drawPass(
            Canvas canvas,
            Panel panel,
            PanelRaster raster,
            Path2D path,
            Vec3 first,
            Vec3 last,
            int pass,
            double x0,
            double y0) {
        if (pass < 0) {
            return;
        }
        double a = first.dot(panel.normal()) - panel.offsetM();
        double b = last.dot(panel.normal()) - panel.offsetM();
        boolean square = Math.abs(a - b) > 0.7 * first.distance(last) && first.distance(last) > NEAR_M;
        boolean passes = Math.min(a, b) < NEAR_M && Math.max(a, b) > -NEAR_M;
        if (square && !passes) {
            return;
        }
        if (!square) {
            canvas.stroke(path, Color.WHITE, 5.5);
            canvas.stroke(path, Canvas.WAND, 2.6);
        }
        double x = x0 + raster.x(first);
        double y = y0 + raster.y(first);
        canvas.fill(new Ellipse2D.Double(x - 7, y - 7, 14, 14), Color.WHITE);
        canvas.fill(new Ellipse2D.Double(x - 5, y - 5, 10, 10), Canvas.WAND);
        if (!square && first.distance(last) > 0) {
            double xe = x0 + raster.x(last);
            double ye = y0 + raster.y(last);
            canvas.fill(arrow(x, y, xe, ye), Canvas.WAND);
        }
    }

    /** A head at the end of a line from (x, y) to (xe, ye). */
    static Shape arrow(double x, double y, double xe, double ye) {
        double length = Math.max(1e-9, Math.hypot(xe - x, ye - y));
        double ux = (xe - x) / length;
        double uy = (ye - y) / length;
        Path2D head = new Path2D.Double();
        head.moveTo(xe + 5 * ux, ye + 5 * uy);
        head.lineTo(xe - 9 * ux - 6 * uy, ye - 9 * uy + 6 * ux);
        head.lineTo(xe - 9 * ux + 6 * uy, ye - 9 * uy - 6 * ux);
        head.closePath();
        return head;
    }

    private void numbers(Canvas canvas, PanelImage image, double x0, double y0, Labels labels, Rectangle2D page)
            throws IOException {
        for (UnreachedRegion r : result.coverage().unreached()) {
            boolean scattered = r.where().startsWith(CoverageAssessor.SCATTERED);
            double[] p = scattered || r.id() > NUMBERED ? null : image.middleOf(r.id());
            if (p != null) {
                labels.number(canvas, r.label(), x0 + p[0], y0 + p[1], page);
            }
        }
    }

    /** Names of the bays under a panel that shows more than one. */
    private void bays(Canvas canvas, PanelRaster raster, double x0, double y0) throws IOException {
        int count = result.grid().bays().size();
        double[] low = new double[count];
        double[] high = new double[count];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int y = 0; y < raster.height(); y++) {
            for (int x = 0; x < raster.width(); x++) {
                int s = raster.owner(x, y);
                if (s >= 0) {
                    int bay = result.grid().bayOfCell(surfels.cell()[s]);
                    low[bay] = Math.min(low[bay], x);
                    high[bay] = Math.max(high[bay], x + 1);
                }
            }
        }
        long shown = Arrays.stream(high).filter(h -> h > 0).count();
        double end = Double.NEGATIVE_INFINITY;
        for (int bay = 0; bay < count && shown > 1; bay++) {
            String name = result.grid().bays().get(bay).name();
            double width = canvas.lettering().width(name, PanelLayout.VIEW_SIZE);
            double middle = 0.5 * (low[bay] + high[bay]);
            if (high[bay] - low[bay] > width && middle - width / 2 > end) {
                double y = y0 + raster.height() + 17;
                canvas.text(name, x0 + middle, y, PanelLayout.VIEW_SIZE, Canvas.QUIET, Canvas.Align.CENTRE);
                end = middle + width / 2 + 6;
            }
        }
    }

    private void names(
            Canvas canvas, Panel panel, PanelRaster raster, double x0, double y0, Labels labels, Rectangle2D page)
            throws IOException {
        for (Opening o : panel.openings()) {
            if (o.exterior()) {
                labels.name(canvas, o.name(), outline(o, raster, x0, y0).getBounds2D(), 14, page);
            }
        }
    }
}
