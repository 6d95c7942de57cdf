package baymist.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * A drawing sheet as lines, areas and texts in mm, x to the right and y down from the top left corner; {@link SheetSvg} and
 * {@link SheetPdf} write it.
 */
final class Sheet {
    /** Outlines of a drawing, mm. */
    static final double THICK = 0.5;

    /** Dimensions, axes, hidden edges, mm. */
    static final double THIN = 0.18;

    /** At least the mean width of a letter of a dimension, mm. */
    private static final double WIDE_LETTER = 1.6;

    /** How a line is broken. */
    enum Dash {
        SOLID,
        HIDDEN,
        AXIS;

        /** Lengths of strokes and gaps, mm; none when solid. */
        double[] patternMm() {
            return switch (this) {
                case SOLID -> new double[0];
                case HIDDEN -> new double[] {1.6, 0.9};
                case AXIS -> new double[] {5, 1, 0.6, 1};
            };
        }
    }

    /** Which end of a text stands at its place. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }

    /** Something on the sheet. */
    sealed interface Item {}

    /**
     * Points joined by straight lines.
     *
     * @param xy x and y in turn, mm
     * @param filled an area without an outline instead of lines
     * @param grey 0 = black to 1 = white
     */
    record Path(double[] xy, boolean closed, boolean filled, double widthMm, Dash dash, double grey) implements Item {
        Path(double[] xy, boolean closed, boolean filled, double widthMm, Dash dash) {
            this(xy, closed, filled, widthMm, dash, 0);
        }
    }

    /**
     * A line of text.
     *
     * @param sizeMm height of an em
     * @param upright whether it reads from bottom to top
     */
    record Text(double x, double y, double sizeMm, Anchor anchor, boolean upright, String words) implements Item {}

    private final double widthMm;
    private final double heightMm;
    private final String title;
    private final List<Item> items = new ArrayList<>();

    Sheet(double widthMm, double heightMm, String title) {
        this.widthMm = widthMm;
        this.heightMm = heightMm;
        this.title = title;
    }

    double widthMm() {
        return widthMm;
    }

    double heightMm() {
        return heightMm;
    }

    String title() {
        return title;
    }

    List<Item> items() {
        return List.copyOf(items);
    }

    void line(double x1, double y1, double x2, double y2, double width, Dash dash) {
        items.add(new Path(new double[] {x1, y1, x2, y2}, false, false, width, dash));
    }

    void thin(double x1, double y1, double x2, double y2) {
        line(x1, y1, x2, y2, THIN, Dash.SOLID);
    }

    void path(double[] xy, boolean closed, double width, Dash dash) {
        items.add(new Path(xy, closed, false, width, dash));
    }

    void area(double... xy) {
        items.add(new Path(xy, true, true, 0, Dash.SOLID));
    }

    /** An area in grey: 0 = black to 1 = white. */
    void shade(double grey, double... xy) {
        items.add(new Path(xy, true, true, 0, Dash.SOLID, grey));
    }

    /** Lines in grey: 0 = black to 1 = white. */
    void greyPath(double grey, double[] xy, double width) {
        items.add(new Path(xy, false, false, width, Dash.SOLID, grey));
    }

    void box(double x, double y, double width, double height, double line) {
        path(new double[] {x, y, x + width, y, x + width, y + height, x, y + height}, true, line, Dash.SOLID);
    }

    /** A circle or a part of one; angles in rad from the right, clockwise on the sheet. */
    void arc(double cx, double cy, double r, double fromRad, double toRad, double width, Dash dash) {
        int n = (int) Math.max(8, Math.ceil(Math.abs(toRad - fromRad) / Math.toRadians(4)));
        double[] xy = new double[2 * n + 2];
        for (int i = 0; i <= n; i++) {
            double a = fromRad + (toRad - fromRad) * i / n;
            xy[2 * i] = cx + r * Math.cos(a);
            xy[2 * i + 1] = cy + r * Math.sin(a);
        }
        path(xy, false, width, dash);
    }

    void circle(double cx, double cy, double r, double width, Dash dash) {
        arc(cx, cy, r, 0, 2 * Math.PI, width, dash);
    }

    void dot(double cx, double cy, double r) {
        double[] xy = new double[48];
        for (int i = 0; i < 24; i++) {
            xy[2 * i] = cx + r * Math.cos(i * Math.PI / 12);
            xy[2 * i + 1] = cy + r * Math.sin(i * Math.PI / 12);
        }
        area(xy);
    }

    void text(double x, double y, double size, Anchor anchor, String words) {
        items.add(new Text(x, y, size, anchor, false, words));
    }

    void upright(double x, double y, double size, String words) {
        items.add(new Text(x, y, size, Anchor.MIDDLE, true, words));
    }

    /** A filled arrow head with its point at (x, y), pointing along (dx, dy). */
    void arrow(double x, double y, double dx, double dy) {
        double length = Math.hypot(dx, dy);
        double ux = dx / length;
        double uy = dy / length;
        double bx = x - 2.2 * ux;
        double by = y - 2.2 * uy;
        area(x, y, bx - 0.4 * uy, by + 0.4 * ux, bx + 0.4 * uy, by - 0.4 * ux);
    }

    /** A dimension between two x on a level, with lines up or down from what is measured. */
    void across(double x1, double x2, double from, double level, String words) {
        double past = level > from ? 1 : -1;
        thin(x1, from, x1, level + past);
        thin(x2, from, x2, level + past);
        double left = Math.min(x1, x2);
        double right = Math.max(x1, x2);
        boolean room = right - left > 9;
        boolean inside = right - left > WIDE_LETTER * words.length() + 4;
        if (room) {
            thin(left, level, inside ? right : right + 4, level);
            arrow(left, level, -1, 0);
            arrow(right, level, 1, 0);
            text(
                    inside ? 0.5 * (left + right) : right + 5,
                    inside ? level - 0.8 : level + 1,
                    2.8,
                    inside ? Anchor.MIDDLE : Anchor.START,
                    words);
        } else {
            // too narrow: arrows from outside, the words beside
            thin(left - 5, level, right + 5, level);
            arrow(left, level, 1, 0);
            arrow(right, level, -1, 0);
            text(right + 6, level + 1, 2.8, Anchor.START, words);
        }
    }

    /** A dimension between two y at a place x, with lines to the side from what is measured. */
    void up(double y1, double y2, double from, double level, String words) {
        double past = level > from ? 1 : -1;
        thin(from, y1, level + past, y1);
        thin(from, y2, level + past, y2);
        double top = Math.min(y1, y2);
        double bottom = Math.max(y1, y2);
        if (bottom - top > 9) {
            thin(level, top, level, bottom);
            arrow(level, top, 0, -1);
            arrow(level, bottom, 0, 1);
        } else {
            thin(level, top - 5, level, bottom + 5);
            arrow(level, top, 0, 1);
            arrow(level, bottom, 0, -1);
        }
        upright(level - 0.9, 0.5 * (top + bottom), 2.8, words);
    }

    /** Words beside a place, with a line to it. */
    void leader(double x, double y, double tx, double ty, String words) {
        thin(x, y, tx, ty);
        boolean right = tx >= x;
        double end = tx + (right ? 3 : -3);
        thin(tx, ty, end, ty);
        arrow(x, y, x - tx, y - ty);
        text(end + (right ? 0.8 : -0.8), ty + 1, 2.8, right ? Anchor.START : Anchor.END, words);
    }
}
