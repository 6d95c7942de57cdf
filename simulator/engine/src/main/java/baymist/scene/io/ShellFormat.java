package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.geom.Outline;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PhaseStates;
import baymist.scene.ShellSpec;
import baymist.scene.ShellSpec.FloorHole;
import baymist.scene.ShellSpec.Frame;
import baymist.scene.ShellSpec.WebHole;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Real;
import baymist.scene.io.Shape.Text;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The format of shells, and how they are made of it. */
final class ShellFormat {
    private static final Measure SIZE = Measure.of(Dimension.LENGTH, "(0 mm .. 100 m]");
    private static final Measure SIZE_OR_NONE = Measure.of(Dimension.LENGTH, "[0 mm .. 100 m]");
    private static final Measure POSITION = Measure.of(Dimension.LENGTH, "[-1000 m .. 1000 m]");

    private final OpeningAssembler openings;
    private final Problems problems;

    ShellFormat(OpeningAssembler openings, Problems problems) {
        this.openings = openings;
        this.problems = problems;
    }

    /** A hole in a web, placed right of the middle and up; boxes use it, too. */
    static Group webHole() {
        return Group.of(
                "web_hole",
                "a hole in a web",
                may("name", Text.NAME, "", "name; left out = that of the web with `hole 1` and so on"),
                need("shape", CavityFormat.OUTLINE, "its outline, lengthwise = to the right"),
                may("right", POSITION, "0 mm", "distance of its centre to the right of the middle"),
                need("up", POSITION, "height of its centre"),
                may("state", CavityFormat.STATE, "open", "state, one word or one for each phase"));
    }

    private static Group station() {
        Group halfBreadth = Group.of(
                "half_breadth",
                "a breadth measured from the middle plane",
                need("up", POSITION, "height at which it is taken"),
                need("half", SIZE_OR_NONE, "distance from the middle plane to the skin"));
        return Group.of(
                        "shell_station",
                        "a section of a shell, as an oval or as measured half-breadths",
                        need("at", POSITION, "place along x"),
                        may("half_width", SIZE, "", "oval: from the middle plane to the side"),
                        may("height_above", SIZE, "", "oval: from its centre up; left out = as `half_width`"),
                        may("height_below", SIZE, "", "oval: from its centre down; left out = as `height_above`"),
                        may("centre_up", POSITION, "", "oval: height of its centre; left out = `0 mm`"),
                        may(
                                "roundness",
                                Real.of("[1 .. 10]"),
                                "",
                                "oval: exponent; 2 = ellipse (also when left out), more = squarer"),
                        may("half_breadths", new ListOf(halfBreadth, 2, 100), "", "from the keel up to the crown"))
                .oneOf("half_width", "half_breadths");
    }

    private static Group floor() {
        Group hole = Group.of(
                "floor_hole",
                "a hole in a floor",
                may("name", Text.NAME, "", "name; left out = that of the floor with `hole 1` and so on"),
                need("shape", CavityFormat.OUTLINE, "its outline, lengthwise = aft"),
                need("at", POSITION, "place of its centre along x"),
                may("right", POSITION, "0 mm", "distance of its centre to the right of the middle"),
                may("state", CavityFormat.STATE, "open", "state, one word or one for each phase"));
        return Group.of(
                "shell_floor",
                "a level floor from skin to skin",
                may("name", Text.NAME, "", "name; left out = `floor`, or `floor 1` and so on"),
                need("up", POSITION, "its height"),
                need("from", POSITION, "its forward edge along x"),
                need("to", POSITION, "its aft edge along x"),
                may("holes", new ListOf(hole, 0, 50), "", "holes in it"));
    }

    private static Group web(String name, String doc, boolean placed) {
        Shape.Field depth =
                may("depth", SIZE_OR_NONE, "0 mm", "how far its ring stands in from the skin; 0 = a closed web");
        Shape.Field holes = may("holes", new ListOf(webHole(), 0, 50), "", "holes in its web");
        return placed
                ? Group.of(
                        name,
                        doc,
                        may(
                                "name",
                                Text.NAME,
                                "",
                                "name; left out = `frame 1` for rings, `bulkhead 1` for closed webs"),
                        need("at", POSITION, "place along x"),
                        depth,
                        holes)
                : Group.of(name, doc, depth, holes);
    }

    static Group group(Shape.Field... common) {
        Group stringers = Group.of(
                "shell_stringers",
                "blade stringers, evenly round the girth of the largest station",
                need("count", new Count(1, 100), "number all round, the first to the right of the keel"),
                need("height", Measure.of(Dimension.LENGTH, "(0 mm .. 1 m]"), "height of the blade"));
        Group end = web("shell_end", "the web that closes an end of a shell", false);
        List<Shape.Field> fields = new ArrayList<>(List.of(common));
        fields.add(
                need("stations", new ListOf(station(), 2, 200), "sections from the front aft, straight between them"));
        fields.add(may(
                "segments",
                new Count(16, 720),
                "",
                "flats round the girth of ovals; left out = within 0.5 mm and 0.5 % of the curve"));
        fields.add(may("stringers", stringers, "", "stringers; left out = none"));
        fields.add(may(
                "frames",
                new ListOf(web("shell_frame", "a ring frame, or a bulkhead, square to x", true), 0, 200),
                "",
                "frames and bulkheads between the ends, from the front aft"));
        fields.add(may("forward_end", end, "", "the forward end; left out = closed"));
        fields.add(may("aft_end", end, "", "the aft end; left out = closed"));
        fields.add(may("floors", new ListOf(floor(), 0, 20), "", "floors"));
        return Group.of(
                "shell", "tail cone or fuselage section, alike left and right", fields.toArray(Shape.Field[]::new));
    }

    CavitySpec shell(Fields f, List<OpeningSpec> ports) {
        List<ShellSpec.Station> stations =
                f.list("stations").stream().map(this::station).toList();
        List<Frame> frames = new ArrayList<>();
        int rings = 0;
        int closed = 0;
        for (Fields w : f.list("frames")) {
            String plain = w.si("depth") > 0 ? "frame " + ++rings : "bulkhead " + ++closed;
            frames.add(frame(w, plain, w.si("at")));
        }
        List<ShellSpec.Floor> floors = new ArrayList<>();
        List<Fields> stated = f.list("floors");
        for (Fields w : stated) {
            floors.add(floor(w, stated.size() == 1 ? "floor" : "floor " + (floors.size() + 1)));
        }
        Fields stringers = f.fields("stringers");
        ShellSpec shape = new ShellSpec(
                stations,
                f.has("segments") ? f.whole("segments") : 0,
                stringers == null ? 0 : stringers.whole("count"),
                stringers == null ? 0 : stringers.si("height"),
                frames,
                end(f, "forward_end", "forward end"),
                end(f, "aft_end", "aft end"),
                floors);
        return new CavitySpec.Shell(f.text("name"), shape, f.si("gauge"), ports, f.place());
    }

    private ShellSpec.Station station(Fields s) {
        if (s.has("half_breadths")) {
            for (String key : List.of("height_above", "height_below", "centre_up", "roundness")) {
                if (s.has(key)) {
                    problems.add(
                            SceneProblem.STATION,
                            s.at(key),
                            "`" + key + ": " + s.written(key)
                                    + "` belongs to an oval; a section of `half_breadths` has its shape from them, so leave it out");
                }
            }
            return new ShellSpec.Measured(
                    s.si("at"),
                    s.list("half_breadths").stream()
                            .map(b -> new ShellSpec.HalfBreadth(b.si("up"), b.si("half")))
                            .toList(),
                    s.place());
        }
        double above = s.si("height_above", s.si("half_width"));
        return new ShellSpec.Oval(
                s.si("at"),
                s.si("half_width"),
                above,
                s.si("height_below", above),
                s.si("centre_up", 0),
                s.si("roundness", 2),
                s.place());
    }

    private Frame end(Fields f, String key, String partName) {
        Fields w = f.fields(key);
        return w == null ? new Frame(null, 0, 0, List.of(), f.place()) : frame(w, partName, 0);
    }

    private Frame frame(Fields w, String plainName, double x) {
        String own = name(w);
        String part = own == null ? plainName : own;
        if (w.si("depth") > 0) {
            openings.claim(part + " opening", w.place());
        }
        return new Frame(own, x, w.si("depth"), webHoles(w, part), w.place());
    }

    private static @Nullable String name(Fields f) {
        return f.has("name") ? f.text("name") : null;
    }

    /** Holes of a web under the key {@code holes}. */
    List<WebHole> webHoles(Fields w, String part) {
        List<WebHole> holes = new ArrayList<>();
        for (Fields h : w.list("holes")) {
            Made m = made(h, part, holes.size() + 1);
            holes.add(new WebHole(m.name, m.outline, h.si("right"), h.si("up"), m.states, m.place));
        }
        return holes;
    }

    private ShellSpec.Floor floor(Fields w, String plainName) {
        String own = name(w);
        List<FloorHole> holes = new ArrayList<>();
        for (Fields h : w.list("holes")) {
            Made m = made(h, own == null ? plainName : own, holes.size() + 1);
            holes.add(new FloorHole(m.name, m.outline, h.si("at"), h.si("right"), m.states, m.place));
        }
        return new ShellSpec.Floor(own, w.si("up"), w.si("from"), w.si("to"), holes, w.place());
    }

    /** What all holes have. */
    private record Made(@Nullable String name, Outline outline, PhaseStates states, SourcePlace place) {}

    private Made made(Fields h, String part, int number) {
        String own = name(h);
        openings.claim(own == null ? part + " hole " + number : own, h.at("name"));
        return new Made(own, openings.outline(h.fields("shape")), openings.states(h.get("state")), h.place());
    }
}
