package baymist.picture;

import baymist.cavity.Opening;
import baymist.geom.Vec3;
import baymist.scene.OpeningState;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** One section of the structure on a sheet, to scale, with marks that keep clear of each other. */
final class CardView {
    private static final double CUT = 0.45;
    private static final double BEHIND = 0.13;
    private static final double MARK = 2.6;

    private final Sheet sheet;
    private final SectionView view;
    private final double x0;
    private final double y0;
    private final double mmPerM;
    private final List<Rectangle2D> taken = new ArrayList<>();

    /** A view whose top left corner stands at a place of the sheet, mm. */
    CardView(Sheet sheet, SectionView view, double x0, double y0, double mmPerM) {
        this.sheet = sheet;
        this.view = view;
        this.x0 = x0;
        this.y0 = y0;
        this.mmPerM = mmPerM;
    }

    /** Length in the structure, m, of a length on paper, mm. */
    double metres(double mm) {
        return mm / mmPerM;
    }

    double x(Vec3 p) {
        return x0 + (p.dot(view.right()) - view.lowU()) * mmPerM;
    }

    double y(Vec3 p) {
        return y0 + (view.highV() - p.dot(view.up())) * mmPerM;
    }

    double widthMm() {
        return (view.highU() - view.lowU()) * mmPerM;
    }

    double heightMm() {
        return (view.highV() - view.lowV()) * mmPerM;
    }

    /** Sheets that the plane cuts, edges behind it, openings as gaps or outlines. */
    void structure(baymist.cavity.Cavity cavity, List<Vec3[]> edges) {
        for (Vec3[] e : edges) {
            if (view.isSeen(e[0]) && view.isSeen(e[1])) {
                inFrame(e[0], e[1], BEHIND, 0.6);
            }
        }
        for (SectionCut.Segment s : SectionCut.of(cavity.cutSheets(), cavity::partOfCut, view.axis(), view.atM())) {
            inFrame(s.a(), s.b(), CUT, 0);
        }
        for (SectionCut.Segment s :
                SectionCut.of(cavity.closures(), cavity::openingOfClosure, view.axis(), view.atM())) {
            Opening o = cavity.openings().get(s.owner());
            if (o.states().pass() != OpeningState.OPEN) {
                inFrame(s.a(), s.b(), 2 * CUT, 0.45);
            }
        }
        for (Opening o : cavity.openings()) {
            if (Math.abs(o.place().normal().get(view.axis())) > SectionPainter.FACES
                    && view.holds(o.place().centreM())
                    && 2 * o.place().outline().reachM() * mmPerM < Math.max(widthMm(), heightMm())) {
                outline(o);
            }
        }
    }

    /** The part of a line that lies within the view (Liang and Barsky 1984); sheets go on beyond it. */
    private void inFrame(Vec3 a, Vec3 b, double width, double grey) {
        double[] p = {x(a), y(a)};
        double[] d = {x(b) - p[0], y(b) - p[1]};
        double[] low = {x0, y0};
        double[] high = {x0 + widthMm(), y0 + heightMm()};
        double from = 0;
        double to = 1;
        for (int k = 0; k < 2; k++) {
            if (d[k] == 0) {
                from = p[k] < low[k] || p[k] > high[k] ? 2 : from;
                continue;
            }
            double t0 = (low[k] - p[k]) / d[k];
            double t1 = (high[k] - p[k]) / d[k];
            from = Math.max(from, Math.min(t0, t1));
            to = Math.min(to, Math.max(t0, t1));
        }
        if (from < to) {
            double[] xy = {p[0] + from * d[0], p[1] + from * d[1], p[0] + to * d[0], p[1] + to * d[1]};
            sheet.greyPath(grey, xy, width);
        }
    }

    private void outline(Opening o) {
        List<double[]> corners = o.place().outline().polygon(32);
        double[] xy = new double[2 * corners.size()];
        for (int i = 0; i < corners.size(); i++) {
            Vec3 p = o.place().point(corners.get(i)[0], corners.get(i)[1]);
            xy[2 * i] = x(p);
            xy[2 * i + 1] = y(p);
        }
        boolean behind = view.behindM(o.place().centreM()) >= 0;
        sheet.path(xy, true, 0.2, behind ? Sheet.Dash.SOLID : Sheet.Dash.HIDDEN);
    }

    /** Whether a place shows in this view's frame. */
    boolean holds(Vec3 p) {
        return view.holds(p);
    }

    void line(List<Vec3> way, double width, double grey) {
        if (way.size() < 2) {
            return;
        }
        double[] xy = new double[2 * way.size()];
        for (int i = 0; i < way.size(); i++) {
            xy[2 * i] = x(way.get(i));
            xy[2 * i + 1] = y(way.get(i));
        }
        sheet.greyPath(grey, xy, width);
    }

    void dot(Vec3 p, double r) {
        sheet.dot(x(p), y(p), r);
    }

    void ring(Vec3 p, double r) {
        sheet.shade(1, circle(x(p), y(p), r));
        sheet.circle(x(p), y(p), r, 0.3, Sheet.Dash.SOLID);
    }

    static double[] circle(double cx, double cy, double r) {
        double[] xy = new double[48];
        for (int i = 0; i < 24; i++) {
            xy[2 * i] = cx + r * Math.cos(i * Math.PI / 12);
            xy[2 * i + 1] = cy + r * Math.sin(i * Math.PI / 12);
        }
        return xy;
    }

    /** Keeps marks away from a place. */
    void keepClear(Vec3 p, double r) {
        taken.add(new Rectangle2D.Double(x(p) - r, y(p) - r, 2 * r, 2 * r));
    }

    /** Keeps marks off a line. */
    void keepClear(List<Vec3> way, double r) {
        for (int i = 1; i < way.size(); i++) {
            Vec3 a = way.get(i - 1);
            Vec3 step = way.get(i).minus(a);
            int n = (int) Math.ceil(Math.hypot(x(way.get(i)) - x(a), y(way.get(i)) - y(a)) / r) + 1;
            for (int k = 0; k <= n; k++) {
                keepClear(a.plus((double) k / n, step), r);
            }
        }
    }

    /** Keeps marks out of a rectangle of the sheet, mm. */
    void keepOut(double x, double y, double width, double height) {
        taken.add(new Rectangle2D.Double(x, y, width, height));
    }

    /** A word in a box with a line to its place, where it covers no other mark. */
    void mark(Vec3 at, String word, boolean boxed) {
        double w = 1.2 + 0.62 * MARK * word.length();
        double h = MARK + 1.0;
        double px = x(at);
        double py = y(at);
        Rectangle2D best = null;
        for (double r = 3.2; r < 40 && best == null; r += 1.6) {
            for (int k = 0; k < 16 && best == null; k++) {
                double a = -Math.PI / 2 + k * Math.PI / 8 * (k % 2 == 0 ? 1 : -1);
                double cx = px + (r + w / 2) * Math.cos(a);
                double cy = py + (r + h / 2) * Math.sin(a);
                Rectangle2D box = new Rectangle2D.Double(cx - w / 2, cy - h / 2, w, h);
                if (free(box)) {
                    best = box;
                }
            }
        }
        if (best == null) {
            best = new Rectangle2D.Double(px - w / 2, py - h / 2, w, h);
        }
        taken.add(best);
        sheet.line(px, py, best.getCenterX(), best.getCenterY(), 0.18, Sheet.Dash.SOLID);
        double[] xy = {
            best.getMinX(),
            best.getMinY(),
            best.getMaxX(),
            best.getMinY(),
            best.getMaxX(),
            best.getMaxY(),
            best.getMinX(),
            best.getMaxY()
        };
        sheet.shade(1, xy);
        if (boxed) {
            sheet.path(xy, true, 0.25, Sheet.Dash.SOLID);
        }
        sheet.text(best.getCenterX(), best.getCenterY() + 0.36 * MARK, MARK, Sheet.Anchor.MIDDLE, word);
    }

    private boolean free(Rectangle2D box) {
        boolean inside = box.getMinX() >= 0.3
                && box.getMaxX() <= sheet.widthMm() - 0.3
                && box.getMinY() >= 0.3
                && box.getMaxY() <= sheet.heightMm() - 0.3;
        return inside && taken.stream().noneMatch(t -> t.intersects(box));
    }

    /** An arrow head at a place, pointing on the page from one place to another. */
    void arrow(Vec3 at, Vec3 from, Vec3 to) {
        double dx = x(to) - x(from);
        double dy = y(to) - y(from);
        if (Math.hypot(dx, dy) > 1e-6) {
            sheet.arrow(x(at), y(at), dx, dy);
        }
    }
}
