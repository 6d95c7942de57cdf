package baymist.export;

import baymist.access.Station;
import baymist.run.RunResult;
import baymist.run.TimePoint;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** The job in time as an SVG picture: share of the surface reached, share of the product in the air, when the trigger is held. */
final class TimeLines {
    private static final double LEFT = 56;
    private static final double TOP = 14;
    private static final double WIDTH = 780;
    private static final double HEIGHT = 240;

    private TimeLines() {}

    static String svg(RunResult r) {
        List<TimePoint> points = r.history();
        if (points.size() < 2) {
            return "<p>No history was recorded.</p>\n";
        }
        double endS = Math.max(1e-9, points.get(points.size() - 1).timeS());
        double sprayed = r.ledger().sprayedKg();
        StringBuilder s = new StringBuilder(Html.format(
                "<svg id=\"time\" viewBox=\"0 0 %.0f %.0f\" width=\"%.0f\" height=\"%.0f\" role=\"img\" aria-label=\"The job in time\">%n",
                LEFT + WIDTH + 24, TOP + HEIGHT + 46, LEFT + WIDTH + 24, TOP + HEIGHT + 46));
        spraying(s, r, endS);
        for (int i = 0; i <= 4; i++) {
            double y = y(i / 4.0);
            s.append(Html.format(
                    "<line class=\"grid\" x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>"
                            + "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">%d %%</text>%n",
                    LEFT, y, LEFT + WIDTH, y, LEFT - 8, y + 5, 25 * i));
        }
        double step = step(endS);
        for (int i = 0; i * step <= endS * (1 + 1e-9); i++) {
            s.append(Html.format(
                    "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">%s s</text>%n",
                    x(i * step, endS), TOP + HEIGHT + 20, number(i * step)));
        }
        line(s, points, endS, TimePoint::reached, "reached");
        line(s, points, endS, p -> sprayed > 0 ? p.airborneKg() / sprayed : 0, "airborne");
        key(s);
        return s.append("</svg>\n").toString();
    }

    private static void key(StringBuilder s) {
        double y = TOP + HEIGHT + 38;
        s.append(Html.format(
                "<path class=\"reached\" d=\"M%.0f %.0fh34\"/><text x=\"%.0f\" y=\"%.0f\">surface reached</text>%n",
                LEFT, y - 5, LEFT + 42, y));
        s.append(Html.format(
                "<path class=\"airborne\" d=\"M%.0f %.0fh34\"/><text x=\"%.0f\" y=\"%.0f\">product in the air</text>%n",
                LEFT + 190, y - 5, LEFT + 232, y));
        s.append(Html.format(
                "<rect class=\"spray\" x=\"%.0f\" y=\"%.0f\" width=\"34\" height=\"12\"/><text x=\"%.0f\" y=\"%.0f\">trigger held</text>%n",
                LEFT + 400, y - 11, LEFT + 442, y));
    }

    private static void spraying(StringBuilder s, RunResult r, double endS) {
        for (Station at : r.stations()) {
            double from = x(at.startS(), endS);
            double to = x(at.startS() + at.durationS(), endS);
            s.append(Html.format(
                    "<rect class=\"spray\" x=\"%.2f\" y=\"%.1f\" width=\"%.2f\" height=\"%.1f\"/>",
                    from, TOP, to - from + 0.3, HEIGHT));
        }
        s.append("\n");
    }

    private static void line(
            StringBuilder s, List<TimePoint> points, double endS, ToDoubleFunction<TimePoint> share, String name) {
        s.append("<path class=\"").append(name).append("\" d=\"");
        char move = 'M';
        for (TimePoint p : points) {
            s.append(Html.format("%c%.1f %.1f", move, x(p.timeS(), endS), y(share.applyAsDouble(p))));
            move = 'L';
        }
        s.append("\"/>\n");
    }

    private static double x(double timeS, double endS) {
        return LEFT + WIDTH * timeS / endS;
    }

    private static double y(double share) {
        return TOP + HEIGHT * (1 - Math.min(1, Math.max(0, share)));
    }

    /** A round step that gives eight marks at most. */
    private static double step(double endS) {
        double step = Math.pow(10, Math.floor(Math.log10(endS / 8)));
        for (double factor : new double[] {1, 2, 5, 10}) {
            if (endS / (factor * step) <= 8) {
                return factor * step;
            }
        }
        return 10 * step;
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Html.format("%.0f", value) : Html.format("%.3g", value);
    }
}
