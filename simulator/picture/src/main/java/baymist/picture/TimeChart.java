package baymist.picture;

import baymist.access.Station;
import baymist.report.AtomicFile;
import baymist.run.RunResult;
import baymist.run.TimePoint;
import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** The job in time: share of the surface reached and share of the product in the air. */
public final class TimeChart {
    private static final double SIZE = 15;
    /** Stations that follow each other within this time are one pull of the trigger, s. */
    private static final double JOINED_S = 1e-6;

    private static final Color REACHED = new Color(0x14607A);
    private static final Color AIRBORNE = new Color(0xB25A00);

    private TimeChart() {}

    /** Writes the chart as a PNG of its own, whole or not at all. */
    public static void write(RunResult result, Path png) throws IOException {
        Canvas canvas = new Canvas(1100, 620, Lettering.load());
        canvas.text(result.scene().title(), 40, 52, 26, Canvas.INK, Canvas.Align.LEFT);
        draw(canvas, result, 40, 80, 1020, 510);
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    /** Draws the chart into a box; with fewer than two times in the history it says so instead. */
    static void draw(Canvas c, RunResult r, double x, double y, double width, double height) throws IOException {
        List<TimePoint> points = r.history();
        c.text("Over time", x, y + 18, 20, Canvas.INK, Canvas.Align.LEFT);
        if (points.size() < 2) {
            c.text("No history was recorded.", x, y + 48, SIZE, Canvas.QUIET, Canvas.Align.LEFT);
            return;
        }
        double end = points.get(points.size() - 1).timeS();
        Frame f = new Frame(x + 52, y + 66, width - 68, height - 118, Math.max(end, 1e-9));
        spraying(c, r, f);
        axes(c, f);
        double sprayed = r.ledger().sprayedKg();
        line(c, f, points, p -> p.reached(), REACHED);
        line(c, f, points, p -> sprayed > 0 ? p.airborneKg() / sprayed : 0, AIRBORNE);
        key(c, x + 52, y + 46, "share of the surface reached", REACHED);
        double w = c.lettering().width("share of the surface reached", SIZE) + 70;
        key(c, x + 52 + w, y + 46, "share of the product in the air", AIRBORNE);
    }

    private record Frame(double x, double y, double width, double height, double endS) {
        double px(double timeS) {
            return x + width * timeS / endS;
        }

        double py(double share) {
            return y + height * (1 - Math.min(1, Math.max(0, share)));
        }
    }

    private static void spraying(Canvas c, RunResult r, Frame f) {
        double from = Double.NaN;
        double to = Double.NaN;
        for (Station s : r.stations()) {
            if (!(Math.abs(s.startS() - to) < JOINED_S)) {
                shade(c, f, from, to);
                from = s.startS();
            }
            to = s.startS() + s.durationS();
        }
        shade(c, f, from, to);
    }

    private static void shade(Canvas c, Frame f, double fromS, double toS) {
        if (toS > fromS) {
            double left = f.px(Math.min(f.endS, fromS));
            double right = f.px(Math.min(f.endS, toS));
            c.fill(new Rectangle2D.Double(left, f.y, right - left, f.height), new Color(0xF1E6F0));
        }
    }

    private static void axes(Canvas c, Frame f) throws IOException {
        for (int percent = 0; percent <= 100; percent += 25) {
            double py = f.py(percent / 100.0);
            c.stroke(new Line2D.Double(f.x, py, f.x + f.width, py), new Color(0xDDE1E6), 1);
            c.text(percent + " %", f.x - 8, py + 5, SIZE, Canvas.QUIET, Canvas.Align.RIGHT);
        }
        boolean minutes = f.endS > 240;
        double unit = minutes ? 60 : 1;
        for (double t : Ticks.upTo(f.endS / unit)) {
            double px = f.px(t * unit);
            c.stroke(new Line2D.Double(px, f.y + f.height, px, f.y + f.height + 5), Canvas.QUIET, 1);
            c.text(Ticks.plain(t, 3), px, f.y + f.height + 22, SIZE, Canvas.QUIET, Canvas.Align.CENTRE);
        }
        String time = "time, " + (minutes ? "min" : "s") + "; shaded: trigger held";
        c.text(time, f.x + f.width, f.y + f.height + 44, SIZE, Canvas.QUIET, Canvas.Align.RIGHT);
        c.stroke(new Line2D.Double(f.x, f.y + f.height, f.x + f.width, f.y + f.height), Canvas.QUIET, 1.4);
    }

    private static void line(Canvas c, Frame f, List<TimePoint> points, ToDoubleFunction<TimePoint> of, Color colour) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < points.size(); i++) {
            double px = f.px(points.get(i).timeS());
            double py = f.py(of.applyAsDouble(points.get(i)));
            if (i == 0) {
                path.moveTo(px, py);
            } else {
                path.lineTo(px, py);
            }
        }
        c.stroke(path, colour, 2.6);
    }

    private static void key(Canvas c, double x, double y, String words, Color colour) throws IOException {
        c.stroke(new Line2D.Double(x, y - 5, x + 24, y - 5), colour, 3);
        c.text(words, x + 32, y, SIZE, Canvas.INK, Canvas.Align.LEFT);
    }
}
