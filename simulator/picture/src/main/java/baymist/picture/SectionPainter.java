package baymist.picture;

import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.scene.OpeningState;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Draws one section: cut sheets, what lies behind, openings as gaps or outlines, bays, and a layer over them. */
final class SectionPainter {
    static final Color OPEN = new Color(0x0B6E8F);
    private static final Color BEHIND = new Color(0xC4C9D0);
    private static final double SHEET = 2.6;
    /** An opening that looks this squarely at the reader is drawn by its outline: cosine. */
    static final double FACES = 0.7;

    private final CheckResult check;
    private final SectionLayer layer;
    private final List<Vec3[]> edges;

    /** A painter of the structure with the wands of its passes. */
    SectionPainter(CheckResult check) {
        this(check, new WandLayer(check));
    }

    /** A painter of the structure with a layer of one's own over it. */
    SectionPainter(CheckResult check, SectionLayer layer) {
        this.check = check;
        this.layer = layer;
        this.edges = FeatureEdges.of(check.cavity());
    }

    /** Where a view lies on the page: pixels of its drawing's top left corner, and its scale. */
    record Place(SectionView view, double x0, double y0, double pixelsPerM) {
        double x(Vec3 p) {
            return x0 + (p.dot(view.right()) - view.lowU()) * pixelsPerM;
        }

        double y(Vec3 p) {
            return y0 + (view.highV() - p.dot(view.up())) * pixelsPerM;
        }

        double width() {
            return (view.highU() - view.lowU()) * pixelsPerM;
        }

        double height() {
            return (view.highV() - view.lowV()) * pixelsPerM;
        }

        Rectangle2D frame() {
            return new Rectangle2D.Double(x0, y0, width(), height());
        }

        Line2D line(Vec3 a, Vec3 b) {
            return new Line2D.Double(x(a), y(a), x(b), y(b));
        }
    }

    /** Names of the openings and wands of a view, at a scale; the corner of the drawing is (0, 0). */
    LeaderLabels labels(SectionView view, double pixelsPerM, Lettering lettering) throws IOException {
        Place p = new Place(view, 0, 0, pixelsPerM);
        LeaderLabels labels = new LeaderLabels(lettering);
        for (int o = 0; o < check.cavity().openings().size(); o++) {
            Opening opening = check.cavity().openings().get(o);
            Vec3 at = placeOf(view, o);
            if (at != null) {
                boolean top = p.y(at) <= 0.5 * p.height();
                labels.add(words(opening), p.x(at), p.y(at), top, OPEN);
            }
        }
        layer.label(p, labels);
        labels.settle();
        return labels;
    }

    /** Where an opening shows in a view: in the middle of its gap, or of its outline; null if it doesn't show. */
    private @org.jspecify.annotations.Nullable Vec3 placeOf(SectionView view, int o) {
        Opening opening = check.cavity().openings().get(o);
        double normal = Math.abs(opening.place().normal().get(view.axis()));
        Vec3 c = opening.place().centreM();
        if (normal > FACES) {
            boolean shown = view.holds(c) && (view.isSeen(c) || view.whole());
            return shown ? c : null;
        }
        Vec3 sum = Vec3.ZERO;
        double length = 0;
        for (SectionCut.Segment s : gaps(view)) {
            if (s.owner() == o) {
                double l = s.a().distance(s.b());
                sum = sum.plus(l / 2, s.a()).plus(l / 2, s.b());
                length += l;
            }
        }
        Vec3 middle = length > 0 ? sum.times(1 / length) : null;
        return middle != null && view.holds(middle) ? middle : null;
    }

    private List<SectionCut.Segment> gaps(SectionView view) {
        return SectionCut.of(check.cavity().closures(), check.cavity()::openingOfClosure, view.axis(), view.atM());
    }

    private static String words(Opening o) {
        boolean open = o.states().pass() == OpeningState.OPEN;
        String state = open ? "" : " (" + o.states().pass().name().toLowerCase(Locale.ROOT) + ")";
        return o.name() + " " + size(o.place().outline()) + state;
    }

    private static String size(Outline outline) {
        if (outline instanceof Outline.Circle circle) {
            return "\u00f8" + Ticks.plain(2e3 * circle.radiusM(), 3);
        }
        if (outline instanceof Outline.Slot slot) {
            return Ticks.plain(1e3 * slot.lengthM(), 3) + "\u00d7" + Ticks.plain(1e3 * slot.widthM(), 3);
        }
        if (outline instanceof Outline.RoundedRectangle r) {
            return Ticks.plain(1e3 * r.lengthM(), 3) + "\u00d7" + Ticks.plain(1e3 * r.widthM(), 3);
        }
        return Ticks.plain(1e4 * outline.areaM2(), 3) + " cm\u00b2";
    }

    void paint(Canvas c, Place p, LeaderLabels labels) throws IOException {
        SectionView view = p.view();
        BayLabels bays = new BayLabels(check.grid());
        for (double[] l : labels.lines(0, p.height())) {
            bays.avoid(new Line2D.Double(p.x0() + l[0], p.y0() + l[1], p.x0() + l[2], p.y0() + l[3]));
        }
        Shape all = c.graphics().getClip();
        c.graphics().setClip(p.frame());
        layer.ground(c, p);
        for (Vec3[] e : edges) {
            // the part of an edge behind the plane
            Vec3[] seen = clip(view, e[0], e[1]);
            if (seen != null) {
                c.stroke(p.line(seen[0], seen[1]), BEHIND, 1);
            }
        }
        outlines(c, p, bays);
        for (SectionCut.Segment s :
                SectionCut.of(check.cavity().cutSheets(), check.cavity()::partOfCut, view.axis(), view.atM())) {
            c.stroke(p.line(s.a(), s.b()), Canvas.INK, SHEET);
            bays.avoid(p.line(s.a(), s.b()));
        }
        gaps(c, p, bays);
        layer.paint(c, p, bays);
        bays.draw(c, p);
        c.graphics().setClip(all);
        c.stroke(p.frame(), Canvas.LINE, 1);
        ticks(c, p);
    }

    private static Vec3 @org.jspecify.annotations.Nullable [] clip(SectionView view, Vec3 a, Vec3 b) {
        double from = view.behindM(a);
        double to = view.behindM(b);
        double depth = Math.abs(view.farM() - view.atM());
        double low = 0;
        double high = 1;
        if (from == to) {
            return from >= 0 && from <= depth ? new Vec3[] {a, b} : null;
        }
        double t0 = -from / (to - from);
        double t1 = (depth - from) / (to - from);
        low = Math.max(low, Math.min(t0, t1));
        high = Math.min(high, Math.max(t0, t1));
        return low < high ? new Vec3[] {a.plus(low, b.minus(a)), a.plus(high, b.minus(a))} : null;
    }

    /** Openings that face the reader: full line behind the plane, dashed in front of it. */
    private void outlines(Canvas c, Place p, BayLabels bays) {
        for (int o = 0; o < check.cavity().openings().size(); o++) {
            Opening opening = check.cavity().openings().get(o);
            double normal = Math.abs(opening.place().normal().get(p.view().axis()));
            if (normal > FACES && placeOf(p.view(), o) != null) {
                Path2D path = new Path2D.Double();
                for (double[] q : opening.place().outline().polygon(48)) {
                    Vec3 v = opening.place().point(q[0], q[1]);
                    if (path.getCurrentPoint() == null) {
                        path.moveTo(p.x(v), p.y(v));
                    } else {
                        path.lineTo(p.x(v), p.y(v));
                    }
                }
                path.closePath();
                bays.avoid(path);
                boolean behind = p.view().behindM(opening.place().centreM()) >= 0;
                if (behind) {
                    c.stroke(path, OPEN, 1.6);
                } else {
                    c.stroke(path, OPEN, 1.6, 6f, 4f);
                }
            }
        }
    }

    /** The cut pieces of each opening as one line, so that its dashes run evenly. */
    private void gaps(Canvas c, Place p, BayLabels bays) {
        List<List<SectionCut.Segment>> byOpening = new ArrayList<>();
        for (int o = 0; o < check.cavity().openings().size(); o++) {
            byOpening.add(new ArrayList<>());
        }
        for (SectionCut.Segment s : gaps(p.view())) {
            byOpening.get(s.owner()).add(s);
            bays.avoid(p.line(s.a(), s.b()));
        }
        for (int o = 0; o < byOpening.size(); o++) {
            Path2D path = joined(p, byOpening.get(o));
            c.stroke(path, Color.WHITE, SHEET + 2);
            if (check.cavity().openings().get(o).states().pass() == OpeningState.OPEN) {
                c.stroke(path, OPEN, 1.4, 1.5f, 4f);
            } else {
                c.stroke(path, OPEN, SHEET + 1.5, 5f, 5f);
            }
        }
    }

    private static Path2D joined(Place p, List<SectionCut.Segment> pieces) {
        List<Line2D> lines = new ArrayList<>();
        Rectangle2D box = new Rectangle2D.Double(0, 0, -1, -1);
        for (SectionCut.Segment s : pieces) {
            Line2D line = p.line(s.a(), s.b());
            box = lines.isEmpty() ? line.getBounds2D() : box.createUnion(line.getBounds2D());
            lines.add(line);
        }
        boolean across = box.getWidth() >= box.getHeight();
        List<Line2D> forward = new ArrayList<>();
        for (Line2D l : lines) {
            boolean turn = across ? l.getX1() > l.getX2() : l.getY1() > l.getY2();
            forward.add(turn ? new Line2D.Double(l.getP2(), l.getP1()) : l);
        }
        forward.sort(Comparator.comparingDouble((Line2D l) -> across ? l.getX1() : l.getY1()));
        Path2D path = new Path2D.Double();
        for (Line2D l : forward) {
            if (path.getCurrentPoint() == null || path.getCurrentPoint().distance(l.getP1()) > 0.05) {
                path.moveTo(l.getX1(), l.getY1());
            }
            path.lineTo(l.getX2(), l.getY2());
        }
        return path;
    }

    /** Positions in structure axes below and to the left of the frame. */
    private static void ticks(Canvas c, Place p) throws IOException {
        SectionView v = p.view();
        double size = 11;
        double bottom = p.y0() + p.height();
        for (boolean across : new boolean[] {true, false}) {
            Vec3 way = across ? v.right() : v.up();
            double low = across ? v.lowU() : v.lowV();
            double high = across ? v.highU() : v.highV();
            double step = Ticks.roundUp((across ? 90 : 34) / p.pixelsPerM());
            double sign = way.x() + way.y() + way.z();
            for (long k = (long) Math.ceil(low / step); k * step <= high; k++) {
                String mm = Long.toString(Math.round(1e3 * sign * k * step));
                if (across) {
                    double x = p.x0() + (k * step - low) * p.pixelsPerM();
                    c.stroke(new Line2D.Double(x, bottom, x, bottom - 5), Canvas.QUIET, 1);
                    c.text(mm, x, bottom + 13, size, Canvas.QUIET, Canvas.Align.CENTRE);
                } else {
                    double y = p.y0() + (high - k * step) * p.pixelsPerM();
                    c.stroke(new Line2D.Double(p.x0(), y, p.x0() + 5, y), Canvas.QUIET, 1);
                    c.text(mm, p.x0() - 5, y + 4, size, Canvas.QUIET, Canvas.Align.RIGHT);
                }
            }
        }
    }
}
