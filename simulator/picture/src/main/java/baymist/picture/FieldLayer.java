package baymist.picture;

import baymist.field.PoseShare;
import baymist.field.ReachField;
import baymist.geom.Vec3;
import baymist.picture.SectionPainter.Place;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/**
 * A reach field in a section: cells coloured by their share, the region as a heavy line, the wand at its best pose as a ghost with its jet's direction.
 */
final class FieldLayer implements SectionLayer {
    /** Beginnings of the titles of views: which field they show. */
    static final String JET = "Jet from here.  ";

    static final String FOG = "Fog from here.  ";

    /** Colours begin at this share; below it a cell stays white. */
    private static final double LEAST = 0.001;

    private static final double KEY_WIDTH = 300;
    private static final double ARROW_M = 0.06;

    private final ReachField field;

    FieldLayer(ReachField field) {
        this.field = field;
    }

    /** Place of a share on the scale, logarithmic, 0..1. */
    private static double place(double share) {
        return Math.max(0, Math.min(1, Math.log(share / LEAST) / Math.log(1 / LEAST)));
    }

    private static Color colour(double share) {
        return new Color(FilmColours.colour(place(share)).toRgb());
    }

    @Override
    public void ground(Canvas c, Place p) {
        double[] share = p.view().title().startsWith(JET)
                ? field.jet().share()
                : field.fog().share();
        VoxelGrid grid = field.grid();
        int axis = p.view().axis();
        Vec3 size = grid.sizeM();
        double half = 0.5 * size.get(axis) * (1 + 1e-9);
        double w = p.pixelsPerM() * Math.abs(size.dot(p.view().right()));
        double h = p.pixelsPerM() * Math.abs(size.dot(p.view().up()));
        for (int cell = 0; cell < grid.cellCount(); cell++) {
            Vec3 q = grid.centre(cell);
            if (Math.abs(p.view().atM() - q.get(axis)) <= half && share[cell] >= LEAST) {
                c.fill(new Rectangle2D.Double(p.x(q) - w / 2, p.y(q) - h / 2, w + 0.5, h + 0.5), colour(share[cell]));
            }
        }
    }

    @Override
    public void label(Place p, LeaderLabels labels) throws IOException {
        if (field.poses().isEmpty()) {
            return;
        }
        PoseShare best = field.poses().get(0);
        Vec3 tip = best.pose().positionM();
        if (p.view().holds(tip)) {
            String words = String.format(
                    Locale.ROOT,
                    "best pose: %.0f mm deep, clock %.0f°",
                    1e3 * best.hold().fromDepthM(),
                    Math.toDegrees(best.hold().clockRad()));
            labels.add(words, p.x(tip), p.y(tip), p.y(tip) <= 0.5 * p.height(), Canvas.WAND);
        }
    }

    @Override
    public void paint(Canvas c, Place p, BayLabels bays) {
        region(c, p, bays);
        if (!field.poses().isEmpty()) {
            wand(c, p, field.poses().get(0), bays);
        }
    }

    /** Surfels of the region that the plane cuts, each as the stretch that it covers. */
    private void region(Canvas c, Place p, BayLabels bays) {
        SurfelSet s = field.grid().surfels();
        int axis = p.view().axis();
        Vec3 size = field.grid().sizeM();
        for (int i : field.region().surfels()) {
            Vec3 at = new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]);
            Vec3 n = new Vec3(s.normalX()[i], s.normalY()[i], s.normalZ()[i]);
            boolean cut = Math.abs(at.get(axis) - p.view().atM()) <= 0.5 * size.get(axis)
                    && Math.abs(n.get(axis)) < SectionPainter.FACES;
            if (cut) {
                Vec3 unit = axis == 0 ? Vec3.X : axis == 1 ? Vec3.Y : Vec3.Z;
                Vec3 along = unit.cross(n).unit();
                double half = 0.5
                        * (Math.abs(along.x()) * size.x()
                                + Math.abs(along.y()) * size.y()
                                + Math.abs(along.z()) * size.z());
                Line2D line = p.line(at.plus(-half, along), at.plus(half, along));
                c.stroke(line, Canvas.BARE, 5);
                bays.avoid(line);
            }
        }
    }

    private static void wand(Canvas c, Place p, PoseShare best, BayLabels bays) {
        Color ghost = new Color(Canvas.WAND.getRed(), Canvas.WAND.getGreen(), Canvas.WAND.getBlue(), 150);
        List<Vec3> body = best.bodyM();
        Path2D path = new Path2D.Double();
        path.moveTo(p.x(body.get(0)), p.y(body.get(0)));
        for (Vec3 q : body) {
            path.lineTo(p.x(q), p.y(q));
            bays.avoid(new Rectangle2D.Double(p.x(q) - 3, p.y(q) - 3, 6, 6));
        }
        c.stroke(path, ghost, 3, 9f, 5f);
        Vec3 tip = best.pose().positionM();
        c.fill(new Ellipse2D.Double(p.x(tip) - 5, p.y(tip) - 5, 10, 10), Canvas.WAND);
        Vec3 head = tip.plus(ARROW_M, best.pose().pin());
        if (Math.hypot(p.x(head) - p.x(tip), p.y(head) - p.y(tip)) > 12) {
            c.stroke(p.line(tip, head), Canvas.WAND, 2);
            c.fill(PanelPainter.arrow(p.x(tip), p.y(tip), p.x(head), p.y(head)), Canvas.WAND);
        }
    }

    @Override
    public void key(Canvas c, double x, double y) throws IOException {
        double left = x + 20;
        c.text("share that ends on the region", left - 20, y, 14, Canvas.INK, Canvas.Align.LEFT);
        double bar = left + 200;
        for (int i = 0; i < (int) KEY_WIDTH; i++) {
            Color colour = new Color(FilmColours.colour((i + 0.5) / KEY_WIDTH).toRgb());
            c.fill(new Rectangle2D.Double(bar + i, y - 14, 1.5, 16), colour);
        }
        c.stroke(new Rectangle2D.Double(bar, y - 14, KEY_WIDTH, 16), Canvas.QUIET, 1);
        for (double share : new double[] {0.001, 0.01, 0.1, 1}) {
            double tx = bar + KEY_WIDTH * place(share);
            c.text(Ticks.plain(100 * share, 2) + " %", tx, y + 16, 12, Canvas.INK, Canvas.Align.CENTRE);
        }
        double r = bar + KEY_WIDTH + 50;
        c.stroke(new Line2D.Double(r, y - 5, r + 34, y - 5), Canvas.BARE, 5);
        c.text("the region", r + 44, y, 14, Canvas.INK, Canvas.Align.LEFT);
        c.stroke(new Line2D.Double(r + 140, y - 5, r + 174, y - 5), Canvas.WAND, 3, 9f, 5f);
        c.fill(new Ellipse2D.Double(r + 169, y - 10, 10, 10), Canvas.WAND);
        c.text("wand at its best pose, arrow: pin", r + 190, y, 14, Canvas.INK, Canvas.Align.LEFT);
    }
}
