package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.geom.Vec3;
import baymist.scene.BoxSectionSpec;
import baymist.scene.BoxSectionSpec.Baffle;
import baymist.scene.BoxSectionSpec.Bend;
import baymist.scene.BoxSectionSpec.End;
import baymist.scene.BoxSectionSpec.Plate;
import baymist.scene.BoxSectionSpec.Wall;
import baymist.scene.BoxSectionSpec.WallHole;
import baymist.scene.CavitySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The format of box sections, and how they are made of it. */
final class BoxSectionFormat {
    private static final Measure SIZE = Measure.of(Dimension.LENGTH, "(0 mm .. 100 m]");
    private static final Measure SIZE_OR_NONE = Measure.of(Dimension.LENGTH, "[0 mm .. 100 m]");
    private static final Measure POSITION = Measure.of(Dimension.LENGTH, "[-1000 m .. 1000 m]");
    private static final Choice WALL = Choice.of("bottom", "right wall", "top", "left wall");

    private final OpeningAssembler openings;
    private final ShellFormat webs;

    BoxSectionFormat(OpeningAssembler openings, ShellFormat webs) {
        this.openings = openings;
        this.webs = webs;
    }

    static Group group(Shape.Field... common) {
        Group rectangle = Group.of(
                "box_rectangle",
                "a rectangular section, inside",
                need("width", SIZE, "side to side"),
                need("height", SIZE, "bottom to top"));
        Group hat = Group.of(
                "box_hat",
                "a hat section on its closing plate, inside; its lips lie outside the cavity",
                need("crown", SIZE, "width of the top"),
                may("mouth", SIZE, "", "width between the webs at the closing plate; left out = as `crown`"),
                need("height", SIZE, "closing plate to top"));
        Group bend = Group.of(
                "box_point",
                "a point of the line; a corner between its ends",
                need("at", CavityFormat.POINT, "its place, where the straight stretches would meet"),
                may("bend_radius", SIZE_OR_NONE, "0 mm", "radius of the line there; 0 = a plain mitre"),
                may("facets", new Count(1, 90), "", "mitres that make up the bend; left out = within 0.5 mm of it"));
        ListOf holes = new ListOf(ShellFormat.webHole(), 0, 50);
        Group end = Group.of(
                "box_end",
                "an end of a box section",
                may("cap", Choice.of("closed", "open"), "closed", "a cap, or nothing at all"),
                may("holes", holes, "", "holes in the cap, from the middle of the section"));
        Group baffle = Group.of(
                "box_baffle",
                "a web square to the line",
                need("along", SIZE_OR_NONE, "distance along the line, on a straight stretch"),
                may("holes", holes, "", "holes, from the middle of the section"));
        List<Shape.Field> fields = new ArrayList<>(List.of(common));
        fields.add(may("rectangle", rectangle, "", "rectangular section"));
        fields.add(may("hat", hat, "", "hat section"));
        fields.add(need("line", new ListOf(bend, 2, 200), "points of the line through the middle of the section"));
        fields.add(may("up", CavityFormat.DIRECTION, "", "direction of the section's top; left out = `[0, 0, 1]`"));
        fields.add(may("start", end, "", "the end at the first point; left out = closed"));
        fields.add(may("end", end, "", "the end at the last point; left out = closed"));
        fields.add(may("baffles", new ListOf(baffle, 0, 100), "", "baffles in order along the line"));
        fields.add(may("plates", new ListOf(plate(), 0, 20), "", "reinforcement plates inside"));
        fields.add(may("holes", new ListOf(wallHole(), 0, 200), "", "drains and access holes in the walls"));
        return Group.of(
                        "box_section",
                        "rectangular or hat section along a bent line",
                        fields.toArray(Shape.Field[]::new))
                .oneOf("rectangle", "hat");
    }

    private static Group plate() {
        return Group.of(
                "box_plate",
                "a second sheet inside, parallel to a wall, its ends open",
                need("wall", WALL, "the wall that it stands before"),
                need("from", SIZE_OR_NONE, "its start along the line"),
                need("to", SIZE_OR_NONE, "its end along the line"),
                need("gap", SIZE, "space between it and the wall"),
                may("width", SIZE, "", "its width, about its middle; left out = from wall to wall"));
    }

    private static Group wallHole() {
        return Group.of(
                "box_hole",
                "an opening in a wall",
                may("name", Text.NAME, "", "name; left out = `wall hole 1` and so on"),
                need("wall", WALL, "the wall that it is cut into"),
                need("shape", CavityFormat.OUTLINE, "its outline, lengthwise = along the line"),
                need("along", SIZE_OR_NONE, "distance of its centre along the line, on a straight stretch"),
                may("across", POSITION, "0 mm", "from the middle of the wall: to the right, on side walls up"),
                may("state", CavityFormat.STATE, "open", "state, one word or one for each phase"));
    }

    CavitySpec box(Fields f, List<OpeningSpec> ports) {
        Fields hat = f.fields("hat");
        Fields rectangle = f.fields("rectangle");
        double top = hat != null ? hat.si("crown") : rectangle != null ? rectangle.si("width") : Double.NaN;
        Fields section = hat != null ? hat : rectangle;
        Vec3 up = openings.direction(f, "up");
        List<Bend> line = f.list("line").stream()
                .map(p -> new Bend(
                        orNowhere(p.vector("at")),
                        p.si("bend_radius"),
                        p.has("facets") ? p.whole("facets") : 0,
                        p.place()))
                .toList();
        List<Baffle> baffles = new ArrayList<>();
        for (Fields b : f.list("baffles")) {
            baffles.add(new Baffle(b.si("along"), webs.webHoles(b, "baffle " + (baffles.size() + 1)), b.place()));
        }
        BoxSectionSpec shape = new BoxSectionSpec(
                top,
                hat != null ? hat.si("mouth", top) : top,
                section == null ? Double.NaN : section.si("height"),
                line,
                up == null ? Vec3.Z : up,
                end(f, "start", "start end"),
                end(f, "end", "far end"),
                baffles,
                f.list("plates").stream().map(BoxSectionFormat::plate).toList(),
                wallHoles(f));
        return new CavitySpec.BoxSection(f.text("name"), shape, f.si("gauge"), ports, f.place());
    }

    private static Vec3 orNowhere(@Nullable Vec3 v) {
        return v == null ? new Vec3(Double.NaN, Double.NaN, Double.NaN) : v;
    }

    private static Wall wall(Fields f) {
        for (Wall w : Wall.values()) {
            if (w.partName().equals(f.text("wall"))) {
                return w;
            }
        }
        return Wall.BOTTOM;
    }

    private End end(Fields f, String key, String part) {
        Fields e = f.fields(key);
        return e == null ? new End(false, List.of()) : new End(e.text("cap").equals("open"), webs.webHoles(e, part));
    }

    private static Plate plate(Fields p) {
        return new Plate(wall(p), p.si("from"), p.si("to"), p.si("gap"), p.si("width", 0), p.place());
    }

    private List<WallHole> wallHoles(Fields f) {
        List<WallHole> holes = new ArrayList<>();
        for (Fields h : f.list("holes")) {
            String own = h.has("name") ? h.text("name") : null;
            openings.claim(own == null ? "wall hole " + (holes.size() + 1) : own, h.at("name"));
            holes.add(new WallHole(
                    own,
                    wall(h),
                    openings.outline(h.fields("shape")),
                    h.si("along"),
                    h.si("across"),
                    openings.states(h.get("state")),
                    h.place()));
        }
        return holes;
    }
}
