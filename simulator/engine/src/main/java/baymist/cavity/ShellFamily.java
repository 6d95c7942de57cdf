package baymist.cavity;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.Shell;
import baymist.scene.PhaseStates;
import baymist.scene.ShellSpec;
import baymist.scene.ShellSpec.Floor;
import baymist.scene.ShellSpec.FloorHole;
import baymist.scene.ShellSpec.Frame;
import baymist.scene.ShellSpec.Station;
import baymist.scene.ShellSpec.WebHole;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Tail cone or stretch of fuselage: a skin lofted straight from station to station, webs square to x, stringers, floors.
 *
 * <p>Sections of all stations are divided in step ({@link ShellSections}); between stations the rows run straight. Where the
 * shell twists, further sections keep the facets within 0.5 mm of the ruled surface. The right half is made and mirrored. All
 * sheets are split along the levels of the floors, so that floor, skin and webs share their vertices. A ring frame is a
 * whole web with an opening that follows the skin at the frame's depth.
 */
final class ShellFamily {
    private static final int MOST_STRIPS = 16;
    private static final double SAME_STATION_M = 1e-9;

    private final Shell spec;
    private final ShellSpec shape;
    private final SheetModel model = new SheetModel();
    private final List<LevelCut.Facet> facets = new ArrayList<>();
    /** Right halves of all sections, by x. */
    private final TreeMap<Double, double[][]> sections = new TreeMap<>();

    private ShellFamily(Shell spec) {
        this.spec = spec;
        this.shape = spec.shape();
    }

    static SheetModel build(Shell spec) {
        ShellChecks.measures(spec);
        return new ShellFamily(spec).build();
    }

    private SheetModel build() {
        ShellSections division = ShellSections.of(shape);
        layOut(division);
        int skin = model.part("skin", PartKind.SKIN, spec.gaugeM());
        skin(skin);
        webs();
        for (Floor floor : shape.floors()) {
            List<LevelCut.Facet> split = new LevelCut(floor.upM()).split(facets);
            facets.clear();
            facets.addAll(split);
        }
        floors(skin);
        stringers(division);
        for (LevelCut.Facet f : facets) {
            model.triangle(f.part(), f.a(), f.b(), f.c());
        }
        return model;
    }

    /** Sections at stations, webs, ends of floors, and in between where the shell twists. */
    private void layOut(ShellSections division) {
        TreeMap<Double, double[][]> stated = new TreeMap<>();
        for (Station s : shape.stations()) {
            stated.put(s.xM(), division.section(s));
        }
        TreeSet<Double> wanted = new TreeSet<>();
        shape.frames().forEach(f -> wanted.add(f.xM()));
        for (Floor floor : shape.floors()) {
            wanted.add(floor.fromM());
            wanted.add(floor.toM());
        }
        Map.Entry<Double, double[][]> before = null;
        for (Map.Entry<Double, double[][]> here : stated.entrySet()) {
            if (before != null) {
                int strips = strips(before, here);
                for (int k = 1; k < strips; k++) {
                    wanted.add(before.getKey() + (here.getKey() - before.getKey()) * k / strips);
                }
            }
            before = here;
        }
        sections.putAll(stated);
        for (double x : wanted) {
            Double below = sections.floorKey(x);
            Double above = sections.ceilingKey(x);
            boolean there =
                    (below != null && x - below < SAME_STATION_M) || (above != null && above - x < SAME_STATION_M);
            if (!there) {
                sections.put(x, between(stated, x));
            }
        }
    }

    private static double[][] between(NavigableMap<Double, double[][]> stated, double x) {
        double from = stated.lowerKey(x);
        double to = stated.higherKey(x);
        double[][] a = stated.lowerEntry(x).getValue();
        double[][] b = stated.higherEntry(x).getValue();
        double s = (x - from) / (to - from);
        double[][] points = new double[a.length][];
        for (int k = 0; k < a.length; k++) {
            points[k] = new double[] {a[k][0] + s * (b[k][0] - a[k][0]), a[k][1] + s * (b[k][1] - a[k][1])};
        }
        return points;
    }

    /** Pieces lengthwise: a diagonal misses the middle of a warped quadrilateral by a quarter of its warp at most. */
    private static int strips(Map.Entry<Double, double[][]> a, Map.Entry<Double, double[][]> b) {
        double worst = 0;
        List<Vec3> near = rightSide(a);
        List<Vec3> far = rightSide(b);
        for (int k = 0; k + 1 < near.size(); k++) {
            Vec3 p = near.get(k);
            Vec3 n = near.get(k + 1).minus(p).cross(far.get(k + 1).minus(p));
            if (n.length() > 0) {
                worst = Math.max(worst, Math.abs(far.get(k).minus(p).dot(n.unit())));
            }
        }
        return (int) Math.min(MOST_STRIPS, Math.max(1, Math.ceil(worst / 4 / ShellSections.CHORD_M)));
    }

    private static List<Vec3> rightSide(Map.Entry<Double, double[][]> section) {
        List<Vec3> points = new ArrayList<>();
        for (double[] p : section.getValue()) {
            points.add(new Vec3(section.getKey(), p[0], p[1]));
        }
        return points;
    }

    private static Vec3 left(Vec3 p) {
        return new Vec3(p.x(), -p.y(), p.z());
    }

    /** A facet unless it has no area because corners coincide. */
    private void facet(int part, Vec3 a, Vec3 b, Vec3 c) {
        if (!a.equals(b) && !b.equals(c) && !c.equals(a)) {
            facets.add(new LevelCut.Facet(part, a, b, c));
        }
    }

    private void skin(int part) {
        List<Vec3> before = List.of();
        for (Map.Entry<Double, double[][]> section : sections.entrySet()) {
            List<Vec3> here = rightSide(section);
            for (int k = 0; k + 1 < here.size() && !before.isEmpty(); k++) {
                Vec3 a = before.get(k);
                Vec3 b = before.get(k + 1);
                Vec3 c = here.get(k + 1);
                Vec3 d = here.get(k);
                if (a.distance(c) <= b.distance(d)) {
                    bothSides(part, a, b, c);
                    bothSides(part, a, c, d);
                } else {
                    bothSides(part, a, b, d);
                    bothSides(part, b, c, d);
                }
            }
            before = here;
        }
    }

    private void bothSides(int part, Vec3 a, Vec3 b, Vec3 c) {
        facet(part, a, b, c);
        facet(part, left(a), left(c), left(b));
    }

    private void webs() {
        web(shape.forwardEnd(), "forward end", sections.firstEntry(), Vec3.X);
        int rings = 0;
        int closed = 0;
        for (Frame frame : shape.frames()) {
            String plain = frame.depthM() > 0 ? "frame " + ++rings : "bulkhead " + ++closed;
            Map.Entry<Double, double[][]> section = sections.floorEntry(frame.xM() + SAME_STATION_M);
            web(frame, frame.name() == null ? plain : frame.name(), section, Vec3.X);
        }
        web(shape.aftEnd(), "aft end", sections.lastEntry(), Vec3.X.negate());
    }

    private void web(Frame frame, String name, Map.Entry<Double, double[][]> section, Vec3 normal) {
        int part = model.part(name, PartKind.RIB, spec.gaugeM());
        List<Vec3> right = rightSide(section);
        for (int k = 0; k + 1 < right.size(); k++) {
            Vec3 a = right.get(k);
            Vec3 b = right.get(k + 1);
            if (b.z() > a.z()) {
                facet(part, left(a), a, b);
                facet(part, left(a), b, left(b));
            }
        }
        if (frame.depthM() > 0) {
            ring(frame, name, part, right, normal);
        }
        int number = 0;
        for (WebHole hole : frame.holes()) {
            number++;
            place(
                    hole.name() == null ? name + " hole " + number : hole.name(),
                    part,
                    hole.outline(),
                    new Vec3(section.getKey(), hole.rightM(), hole.upM()),
                    normal,
                    hole.states(),
                    hole.place());
        }
    }

    private void ring(Frame frame, String name, int part, List<Vec3> right, Vec3 normal) {
        List<double[]> inner = RingOffset.inward(outline(right), frame.depthM());
        if (inner == null) {
            SpecCheck check = new SpecCheck(frame.place());
            check.error(
                    "CAV-043",
                    name + " of depth " + SpecCheck.mm(frame.depthM()) + " at x = "
                            + SpecCheck.mm(right.get(0).x())
                            + " leaves no single opening; a depth below the least radius of the section expected");
            check.orThrow();
            return;
        }
        List<Vec3> loop = new ArrayList<>();
        inner.forEach(p -> loop.add(new Vec3(right.get(0).x(), p[0], p[1])));
        model.placed.add(new SheetModel.Placed(
                name + " opening",
                part,
                Opening.Kind.HOLE,
                RibSheets.polygon(loop, Vec3.Y, normal),
                PhaseStates.ALWAYS_OPEN,
                frame.place()));
    }

    /** Counter-clockwise section {right, up}. */
    private static List<double[]> outline(List<Vec3> right) {
        List<double[]> points = new ArrayList<>();
        right.forEach(p -> points.add(new double[] {p.y(), p.z()}));
        for (int k = right.size() - 1; k >= 0; k--) {
            points.add(new double[] {-right.get(k).y(), right.get(k).z()});
        }
        return points;
    }

    private void place(
            String name, int part, Outline outline, Vec3 centre, Vec3 normal, PhaseStates states, SourcePlace source) {
        // lengthwise = right, across = up, also on an end whose normal points forward
        Vec3 across = normal.equals(Vec3.Z) ? Vec3.X : Vec3.Y;
        PlacedOutline placed = PlacedOutline.of(Outlines.seenAgainst(outline, normal), centre, across, normal);
        model.placed.add(new SheetModel.Placed(name, part, Opening.Kind.HOLE, placed, states, source));
    }

    private void floors(int skin) {
        int number = 0;
        for (Floor floor : shape.floors()) {
            number++;
            String plain = shape.floors().size() == 1 ? "floor" : "floor " + number;
            String name = floor.name() == null ? plain : floor.name();
            int part = model.part(name, PartKind.WALL, spec.gaugeM());
            double from = sections.floorKey(floor.fromM() + SAME_STATION_M);
            double to = sections.floorKey(floor.toM() + SAME_STATION_M);
            TreeMap<Double, Vec3> edge = new TreeMap<>();
            for (LevelCut.Facet f : facets) {
                for (Vec3 p : List.of(f.a(), f.b(), f.c())) {
                    if (f.part() == skin && p.z() == floor.upM() && p.y() > 0 && p.x() >= from && p.x() <= to) {
                        edge.put(p.x(), p);
                    }
                }
            }
            Vec3 before = null;
            for (Vec3 p : edge.values()) {
                if (before != null) {
                    facets.add(new LevelCut.Facet(part, left(before), before, p));
                    facets.add(new LevelCut.Facet(part, left(before), p, left(p)));
                }
                before = p;
            }
            int holes = 0;
            for (FloorHole h : floor.holes()) {
                holes++;
                place(
                        h.name() == null ? name + " hole " + holes : h.name(),
                        part,
                        h.outline(),
                        new Vec3(h.aftM(), h.rightM(), floor.upM()),
                        Vec3.Z,
                        h.states(),
                        h.place());
            }
        }
    }

    /** Blades square to the skin in the plane of each section, along rows of the skin; they cross webs and floors. */
    private void stringers(ShellSections division) {
        int[] rows = division.stringerRows();
        int last = shape.stringers() - 1;
        for (int i = 0; i < shape.stringers(); i++) {
            boolean mirrored = i >= rows.length;
            String name = "stringer " + (i + 1);
            int part = model.part(name, PartKind.STRINGER, spec.gaugeM());
            List<Vec3> before = List.of();
            for (Map.Entry<Double, double[][]> section : sections.entrySet()) {
                List<Vec3> here = blade(name, section, rows[mirrored ? last - i : i]);
                here = mirrored ? List.of(left(here.get(0)), left(here.get(1))) : here;
                if (!before.isEmpty()) {
                    model.quad(part, before.get(0), before.get(1), here.get(1), here.get(0));
                }
                before = here;
            }
        }
    }

    private List<Vec3> blade(String name, Map.Entry<Double, double[][]> section, int row) {
        double[][] points = section.getValue();
        int low = row;
        int high = row;
        while (low > 0 && distance(points[low], points[row]) < 1e-9) {
            low--;
        }
        while (high + 1 < points.length && distance(points[high], points[row]) < 1e-9) {
            high++;
        }
        double dy = points[high][0] - points[low][0];
        double dz = points[high][1] - points[low][1];
        Vec3 foot = new Vec3(section.getKey(), points[row][0], points[row][1]);
        // at the crown, and where a flat keel or crown has run out into a point, a blade stands upright
        boolean middle = foot.y() < 1e-9;
        boolean upper = row > points.length / 2;
        Vec3 inward = middle ? (upper ? Vec3.Z.negate() : Vec3.Z) : new Vec3(0, -dz, dy).unit();
        Vec3 top = foot.plus(shape.stringerHeightM(), inward);
        Outline.Polygon outline = new Outline.Polygon(RingOffset.distinct(outline(rightSide(section))));
        boolean fits = outline.clearanceM(top.y(), top.z()) > 0 && (middle || top.y() > 0);
        if (!fits) {
            SpecCheck check = new SpecCheck(spec.place());
            check.error(
                    "CAV-045",
                    name + " of height " + SpecCheck.mm(shape.stringerHeightM())
                            + " reaches across the middle of the shell at x = " + SpecCheck.mm(section.getKey())
                            + "; blades lower than half of the shell's width expected");
            check.orThrow();
        }
        return List.of(foot, top);
    }

    private static double distance(double[] a, double[] b) {
        return Math.hypot(a[0] - b[0], a[1] - b[1]);
    }
}
