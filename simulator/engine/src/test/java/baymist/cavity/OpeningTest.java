package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.CavitySpec;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.RibHole;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class OpeningTest {
    private static void assertPartition(Cavity c) {
        double whole = 0;
        for (int t = 0; t < c.sheets().triangleCount(); t++) {
            whole += c.sheets().areaM2(t);
        }
        double cut = CavityFixtures.area(c.cutSheets());
        double closures = CavityFixtures.area(c.closures());
        assertEquals(whole, cut + closures, 1e-9 * whole);
    }

    private static double closureArea(Cavity c, String opening) {
        int index = c.openingIndex(opening);
        double sum = 0;
        for (int t = 0; t < c.closures().triangleCount(); t++) {
            if (c.openingOfClosure(t) == index) {
                sum += c.closures().areaM2(t);
            }
        }
        return sum;
    }

    private static Opening opening(Cavity c, String name) {
        assertTrue(c.openingIndex(name) >= 0, name + " among " + c.openings());
        return c.openings().get(c.openingIndex(name));
    }

    @Test
    void drilledHoleTakesExactlyItsAreaOutOfAFlatSheet() {
        // No. 30 drill, 0.1285 in (ASME B94.11M, check-values GE-01): pi d^2 / 4
        double d = 0.1285 * 0.0254;
        Cavity c = CavityFixtures.build(CavityFixtures.block(
                new Vec3(0.4, 0.3, 0.2), CavityFixtures.round("hole", "ceiling", d, new Vec3(0.2, 0.15, 0.2))));
        assertEquals(Math.PI * d * d / 4, closureArea(c, "hole"), 1e-12 * d * d);
        assertPartition(c);
        CavityHealth health = CavityHealth.of(c);
        CavityHealth.PartArea ceiling = health.parts().get(5);
        assertEquals("ceiling", ceiling.part());
        assertEquals(Math.PI * d * d / 4, ceiling.wholeM2() - ceiling.cutM2(), 1e-14);
        assertEquals(health.closuresM2(), closureArea(c, "hole"), 1e-18);
    }

    @Test
    void everyOutlineIsCutWithItsOwnAreaWhateverItsPlace() {
        List<Outline> outlines = List.of(
                new Outline.Circle(0.02),
                new Outline.Slot(0.06, 0.02),
                new Outline.RoundedRectangle(0.05, 0.03, 0.004),
                new Outline.Polygon(List.of(
                        new double[] {-0.02, -0.02},
                        new double[] {0.03, -0.02},
                        new double[] {0.03, -0.01},
                        new double[] {-0.01, -0.01},
                        new double[] {-0.01, 0.03},
                        new double[] {-0.02, 0.03})));
        for (Outline outline : outlines) {
            // on the diagonal of the floor, where two triangles share the cut, and turned by 30 degrees
            OpeningSpec spec =
                    CavityFixtures.opening("o", "floor", outline, new Vec3(0.2, 0.15, 0), new Vec3(Math.sqrt(3), 1, 0));
            Cavity c = CavityFixtures.build(CavityFixtures.block(new Vec3(0.4, 0.3, 0.2), spec));
            assertEquals(outline.areaM2(), closureArea(c, "o"), 1e-12 * outline.areaM2() + 1e-17);
            assertPartition(c);
            for (int t = 0; t < c.closures().triangleCount(); t++) {
                Vec3 m = c.closures().centroid(t);
                double clearance = outline.clearanceM(
                        c.openings().get(0).place().u(m),
                        c.openings().get(0).place().v(m));
                assertTrue(clearance > -2e-5, outline + " " + clearance);
            }
        }
    }

    @Test
    void outerOpeningsPointIntoTheCavityAndInnerOnesOutboard() {
        Cavity c = CavityFixtures.twoBays();
        Opening port = opening(c, "port");
        assertTrue(port.exterior());
        assertEquals(Opening.Kind.PORT, port.kind());
        assertEquals(0, port.place().normal().distance(Vec3.Z.negate()), 1e-12);
        Opening hole = opening(c, "rib 2 hole 1");
        assertFalse(hole.exterior());
        assertEquals(Opening.Kind.HOLE, hole.kind());
        assertEquals(Vec3.Y, hole.place().normal());
        assertEquals(0, hole.place().centreM().distance(new Vec3(0.2, 0.3, 0)), 1e-15);
        assertPartition(c);
        for (Vec3 side : List.of(new Vec3(0.2, 0.15, 0), new Vec3(0.2, 0.15, 0.2), new Vec3(0, 0.15, 0.1))) {
            String wall = side.x() == 0 ? "forward wall" : side.z() == 0 ? "floor" : "ceiling";
            Cavity block = CavityFixtures.build(
                    CavityFixtures.block(new Vec3(0.4, 0.3, 0.2), CavityFixtures.round("o", wall, 0.02, side)));
            Vec3 inward = new Vec3(0.2, 0.15, 0.1).minus(side);
            assertTrue(opening(block, "o").place().normal().dot(inward) > 0);
        }
    }

    @Test
    void holesInEndRibsLeadOutside() {
        RibHole hole = new RibHole("way in", new Outline.Circle(0.01), 0.05, 0.002, PhaseStates.ALWAYS_OPEN);
        Cavity c = CavityFixtures.build(new CavitySpec.ControlSurface(
                "w",
                1,
                0.3,
                0.3,
                0.06,
                0.06,
                0,
                0.001,
                List.of(new Rib(0, 0, List.of(hole)), new Rib(1, 0.03, List.of())),
                List.of(),
                CavityFixtures.PLACE));
        Opening in = opening(c, "way in");
        assertTrue(in.exterior());
        assertEquals(Vec3.Y, in.place().normal());
        assertEquals(0.002, in.place().centreM().z(), 1e-15);
        Opening end = opening(c, "rib 2 end gap");
        assertTrue(end.exterior());
        assertEquals(Vec3.Y.negate(), end.place().normal());
    }

    @Test
    void shortRibLeavesTheTriangleBehindItOpen() {
        Cavity c = CavityFixtures.wedge();
        Opening gap = opening(c, "rib 2 end gap");
        assertEquals(Opening.Kind.SHORT_MEMBER, gap.kind());
        // similar triangles: depth 50 mm over 250 mm of chord, the last 50 mm: 10 mm x 50 mm / 2
        assertEquals(0.5 * 0.01 * 0.05, gap.areaM2(), 1e-15);
        assertEquals(gap.areaM2(), closureArea(c, gap.name()), 1e-14);
        assertTrue(gap.place().contains(new Vec3(0.24, 0.5, 0)));
        assertFalse(gap.place().contains(new Vec3(0.19, 0.5, 0)));
        assertPartition(c);
    }

    @Test
    void holeInCurvedSkinKeepsItsAreaAlongTheNormal() {
        Cavity c = CavityFixtures.build(CavityFixtures.wingBoxSpec(
                CavityFixtures.round("hatch", "lower skin", 0.12, new Vec3(0.5, 0.3, -0.1))));
        Opening hatch = opening(c, "hatch");
        assertTrue(hatch.exterior());
        assertTrue(hatch.place().normal().z() > 0.95);
        double inSheet = closureArea(c, "hatch");
        assertTrue(inSheet >= hatch.areaM2() * (1 - 1e-9));
        assertEquals(1, inSheet / hatch.areaM2(), 2e-3);
        assertPartition(c);
        assertTrue(c.remarks().stream().anyMatch(r -> r.contains("hatch") && r.contains("moved")));
    }

    @Test
    void cutsAndStatesOfTheSceneAreApplied() {
        PhaseStates taped = new PhaseStates(OpeningState.TAPED, OpeningState.TAPED, OpeningState.CLOSED);
        Cavity c = CavityBuilder.build(
                CavityFixtures.wedgeSpec(),
                List.of(
                        CavityFixtures.round("drilled", "spar", 0.01, new Vec3(0, 0.2, 0)),
                        CavityFixtures.round("inner", "rib 2", 0.005, new Vec3(0.13, 0.5, 0))),
                Map.of("rib 2 hole 1", taped),
                List.of(CavityFixtures.entry("drilled")));
        assertEquals(taped, opening(c, "rib 2 hole 1").states());
        assertEquals(PhaseStates.ALWAYS_OPEN, opening(c, "drilled").states());
        assertEquals(0, opening(c, "drilled").place().normal().distance(Vec3.X), 1e-15);
        assertEquals(Opening.Kind.HOLE, opening(c, "inner").kind());
        assertEquals(0, opening(c, "inner").place().normal().distance(Vec3.Y), 1e-12);
        assertPartition(c);
    }

    @Test
    void longOutlinesLieAlongThePartUnlessToldOtherwise() {
        Outline slot = new Outline.Slot(0.04, 0.01);
        Cavity c = CavityFixtures.build(CavityFixtures.wedgeSpec(
                CavityFixtures.opening("a", "spar", slot, new Vec3(0, 0.2, 0), null),
                CavityFixtures.opening("b", "spar", slot, new Vec3(0, 0.4, 0), Vec3.Z)));
        assertEquals(1, Math.abs(opening(c, "a").place().uAxis().y()), 1e-12);
        assertEquals(1, Math.abs(opening(c, "b").place().uAxis().z()), 1e-12);
    }

    @Test
    void misfitsAreToldInSentences() {
        Vec3 size = new Vec3(0.4, 0.3, 0.2);
        OpeningSpec good = CavityFixtures.round("good", "floor", 0.05, new Vec3(0.2, 0.15, 0));
        // circular segment: 1/2 - (asin q + q sqrt(1 - q^2)) / pi with q = 1 mm / 25 mm
        refused("CAV-028", "47.5 %", size, CavityFixtures.round("x", "floor", 0.05, new Vec3(0.399, 0.15, 0)));
        refused("CAV-027", "'good'", size, good, CavityFixtures.round("x", "floor", 0.05, new Vec3(0.22, 0.15, 0)));
        refused("CAV-021", "did you mean 'ceiling'", size, CavityFixtures.round("x", "cieling", 0.05, Vec3.ZERO));
        refused("CAV-020", "'good'", size, good, CavityFixtures.round("good", "ceiling", 0.05, size.times(0.5)));
        refused("CAV-022", "off part", size, CavityFixtures.round("x", "floor", 0.05, new Vec3(200, 0, 0)));
        refused("CAV-022", "finite", size, CavityFixtures.round("x", "floor", 0.05, new Vec3(Double.NaN, 0, 0)));
        refused("CAV-030", "diameter", size, CavityFixtures.round("x", "floor", -0.05, size.times(0.5)));
        refused(
                "CAV-023",
                "lengthwise",
                size,
                CavityFixtures.opening("x", "floor", new Outline.Slot(0.02, 0.01), new Vec3(0.1, 0.1, 0), Vec3.Z));
        List<double[]> bow = List.of(
                new double[] {-0.02, -0.02}, new double[] {0.02, 0.01}, new double[] {0.02, -0.02}, new double[] {
                    -0.02, 0.02
                });
        refused(
                "CAV-026",
                "crosses itself",
                size,
                CavityFixtures.opening("x", "floor", new Outline.Polygon(bow), new Vec3(0.1, 0.1, 0), null));
        for (Outline bad : List.of(
                new Outline.Slot(0.01, 0.02),
                new Outline.RoundedRectangle(0.02, 0.02, 0.02),
                new Outline.Polygon(List.of(new double[] {0, 0}, new double[] {1, 0})),
                new Outline.Polygon(List.of(new double[] {0, 0}, new double[] {1, 0}, new double[] {2, 0})))) {
            refused("CAV-030", "", size, CavityFixtures.opening("x", "floor", bad, new Vec3(0.1, 0.1, 0), null));
        }
    }

    @Test
    void allProblemsAreToldAtOnce() {
        List<OpeningSpec> cuts = new ArrayList<>();
        cuts.add(CavityFixtures.round("a", "flor", 0.05, Vec3.ZERO));
        cuts.add(CavityFixtures.round("b", "roof", 0.05, Vec3.ZERO));
        SceneException e = assertThrows(
                SceneException.class,
                () -> CavityBuilder.build(
                        CavityFixtures.block(
                                new Vec3(1, 1, 1),
                                CavityFixtures.round(
                                        "port",
                                        "floor",
                                        0.1,
                                        Vec3.X.plus(Vec3.Y).times(0.5))),
                        cuts,
                        Map.of("prot", PhaseStates.ALWAYS_OPEN),
                        List.of(CavityFixtures.entry("porthole"))));
        assertEquals(4, e.findings().size(), e.getMessage());
        assertTrue(e.getMessage().contains("did you mean 'port'"), e.getMessage());
        assertTrue(e.getMessage().contains("The openings are: port"), e.getMessage());
    }

    @Test
    void ribHoleThatLeavesTheWebIsRefused() {
        RibHole hole = new RibHole(null, new Outline.Circle(0.02), 0.25, 0, PhaseStates.ALWAYS_OPEN);
        SceneException e = assertThrows(
                SceneException.class,
                () -> CavityFixtures.build(new CavitySpec.ControlSurface(
                        "w",
                        1,
                        0.3,
                        0.3,
                        0.06,
                        0.06,
                        0,
                        0.001,
                        List.of(new Rib(0, 0, List.of()), new Rib(0.5, 0, List.of(hole)), new Rib(1, 0, List.of())),
                        List.of(),
                        CavityFixtures.PLACE)));
        assertTrue(e.getMessage().contains("'rib 2 hole 1' does not fit on part 'rib 2'"), e.getMessage());
    }

    private static void refused(String id, String words, Vec3 size, OpeningSpec... ports) {
        SceneException e =
                assertThrows(SceneException.class, () -> CavityFixtures.build(CavityFixtures.block(size, ports)), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected: " + e.getMessage());
        assertTrue(e.getMessage().contains(words), e.getMessage());
    }
}
