package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.CavitySpec;
import baymist.scene.CrossFrame;
import baymist.scene.DoorBeam;
import baymist.scene.FlatPlate;
import baymist.scene.PanelHole;
import baymist.scene.PhaseStates;
import baymist.scene.Stiffeners;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** Closed forms for doors, stiffened voids and plates. */
class PanelFamiliesTest {
    private static PanelHole hole(Outline outline, double along, double across) {
        return new PanelHole("", outline, along, across, 0, PhaseStates.ALWAYS_OPEN, CavityFixtures.PLACE);
    }

    private static Stiffeners bars(String wall, double spacing, double web, double flange, Stiffeners.Side side) {
        return new Stiffeners(wall, spacing, spacing, web, flange, side, 0.006, CavityFixtures.PLACE);
    }

    private static CavitySpec.StiffenedVoid space(
            List<Stiffeners> bars, List<CrossFrame> frames, List<Stiffeners> beams, PanelHole... manholes) {
        return new CavitySpec.StiffenedVoid(
                "void",
                new Vec3(3, 2, 1),
                0.006,
                bars,
                frames,
                beams,
                List.of(manholes),
                List.of(),
                CavityFixtures.PLACE);
    }

    static double area(Cavity cavity, Predicate<String> part) {
        return CavityHealth.of(cavity).parts().stream()
                .filter(p -> part.test(p.part()))
                .mapToDouble(CavityHealth.PartArea::wholeM2)
                .sum();
    }

    static double cutArea(Cavity cavity, String part) {
        return CavityHealth.of(cavity).parts().stream()
                .filter(p -> p.part().equals(part))
                .mapToDouble(CavityHealth.PartArea::cutM2)
                .sum();
    }

    /** Volume inside the named parts, which face outward, by the divergence theorem. */
    static double volume(Cavity cavity, Predicate<String> part) {
        TriangleMesh mesh = cavity.sheets();
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (part.test(cavity.parts().get(cavity.partOfSheet(t)).name())) {
                sum += mesh.point(t, 0).dot(mesh.point(t, 1).cross(mesh.point(t, 2))) / 6;
            }
        }
        return sum;
    }

    @Test
    void barsHaveTheAreaOfTheirDevelopedSection() {
        // developed width of a T or an angle of thin sheet: web + flange; of a flat bar: web
        Cavity cavity = CavityFixtures.build(space(
                List.of(
                        bars("floor", 0.5, 0.12, 0.08, Stiffeners.Side.BOTH),
                        bars("ceiling", 0.6, 0.1, 0.05, Stiffeners.Side.BACK),
                        bars("left wall", 0.3, 0.07, 0, Stiffeners.Side.BOTH)),
                List.of(),
                List.of(bars("ceiling", 0.8, 0.15, 0.06, Stiffeners.Side.ON))));
        assertEquals(3 * 3 * (0.12 + 0.08), area(cavity, p -> p.startsWith("floor long")), 1e-12);
        assertEquals(3 * 3 * (0.1 + 0.05), area(cavity, p -> p.startsWith("ceiling long")), 1e-12);
        assertEquals(3 * 3 * 0.07, area(cavity, p -> p.startsWith("left long")), 1e-12);
        assertEquals(3 * 2 * (0.15 + 0.06), area(cavity, p -> p.startsWith("deck beam")), 1e-12);
        assertEquals(6, volume(cavity, p -> p.endsWith("wall") || p.equals("floor") || p.equals("ceiling")), 1e-12);
    }

    @Test
    void everyEdgeOfAVoidMeetsVertexForVertex() {
        Cavity cavity = CavityFixtures.build(space(
                List.of(bars("floor", 0.5, 0.12, 0.08, Stiffeners.Side.BOTH)),
                List.of(new CrossFrame(1.3, List.of(), 0, 0, 0, 0.006, CavityFixtures.PLACE)),
                List.of()));
        // free edges: both edges of three flanges over the length, nothing else
        assertEquals(2 * 3 * 3, CavityHealth.of(cavity).freeEdgeM(), 1e-9);
    }

    @Test
    void frameHolesHaveTheirClosedFormAreas() {
        CrossFrame frame = new CrossFrame(
                1.5,
                List.of(
                        hole(new Outline.Slot(0.6, 0.4), 0.6, 0.5),
                        hole(new Outline.RoundedRectangle(0.5, 0.3, 0.1), 1.4, 0.5)),
                0.05,
                0.03,
                0.02,
                0.006,
                CavityFixtures.PLACE);
        Cavity cavity = CavityFixtures.build(
                space(List.of(bars("floor", 0.7, 0.1, 0.06, Stiffeners.Side.ON)), List.of(frame), List.of()));
        // slot: (L - w) w + pi w^2/4; rounded rectangle: L w - (4 - pi) r^2 (elementary geometry)
        assertEquals(
                0.2 * 0.4 + Math.PI * 0.04, opening(cavity, "frame 1 hole 1").areaM2(), 1e-12);
        assertEquals(
                0.15 - (4 - Math.PI) * 0.01, opening(cavity, "frame 1 hole 2").areaM2(), 1e-12);
        assertEquals(Math.PI * 0.0025 / 4, opening(cavity, "frame 1 left drain").areaM2(), 1e-12);
        assertEquals(
                Math.PI * 0.0009 / 4, opening(cavity, "frame 1 right air hole").areaM2(), 1e-12);
        // notch round an angle: flange + clearance on both sides, web + clearance high
        assertEquals((0.06 + 0.04) * 0.12, opening(cavity, "frame 1 notch 2").areaM2(), 1e-12);
        double holes = cavity.openings().stream().mapToDouble(Opening::areaM2).sum();
        assertEquals(8, cavity.openings().size());
        assertEquals(2 * 1 - holes, cutArea(cavity, "frame 1"), 1e-9);
        assertTrue(cavity.openings().stream().noneMatch(Opening::exterior));
    }

    private static Opening opening(Cavity cavity, String name) {
        return cavity.openings().get(cavity.openingIndex(name));
    }

    @Test
    void deckBeamsGiveWayToFrames() {
        Cavity cavity = CavityFixtures.build(space(
                List.of(),
                List.of(new CrossFrame(1, List.of(), 0, 0, 0, 0.006, CavityFixtures.PLACE)),
                List.of(bars("ceiling", 0.5, 0.1, 0, Stiffeners.Side.BOTH)),
                hole(new Outline.Circle(0.2), 0.25, 1)));
        assertEquals(
                4,
                cavity.parts().stream()
                        .filter(p -> p.name().startsWith("deck beam"))
                        .count());
        assertTrue(cavity.remarks().toString().contains("a frame stands there"));
        assertTrue(opening(cavity, "manhole 1").exterior());
        assertEquals(Opening.Kind.PORT, opening(cavity, "manhole 1").kind());
    }

    private static CavitySpec.Door door(double upper, double step, double crown, DoorBeam... beams) {
        return new CavitySpec.Door(
                "door",
                1,
                0.6,
                0.12,
                upper,
                step,
                crown,
                0.0008,
                List.of(beams),
                List.of(hole(new Outline.RoundedRectangle(0.8, 0.02, 0), 0.5, 0.03)),
                List.of(hole(new Outline.Slot(0.02, 0.006), 0.2, 0.06)),
                List.of(
                        hole(new Outline.RoundedRectangle(0.4, 0.2, 0.04), 0.5, 0.2),
                        hole(new Outline.Circle(0.02), 0.9, 0.5)),
                List.of(),
                CavityFixtures.PLACE);
    }

    private static DoorBeam beam(DoorBeam.Kind kind, double up, double depth, double gap) {
        return new DoorBeam(kind, up, 0.06, depth, gap, 0.0015, CavityFixtures.PLACE);
    }

    @Test
    void doorHoldsPanelSpacingTimesPanelArea() {
        Predicate<String> shell = p -> !p.contains("beam");
        assertEquals(0.6 * 0.12, volume(CavityFixtures.build(door(0.12, 0, 0)), shell), 1e-12);
        Cavity stepped = CavityFixtures.build(door(0.07, 0.4, 0));
        assertEquals(0.4 * 0.12 + 0.2 * 0.07, volume(stepped, shell), 1e-12);
        assertEquals(0.4 * 0.12 + 0.2 * 0.07, area(stepped, p -> p.equals("aft edge")), 1e-12);
        assertEquals(0.05, area(stepped, p -> p.equals("step")), 1e-12);
        assertEquals(0, CavityHealth.of(stepped).freeEdges());
        assertEquals(
                List.of("window slot", "drain 1", "inner hole 1", "inner hole 2"),
                stepped.openings().stream().map(Opening::name).toList());
        assertTrue(stepped.openings().stream().allMatch(Opening::exterior));
        assertEquals(
                "upper inner panel",
                stepped.parts().get(stepped.openings().get(3).part()).name());
    }

    @Test
    void crownAddsTheSegmentOfACircle() {
        double c = 0.02;
        double radius = (0.36 / 4 + c * c) / (2 * c);
        double angle = 2 * Math.asin(0.3 / radius);
        // inscribed polygon of n equal heights; the segment R^2/2 (a - sin a) is its limit (Archimedes)
        double segment = radius * radius / 2 * (angle - Math.sin(angle));
        Cavity cavity = CavityFixtures.build(door(0.07, 0.4, c));
        double volume = volume(cavity, p -> true);
        double flat = 0.4 * 0.12 + 0.2 * 0.07;
        assertTrue(volume < flat + segment);
        assertEquals(segment, volume - flat, 0.01 * segment);
        // arc length R a, chords fall short by second order
        assertEquals(radius * angle, area(cavity, p -> p.equals("outer panel")), 1e-4);
    }

    @Test
    void beamsHaveTheAreaOfTheirSections() {
        Cavity box = CavityFixtures.build(door(0.07, 0.4, 0.01, beam(DoorBeam.Kind.BOX, 0.3, 0.025, 0.015)));
        assertEquals(2 * (0.06 + 0.025), area(box, p -> p.equals("intrusion beam")), 1e-12);
        Cavity hat = CavityFixtures.build(door(0.07, 0.4, 0, beam(DoorBeam.Kind.HAT, 0.3, 0.025, 0)));
        assertEquals(0.06 + 2 * 0.025, area(hat, p -> p.equals("intrusion beam")), 1e-12);
        Cavity plate = CavityFixtures.build(door(0.07, 0.4, 0.01, beam(DoorBeam.Kind.PLATE, 0.3, 0, 0.02)));
        assertEquals(0.06, area(plate, p -> p.equals("intrusion beam")), 1e-12);
        assertEquals(0, CavityHealth.of(box).freeEdges());
        assertEquals(0, CavityHealth.of(hat).freeEdges());
        assertEquals(2, CavityHealth.of(plate).freeEdgeM(), 1e-9);
        Cavity crowned = CavityFixtures.build(door(0.07, 0.4, 0.02, beam(DoorBeam.Kind.HAT, 0.3, 0.025, 0)));
        assertEquals(0, CavityHealth.of(crowned).freeEdges());
    }

    private static FlatPlate plate(String name, double... xyz) {
        List<Vec3> corners = new ArrayList<>();
        for (int k = 0; k < xyz.length; k += 3) {
            corners.add(new Vec3(xyz[k], xyz[k + 1], xyz[k + 2]));
        }
        return new FlatPlate(name, corners, 0.001, CavityFixtures.PLACE);
    }

    /** Unit cube of plates; the ceiling's corners are given a little off. */
    private static List<FlatPlate> cube(double off) {
        return List.of(
                plate("floor", 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0),
                plate("ceiling", 0, 0, 1, 1 + off, 0, 1, 1, 1, 1, 0, 1 - off, 1),
                plate("left", 0, 0, 0, 1, 0, 0, 1, 0, 1, 0, 0, 1),
                plate("right", 0, 1, 0, 1, 1, 0, 1, 1, 1, 0, 1, 1),
                plate("fore", 0, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1),
                plate("aft", 1, 0, 0, 1, 1, 0, 1, 1, 1, 1, 0, 1));
    }

    private static CavitySpec.Plates plates(List<FlatPlate> plates, boolean openGaps) {
        return new CavitySpec.Plates("plates", plates, 1e-4, openGaps, null, List.of(), CavityFixtures.PLACE);
    }

    @Test
    void platesThatMeetWithinTheToleranceClose() {
        assertEquals(
                0, CavityHealth.of(CavityFixtures.build(plates(cube(0), false))).freeEdges());
        assertEquals(
                0,
                CavityHealth.of(CavityFixtures.build(plates(cube(9e-5), false))).freeEdges());
    }

    @Test
    void missingPlateIsToldWithItsFreeEdges() {
        List<FlatPlate> open = new ArrayList<>(cube(0));
        open.remove(1);
        String text = refused("CAV-056", plates(open, false));
        assertTrue(text.contains("10000.0 cm²") && text.contains("(500.0, 500.0, 1000.0) mm"), text);
        assertTrue(text.contains("1000 mm of 'left' about (500.0, 0.0, 1000.0) mm"), text);
        Cavity cavity = CavityFixtures.build(plates(open, true));
        assertEquals("gap 1 (top)", cavity.openings().get(0).name());
        assertEquals(1, cavity.openings().get(0).areaM2(), 1e-12);
    }

    @Test
    void webInsideAndWallsInPiecesShareVertices() {
        List<FlatPlate> plates = new ArrayList<>(cube(0));
        plates.set(0, plate("floor a", 0, 0, 0, 0.4, 0, 0, 0.4, 1, 0, 0, 1, 0));
        plates.add(plate("floor b", 0.4, 0, 0, 1, 0, 0, 1, 1, 0, 0.4, 1, 0));
        plates.add(plate("web", 0.7, 0, 0, 0.7, 1, 0, 0.7, 1, 1, 0.7, 0, 1));
        plates.add(plate("shelf", 0.7, 0, 0.5, 1, 0, 0.5, 1, 1, 0.5, 0.7, 1, 0.5));
        // an L-shaped plate standing free on the floor
        plates.add(
                plate("bracket", 0.1, 0.5, 0, 0.3, 0.5, 0, 0.3, 0.5, 0.1, 0.2, 0.5, 0.1, 0.2, 0.5, 0.3, 0.1, 0.5, 0.3));
        Cavity cavity = CavityFixtures.build(plates(plates, false));
        assertEquals(6 + 1 + 0.3 + 0.04, area(cavity, p -> true), 1e-12);
        assertEquals(0.1 + 0.1 + 0.2 + 0.1 + 0.3, CavityHealth.of(cavity).freeEdgeM(), 1e-9);
    }

    @Test
    void impossibleMeasuresAreToldInSentences() {
        refused("CAV-051", door(0.07, 0.7, 0));
        refused("CAV-051", door(0.12, 0, 0.4));
        refused("CAV-001", door(-0.12, 0.2, 0));
        refused("CAV-052", door(0.12, 0, 0, beam(DoorBeam.Kind.BOX, 0.59, 0.02, 0.02)));
        refused("CAV-052", door(0.07, 0.4, 0, beam(DoorBeam.Kind.BOX, 0.41, 0.05, 0.03)));
        refused("CAV-052", door(0.12, 0, 0, beam(DoorBeam.Kind.BOX, 0.3, 0.02, 0)));
        refused("CAV-053", space(List.of(bars("floor", 0.05, 0.1, 0.06, Stiffeners.Side.BOTH)), List.of(), List.of()));
        refused("CAV-053", space(List.of(bars("floor", 0.5, 1, 0, Stiffeners.Side.BOTH)), List.of(), List.of()));
        refused("CAV-053", space(List.of(bars("floor", 0.99, 0.1, 0.2, Stiffeners.Side.ON)), List.of(), List.of()));
        refused("CAV-053", space(List.of(bars("floor", 0.005, 0.1, 0, Stiffeners.Side.ON)), List.of(), List.of()));
        CrossFrame late = new CrossFrame(3, List.of(), 0, 0, 0, 0.006, CavityFixtures.PLACE);
        refused("CAV-054", space(List.of(), List.of(late), List.of()));
        CrossFrame wide = new CrossFrame(1, List.of(), 0.6, 0, 0, 0.006, CavityFixtures.PLACE);
        refused("CAV-054", space(List.of(), List.of(wide), List.of()));
        refused("CAV-055", plates(List.of(plate("bent", 0, 0, 0, 1, 0, 0, 1, 1, 0.1, 0, 1, 0)), true));
        refused("CAV-055", plates(List.of(plate("line", 0, 0, 0, 1, 0, 0, 2, 0, 0)), true));
        refused("CAV-055", plates(List.of(plate("bow", 0, 0, 0, 1, 0, 0, 0, 1, 0, 1.5, 1, 0)), true));
        refused("CAV-055", plates(List.of(plate("nan", 0, 0, 0, 1, 0, 0, Double.NaN, 1, 0)), true));
        refused("CAV-055", plates(List.of(cube(0).get(0), cube(0).get(0)), true));
    }

    static String refused(String id, CavitySpec spec) {
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(spec), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
        assertFalse(e.getMessage().contains("Exception"));
        return e.getMessage();
    }
}
