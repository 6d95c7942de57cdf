package baymist.access;

import baymist.geom.Vec3;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says in a sentence or two, as a trainer would read it out, how a wand gets where it gets to. */
public final class RouteStory {
    private RouteStory() {}

    /** The story of what a search found, for any kind of wand: told from the deepest body and the stop. */
    public static String of(ReachProblem p, WandReach reach) {
        WandStop stop = reach.stop();
        String why = stop == null ? "" : stop.why();
        if (!reach.feasible() || reach.tips().isEmpty()) {
            return String.format(Locale.ROOT, "The %s does not go in at %s: %s.", reach.wand(), reach.entry(), why);
        }
        WandPose body = reach.tips().get(0);
        List<String> through = through(p, body);
        return String.format(
                Locale.ROOT,
                "The %s goes in at %s for %s%s%s. %s.",
                reach.wand(),
                reach.entry(),
                length(body.depthM()),
                bent(p.wand(), turnRad(body)),
                by(through),
                ending(p.wand(), why));
    }

    /** The story of one way of a flexible wand. */
    public static String of(ReachProblem p, FlexRoute route) {
        return String.format(
                Locale.ROOT,
                "Feed the %s in at %s and let it turn through %.0f degrees in all%s; with %s inside it takes about %.0f N to push."
                        + " The tightest place is at %s, with %s to spare. %s.",
                p.wand().name(),
                p.entry().name(),
                Math.toDegrees(route.bendRad()),
                by(route.through()),
                length(route.depthM()),
                Math.ceil(route.pushN()),
                route.tightAt().isEmpty() ? "the entry" : route.tightAt(),
                play(route.clearanceM()),
                ending(p.wand(), route.stop().why()));
    }

    /** The story of threading a hook tube. */
    public static String of(ReachProblem p, HookMotion motion) {
        if (motion.steps().isEmpty()) {
            return String.format(
                    Locale.ROOT,
                    "The %s does not go in at %s: %s.",
                    p.wand().name(),
                    p.entry().name(),
                    motion.stop().why());
        }
        return String.format(
                Locale.ROOT,
                "Start the %s tip first at %s, swing its tail round as the bend slides through, and go on to %s; the least room is %s, at %s"
                        + " when %s is inside. At full depth it can be turned to %s. %s.",
                p.wand().name(),
                p.entry().name(),
                length(motion.depthM()),
                play(motion.leastClearanceM()),
                motion.leastWhere(),
                length(motion.leastSlideM()),
                clocks(motion.clocksRad()),
                ending(p.wand(), motion.stop().why()));
    }

    private static String ending(WandSpec wand, String why) {
        if (why.isEmpty()) {
            return "Nothing stops it";
        }
        String first = why.substring(0, 1).toUpperCase(Locale.ROOT) + why.substring(1);
        return wand.kind() == WandSpec.Kind.STRAIGHT ? "It ends there: " + why : first;
    }

    private static String length(double m) {
        return m < 0.9995 ? String.format(Locale.ROOT, "%.0f mm", 1e3 * m) : String.format(Locale.ROOT, "%.2f m", m);
    }

    private static String play(double m) {
        return m < 0.0005 ? "next to nothing" : String.format(Locale.ROOT, "%.1f mm", 1e3 * m);
    }

    private static String bent(WandSpec wand, double rad) {
        return switch (wand.kind()) {
            case STRAIGHT -> "";
            case BENT -> String.format(Locale.ROOT, ", its %.0f degree hook with it", Math.toDegrees(rad));
            case FLEXIBLE -> String.format(Locale.ROOT, ", turning through %.0f degrees in all", Math.toDegrees(rad));
        };
    }

    private static String by(List<String> through) {
        return through.isEmpty() ? "" : ", by way of " + String.join(", ", through);
    }

    private static List<String> through(ReachProblem p, WandPose body) {
        Gates gates = new Gates(p.cavity().openings());
        List<Integer> way = List.of();
        List<Vec3> line = body.centrelineM();
        for (int i = 0; i + 1 < line.size(); i++) {
            // the entry itself lies at the first point: begin a hair behind it
            Vec3 along = line.get(i + 1).minus(line.get(i));
            Vec3 a = i == 0 ? line.get(0).plus(0.01, along) : line.get(i);
            double length = line.get(i + 1).distance(a);
            if (length > 0) {
                List<Integer> now = gates.after(way, PathPiece.straight(new Heading(a, along.unit()), length));
                way = now == null ? way : now;
            }
        }
        return gates.names(way);
    }

    private static double turnRad(WandPose body) {
        double sum = 0;
        List<Vec3> line = body.centrelineM();
        for (int i = 1; i + 1 < line.size(); i++) {
            Vec3 a = line.get(i).minus(line.get(i - 1));
            Vec3 b = line.get(i + 1).minus(line.get(i));
            sum += Math.atan2(a.cross(b).length(), a.dot(b));
        }
        return sum;
    }

    /** Clock angles as ranges, e.g. "340 to 20 and 160 to 200 degrees". */
    private static String clocks(List<Double> rad) {
        if (rad.isEmpty()) {
            return "no angle";
        }
        double step = 2 * Math.PI;
        for (int i = 1; i < rad.size(); i++) {
            step = Math.min(step, rad.get(i) - rad.get(i - 1));
        }
        int full = (int) Math.round(2 * Math.PI / step);
        if (rad.size() == full && full > 1) {
            return "any clock angle";
        }
        List<double[]> ranges = new ArrayList<>();
        for (double r : rad) {
            double[] last = ranges.isEmpty() ? null : ranges.get(ranges.size() - 1);
            if (last != null && r - last[1] < 1.5 * step) {
                last[1] = r;
            } else {
                ranges.add(new double[] {r, r});
            }
        }
        double[] first = ranges.get(0);
        double[] end = ranges.get(ranges.size() - 1);
        if (ranges.size() > 1 && first[0] + 2 * Math.PI - end[1] < 1.5 * step) {
            first[0] = end[0];
            ranges.remove(ranges.size() - 1);
        }
        List<String> words = new ArrayList<>();
        for (double[] r : ranges) {
            words.add(
                    r[0] == r[1]
                            ? String.format(Locale.ROOT, "%.0f", Math.toDegrees(r[0]))
                            : String.format(Locale.ROOT, "%.0f to %.0f", Math.toDegrees(r[0]), Math.toDegrees(r[1])));
        }
        return String.join(" and ", words) + " degrees on the clock";
    }
}
