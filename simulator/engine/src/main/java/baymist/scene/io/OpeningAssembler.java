package baymist.scene.io;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.io.Value.Fields;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes outlines, states and openings, and checks that outlines close without crossing themselves. */
final class OpeningAssembler {
    private static final Outline BROKEN = new Outline.Circle(Double.NaN);

    private static final int ELLIPSE_CORNERS = 96;

    private final Problems problems;
    /** Names of openings seen so far, with the line of each. */
    private final Map<String, SourcePlace> names = new HashMap<>();

    OpeningAssembler(Problems problems) {
        this.problems = problems;
    }

    List<OpeningSpec> openings(List<Fields> list) {
        List<OpeningSpec> openings = new ArrayList<>();
        for (Fields f : list) {
            claim(f.text("name"), f.at("name"));
            Vec3 centre = f.vector("at");
            openings.add(new OpeningSpec(
                    f.text("name"),
                    f.text("part"),
                    outline(f.fields("shape")),
                    centre == null ? Vec3.ZERO : centre,
                    direction(f, "lengthwise"),
                    states(f.get("state")),
                    f.place()));
        }
        return openings;
    }

    /** Notes the name of an opening; a second one of the same name is a problem. */
    void claim(String name, SourcePlace place) {
        SourcePlace before = name.isEmpty() ? null : names.putIfAbsent(name, place);
        if (before != null) {
            problems.add(
                    SceneProblem.NAME_TWICE,
                    place,
                    "the opening name `" + name + "` is used twice, first at " + before + "; give each its own name");
        }
    }

    /** A unit vector, or null where the key is absent or broken. */
    @Nullable
    Vec3 direction(Fields f, String key) {
        Vec3 v = f.vector(key);
        if (v == null || !v.isFinite()) {
            return null;
        }
        if (v.length() < 1e-9) {
            problems.add(
                    SceneProblem.NO_DIRECTION,
                    f.at(key),
                    "`[0, 0, 0]` points nowhere; a direction such as `[0, 1, 0]` is wanted");
            return null;
        }
        return v.unit();
    }

    PhaseStates states(@Nullable Value value) {
        if (value instanceof Value.Word word) {
            OpeningState always = state(word.text());
            return new PhaseStates(always, always, always);
        }
        if (value instanceof Fields f) {
            OpeningState pass = state(f.text("pass"));
            OpeningState hang = f.has("hang") ? state(f.text("hang")) : pass;
            OpeningState after = f.has("after") ? state(f.text("after")) : hang;
            return new PhaseStates(pass, hang, after);
        }
        return PhaseStates.ALWAYS_OPEN;
    }

    private static OpeningState state(String word) {
        return word.isEmpty() ? OpeningState.OPEN : OpeningState.valueOf(word.toUpperCase(Locale.ROOT));
    }

    Outline outline(@Nullable Fields f) {
        if (f == null) {
            return BROKEN;
        }
        if (f.has("circle")) {
            return new Outline.Circle(f.si("circle") / 2);
        }
        Fields slot = f.fields("slot");
        if (slot != null) {
            if (slot.si("width") > slot.si("length")) {
                problems.add(
                        SceneProblem.OUTLINE,
                        slot.at("width"),
                        "the slot is wider (" + slot.written("width") + ") than long (" + slot.written("length")
                                + "); swap them and turn it with `lengthwise`");
            }
            return new Outline.Slot(slot.si("length"), slot.si("width"));
        }
        Fields rectangle = f.fields("rectangle");
        if (rectangle != null) {
            double radius = rectangle.si("corner_radius");
            if (radius > Math.min(rectangle.si("length"), rectangle.si("width")) / 2) {
                problems.add(
                        SceneProblem.OUTLINE,
                        rectangle.at("corner_radius"),
                        "the corner radius " + rectangle.written("corner_radius")
                                + " is more than half of the shorter side; " + "at most half is wanted");
            }
            return new Outline.RoundedRectangle(rectangle.si("length"), rectangle.si("width"), radius);
        }
        Fields ellipse = f.fields("ellipse");
        if (ellipse != null) {
            return ellipse(ellipse.si("length"), ellipse.si("width"));
        }
        return f.get("polygon") instanceof Value.Items items ? polygon(items) : BROKEN;
    }

    /** A polygon of the ellipse's exact area, its corners moved outward alike: n/2 sin(2 pi / n) s^2 = pi. */
    static Outline ellipse(double lengthM, double widthM) {
        if (Double.isNaN(lengthM + widthM)) {
            return BROKEN;
        }
        double step = 2 * Math.PI / ELLIPSE_CORNERS;
        double grown = Math.sqrt(step / Math.sin(step));
        List<double[]> points = new ArrayList<>();
        for (int k = 0; k < ELLIPSE_CORNERS; k++) {
            double u = 0.5 * lengthM * grown * Math.cos(k * step);
            double v = 0.5 * widthM * grown * Math.sin(k * step);
            points.add(new double[] {u, v});
        }
        return new Outline.Polygon(points);
    }

    private Outline polygon(Value.Items items) {
        List<double[]> points = new ArrayList<>();
        for (Value v : items.values()) {
            if (!(v instanceof Value.Items corner) || Double.isNaN(corner.number(0) + corner.number(1))) {
                return BROKEN;
            }
            points.add(new double[] {corner.number(0), corner.number(1)});
        }
        int n = points.size();
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                boolean neighbours = j == i + 1 || (i == 0 && j == n - 1);
                double[] a = points.get(i);
                double[] c = points.get(j);
                boolean same = a[0] == c[0] && a[1] == c[1];
                if (same || (!neighbours && cross(a, points.get((i + 1) % n), c, points.get((j + 1) % n)))) {
                    problems.add(
                            SceneProblem.OUTLINE,
                            items.place(),
                            "the polygon " + (same ? "has corner " : "crosses itself between sides ") + (i + 1)
                                    + " and " + (j + 1) + (same ? " at the same place" : "")
                                    + "; list its corners in turn, each once");
                    return BROKEN;
                }
            }
        }
        Outline.Polygon polygon = new Outline.Polygon(points);
        if (!(polygon.areaM2() > 0)) {
            problems.add(SceneProblem.OUTLINE, items.place(), "the polygon has no area; its corners lie on one line");
            return BROKEN;
        }
        return polygon;
    }

    private static boolean cross(double[] a, double[] b, double[] c, double[] d) {
        return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
    }

    private static double turn(double[] a, double[] b, double[] c) {
        return Math.signum((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
    }
}
