package baymist.verify;

import java.util.Locale;

/** A small drawing as SVG text: lines, dots and words, the same bytes for the same calls. */
final class Svg {
    static final String INK = "#22303c";
    static final String QUIET = "#7a8793";

    private final StringBuilder body = new StringBuilder();
    private final double width;
    private final double height;

    Svg(double width, double height) {
        this.width = width;
        this.height = height;
    }

    Svg line(double x1, double y1, double x2, double y2, String colour, double thick) {
        body.append(format(
                "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-width=\"%.1f\"/>%n",
                x1, y1, x2, y2, colour, thick));
        return this;
    }

    Svg dot(double x, double y, double radius, String colour, String tip) {
        body.append(format(
                "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"%s\"><title>%s</title></circle>%n",
                x, y, radius, colour, escaped(tip)));
        return this;
    }

    /** @param anchor start, middle or end */
    Svg text(double x, double y, double size, String colour, String anchor, String words) {
        body.append(format(
                "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%.0f\" fill=\"%s\" text-anchor=\"%s\">%s</text>%n",
                x, y, size, colour, anchor, escaped(words)));
        return this;
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values).replace(System.lineSeparator(), "\n");
    }

    private static String escaped(String words) {
        return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    @Override
    public String toString() {
        return format(
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" width=\"%.0f\" height=\"%.0f\""
                                + " font-family=\"Helvetica, Arial, sans-serif\">%n<rect width=\"100%%\" height=\"100%%\" fill=\"white\"/>%n",
                        width, height, width, height)
                + body
                + "</svg>\n";
    }
}
