package baymist.cavity;

import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.scene.CavitySpec.Door;
import baymist.scene.DoorBeam;
import baymist.scene.PanelHole;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Door: its section square to x is a polygon (outer panel, waist edge, stepped inner panel, lower edge) drawn along x, closed at
 * the front and aft edges; beams run from edge to edge. The outer panel's crown is a circular arc over its height, in strips
 * whose corners lie on the arc.
 */
final class DoorFamily {
    /** Strips of a crowned outer panel; a crown of 20 mm then stays within 0.2 mm of the arc. */
    static final int STRIPS = 12;

    /** Places of plates that should agree do so to rounding. */
    private static final double SAME_M = 1e-7;

    private final Door spec;
    private final SheetModel model = new SheetModel();
    private final PlateMesher mesher = new PlateMesher(SAME_M);

    private DoorFamily(Door spec) {
        this.spec = spec;
    }

    static SheetModel build(Door spec) {
        return new DoorFamily(spec).build();
    }

    private SheetModel build() {
        check();
        int outer = part("outer panel", PartKind.SKIN);
        int waist = part("waist edge", PartKind.WALL);
        int upper = stepped() ? part("upper inner panel", PartKind.SKIN) : -1;
        int step = stepped() ? part("step", PartKind.SKIN) : -1;
        int lower = part(stepped() ? "lower inner panel" : "inner panel", PartKind.SKIN);
        int bottom = part("lower edge", PartKind.WALL);
        List<Vec3> arc = arc();
        List<Vec3> section = new ArrayList<>(arc);
        for (int k = 0; k + 1 < arc.size(); k++) {
            strip(outer, arc.get(k), arc.get(k + 1));
        }
        Vec3 top = arc.get(arc.size() - 1);
        Vec3 innerTop = new Vec3(0, -spec.upperDepthM(), spec.heightM());
        Vec3 innerFoot = new Vec3(0, -spec.depthM(), 0);
        strip(waist, top, innerTop);
        section.add(innerTop);
        if (stepped()) {
            Vec3 a = new Vec3(0, -spec.upperDepthM(), spec.stepM());
            Vec3 b = new Vec3(0, -spec.depthM(), spec.stepM());
            strip(upper, innerTop, a);
            strip(step, a, b);
            strip(lower, b, innerFoot);
            section.addAll(List.of(a, b));
        } else {
            strip(lower, innerTop, innerFoot);
        }
        strip(bottom, innerFoot, arc.get(0));
        section.add(innerFoot);
        List<Vec3> forward = new ArrayList<>(section);
        Collections.reverse(forward);
        mesher.plate(part("front edge", PartKind.WALL), forward);
        mesher.plate(
                part("aft edge", PartKind.WALL),
                section.stream().map(this::atAftEdge).toList());
        for (int i = 0; i < spec.beams().size(); i++) {
            beam(spec.beams().get(i), spec.beams().size() == 1 ? "intrusion beam" : "intrusion beam " + (i + 1));
        }
        mesher.mesh(model);
        openings(waist, upper, lower, bottom);
        return model;
    }

    private int part(String name, PartKind kind) {
        return model.part(name, kind, spec.gaugeM());
    }

    private boolean stepped() {
        return spec.upperDepthM() != spec.depthM();
    }

    private Vec3 atAftEdge(Vec3 p) {
        return new Vec3(spec.lengthM(), p.y(), p.z());
    }

    /** Strip from edge to edge; the section is walked counter-clockwise in (y, z), so normals point outward. */
    private void strip(int part, Vec3 from, Vec3 to) {
        mesher.plate(part, from, to, atAftEdge(to), atAftEdge(from));
    }

    /** Height of the outer panel over its rim plane at a height of the door, m. */
    private double bulgeM(double z) {
        double c = spec.crownM();
        if (c == 0) {
            return 0;
        }
        double half = 0.5 * spec.heightM();
        double radius = (half * half + c * c) / (2 * c);
        return Math.sqrt(Math.max(0, radius * radius - (z - half) * (z - half))) - (radius - c);
    }

    private List<Vec3> arc() {
        TreeSet<Double> heights = new TreeSet<>();
        int strips = spec.crownM() == 0 ? 1 : STRIPS;
        for (int k = 0; k <= strips; k++) {
            heights.add(k == strips ? spec.heightM() : spec.heightM() * k / strips);
        }
        for (DoorBeam beam : spec.beams()) {
            if (beam.kind() == DoorBeam.Kind.HAT && spec.crownM() != 0) {
                addHeight(heights, beam.upM() - 0.5 * beam.widthM());
                addHeight(heights, beam.upM() + 0.5 * beam.widthM());
            }
        }
        List<Vec3> points = new ArrayList<>();
        for (double z : heights) {
            boolean rim = z == 0 || z == spec.heightM();
            points.add(new Vec3(0, rim ? 0 : bulgeM(z), z));
        }
        return points;
    }

    /** A station next to a hat's wall gives way to it. */
    private void addHeight(Set<Double> heights, double z) {
        heights.removeIf(h -> h != 0 && h != spec.heightM() && Math.abs(h - z) < 1e-3);
        heights.add(z);
    }

    private void beam(DoorBeam beam, String name) {
        int part = model.part(name, PartKind.OTHER, beam.gaugeM());
        double low = beam.upM() - 0.5 * beam.widthM();
        double high = beam.upM() + 0.5 * beam.widthM();
        switch (beam.kind()) {
            case PLATE -> strip(part, new Vec3(0, -beam.gapM(), low), new Vec3(0, -beam.gapM(), high));
            case BOX -> {
                double back = -beam.gapM() - beam.depthM();
                List<Vec3> ring = List.of(
                        new Vec3(0, -beam.gapM(), low),
                        new Vec3(0, -beam.gapM(), high),
                        new Vec3(0, back, high),
                        new Vec3(0, back, low));
                for (int k = 0; k < 4; k++) {
                    strip(part, ring.get(k), ring.get((k + 1) % 4));
                }
            }
            case HAT -> {
                double back = -beam.depthM();
                strip(part, new Vec3(0, bulgeM(high), high), new Vec3(0, back, high));
                strip(part, new Vec3(0, back, high), new Vec3(0, back, low));
                strip(part, new Vec3(0, back, low), new Vec3(0, bulgeM(low), low));
            }
        }
    }

    private void openings(int waist, int upper, int lower, int bottom) {
        int number = 0;
        for (PanelHole h : spec.slots()) {
            number++;
            String name = spec.slots().size() == 1 ? "window slot" : "window slot " + number;
            place(h, name, waist, new Vec3(h.alongM(), -h.acrossM(), spec.heightM()), Vec3.Z.negate());
        }
        number = 0;
        for (PanelHole h : spec.drains()) {
            place(h, "drain " + ++number, bottom, new Vec3(h.alongM(), -h.acrossM(), 0), Vec3.Z);
        }
        number = 0;
        for (PanelHole h : spec.innerHoles()) {
            boolean high = stepped() && h.acrossM() > spec.stepM();
            double y = high ? -spec.upperDepthM() : -spec.depthM();
            place(h, "inner hole " + ++number, high ? upper : lower, new Vec3(h.alongM(), y, h.acrossM()), Vec3.Y);
        }
    }

    private void place(PanelHole hole, String fallback, int part, Vec3 centre, Vec3 normal) {
        model.placed.add(new SheetModel.Placed(
                hole.name().isEmpty() ? fallback : hole.name(),
                part,
                Opening.Kind.PORT,
                turned(hole, centre, Vec3.X, normal),
                hole.states(),
                hole.place()));
    }

    /** The outline with its length turned from an axis of the panel, right-handed about the normal. */
    static PlacedOutline turned(PanelHole hole, Vec3 centre, Vec3 axis, Vec3 normal) {
        Vec3 u = axis.times(Math.cos(hole.turnRad())).plus(Math.sin(hole.turnRad()), normal.cross(axis));
        return PlacedOutline.of(hole.outline(), centre, u, normal);
    }

    private void check() {
        SpecCheck check = new SpecCheck(spec.place());
        check.positive("length", spec.lengthM());
        check.positive("height", spec.heightM());
        check.positive("depth", spec.depthM());
        check.positive("upper depth", spec.upperDepthM());
        check.positive("gauge", spec.gaugeM());
        check.notNegative("crown", spec.crownM());
        if (!(spec.crownM() < 0.5 * spec.heightM())) {
            check.error(
                    "CAV-051",
                    "the outer panel bulges by " + SpecCheck.mm(spec.crownM())
                            + "; less than half of the door's height expected");
        }
        if (stepped() && !(spec.stepM() > 0 && spec.stepM() < spec.heightM())) {
            check.error(
                    "CAV-051",
                    "the inner panel has its step at " + SpecCheck.mm(spec.stepM()) + "; above 0 and below the height, "
                            + SpecCheck.mm(spec.heightM()) + ", expected");
        }
        if (check.clean()) {
            spec.beams().forEach(beam -> checkBeam(check, beam));
        }
        check.orThrow();
    }

    private void checkBeam(SpecCheck check, DoorBeam beam) {
        double low = beam.upM() - 0.5 * beam.widthM();
        double high = beam.upM() + 0.5 * beam.widthM();
        if (!(beam.widthM() > 0 && low > 0 && high < spec.heightM())) {
            check.error(
                    "CAV-052",
                    beam.place(),
                    "the beam reaches from " + SpecCheck.mm(low) + " to " + SpecCheck.mm(high)
                            + " above the lower edge; within 0 and the height, " + SpecCheck.mm(spec.heightM())
                            + ", expected");
            return;
        }
        boolean plate = beam.kind() == DoorBeam.Kind.PLATE;
        double outerFace = beam.kind() == DoorBeam.Kind.HAT ? 0 : beam.gapM();
        double reach = outerFace + (plate ? 0 : beam.depthM());
        double room = high > spec.stepM() && low < spec.stepM()
                ? Math.min(spec.depthM(), spec.upperDepthM())
                : low >= spec.stepM() && stepped() ? spec.upperDepthM() : spec.depthM();
        boolean clear = beam.kind() == DoorBeam.Kind.HAT || beam.gapM() >= 1e-3;
        boolean deep = plate || beam.depthM() >= 1e-3;
        if (!(clear && deep && reach <= room - 1e-3)) {
            check.error(
                    "CAV-052",
                    beam.place(),
                    "the beam takes up " + SpecCheck.mm(outerFace) + " to " + SpecCheck.mm(reach)
                            + " inboard of the outer panel; between 1 mm and the inner panel less 1 mm, "
                            + SpecCheck.mm(room - 1e-3) + ", expected (a hat begins at the outer panel)");
        }
    }
}
