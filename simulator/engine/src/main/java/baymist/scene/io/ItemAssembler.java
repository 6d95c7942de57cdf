package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.BayLabel;
import baymist.scene.BodySpec;
import baymist.scene.HingeLine;
import baymist.scene.Obstacle;
import baymist.scene.ProtectedItem;
import baymist.scene.Turns;
import baymist.scene.io.Value.Fields;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes protected items, obstacles and names of bays. */
final class ItemAssembler {
    private final Problems problems;

    ItemAssembler(Problems problems) {
        this.problems = problems;
    }

    List<ProtectedItem> protectedItems(List<Fields> list) {
        List<ProtectedItem> items = new ArrayList<>();
        Map<String, SourcePlace> seen = new HashMap<>();
        for (Fields f : list) {
            once("protected item", f, seen);
            String mask = f.text("mask");
            items.add(new ProtectedItem(
                    f.text("name"),
                    body(f),
                    f.text("part").isEmpty() ? null : f.text("part"),
                    f.si("limit"),
                    mask.isEmpty()
                            ? ProtectedItem.Mask.NONE
                            : ProtectedItem.Mask.valueOf(mask.toUpperCase(Locale.ROOT)),
                    f.place()));
        }
        return items;
    }

    List<Obstacle> obstacles(List<Fields> list) {
        List<Obstacle> obstacles = new ArrayList<>();
        Map<String, SourcePlace> seen = new HashMap<>();
        for (Fields f : list) {
            once("obstacle", f, seen);
            BodySpec body = body(f);
            if (body != null) {
                obstacles.add(new Obstacle(f.text("name"), body, f.place()));
            }
        }
        return obstacles;
    }

    List<BayLabel> bayLabels(List<Fields> list) {
        List<BayLabel> labels = new ArrayList<>();
        Map<String, SourcePlace> seen = new HashMap<>();
        for (Fields f : list) {
            once("bay", f, seen);
            Vec3 at = f.vector("at");
            if (at != null) {
                labels.add(new BayLabel(f.text("name"), at, f.place()));
            }
        }
        return labels;
    }

    @Nullable
    HingeLine hinge(@Nullable Fields f) {
        if (f == null) {
            return null;
        }
        Vec3 from = point(f, "from");
        Vec3 to = point(f, "to");
        if (from.distance(to) < 1e-6) {
            problems.add(
                    SceneProblem.BODY,
                    f.place(),
                    "the hinge line begins and ends at the same place; two places apart are wanted");
        }
        return new HingeLine(from, to);
    }

    private void once(String what, Fields f, Map<String, SourcePlace> seen) {
        String name = f.text("name");
        SourcePlace before = name.isEmpty() ? null : seen.putIfAbsent(name, f.at("name"));
        if (before != null) {
            problems.add(
                    SceneProblem.NAME_TWICE,
                    f.at("name"),
                    "the " + what + " name `" + name + "` is used twice, first at " + before
                            + "; give each its own name");
        }
    }

    private @Nullable BodySpec body(Fields f) {
        Fields sphere = f.fields("sphere");
        if (sphere != null) {
            return new BodySpec.Sphere(point(sphere, "at"), sphere.si("diameter") / 2);
        }
        Fields box = f.fields("box");
        if (box != null) {
            Vec3 turn = point(box, "rotate");
            Vec3 degrees = new Vec3(degrees(turn.x()), degrees(turn.y()), degrees(turn.z()));
            return new BodySpec.Cuboid(
                    point(box, "at"),
                    point(box, "size"),
                    Turns.turned(Vec3.X, degrees),
                    Turns.turned(Vec3.Y, degrees),
                    Turns.turned(Vec3.Z, degrees));
        }
        Fields cylinder = f.fields("cylinder");
        if (cylinder == null) {
            return null;
        }
        Vec3 from = point(cylinder, "from");
        Vec3 to = point(cylinder, "to");
        if (from.distance(to) < 1e-6) {
            problems.add(
                    SceneProblem.BODY,
                    cylinder.place(),
                    "the cylinder begins and ends at the same place; two places apart are wanted");
        }
        return new BodySpec.Cylinder(from, to, cylinder.si("diameter") / 2);
    }

    private static Vec3 point(Fields f, String key) {
        Vec3 v = f.vector(key);
        return v == null ? Vec3.ZERO : v;
    }

    /** Whole right angles come back as such. */
    private static double degrees(double rad) {
        double deg = Math.toDegrees(rad);
        double near = Math.rint(deg * 1e9) / 1e9;
        return Math.abs(near - deg) < 1e-11 ? near : deg;
    }
}
