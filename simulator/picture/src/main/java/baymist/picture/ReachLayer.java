package baymist.picture;

import baymist.access.AccessFinder;
import baymist.access.NearTips;
import baymist.access.SagResult;
import baymist.access.WandPose;
import baymist.access.WandStop;
import baymist.geom.Vec3;
import baymist.picture.SectionPainter.Place;
import baymist.run.ReachLine;
import baymist.run.ReachResult;
import baymist.voxel.VoxelGrid;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reach in a section: shaded where a tip place is near and in sight of the plane, dots where tips can be, lines for the deepest
 * bodies, thin dashes for where they would be without sag, crosses where something stops them.
 */
final class ReachLayer implements SectionLayer {
    static final Color REACHED = new Color(0xDDF0E4);
    static final Color STOP = Canvas.BARE;
    /** Told apart on white and on each other, also by those who see red and green alike (after Okabe and Ito). */
    private static final Color[] WANDS = {
        new Color(0x8E2A86),
        new Color(0x0072B2),
        new Color(0xB8860B),
        new Color(0x00785A),
        new Color(0x5B4FCF),
        new Color(0x7A4A1E)
    };
    /** Ways that get a name; of more, the deepest. */
    private static final int NAMED = 8;
    /** Ends closer together than this share a name, pixels. */
    private static final double SPOT = 14;
    /** Dots of tip places in one view. */
    private static final int DOTS = 4000;
    /** Lines of one wand's other ways. */
    private static final int WAYS = 12;

    private final ReachResult reach;
    private final NearTips near;
    private final List<ReachLine> drawn;
    private final List<String> wands;

    ReachLayer(ReachResult reach) {
        this.reach = reach;
        this.drawn = reach.lines().stream().filter(l -> l.reach().feasible()).toList();
        this.wands = drawn.stream().map(l -> l.wand().name()).distinct().toList();
        this.near = new NearTips(
                reach.around(), drawn.stream().flatMap(l -> l.places().stream()).toList(), reach.withinM());
    }

    private Color colour(ReachLine l) {
        return WANDS[wands.indexOf(l.wand().name()) % WANDS.length];
    }

    @Override
    public void ground(Canvas c, Place p) {
        VoxelGrid grid = reach.grid();
        int axis = p.view().axis();
        Vec3 size = grid.sizeM();
        double half = 0.5 * size.get(axis) * (1 + 1e-9);
        double w = p.pixelsPerM() * Math.abs(size.dot(p.view().right()));
        double h = p.pixelsPerM() * Math.abs(size.dot(p.view().up()));
        for (int cell = 0; cell < grid.cellCount(); cell++) {
            Vec3 q = grid.centre(cell);
            double off = p.view().atM() - q.get(axis);
            if (Math.abs(off) <= half && near.sees(q)) {
                c.fill(new Rectangle2D.Double(p.x(q) - w / 2, p.y(q) - h / 2, w + 0.5, h + 0.5), REACHED);
            }
        }
    }

    @Override
    public void label(Place p, LeaderLabels labels) throws IOException {
        List<ReachLine> sorted = new ArrayList<>(drawn);
        sorted.sort(Comparator.comparingDouble((ReachLine l) -> -l.reach().maxDepthM()));
        // one name for those that end at the same place of the page
        Map<List<Long>, List<ReachLine>> groups = new LinkedHashMap<>();
        for (ReachLine l : sorted) {
            Vec3 at = shown(l, p);
            if (at != null && p.view().holds(at)) {
                List<Long> spot = List.of(Math.round(p.x(at) / SPOT), Math.round(p.y(at) / SPOT));
                groups.computeIfAbsent(spot, k -> new ArrayList<>()).add(l);
            }
        }
        int named = 0;
        for (List<ReachLine> group : groups.values()) {
            ReachLine l = group.get(0);
            Vec3 at = shown(l, p);
            if (at != null && named++ < NAMED) {
                String more = group.size() > 1 ? " (+" + (group.size() - 1) + ")" : "";
                String words = words(l, p.view().whole()) + more;
                labels.add(words, p.x(at), p.y(at), p.y(at) <= 0.5 * p.height(), colour(l));
            }
        }
    }

    /** Where a way gets its name: at its tip, in a section where it passes the plane; null if it does not. */
    private static @Nullable Vec3 shown(ReachLine l, Place p) {
        List<Vec3> line = line(l);
        return p.view().whole() ? line.get(line.size() - 1) : pierce(line, p);
    }

    private String words(ReachLine l, boolean whole) {
        String who = wands.size() == 1
                ? l.entry().name()
                : l.entry().name() + ": " + l.wand().name();
        if (!whole) {
            return l.entry().name();
        }
        WandStop stop = l.reach().stop();
        String by = stop == null
                ? ""
                : stop.partName().equals(AccessFinder.WAND_LENGTH) ? ", wand ends" : ", " + stop.partName();
        return String.format(Locale.ROOT, "%s %.0f mm%s", who, 1e3 * l.reach().maxDepthM(), by);
    }

    /** Centre line of the deepest body, sagged where that is known. */
    private static List<Vec3> line(ReachLine l) {
        SagResult sag = l.sag();
        return sag != null ? sag.centrelineM() : l.reach().tips().get(0).centrelineM();
    }

    /** Where a line passes the plane of the section, or null. */
    private static @Nullable Vec3 pierce(List<Vec3> line, Place p) {
        int axis = p.view().axis();
        double at = p.view().atM();
        for (int i = 1; i < line.size(); i++) {
            double a = line.get(i - 1).get(axis);
            double b = line.get(i).get(axis);
            if (a < at != b < at) {
                return line.get(i - 1).plus((at - a) / (b - a), line.get(i).minus(line.get(i - 1)));
            }
        }
        return null;
    }

    @Override
    public void paint(Canvas c, Place p, BayLabels bays) {
        dots(c, p);
        for (ReachLine l : drawn) {
            if (p.view().whole()) {
                ways(c, p, l, bays);
            } else {
                Vec3 at = pierce(line(l), p);
                if (at != null) {
                    bays.avoid(new Rectangle2D.Double(p.x(at) - 8, p.y(at) - 8, 16, 16));
                    c.stroke(new Ellipse2D.Double(p.x(at) - 6, p.y(at) - 6, 12, 12), colour(l), 2);
                    c.fill(new Ellipse2D.Double(p.x(at) - 2.5, p.y(at) - 2.5, 5, 5), colour(l));
                }
            }
        }
        for (ReachLine l : drawn) {
            stop(c, p, l);
        }
    }

    /** Where tips can be: all of them in a view of the whole, in a section those in front of the plane as far as it stands for. */
    private void dots(Canvas c, Place p) {
        int total = drawn.stream().mapToInt(l -> l.places().size()).sum();
        int step = 1 + total / DOTS;
        double depth = Math.abs(p.view().farM() - p.view().atM());
        int i = 0;
        for (ReachLine l : drawn) {
            Color pale = pale(colour(l));
            for (Vec3 q : l.places()) {
                boolean shown = p.view().whole() || Math.abs(p.view().behindM(q)) <= depth;
                if (i++ % step == 0 && shown) {
                    c.fill(new Ellipse2D.Double(p.x(q) - 2, p.y(q) - 2, 4, 4), pale);
                }
            }
        }
    }

    private static Color pale(Color c) {
        return new Color(c.getRed(), c.getGreen(), c.getBlue(), 70);
    }

    private void ways(Canvas c, Place p, ReachLine l, BayLabels bays) {
        List<WandPose> tips = l.reach().tips();
        int step = 1 + tips.size() / WAYS;
        for (int i = step; i < tips.size(); i += step) {
            c.stroke(path(p, tips.get(i).centrelineM()), pale(colour(l)), 1);
        }
        SagResult sag = l.sag();
        List<Vec3> line = line(l);
        if (sag != null) {
            c.stroke(p.line(line.get(0), sag.straightTipM()), colour(l), 1, 3f, 4f);
        }
        Vec3 outside = line.get(0)
                .plus(-WandLayer.OUTSIDE_M, line.get(1).minus(line.get(0)).unit());
        c.stroke(p.line(outside, line.get(0)), colour(l), 2);
        c.stroke(path(p, line), colour(l), 2.2);
        for (int i = 1; i < line.size(); i++) {
            bays.avoid(p.line(line.get(i - 1), line.get(i)));
        }
        Vec3 tip = line.get(line.size() - 1);
        c.fill(new Ellipse2D.Double(p.x(tip) - 4.5, p.y(tip) - 4.5, 9, 9), colour(l));
    }

    private static Path2D path(Place p, List<Vec3> line) {
        Path2D path = new Path2D.Double();
        path.moveTo(p.x(line.get(0)), p.y(line.get(0)));
        line.forEach(q -> path.lineTo(p.x(q), p.y(q)));
        return path;
    }

    private static void stop(Canvas c, Place p, ReachLine l) {
        WandStop stop = l.reach().stop();
        if (stop == null || stop.partName().equals(AccessFinder.WAND_LENGTH)) {
            return;
        }
        double depth = Math.abs(p.view().farM() - p.view().atM());
        if (p.view().whole() || Math.abs(p.view().behindM(stop.placeM())) <= depth) {
            cross(c, p.x(stop.placeM()), p.y(stop.placeM()));
        }
    }

    private static void cross(Canvas c, double x, double y) {
        c.stroke(new Line2D.Double(x - 6, y - 6, x + 6, y + 6), STOP, 2.4);
        c.stroke(new Line2D.Double(x - 6, y + 6, x + 6, y - 6), STOP, 2.4);
    }

    @Override
    public void key(Canvas c, double x, double y) throws IOException {
        double pen = x;
        c.fill(new Rectangle2D.Double(pen, y - 11, 34, 14), REACHED);
        pen = word(c, "near a tip", pen + 42, y, Canvas.INK) + 16;
        c.stroke(new Line2D.Double(pen, y - 5, pen + 26, y - 5), Canvas.QUIET, 1, 3f, 4f);
        pen = word(c, "without sag", pen + 34, y, Canvas.INK) + 22;
        cross(c, pen, y - 5);
        pen = word(c, "stopped here", pen + 12, y, Canvas.INK) + 22;
        for (int i = 0; i < Math.min(WANDS.length, wands.size()); i++) {
            double end = pen + 28 + c.lettering().width(wands.get(i), 14);
            if (end > StructureDrawing.WIDTH - 60) {
                break;
            }
            c.stroke(new Line2D.Double(pen, y - 5, pen + 20, y - 5), WANDS[i], 2.4);
            pen = word(c, wands.get(i), pen + 28, y, Canvas.INK) + 16;
        }
    }

    private static double word(Canvas c, String words, double x, double y, Color colour) throws IOException {
        c.text(words, x, y, 14, colour, Canvas.Align.LEFT);
        return x + c.lettering().width(words, 14);
    }
}
