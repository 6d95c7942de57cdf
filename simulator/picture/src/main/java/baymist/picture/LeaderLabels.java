package baymist.picture;

import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Names above and below a drawing, each joined to its place by a line. No name lies on another, and no line passes through
 * a name: a line goes straight up to the left end of its name, and a name stands in a farther row than every name to its
 * right that begins before it ends.
 */
final class LeaderLabels {
    static final double SIZE = 14;
    static final double ROW = 19;
    /** Between the drawing and the first row, pixels; below it stand the numbers of the scale. */
    static final double GAP = 12;

    static final double GAP_BELOW = 24;

    /** A line runs beside its place, not straight over it: what it points at is often an upright line itself. */
    private static final double ASIDE = 16;

    private static final double LINES_APART = 11;

    private final Lettering lettering;
    private final List<Label> above = new ArrayList<>();
    private final List<Label> below = new ArrayList<>();

    /** A name, its place on the drawing, and where it ends up, pixels from the drawing's top left corner. */
    private static final class Label {
        final String words;
        final double x;
        final double y;
        final double width;
        final Color colour;
        double left;
        int row;

        Label(String words, double x, double y, double width, Color colour) {
            this.words = words;
            this.x = x;
            this.y = y;
            this.width = width;
            this.colour = colour;
        }
    }

    LeaderLabels(Lettering lettering) {
        this.lettering = lettering;
    }

    /** Adds a name to the band above or below. */
    void add(String words, double x, double y, boolean top, Color colour) throws IOException {
        (top ? above : below).add(new Label(words, x, y, lettering.width(words, SIZE), colour));
    }

    /** Settles where the names stand; to be called once all are added. */
    void settle() {
        settle(above, 1);
        settle(below, -1);
    }

    /** @param nearestFirst of places one above the other the one nearest to the band first, so that their lines don't cross */
    private static void settle(List<Label> band, int nearestFirst) {
        band.sort(Comparator.comparingLong((Label l) -> Math.round(2 * l.x))
                .thenComparingDouble(l -> nearestFirst * l.y));
        double before = Double.NEGATIVE_INFINITY;
        for (Label l : band) {
            l.left = Math.max(l.x + ASIDE, before + LINES_APART);
            before = l.left;
        }
        for (int i = band.size() - 1; i >= 0; i--) {
            Label l = band.get(i);
            int row = 0;
            for (int j = i + 1; j < band.size(); j++) {
                if (band.get(j).left < l.left + l.width + 8) {
                    row = Math.max(row, band.get(j).row + 1);
                }
            }
            l.row = row;
        }
    }

    double heightAbove() {
        return height(above, GAP);
    }

    double heightBelow() {
        return height(below, GAP_BELOW);
    }

    private static double height(List<Label> band, double gap) {
        return band.isEmpty()
                ? gap
                : gap + ROW * (1 + band.stream().mapToInt(l -> l.row).max().orElse(0));
    }

    /** How far the names reach to the right of the drawing's left edge, pixels. */
    double reach() {
        double reach = 0;
        for (List<Label> band : List.of(above, below)) {
            for (Label l : band) {
                reach = Math.max(reach, l.left + l.width + 4);
            }
        }
        return reach;
    }

    /** Boxes of the names {left, top, right, bottom}, for tests; bands begin at {@code top} and {@code bottom}. */
    List<double[]> boxes(double top, double bottom) {
        List<double[]> boxes = new ArrayList<>();
        for (Label l : above) {
            double y = top - GAP - ROW * l.row;
            boxes.add(new double[] {l.left, y - ROW + 2, l.left + l.width, y});
        }
        for (Label l : below) {
            double y = bottom + GAP_BELOW + ROW * (l.row + 1);
            boxes.add(new double[] {l.left, y - ROW + 2, l.left + l.width, y});
        }
        return boxes;
    }

    /** The lines as pieces {x, y, x, y}: aslant from the place, then upright to the name. */
    List<double[]> lines(double top, double bottom) {
        List<double[]> lines = new ArrayList<>();
        for (Label l : above) {
            path(lines, l, top - GAP - ROW * l.row - 4);
        }
        for (Label l : below) {
            path(lines, l, bottom + GAP_BELOW + ROW * (l.row + 1) - SIZE + 4);
        }
        return lines;
    }

    private static void path(List<double[]> lines, Label l, double end) {
        double down = end > l.y ? 1 : -1;
        double knee = l.y + down * Math.min(l.left - l.x, Math.abs(end - l.y));
        lines.add(new double[] {l.x, l.y, l.left, knee});
        lines.add(new double[] {l.left, knee, l.left, end});
    }

    /**
     * Draws names and lines.
     *
     * @param x0,y0 top left corner of the drawing
     * @param bottom height of the drawing, pixels
     */
    void draw(Canvas c, double x0, double y0, double bottom) throws IOException {
        for (Label l : above) {
            draw(c, l, x0, y0, -GAP - ROW * l.row - 4);
        }
        for (Label l : below) {
            draw(c, l, x0, y0, bottom + GAP_BELOW + ROW * (l.row + 1) - SIZE + 4);
        }
    }

    private static void draw(Canvas c, Label l, double x0, double y0, double end) throws IOException {
        List<double[]> pieces = new ArrayList<>();
        path(pieces, l, end);
        for (double[] p : pieces) {
            c.stroke(new Line2D.Double(x0 + p[0], y0 + p[1], x0 + p[2], y0 + p[3]), l.colour, 1);
        }
        c.fill(new Ellipse2D.Double(x0 + l.x - 2.4, y0 + l.y - 2.4, 4.8, 4.8), l.colour);
        double base = end < 0 ? end : end + SIZE - 8;
        c.text(l.words, x0 + l.left + 3, y0 + base, SIZE, Canvas.INK, Canvas.Align.LEFT);
    }
}
