package baymist.verify;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Draws error against reference: for every case how much of its tolerance it uses, by stage; and the errors of an order study. */
final class ErrorPlot {
    private static final String[] COLOURS = {"#14607a", "#b25a00", "#4a7d2c", "#7b3f98", "#a33b3b", "#55606b"};
    private static final double LEAST = 1e-4;

    private ErrorPlot() {}

    /** One column a stage, one dot a case; the line at 1 is the tolerance. */
    static String cases(VerificationReport report) {
        Map<String, List<Outcome>> stages = new LinkedHashMap<>();
        report.outcomes()
                .forEach(o -> stages.computeIfAbsent(o.verificationCase().stage(), s -> new ArrayList<>())
                        .add(o));
        Svg svg = new Svg(980, 520);
        svg.text(40, 34, 20, Svg.INK, "start", "Error against reference, as a share of what is allowed");
        double top = 60;
        double height = 380;
        for (int e = -4; e <= 1; e++) {
            double y = y(Math.pow(10, e), top, height);
            svg.line(90, y, 960, y, e == 0 ? "#a33b3b" : "#dde1e6", e == 0 ? 2 : 1);
            String label = e == -4 ? "1e-4 or less" : e == 0 ? "allowed" : VerificationMarkdown.number(Math.pow(10, e));
            svg.text(84, y + 4, 12, Svg.QUIET, "end", label);
        }
        double width = 870.0 / Math.max(1, stages.size());
        int column = 0;
        for (Map.Entry<String, List<Outcome>> stage : stages.entrySet()) {
            double left = 90 + column * width;
            List<Outcome> list = stage.getValue();
            for (int i = 0; i < list.size(); i++) {
                Outcome o = list.get(i);
                double share = share(o);
                svg.dot(
                        left + width * (0.1 + 0.8 * (i + 0.5) / list.size()),
                        y(share, top, height),
                        3,
                        o.passed() ? COLOURS[column % COLOURS.length] : "#d00000",
                        o.verificationCase().id());
            }
            svg.text(left + width / 2, top + height + 26, 14, Svg.INK, "middle", stage.getKey());
            svg.text(left + width / 2, top + height + 44, 12, Svg.QUIET, "middle", list.size() + " values");
            column++;
        }
        return svg.toString();
    }

    private static double share(Outcome o) {
        VerificationCase c = o.verificationCase();
        double off = c.deviation(o.value());
        if (!Double.isFinite(off)) {
            return 10;
        }
        return off == 0 ? 0 : c.tolerance() > 0 ? off / c.tolerance() : 10;
    }

    private static double y(double share, double top, double height) {
        double log = Math.log10(Math.max(LEAST, Math.min(10, share)));
        return top + height * (1 - (log + 4) / 5);
    }

    /** Errors over the number of cells, both logarithmic, with the claimed slope beside each. */
    static String orders(List<OrderStudy.Row> rows) {
        Svg svg = new Svg(980, 560);
        svg.text(40, 34, 20, Svg.INK, "start", "Relative error over cells, and the slope that is claimed (thin)");
        double left = 90;
        double width = 420;
        double top = 60;
        double height = 440;
        for (int e = -6; e <= 0; e++) {
            double y = top + height * (-e / 6.0);
            svg.line(left, y, left + width, y, "#dde1e6", 1);
            svg.text(left - 6, y + 4, 12, Svg.QUIET, "end", String.format(Locale.ROOT, "1e%d", e));
        }
        for (int n : new int[] {5, 10, 20, 50, 100, 200, 500}) {
            double x = x(n, left, width);
            svg.line(x, top, x, top + height, "#eef0f2", 1);
            svg.text(x, top + height + 18, 12, Svg.QUIET, "middle", String.valueOf(n));
        }
        for (int r = 0; r < rows.size(); r++) {
            OrderStudy.Row row = rows.get(r);
            String colour = COLOURS[r % COLOURS.length];
            int last = row.cells().length - 1;
            for (int i = 0; i <= last; i++) {
                double x = x(row.cells()[i], left, width);
                double y = errorY(row.error()[i], top, height);
                svg.dot(x, y, 4, colour, row.name());
                if (i > 0) {
                    svg.line(
                            x(row.cells()[i - 1], left, width),
                            errorY(row.error()[i - 1], top, height),
                            x,
                            y,
                            colour,
                            2);
                }
            }
            double slope = row.error()[0] * Math.pow((double) row.cells()[0] / row.cells()[last], row.claimed());
            svg.line(
                    x(row.cells()[0], left, width),
                    errorY(row.error()[0], top, height),
                    x(row.cells()[last], left, width),
                    errorY(slope, top, height),
                    colour,
                    0.7);
            svg.dot(left + width + 30, top + 20 + 44 * r, 4, colour, row.name());
            svg.text(left + width + 42, top + 24 + 44 * r, 13, Svg.INK, "start", row.name());
            svg.text(
                    left + width + 42,
                    top + 42 + 44 * r,
                    12,
                    Svg.QUIET,
                    "start",
                    String.format(Locale.ROOT, "order %.2f, claimed %.0f", row.order(), row.claimed()));
        }
        return svg.toString();
    }

    private static double x(int cells, double left, double width) {
        return left + width * Math.log(cells / 4.0) / Math.log(150);
    }

    private static double errorY(double error, double top, double height) {
        return top + height * Math.min(1, -Math.log10(Math.max(1e-6, Math.min(1, error))) / 6);
    }
}
