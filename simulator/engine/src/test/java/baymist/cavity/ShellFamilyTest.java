package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
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
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShellFamilyTest {
    private static final SourcePlace HERE = CavityFixtures.PLACE;
    private static final Frame CLOSED = new Frame(null, 0, 0, List.of(), HERE);

    private static Oval oval(double x, double a, double b) {
        return new Oval(x, a, b, b, 0, 2, HERE);
    }

    private static Frame ring(double x, double depth, WebHole... holes) {
        return new Frame(null, x, depth, List.of(holes), HERE);
    }

    private static WebHole hole(double right, double up, double radius) {
        return new WebHole(null, new Outline.Circle(radius), right, up, PhaseStates.ALWAYS_OPEN, HERE);
    }

    private static Cavity build(
            int segments, List<Station> stations, List<Frame> frames, List<Floor> floors, int stringers) {
        ShellSpec shape = new ShellSpec(stations, segments, stringers, 0.02, frames, CLOSED, CLOSED, floors);
        return CavityFixtures.build(new CavitySpec.Shell("shell", shape, 0.001, List.of(), HERE));
    }

    private static double volume(Cavity cavity) {
        // the skin is wound outward, webs look aft: the forward end looks inward
        return MeshSums.volume(cavity, n -> n.equals("skin") || n.equals("aft end"), n -> n.equals("forward end"));
    }

    @ParameterizedTest
    @CsvSource({"0.5,0.5", "0.4,0.6", "0.6,0.2", "0.05,0.03"})
    void skinOfAnEllipticTubeIsPerimeterTimesLength(double a, double b) {
        double length = 0.8;
        Cavity cavity = build(0, List.of(oval(0, a, b), oval(length, a, b)), List.of(), List.of(), 0);
        double k = Math.sqrt(1 - Math.pow(Math.min(a, b) / Math.max(a, b), 2));
        // 4 a E(k), Abramowitz and Stegun (1964), Handbook of Mathematical Functions, chapter 17
        double exact = 4 * Math.max(a, b) * MeshSums.elliptic(k)[1];
        // second approximation of Ramanujan (1914), Quart. J. Math. 45, relative error about 3 h^5 / 2^17 (from memory)
        double h = Math.pow((a - b) / (a + b), 2);
        double ramanujan = Math.PI * (a + b) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h)));
        assertEquals(exact, ramanujan, 1e-5 * exact);
        double found = MeshSums.wholeArea(cavity, "skin") / length;
        // chords fall short of the arc by 2/3 of what the area falls short, below 0.5 %
        assertTrue(found < exact, "chords are shorter than the arc");
        assertEquals(exact, found, 5e-3 * exact);
        // area pi a b (Archimedes, On Conoids and Spheroids, 4)
        assertEquals(Math.PI * a * b, MeshSums.wholeArea(cavity, "aft end"), 1e-2 * Math.PI * a * b);
        assertEquals(MeshSums.wholeArea(cavity, "aft end") * length, volume(cavity), 1e-12);
    }

    @Test
    void facetsStayWithinHalfAMillimetreOfTheEllipse() {
        double a = 0.45;
        double b = 0.6;
        Cavity cavity = build(0, List.of(oval(0, a, b), oval(1, a, b)), List.of(), List.of(), 7);
        TriangleMesh mesh = cavity.sheets();
        double worst = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (cavity.partOfSheet(t) == 0) {
                Vec3 middle = mesh.point(t, 0).plus(mesh.point(t, 1)).times(0.5);
                // distance to the ellipse is at most the way along the ray from the centre
                double f = Math.sqrt(middle.y() * middle.y() / a / a + middle.z() * middle.z() / b / b);
                worst = Math.max(worst, (1 / f - 1) * Math.hypot(middle.y(), middle.z()));
            }
        }
        assertTrue(worst > 1e-5 && worst < 6e-4, "sagitta " + worst);
    }

    @Test
    void frustumHasItsSurfaceAndVolume() {
        double r1 = 0.5;
        double r2 = 0.2;
        double length = 1.3;
        int n = 64;
        Cavity cavity =
                build(n, List.of(oval(0, r1, r1), oval(length, r2, r2)), List.of(ring(0.4, 0.03)), List.of(), 0);
        double half = Math.PI / n;
        // frustum of a regular pyramid: n trapezia, and h/3 (A1 + A2 + sqrt(A1 A2)) (Heron, Metrica II.6)
        double face = Math.sqrt(length * length + Math.pow((r1 - r2) * Math.cos(half), 2));
        assertEquals(n * Math.sin(half) * (r1 + r2) * face, MeshSums.wholeArea(cavity, "skin"), 1e-12);
        double gon = n * Math.sin(half) * Math.cos(half);
        assertEquals(gon * length / 3 * (r1 * r1 + r1 * r2 + r2 * r2), volume(cavity), 1e-12);
        // and so, to second order in 1/n, pi (R + r) s and pi h / 3 (R^2 + R r + r^2) of the cone (handbook formula)
        assertEquals(Math.PI * (r1 + r2) * Math.hypot(length, r1 - r2), MeshSums.wholeArea(cavity, "skin"), 3e-3 * 2.9);
        assertEquals(Math.PI * length / 3 * (r1 * r1 + r1 * r2 + r2 * r2), volume(cavity), 2e-3 * 0.53);
    }

    @Test
    void ringFrameStandsInByItsDepth() {
        double r = 0.4;
        double depth = 0.05;
        int n = 48;
        Cavity cavity = build(n, List.of(oval(0, r, r), oval(1, r, r)), List.of(ring(0.5, depth)), List.of(), 0);
        double inner = r * Math.cos(Math.PI / n) - depth;
        // regular polygon about its inscribed circle: n tan(pi / n) r^2
        double area = n * Math.tan(Math.PI / n) * inner * inner;
        Opening opening = cavity.openings().get(0);
        assertEquals("frame 1 opening", opening.name());
        assertFalse(opening.exterior());
        assertEquals(area, opening.areaM2(), 1e-12);
        double web = n / 2.0 * Math.sin(2 * Math.PI / n) * r * r - area;
        assertEquals(web, MeshSums.area(cavity, "frame 1"), 1e-9);
    }

    @Test
    void superellipseHasItsPublishedArea() {
        // 4 a b Gamma(1 + 1/n)^2 / Gamma(1 + 2/n), Gridgeman (1970), Math. Gazette 54 (from memory); Gamma(1.25) and
        // Gamma(1.5)
        // from Abramowitz and Stegun (1964), table 6.1
        double factor = 4 * 0.9064024771 * 0.9064024771 / 0.8862269255;
        Station first = new Oval(0, 0.5, 0.4, 0.4, 0.1, 4, HERE);
        Station second = new Oval(1, 0.5, 0.4, 0.4, 0.1, 4, HERE);
        Cavity cavity = build(0, List.of(first, second), List.of(), List.of(), 0);
        assertEquals(factor * 0.2, MeshSums.wholeArea(cavity, "aft end"), 2e-3 * factor * 0.2);
    }

    @Test
    void measuredHalfBreadthsAreFollowedPointForPoint() {
        // a hexagon with flat bottom, widening aft: area by the trapezoidal rule, volume by the prismatoid rule
        Measured fore = new Measured(
                0, List.of(new HalfBreadth(-0.3, 0.1), new HalfBreadth(0, 0.3), new HalfBreadth(0.4, 0)), HERE);
        Measured aft = new Measured(
                1.2, List.of(new HalfBreadth(-0.2, 0.2), new HalfBreadth(0, 0.4), new HalfBreadth(0.4, 0.1)), HERE);
        Cavity cavity = build(0, List.of(fore, aft), List.of(ring(0.6, 0.02)), List.of(), 4);
        double one = (0.1 + 0.3) * 0.3 + (0.3 + 0) * 0.4;
        double two = (0.2 + 0.4) * 0.2 + (0.4 + 0.1) * 0.4;
        assertEquals(one, MeshSums.wholeArea(cavity, "forward end"), 1e-12);
        assertEquals(two, MeshSums.wholeArea(cavity, "aft end"), 1e-12);
        double middle = MeshSums.wholeArea(cavity, "frame 1");
        // facets stand within 0.5 mm of the ruled surface on which the prismatoid rule is exact
        assertEquals(1.2 / 6 * (one + 4 * middle + two), volume(cavity), 2e-3 * 0.5);
    }

    @Test
    void floorRunsFromSkinToSkinAndSharesItsEdges() {
        double a = 0.4;
        double b = 0.5;
        FloorHole hole = new FloorHole(null, new Outline.Circle(0.05), 0.3, 0.1, PhaseStates.ALWAYS_OPEN, HERE);
        Floor floor = new Floor(null, -0.2, 0, 0.8, List.of(hole), HERE);
        Cavity cavity = build(0, List.of(oval(0, a, b), oval(1, a, b)), List.of(ring(0.55, 0.04)), List.of(floor), 0);
        double width = 2 * a * Math.sqrt(1 - 0.16);
        assertEquals(width * 0.8 - Math.PI * 0.0025, MeshSums.area(cavity, "floor"), 1e-3 * width);
        assertEquals("floor hole 1", cavity.openings().get(1).name());
        Map<String, Integer> uses = MeshSums.edgeUses(cavity, n -> !n.equals("floor"));
        // skin and webs: two at each edge of the ends, three where a frame stands, none free
        assertTrue(
                uses.values().stream().allMatch(u -> u == 2 || u == 3),
                uses.values().toString());
        Map<String, Integer> all = MeshSums.edgeUses(cavity, n -> true);
        long three = all.entrySet().stream()
                .filter(e -> e.getValue() == 3 && uses.getOrDefault(e.getKey(), 0) == 2)
                .count();
        assertTrue(three >= 4, "the floor's long edges are edges of the skin: " + three);
    }

    @Test
    void stringersStandEvenlyRoundTheGirthSquareToTheSkin() {
        double r = 0.4;
        Cavity cavity = build(0, List.of(oval(0, r, r), oval(1, r, r)), List.of(), List.of(), 8);
        TriangleMesh mesh = cavity.sheets();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            String name = cavity.parts().get(cavity.partOfSheet(t)).name();
            if (name.startsWith("stringer")) {
                int number = Integer.parseInt(name.substring(9));
                // from the keel up the right side: angle 2 pi (i - 1/2) / 8
                double angle = 2 * Math.PI * (number - 0.5) / 8;
                for (int k = 0; k < 3; k++) {
                    Vec3 p = mesh.point(t, k);
                    double radius = Math.hypot(p.y(), p.z());
                    assertTrue(Math.abs(radius - r) < 1e-9 || Math.abs(radius - r + 0.02) < 1e-4, name + " " + radius);
                    assertEquals(r * Math.sin(angle), p.y() * r / radius, 1e-3, name);
                    assertEquals(-r * Math.cos(angle), p.z() * r / radius, 1e-3, name);
                }
            }
        }
        assertEquals(0.02, MeshSums.area(cavity, "stringer 3"), 1e-5);
    }

    @Test
    void oddStringersHaveOneOnTheCrown() {
        Cavity cavity = build(0, List.of(oval(0, 0.4, 0.4), oval(1, 0.3, 0.3)), List.of(), List.of(), 3);
        TriangleMesh mesh = cavity.sheets();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (cavity.parts().get(cavity.partOfSheet(t)).name().equals("stringer 2")) {
                assertEquals(0, mesh.centroid(t).y(), 1e-15);
                assertTrue(mesh.centroid(t).z() > 0.25);
            }
        }
    }

    @Test
    void polygonHolesPointTheSameWayUpInBothEnds() {
        List<double[]> up = List.of(new double[] {-0.03, 0}, new double[] {0.03, 0}, new double[] {0, 0.09});
        WebHole triangle = new WebHole(null, new Outline.Polygon(up), 0, 0, PhaseStates.ALWAYS_OPEN, HERE);
        Frame end = new Frame(null, 0, 0, List.of(triangle), HERE);
        ShellSpec shape =
                new ShellSpec(List.of(oval(0, 0.3, 0.3), oval(1, 0.3, 0.3)), 0, 0, 0, List.of(), end, end, List.of());
        Cavity cavity = CavityFixtures.build(new CavitySpec.Shell("s", shape, 0.001, List.of(), HERE));
        for (Opening o : cavity.openings()) {
            assertTrue(o.exterior());
            assertEquals(
                    o.name().startsWith("forward") ? 1 : -1, o.place().normal().x(), 1e-12);
            assertTrue(o.place().contains(new Vec3(o.place().centreM().x(), 0, 0.08)), o.name());
            assertFalse(o.place().contains(new Vec3(o.place().centreM().x(), 0, -0.01)), o.name());
        }
    }

    @Test
    void concaveSectionsHaveRingsAsFarAsTheyAreSimple() {
        // a waist of 2 x 60 mm: rings of 20 mm fit, of 70 mm do not
        Measured waist = new Measured(0, waist(), HERE);
        Measured same = new Measured(1, waist(), HERE);
        Cavity cavity = build(0, List.of(waist, same), List.of(ring(0.5, 0.02)), List.of(), 0);
        Opening opening = cavity.openings().get(0);
        assertTrue(opening.place().outline().contains(0, 0));
        double perimeterTimesDepth = 0.02 * 2 * (0.15 + 4 * Math.hypot(0.09, 0.3) / 2 + 0.15);
        double section = MeshSums.wholeArea(cavity, "frame 1");
        assertEquals(section - perimeterTimesDepth, opening.areaM2(), 0.1 * perimeterTimesDepth);
        refused("CAV-043", List.of(waist, same), List.of(ring(0.5, 0.07)), List.of(), 0);
    }

    private static List<HalfBreadth> waist() {
        return List.of(new HalfBreadth(-0.3, 0.15), new HalfBreadth(0, 0.06), new HalfBreadth(0.3, 0.15));
    }

    @Test
    void impossibleMeasuresAreToldInSentences() {
        List<Station> good = List.of(oval(0, 0.4, 0.4), oval(1, 0.3, 0.3));
        refused("CAV-041", List.of(oval(0, 0.4, 0.4)), List.of(), List.of(), 0);
        refused("CAV-041", List.of(oval(1, 0.4, 0.4), oval(0.5, 0.4, 0.4)), List.of(), List.of(), 0);
        refused("CAV-041", List.of(oval(0, -0.4, 0.4), oval(0.5, 0.4, 0.4)), List.of(), List.of(), 0);
        refused("CAV-041", List.of(new Oval(0, 1, 1, 1, 0, 0.5, HERE), oval(0.5, 0.4, 0.4)), List.of(), List.of(), 0);
        Measured hollow =
                new Measured(1, List.of(new HalfBreadth(0, 0), new HalfBreadth(0.1, 0), new HalfBreadth(0.2, 0)), HERE);
        refused("CAV-042", List.of(oval(0, 1, 1), hollow), List.of(), List.of(), 0);
        Measured down = new Measured(1, List.of(new HalfBreadth(0.2, 0.1), new HalfBreadth(0.1, 0.1)), HERE);
        refused("CAV-042", List.of(oval(0, 1, 1), down), List.of(), List.of(), 0);
        refused("CAV-042", List.of(oval(0, 1, 1), new Measured(1, List.of(), HERE)), List.of(), List.of(), 0);
        refused("CAV-043", good, List.of(ring(1.5, 0.02)), List.of(), 0);
        refused("CAV-043", good, List.of(ring(0.5, 0.02), ring(0.5, 0.02)), List.of(), 0);
        refused("CAV-043", good, List.of(ring(0.5, 0.5)), List.of(), 0);
        refused("CAV-043", good, List.of(ring(0.5, -0.5)), List.of(), 0);
        refused("CAV-044", good, List.of(), List.of(new Floor(null, 0, 0.5, 2, List.of(), HERE)), 0);
        refused("CAV-044", good, List.of(), List.of(new Floor(null, -0.35, 0, 1, List.of(), HERE)), 0);
        refused("CAV-043", good, List.of(new Frame("skin", 0.5, 0.02, List.of(), HERE)), List.of(), 0);
        Floor named = new Floor("deck", 0, 0, 1, List.of(), HERE);
        refused("CAV-044", good, List.of(), List.of(named, new Floor("deck", 0.1, 0, 1, List.of(), HERE)), 0);
        refused("CAV-045", good, List.of(), List.of(), 101);
        refused("CAV-045", List.of(oval(0, 0.018, 0.4), oval(1, 0.3, 0.3)), List.of(), List.of(), 8);
        refused("CAV-028", good, List.of(ring(0.5, 0.05, hole(0.6, 0, 0.02))), List.of(), 0);
        refused("CAV-027", good, List.of(ring(0.5, 0.05, hole(0, 0, 0.02))), List.of(), 0);
    }

    private static void refused(
            String id, List<Station> stations, List<Frame> frames, List<Floor> floors, int stringers) {
        SceneException e = assertThrows(SceneException.class, () -> build(0, stations, frames, floors, stringers), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
        assertFalse(e.getMessage().contains("NaN"), e.getMessage());
    }
}
