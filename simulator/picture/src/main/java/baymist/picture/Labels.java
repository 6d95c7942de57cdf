package baymist.picture;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Places numbers and names so that none lies on another; what finds no room is left out. */
final class Labels {
    private static final double RADIUS = 13;
    private static final double SIZE = 16;
    private static final double MARGIN = 3;

    private final List<Rectangle2D> taken = new ArrayList<>();

    /** Keeps a place free of labels. */
    void keepFree(Rectangle2D place) {
        taken.add(place);
    }

    /**
     * Draws a number in a ring at a point or near it, with a line back to the point.
     *
     * @return whether there was room
     */
    boolean number(Canvas canvas, String number, double x, double y, Rectangle2D page) throws IOException {
        double half = Math.max(RADIUS, canvas.lettering().width(number, SIZE) / 2 + 7);
        for (int ring = 0; ring <= 4; ring++) {
            int around = ring == 0 ? 1 : 12;
            for (int k = 0; k < around; k++) {
                double angle = 2 * Math.PI * k / around - Math.PI / 2;
                double cx = x + ring * 19 * Math.cos(angle);
                double cy = y + ring * 19 * Math.sin(angle);
                Rectangle2D box = new Rectangle2D.Double(cx - half, cy - RADIUS, 2 * half, 2 * RADIUS);
                if (page.contains(box) && free(box)) {
                    taken.add(box);
                    drawNumber(canvas, number, x, y, cx, cy, half);
                    return true;
                }
            }
        }
        return false;
    }

    private static void drawNumber(Canvas canvas, String number, double x, double y, double cx, double cy, double half)
            throws IOException {
        double away = Math.hypot(cx - x, cy - y);
        if (away > RADIUS) {
            double share = (away - RADIUS) / away;
            Line2D leader = new Line2D.Double(x, y, x + share * (cx - x), y + share * (cy - y));
            canvas.stroke(leader, java.awt.Color.WHITE, 4);
            canvas.stroke(leader, Canvas.BARE, 1.6);
            canvas.fill(new Ellipse2D.Double(x - 2.5, y - 2.5, 5, 5), Canvas.BARE);
        }
        Shape ring = new RoundRectangle2D.Double(
                cx - half + 1, cy - RADIUS + 1, 2 * half - 2, 2 * RADIUS - 2, 2 * RADIUS - 2, 2 * RADIUS - 2);
        canvas.fill(ring, java.awt.Color.WHITE);
        canvas.stroke(ring, Canvas.BARE, 2);
        canvas.text(number, cx, cy + 0.36 * SIZE, SIZE, Canvas.INK, Canvas.Align.CENTRE);
    }

    /** Draws a name beside a box if there is room to its right, left, above or below. */
    boolean name(Canvas canvas, String words, Rectangle2D beside, double size, Rectangle2D page) throws IOException {
        double w = canvas.lettering().width(words, size);
        double h = size;
        double[][] places = {
            {beside.getMaxX() + 5, beside.getCenterY() - h / 2},
            {beside.getMinX() - 5 - w, beside.getCenterY() - h / 2},
            {beside.getCenterX() - w / 2, beside.getMinY() - 4 - h},
            {beside.getCenterX() - w / 2, beside.getMaxY() + 4}
        };
        for (double[] p : places) {
            Rectangle2D box = new Rectangle2D.Double(p[0] - 3, p[1] - 1, w + 6, h + 3);
            if (page.contains(box) && free(box)) {
                taken.add(box);
                canvas.fill(box, new java.awt.Color(255, 255, 255, 215));
                canvas.text(words, p[0], p[1] + 0.82 * h, size, Canvas.INK, Canvas.Align.LEFT);
                return true;
            }
        }
        return false;
    }

    private boolean free(Rectangle2D box) {
        Rectangle2D wide = new Rectangle2D.Double(
                box.getX() - MARGIN, box.getY() - MARGIN, box.getWidth() + 2 * MARGIN, box.getHeight() + 2 * MARGIN);
        return taken.stream().noneMatch(wide::intersects);
    }
}
