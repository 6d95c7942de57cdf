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
import baymist.scene.BoxSectionSpec;
import baymist.scene.BoxSectionSpec.Baffle;
import baymist.scene.BoxSectionSpec.Bend;
import baymist.scene.BoxSectionSpec.End;
import baymist.scene.BoxSectionSpec.Plate;
import baymist.scene.BoxSectionSpec.Wall;
import baymist.scene.BoxSectionSpec.WallHole;
import baymist.scene.CavitySpec;
import baymist.scene.PhaseStates;
import baymist.scene.ShellSpec.WebHole;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BoxSectionFamilyTest {
    private static final SourcePlace HERE = CavityFixtures.PLACE;
    private static final PhaseStates OPEN = PhaseStates.ALWAYS_OPEN;
    private static final End CLOSED = new End(false, List.of());
    private static final Set<String> WALLS = Set.of("bottom", "right wall", "top", "left wall");
    private static final double W = 0.1;
    private static final double H = 0.14;

    private static Bend at(double x, double y, double z) {
        return new Bend(new Vec3(x, y, z), 0, 0, HERE);
    }

    private static Bend bend(double x, double y, double z, double radius, int facets) {
        return new Bend(new Vec3(x, y, z), radius, facets, HERE);
    }

    private static CavitySpec spec(
            double top,
            double bottom,
            List<Bend> line,
            List<Baffle> baffles,
            List<Plate> plates,
            List<WallHole> holes,
            End end) {
        BoxSectionSpec shape = new BoxSectionSpec(top, bottom, H, line, Vec3.Z, CLOSED, end, baffles, plates, holes);
        return new CavitySpec.BoxSection("box", shape, 0.001, List.of(), HERE);
    }

    private static Cavity plain(double top, double bottom, List<Bend> line) {
        return CavityFixtures.build(spec(top, bottom, line, List.of(), List.of(), List.of(), CLOSED));
    }

    private static double volume(Cavity cavity) {
        return MeshSums.volume(cavity, n -> WALLS.contains(n) || n.equals("far end"), n -> n.equals("start end"));
    }

    private static double girth(Cavity cavity) {
        return WALLS.stream().mapToDouble(n -> MeshSums.wholeArea(cavity, n)).sum();
    }

    @Test
    void straightBoxIsAPrismHoweverItLies() {
        Vec3 end = new Vec3(0.5, -0.4, 0.3);
        Cavity cavity = plain(W, W, List.of(at(0.1, 0.2, 0.3), at(0.1 + end.x(), 0.2 + end.y(), 0.3 + end.z())));
        assertEquals(W * H * end.length(), volume(cavity), 1e-14);
        assertEquals(2 * (W + H) * end.length(), girth(cavity), 1e-13);
        assertEquals(W * H, MeshSums.wholeArea(cavity, "start end"), 1e-15);
    }

    @Test
    void hatSectionIsATrapezium() {
        double crown = 0.09;
        double mouth = 0.13;
        Cavity cavity = plain(crown, mouth, List.of(at(0, 0, 0), at(1, 0, 0)));
        // trapezium (handbook formula): (a + b) h / 2; sloping webs of sqrt(h^2 + ((b - a) / 2)^2)
        assertEquals((crown + mouth) / 2 * H, MeshSums.wholeArea(cavity, "far end"), 1e-15);
        assertEquals((crown + mouth) / 2 * H, volume(cavity), 1e-14);
        assertEquals(Math.hypot(H, 0.02), MeshSums.wholeArea(cavity, "left wall"), 1e-14);
        assertEquals(mouth, MeshSums.wholeArea(cavity, "bottom"), 1e-14);
    }

    @Test
    void sidesAreTheAircraftsForALineThatRunsAft() {
        Cavity cavity = plain(W, W, List.of(at(0, 0, 0), at(1, 0, 0)));
        TriangleMesh mesh = cavity.sheets();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            Vec3 c = mesh.centroid(t);
            switch (cavity.parts().get(cavity.partOfSheet(t)).name()) {
                case "right wall" -> assertEquals(W / 2, c.y(), 1e-15);
                case "left wall" -> assertEquals(-W / 2, c.y(), 1e-15);
                case "top" -> assertEquals(H / 2, c.z(), 1e-15);
                case "bottom" -> assertEquals(-H / 2, c.z(), 1e-15);
                case "start end" -> assertEquals(0, c.x(), 1e-15);
                default -> assertEquals(1, c.x(), 1e-15);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0.3,90,0", "0.2,45,0", "0.5,120,0", "0.3,90,3", "0.3,60,1", "0,90,0", "0,30,0"})
    void bentBoxFollowsPappus(double radius, double degrees, int facets) {
        double angle = Math.toRadians(degrees);
        double leg = 1.2;
        // the corner lies where the legs meet; the bend is level, so the section's height stays upright
        List<Bend> line = List.of(
                at(-leg, 0, 0), bend(0, 0, 0, radius, facets), at(leg * Math.cos(angle), leg * Math.sin(angle), 0));
        Cavity cavity = plain(W, W, line);
        double straight = 2 * (leg - radius * Math.tan(angle / 2));
        int m = radius == 0 ? 1 : facets;
        if (m == 0) {
            m = 1;
            while ((radius + Math.hypot(W, H) / 2) * (1 / Math.cos(angle / 2 / m) - 1) > 5e-4) {
                m++;
            }
        }
        // mitres cut through the centroid: volume is section times length of the centroid's line, and the centroid of
        // the
        // girth lies there, too, so its surface is girth times length
        double mitred = straight + 2 * m * radius * Math.tan(angle / 2 / m);
        assertEquals(W * H * mitred, volume(cavity), 1e-13);
        assertEquals(2 * (W + H) * mitred, girth(cavity), 1e-12);
        if (facets == 0) {
            // Pappus (Collection VII; Guldin 1641): section times the way of its centroid along the true arc
            double arc = straight + radius * angle;
            assertEquals(W * H * arc, volume(cavity), 2e-3 * W * H * arc);
        }
    }

    @Test
    void bentHatFollowsPappusWithItsOwnCentroid() {
        double crown = 0.08;
        double mouth = 0.14;
        double radius = 0.3;
        // bent upwards by 90 degrees: the centre of the bend lies above
        Cavity cavity = plain(crown, mouth, List.of(at(-1, 0, 0), bend(0, 0, 0, radius, 12), at(0, 0, 1)));
        double area = (crown + mouth) / 2 * H;
        // centroid of a trapezium above its base: h (2 a + b) / (3 (a + b)), a the top (handbook formula)
        double above = H * (2 * crown + mouth) / (3 * (crown + mouth)) - H / 2;
        double way = 2 * (1 - radius) + 2 * 12 * (radius - above) * Math.tan(Math.PI / 2 / 24);
        assertEquals(area * way, volume(cavity), 1e-13);
        double arc = 2 * (1 - radius) + (radius - above) * Math.PI / 2;
        assertEquals(area * arc, volume(cavity), 1e-3 * area * arc);
    }

    @Test
    void sectionIsNotTwistedByBendsInSpace() {
        Cavity cavity = plain(
                W,
                W,
                List.of(at(0, 0, 0), bend(1, 0, 0, 0.3, 4), bend(1, 1, 0, 0.3, 4), bend(1, 1, 1, 0.3, 4), at(2, 1, 1)));
        assertEquals(W * H, MeshSums.wholeArea(cavity, "far end"), 1e-15);
        double mitred = (0.7 + 0.4 + 0.4 + 0.7) + 3 * 8 * 0.3 * Math.tan(Math.PI / 16);
        assertEquals(W * H * mitred, volume(cavity), 1e-13);
        assertEquals(2 * (W + H) * mitred, girth(cavity), 1e-12);
    }

    @Test
    void sheetsMeetVertexForVertexAlsoAtBafflesAndPlates() {
        Baffle baffle = new Baffle(0.3, List.of(), HERE);
        Plate plate = new Plate(Wall.RIGHT, 0.2, 1.6, 0.02, 0, HERE);
        List<Bend> line = List.of(at(0, 0, 0), bend(1, 0, 0, 0.3, 0), at(1, 0, 1));
        Cavity cavity =
                CavityFixtures.build(spec(0.08, 0.12, line, List.of(baffle), List.of(plate), List.of(), CLOSED));
        long free = MeshSums.edgeUses(cavity, n -> !n.startsWith("plate")).values().stream()
                .filter(u -> u == 1)
                .count();
        assertEquals(0, free);
        // the plate's long edges lie on edges of the walls; its two ends are free
        long loose = MeshSums.edgeUses(cavity, n -> true).values().stream()
                .filter(u -> u == 1)
                .count();
        assertEquals(2, loose);
    }

    @Test
    void plateKeepsItsGapAndWidth() {
        for (Wall wall : Wall.values()) {
            Plate whole = new Plate(wall, 0.2, 0.8, 0.03, 0, HERE);
            Plate narrow = new Plate(wall, 0.2, 0.8, 0.05, 0.04, HERE);
            Cavity cavity = CavityFixtures.build(spec(
                    0.08,
                    0.12,
                    List.of(at(0, 0, 0), at(1, 0, 0)),
                    List.of(),
                    List.of(whole, narrow),
                    List.of(),
                    CLOSED));
            assertEquals(0.04 * 0.6, MeshSums.wholeArea(cavity, "plate 2"), 1e-14);
            Vec3 n = Vec3.ZERO;
            Vec3 on = Vec3.ZERO;
            TriangleMesh mesh = cavity.sheets();
            for (int t = 0; t < mesh.triangleCount(); t++) {
                if (cavity.parts().get(cavity.partOfSheet(t)).name().equals(wall.partName())) {
                    n = mesh.normal(t);
                    on = mesh.point(t, 0);
                }
            }
            for (int t = 0; t < mesh.triangleCount(); t++) {
                String name = cavity.parts().get(cavity.partOfSheet(t)).name();
                double gap = mesh.centroid(t).minus(on).dot(n);
                if (name.startsWith("plate")) {
                    assertEquals(name.equals("plate 1") ? -0.03 : -0.05, gap, 1e-14, wall + " " + name);
                }
            }
        }
    }

    @Test
    void holesStandWhereTheyAreMeasured() {
        WebHole web = new WebHole(null, new Outline.Circle(0.02), 0.01, -0.02, OPEN, HERE);
        List<WallHole> holes = List.of(
                new WallHole("a", Wall.BOTTOM, new Outline.Slot(0.03, 0.01), 0.2, 0.02, OPEN, HERE),
                new WallHole("b", Wall.TOP, new Outline.Circle(0.004), 0.2, 0.02, OPEN, HERE),
                new WallHole("c", Wall.RIGHT, new Outline.Circle(0.004), 0.2, 0.02, OPEN, HERE),
                new WallHole("d", Wall.LEFT, new Outline.Circle(0.004), 0.2, 0.02, OPEN, HERE),
                new WallHole(null, Wall.TOP, new Outline.Circle(0.004), 1.9 - 0.6 + 0.3 * Math.PI / 2, 0, OPEN, HERE));
        Cavity cavity = CavityFixtures.build(spec(
                W,
                W,
                List.of(at(0, 0, 0), bend(1, 0, 0, 0.3, 0), at(1, 0, 1)),
                List.of(new Baffle(0.5, List.of(web), HERE)),
                List.of(),
                holes,
                CLOSED));
        place(cavity, "a", new Vec3(0.2, 0.02, -H / 2), Vec3.Z);
        place(cavity, "b", new Vec3(0.2, 0.02, H / 2), Vec3.Z.negate());
        place(cavity, "c", new Vec3(0.2, W / 2, 0.02), Vec3.Y.negate());
        place(cavity, "d", new Vec3(0.2, -W / 2, 0.02), Vec3.Y);
        // 0.6 m from the bend's end: the top looks forward there
        place(cavity, "wall hole 5", new Vec3(1 - H / 2, 0, 0.9), Vec3.X);
        place(cavity, "baffle 1 hole 1", new Vec3(0.5, 0.01, -0.02), Vec3.X);
        assertEquals(
                0.01 * 0.02 + Math.PI * 0.005 * 0.005,
                cavity.openings().get(cavity.openingIndex("a")).areaM2(),
                1e-15);
        assertEquals(W * H - Math.PI * 0.0004, MeshSums.area(cavity, "baffle 1"), 1e-12);
    }

    private static void place(Cavity cavity, String name, Vec3 centre, Vec3 normal) {
        Opening o = cavity.openings().get(cavity.openingIndex(name));
        assertEquals(
                0, o.place().centreM().distance(centre), 1e-12, name + o.place().centreM());
        assertEquals(1, o.place().normal().dot(normal), 1e-12, name);
    }

    @Test
    void openEndIsAnOpeningAsLargeAsTheSection() {
        Cavity cavity = CavityFixtures.build(spec(
                0.08,
                0.12,
                List.of(at(0, 0, 0), at(1, 0, 0)),
                List.of(),
                List.of(),
                List.of(),
                new End(true, List.of())));
        Opening open = cavity.openings().get(0);
        assertEquals("open far end", open.name());
        assertEquals(Opening.Kind.GAP, open.kind());
        assertTrue(open.exterior());
        assertEquals(0.1 * H, open.areaM2(), 1e-14);
        assertEquals(-1, open.place().normal().x(), 1e-12);
    }

    @Test
    void impossibleMeasuresAreToldInSentences() {
        List<Bend> straight = List.of(at(0, 0, 0), at(1, 0, 0));
        List<Bend> bent = List.of(at(0, 0, 0), bend(1, 0, 0, 0.3, 0), at(1, 0, 1));
        refused("CAV-046", List.of(at(0, 0, 0)), List.of(), List.of(), List.of());
        refused("CAV-046", List.of(at(0, 0, 0), at(0, 0, 0)), List.of(), List.of(), List.of());
        refused("CAV-046", List.of(at(0, 0, 0), at(0, 0, 1)), List.of(), List.of(), List.of());
        refused("CAV-046", List.of(at(0, 0, 0), at(1, 0, 0), at(0, 0.001, 0)), List.of(), List.of(), List.of());
        refused("CAV-046", List.of(at(0, 0, 0), bend(1, 0, 0, 1.5, 0), at(1, 0, 1)), List.of(), List.of(), List.of());
        // a bend tighter than half of the section folds its inside over
        refused("CAV-046", List.of(at(0, 0, 0), bend(1, 0, 0, 0.05, 6), at(1, 0, 1)), List.of(), List.of(), List.of());
        refused("CAV-046", List.of(at(0, 0, 0), bend(1, 0, 0, -1, 0), at(1, 0, 1)), List.of(), List.of(), List.of());
        refused("CAV-047", straight, List.of(new Baffle(1.2, List.of(), HERE)), List.of(), List.of());
        refused("CAV-047", straight, List.of(new Baffle(0, List.of(), HERE)), List.of(), List.of());
        Baffle same = new Baffle(0.4, List.of(), HERE);
        refused("CAV-047", straight, List.of(same, same), List.of(), List.of());
        refused("CAV-047", bent, List.of(new Baffle(0.9, List.of(), HERE)), List.of(), List.of());
        refused("CAV-047", straight, List.of(), List.of(new Plate(Wall.TOP, 0.1, 0.5, 0.2, 0, HERE)), List.of());
        refused("CAV-047", straight, List.of(), List.of(new Plate(Wall.TOP, 0.1, 0.5, 0.02, 0.2, HERE)), List.of());
        refused("CAV-047", straight, List.of(), List.of(new Plate(Wall.TOP, 0.5, 0.1, 0.02, 0, HERE)), List.of());
        WallHole beyond = new WallHole(null, Wall.TOP, new Outline.Circle(0.01), 3, 0, OPEN, HERE);
        refused("CAV-047", straight, List.of(), List.of(), List.of(beyond));
        WallHole wide = new WallHole(null, Wall.TOP, new Outline.Circle(0.06), 0.5, 0, OPEN, HERE);
        refused("CAV-028", straight, List.of(), List.of(), List.of(wide));
        // a baffle so near to a mitre that it would stand across it
        refused(
                "CAV-046",
                List.of(at(0, 0, 0), at(1, 0, 0), at(1, 0, 1)),
                List.of(new Baffle(0.98, List.of(), HERE)),
                List.of(),
                List.of());
    }

    private static void refused(
            String id, List<Bend> line, List<Baffle> baffles, List<Plate> plates, List<WallHole> holes) {
        CavitySpec spec = spec(W, W, line, baffles, plates, holes, CLOSED);
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(spec), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
        assertFalse(e.getMessage().contains("NaN"), e.getMessage());
    }
}
