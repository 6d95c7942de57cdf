package baymist.cavity;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.BoxSectionSpec;
import baymist.scene.BoxSectionSpec.Baffle;
import baymist.scene.BoxSectionSpec.Bend;
import baymist.scene.BoxSectionSpec.End;
import baymist.scene.BoxSectionSpec.Plate;
import baymist.scene.BoxSectionSpec.Wall;
import baymist.scene.BoxSectionSpec.WallHole;
import baymist.scene.CavitySpec;
import baymist.scene.PhaseStates;
import baymist.scene.ShellSpec;
import baymist.scene.ShellSpec.Floor;
import baymist.scene.ShellSpec.FloorHole;
import baymist.scene.ShellSpec.Frame;
import baymist.scene.ShellSpec.HalfBreadth;
import baymist.scene.ShellSpec.Measured;
import baymist.scene.ShellSpec.Oval;
import baymist.scene.ShellSpec.Station;
import baymist.scene.ShellSpec.WebHole;
import baymist.scene.TubeFrameSpec;
import baymist.scene.TubeFrameSpec.Node;
import baymist.scene.TubeFrameSpec.Tube;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Random members of the families shell, box section and tube frame, all of them valid by construction. */
public final class FamilyDraws {
    private static final SourcePlace HERE = CavityFixtures.PLACE;
    private static final PhaseStates OPEN = PhaseStates.ALWAYS_OPEN;

    private FamilyDraws() {}

    private static double in(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    public static CavitySpec.Shell shell(Random random) {
        int stations = 2 + random.nextInt(3);
        boolean mixed = random.nextInt(3) == 0;
        boolean measured = random.nextInt(3) == 0;
        List<Station> list = new ArrayList<>();
        double x = in(random, -0.2, 0.2);
        double least = Double.POSITIVE_INFINITY;
        double size = in(random, 0.25, 0.6);
        double keel = Double.NEGATIVE_INFINITY;
        double crown = Double.POSITIVE_INFINITY;
        double first = x;
        for (int i = 0; i < stations; i++) {
            double w = size * in(random, 0.5, 1);
            double above = size * in(random, 0.5, 1);
            double below = size * in(random, 0.5, 1);
            double centre = in(random, -0.1, 0.1) * size;
            boolean points = measured || (mixed && i % 2 == 1);
            list.add(
                    points
                            ? measured(random, x, w, centre - below, centre + above)
                            : new Oval(
                                    x, w, above, below, centre, random.nextBoolean() ? 2 : in(random, 1.5, 4), HERE));
            least = Math.min(least, Math.min(w, Math.min(above, below)));
            keel = Math.max(keel, centre - below);
            crown = Math.min(crown, centre + above);
            x += i + 1 < stations ? in(random, 0.3, 0.8) : 0;
        }
        List<Frame> frames = frames(random, first, x, least);
        List<Floor> floors = new ArrayList<>();
        if (random.nextBoolean()) {
            double up = keel + (crown - keel) * in(random, 0.35, 0.65);
            double from = random.nextBoolean() ? first : first + 0.05 * (x - first);
            double to = random.nextBoolean() ? x : first + 0.8 * (x - first);
            double at = 0.5 * (from + to) + 0.013;
            List<FloorHole> holes = clearOf(frames, at, 0.03)
                    ? List.of(new FloorHole(null, new Outline.Circle(0.02), at, 0.01, OPEN, HERE))
                    : List.of();
            floors.add(new Floor(null, up, from, to, holes, HERE));
        }
        // a slot in the upper half of an end, clear of a floor's edge
        WebHole slot = new WebHole("aft slot", new Outline.Slot(0.05, 0.02), 0, 0.75 * crown + 0.25 * keel, OPEN, HERE);
        boolean ring = random.nextBoolean();
        Frame forward = new Frame(null, 0, ring ? 0.15 * least : 0, List.of(), HERE);
        Frame aft = new Frame(null, 0, 0, List.of(slot), HERE);
        // few in sections with a pointed keel, where blades beside it would cross the middle
        int stringers = random.nextInt(3) == 0 ? 0 : 1 + random.nextInt(measured || mixed ? 3 : 9);
        ShellSpec shape = new ShellSpec(list, 0, stringers, 0.04 * least, frames, forward, aft, floors);
        return new CavitySpec.Shell("draw", shape, 0.0008, List.of(), HERE);
    }

    private static boolean clearOf(List<Frame> frames, double x, double gap) {
        return frames.stream().allMatch(f -> Math.abs(f.xM() - x) > gap);
    }

    private static List<Frame> frames(Random random, double first, double last, double least) {
        List<Frame> frames = new ArrayList<>();
        int n = random.nextInt(4);
        for (int i = 0; i < n; i++) {
            double at = first + (last - first) * (i + in(random, 0.3, 0.9)) / (n + 0.2);
            boolean ring = random.nextInt(3) > 0;
            // a closed web gets a hole in its middle
            List<WebHole> holes = ring
                    ? List.of()
                    : List.of(new WebHole(null, new Outline.Circle(0.2 * least), 0, 0.02 * least, OPEN, HERE));
            frames.add(new Frame(null, at, ring ? least * in(random, 0.1, 0.2) : 0, holes, HERE));
        }
        return frames;
    }

    /** A convex section between keel and crown, with or without flats. */
    private static Measured measured(Random random, double x, double w, double low, double high) {
        int n = 3 + random.nextInt(5);
        boolean flatBottom = random.nextBoolean();
        boolean flatTop = random.nextBoolean();
        List<HalfBreadth> b = new ArrayList<>();
        for (int k = 0; k <= n; k++) {
            double t = (double) k / n;
            double round = Math.sqrt(Math.max(0, 1 - (2 * t - 1) * (2 * t - 1)));
            double half = 0.35 * w + 0.65 * w * round;
            boolean point = (k == 0 && !flatBottom) || (k == n && !flatTop);
            b.add(new HalfBreadth(low + t * (high - low), point ? 0 : half));
        }
        return new Measured(x, b, HERE);
    }

    public static CavitySpec.BoxSection box(Random random) {
        boolean hat = random.nextBoolean();
        double top = in(random, 0.05, 0.15);
        double bottom = hat ? top * in(random, 0.7, 1.4) : top;
        double height = in(random, 0.05, 0.15);
        double size = Math.max(height, Math.max(top, bottom));
        List<Bend> line = new ArrayList<>();
        Vec3 at = new Vec3(in(random, -1, 1), in(random, -1, 1), in(random, -1, 1));
        Vec3 direction = new Vec3(1, in(random, -0.3, 0.3), in(random, -0.2, 0.2)).unit();
        line.add(new Bend(at, 0, 0, HERE));
        int legs = 1 + random.nextInt(3);
        double firstLeg = 0;
        for (int i = 0; i < legs; i++) {
            double length = size * in(random, 6, 8);
            firstLeg = i == 0 ? length : firstLeg;
            at = at.plus(length, direction);
            double radius = i + 1 < legs && random.nextInt(3) > 0 ? size * in(random, 1, 2) : 0;
            line.add(new Bend(at, radius, random.nextBoolean() ? 0 : 1 + random.nextInt(4), HERE));
            Vec3 turn = new Vec3(in(random, -1, 1), in(random, -1, 1), in(random, -0.8, 0.8));
            direction = direction
                    .plus(0.6, turn.plus(-turn.dot(direction), direction))
                    .unit();
        }
        // holes, baffles and plates keep to the first leg, clear of its bend
        double free = firstLeg - 2.5 * size;
        WebHole web =
                new WebHole(null, new Outline.Circle(0.2 * Math.min(height, Math.min(top, bottom))), 0, 0, OPEN, HERE);
        List<Baffle> baffles = random.nextBoolean() ? List.of(new Baffle(0.55 * free, List.of(web), HERE)) : List.of();
        Wall wall = Wall.values()[random.nextInt(4)];
        boolean whole = random.nextBoolean();
        List<Plate> plates = random.nextInt(3) == 0
                ? List.of()
                : List.of(new Plate(
                        wall,
                        0.1 * free,
                        0.5 * free,
                        0.25 * Math.min(height, Math.min(top, bottom)),
                        whole ? 0 : 0.3 * Math.min(height, Math.min(top, bottom)),
                        HERE));
        List<WallHole> holes = List.of(
                new WallHole("drain", Wall.BOTTOM, new Outline.Circle(0.004), 0.8 * free, 0.1 * bottom, OPEN, HERE),
                new WallHole("access", Wall.RIGHT, new Outline.Slot(0.03, 0.012), 0.7 * free, 0, OPEN, HERE));
        BoxSectionSpec shape = new BoxSectionSpec(
                top,
                bottom,
                height,
                line,
                Vec3.Z,
                new End(false, List.of(web)),
                new End(random.nextBoolean(), List.of()),
                baffles,
                plates,
                holes);
        return new CavitySpec.BoxSection("draw", shape, 0.001, List.of(), HERE);
    }

    /** A tetrahedron of four nodes with three to six tubes, or a longeron with two struts. */
    public static CavitySpec.TubeFrame tubes(Random random) {
        double size = in(random, 0.14, 0.2);
        double[][] corners = {{0, 0, 0}, {1, 0, 0}, {0.5, 0.85, 0}, {0.5, 0.3, 0.8}, {0.5, 0, 0}};
        List<Node> nodes = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Vec3 p = new Vec3(corners[i][0], corners[i][1], corners[i][2]).times(size);
            Vec3 off = new Vec3(in(random, -1, 1), in(random, -1, 1), in(random, -1, 1)).times(0.1 * size);
            nodes.add(new Node("n" + i, p.plus(off)));
        }
        nodes.add(new Node("middle", nodes.get(0).atM().plus(nodes.get(1).atM()).times(0.5)));
        int[][] all = {{0, 1}, {1, 2}, {2, 0}, {0, 3}, {1, 3}, {4, 3}};
        int count = 1 + random.nextInt(all.length);
        List<Tube> tubes = new ArrayList<>();
        double outer = in(random, 0.018, 0.026);
        for (int k = 0; k < count; k++) {
            boolean equal = random.nextBoolean();
            double own = k == 0 || equal ? outer : outer * in(random, 0.7, 1);
            boolean[] lands = new boolean[2];
            for (Tube t : tubes) {
                for (int e = 0; e < 2; e++) {
                    lands[e] |= t.from() == all[k][e] || t.to() == all[k][e] || all[k][e] == 4;
                }
            }
            double hole = 0.3 * own;
            tubes.add(
                    new Tube(null, all[k][0], all[k][1], own, 0.0015, lands[0] ? hole : 0, lands[1] ? hole : 0, HERE));
        }
        List<TubeFrameSpec.Gusset> gussets = new ArrayList<>();
        for (int k = 1; k < count && gussets.isEmpty(); k++) {
            // tubes 0 and 1 meet at node 1, 0 and 2 at node 0
            if (k <= 2 && random.nextBoolean()) {
                gussets.add(
                        new TubeFrameSpec.Gusset(null, k == 1 ? 1 : 0, 0, k, in(random, 0.2, 0.5) * size, 0.001, HERE));
            }
        }
        TubeFrameSpec shape = new TubeFrameSpec(nodes, tubes, 12 + 4 * random.nextInt(4), gussets);
        return new CavitySpec.TubeFrame("draw", shape, List.of(), HERE);
    }
}
