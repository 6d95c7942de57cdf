package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import baymist.scene.FlatPlate;
import baymist.scene.OpeningSpec;
import baymist.scene.PanelHole;
import baymist.scene.io.Shape.Choice;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import java.util.ArrayList;
import java.util.List;

/** Format and assembly of free plates. */
final class PlatesFormat {
    static final Measure TOLERANCE = Measure.of(Dimension.LENGTH, "[0.0001 mm .. 10 mm]");

    private static PanelHoles hole() {
        return new PanelHoles(
                "plate_hole",
                "a hole in a free plate, lengthwise = along",
                need("along", CavityFormat.POSITION, "distance of its centre from the first corner towards the second"),
                need("across", CavityFormat.POSITION, "the same square to that, towards the rest of the plate"));
    }

    private final Problems problems;
    private final OpeningAssembler openings;

    PlatesFormat(Problems problems, OpeningAssembler openings) {
        this.problems = problems;
        this.openings = openings;
    }

    static Group group() {
        Group plate = Group.of(
                        "plate",
                        "a flat plate, by its corners or as a rectangle from one corner",
                        need("name", Text.NAME, "name of the part, used once"),
                        may("corners", new ListOf(CavityFormat.POINT, 3, 100), "", "its corners in turn"),
                        may("origin", CavityFormat.POINT, "", "first corner of a rectangle"),
                        may("along", CavityFormat.DIRECTION, "", "direction of the rectangle's length"),
                        may("across", CavityFormat.DIRECTION, "", "direction of the rectangle's width"),
                        may("length", CavityFormat.SIZE, "", "length of the rectangle"),
                        may("width", CavityFormat.SIZE, "", "width of the rectangle"),
                        may("gauge", CavityFormat.GAUGE, "", "its thickness; left out = as the others"),
                        may("holes", new ListOf(hole().group(), 0, 50), "", "holes in it"))
                .oneOf("corners", "origin");
        return Group.of(
                "plates",
                "free flat plates that together enclose something",
                ModelFormat.VERSION,
                CavityFormat.NAME,
                CavityFormat.SHEET,
                need("plates", new ListOf(plate, 1, 500), "the plates"),
                may("tolerance", TOLERANCE, "0.1 mm", "how far corners that should meet may lie apart"),
                may(
                        "gaps",
                        Choice.of("refuse", "open"),
                        "refuse",
                        "places that no plate closes: refuse, or make openings"),
                may("inside", CavityFormat.POINT, "", "a point in the cavity; left out = everything enclosed"),
                CavityFormat.PORTS);
    }

    CavitySpec plates(Fields f) {
        List<FlatPlate> plates = new ArrayList<>();
        List<OpeningSpec> ports = new ArrayList<>();
        for (Fields p : f.list("plates")) {
            FlatPlate plate = new FlatPlate(p.text("name"), corners(p), p.si("gauge", f.si("gauge")), p.place());
            plates.add(plate);
            int number = 0;
            for (PanelHole h : hole().holes(p.list("holes"), Double.NaN, Double.NaN, openings)) {
                number++;
                if (plate.corners().size() >= 3) {
                    ports.add(hole(plate, h, number));
                }
            }
        }
        ports.addAll(openings.openings(f.list("ports")));
        return new CavitySpec.Plates(
                f.text("name"),
                List.copyOf(plates),
                f.si("tolerance"),
                f.text("gaps").equals("open"),
                f.vector("inside"),
                List.copyOf(ports),
                f.place());
    }

    private List<Vec3> corners(Fields p) {
        List<Vec3> corners = new ArrayList<>();
        if (p.get("corners") instanceof Value.Items items) {
            for (Value v : items.values()) {
                corners.add(v instanceof Value.Items point ? point.vector() : new Vec3(Double.NaN, 0, 0));
            }
            return corners;
        }
        Vec3 origin = p.vector("origin");
        if (origin == null) {
            return corners;
        }
        Vec3 along = openings.direction(p, "along");
        Vec3 across = openings.direction(p, "across");
        if (!p.has("along") || !p.has("across") || !p.has("length") || !p.has("width")) {
            problems.add(
                    SceneProblem.PLATE_FORM,
                    p.place(),
                    "a plate from an `origin` also wants `along`, `across`, `length` and `width`; or list its"
                            + " `corners`");
        } else if (along != null && across != null) {
            if (along.cross(across).length() < 1e-3) {
                problems.add(
                        SceneProblem.PLATE_FORM,
                        p.at("across"),
                        "`across` points the same way as `along`; a direction to the side of it is wanted");
            }
            Vec3 end = origin.plus(p.si("length"), along);
            corners.addAll(List.of(origin, end, end.plus(p.si("width"), across), origin.plus(p.si("width"), across)));
        }
        return corners;
    }

    /** The hole in space; its position is measured from the plate's first corner. */
    private static OpeningSpec hole(FlatPlate plate, PanelHole h, int number) {
        Vec3 first = plate.corners().get(0);
        Vec3 area = Vec3.ZERO;
        for (int k = 1; k + 1 < plate.corners().size(); k++) {
            area = area.plus(plate.corners()
                    .get(k)
                    .minus(first)
                    .cross(plate.corners().get(k + 1).minus(first)));
        }
        Vec3 edge = plate.corners().get(1).minus(first);
        // a plate that is broken is told by the builder; its holes then stand anywhere
        Vec3 u = edge.length() > 0 ? edge.unit() : Vec3.X;
        Vec3 side = area.cross(u);
        Vec3 v = side.length() > 0 ? side.unit() : u.anyPerpendicular();
        return new OpeningSpec(
                h.name().isEmpty() ? plate.name() + " hole " + number : h.name(),
                plate.name(),
                h.outline(),
                first.plus(h.alongM(), u).plus(h.acrossM(), v),
                u.times(Math.cos(h.turnRad())).plus(Math.sin(h.turnRad()), v),
                h.states(),
                h.place());
    }
}
