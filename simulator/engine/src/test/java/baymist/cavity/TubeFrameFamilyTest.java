package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.TubeFrameSpec;
import baymist.scene.TubeFrameSpec.Gusset;
import baymist.scene.TubeFrameSpec.Node;
import baymist.scene.TubeFrameSpec.Tube;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TubeFrameFamilyTest {
    private static final SourcePlace HERE = CavityFixtures.PLACE;

    static Tube tube(int from, int to, double outer, double fromHole, double toHole) {
        return new Tube(null, from, to, outer, 0.001, fromHole, toHole, HERE);
    }

    static Node node(double x, double y, double z) {
        return new Node("n " + x + " " + y + " " + z, new Vec3(x, y, z));
    }

    static Cavity build(int segments, List<Node> nodes, Tube... tubes) {
        TubeFrameSpec shape = new TubeFrameSpec(nodes, List.of(tubes), segments);
        return CavityFixtures.build(new CavitySpec.TubeFrame("frame", shape, List.of(), HERE));
    }

    /** A main tube along x, and a branch from its middle straight up. */
    static Cavity tee(int segments, double mainOuter, double branchOuter, double hole) {
        List<Node> nodes = List.of(node(-0.2, 0, 0), node(0.2, 0, 0), node(0, 0, 0), node(0, 0, 0.25));
        return build(segments, nodes, tube(0, 1, mainOuter, 0, 0), tube(2, 3, branchOuter, hole, 0));
    }

    @Test
    void loneTubeHoldsThePrismOfItsBore() {
        Vec3 end = new Vec3(0.2, 0.1, -0.3);
        Cavity cavity = build(24, List.of(node(0, 0, 0), node(end.x(), end.y(), end.z())), tube(0, 1, 0.03, 0, 0));
        double r = 0.014;
        // pi r^2 L: the polygon's area is that of the bore
        double volume = MeshSums.starVolume(cavity, end.times(0.5), n -> true);
        assertEquals(Math.PI * r * r * end.length(), volume, 1e-15);
        assertEquals(Math.PI * r * r, MeshSums.wholeArea(cavity, "tube 1 first end"), 1e-16);
        // the girth of a regular polygon with the circle's area: 2 sqrt(n pi tan(pi / n)) r
        double girth = 2 * Math.sqrt(24 * Math.PI * Math.tan(Math.PI / 24)) * r;
        assertEquals(girth * end.length(), MeshSums.wholeArea(cavity, "tube 1"), 1e-14);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.012, 0.02, 0.028})
    void branchIsCutToTheMainTubesWall(double branchOuter) {
        Cavity cavity = tee(96, 0.03, branchOuter, 0);
        double main = 0.014;
        double r = branchOuter / 2 - 0.001;
        // each line of the branch ends sqrt(R^2 - r^2 sin^2 phi) from the main axis: surface 2 pi r L - 4 r R E(r / R)
        double exact = 2 * Math.PI * r * 0.25 - 4 * r * main * MeshSums.elliptic(r / main)[1];
        assertEquals(exact, MeshSums.wholeArea(cavity, "tube 2"), 2e-3 * exact);
        // its end in the main tube is cut away, its free end is whole
        assertFalse(cavity.parts().stream().anyMatch(p -> p.name().equals("tube 2 first end")));
        assertEquals(Math.PI * r * r, MeshSums.wholeArea(cavity, "tube 2 last end"), 1e-15);
        // the main tube stays whole
        double girth = 2 * Math.sqrt(96 * Math.PI * Math.tan(Math.PI / 96)) * main;
        assertEquals(girth * 0.4, MeshSums.wholeArea(cavity, "tube 1"), 1e-14);
    }

    @Test
    void jointHoleHasItsExactAreaInTheMainWall() {
        Cavity cavity = tee(24, 0.03, 0.02, 0.008);
        Opening joint = cavity.openings().get(0);
        assertEquals("joint of tube 2 at n 0.0 0.0 0.0", joint.name());
        assertEquals(Math.PI * 0.004 * 0.004, joint.areaM2(), 1e-19);
        assertEquals("tube 1", cavity.parts().get(joint.part()).name());
        assertFalse(joint.exterior());
        double cut = 0;
        for (int t = 0; t < cavity.closures().triangleCount(); t++) {
            // area seen along the hole's normal
            cut += Math.abs(cavity.closures()
                            .doubleAreaVector(t)
                            .dot(joint.place().normal()))
                    / 2;
        }
        assertEquals(joint.areaM2(), cut, 1e-9 * cut);
        assertEquals(0.014, joint.place().centreM().z(), 1e-4);
    }

    @Test
    void firstTubeAtACornerRunsPastItAndTakesTheOthersOnItsWall() {
        List<Node> nodes = List.of(node(0, 0, 0), node(0.3, 0, 0), node(0, 0, 0.3));
        Cavity square = build(24, nodes, tube(0, 1, 0.03, 0, 0), tube(0, 2, 0.03, 0.01, 0));
        double low = square.sheets().bounds().min().x();
        // at a right angle the branch's bore, 14 mm, must be covered, and 0.5 mm more
        assertEquals(-0.0145, low, 2e-4);
        assertEquals(0, square.openings().get(0).place().centreM().x(), 1e-12);
        // nearly in line the second tube lands on the first one's end
        List<Node> flat = List.of(node(0, 0, 0), node(0.3, 0, 0), node(-0.3, 0, 0.05));
        Cavity inLine = build(24, flat, tube(0, 1, 0.03, 0, 0), tube(0, 2, 0.03, 0.01, 0));
        Opening joint = inLine.openings().get(0);
        assertEquals("tube 1 first end", inLine.parts().get(joint.part()).name());
        // leaning forward by more than 45 degrees it lands on the wall
        List<Node> bent = List.of(node(0, 0, 0), node(0.3, 0, 0), node(-0.2, 0, 0.25));
        Cavity leaning = build(24, bent, tube(0, 1, 0.03, 0, 0), tube(0, 2, 0.03, 0.01, 0));
        assertEquals(
                "tube 1", leaning.parts().get(leaning.openings().get(0).part()).name());
    }

    @Test
    void jointHoleMovesAsidesWhereAThirdTubeCoversTheMiddle() {
        // two equal branches 40 degrees apart overlap beside the main tube
        List<Node> nodes =
                List.of(node(-0.2, 0, 0), node(0.2, 0, 0), node(0, 0, 0), node(0, 0, 0.25), node(0.16, 0, 0.19));
        Cavity cavity =
                build(24, nodes, tube(0, 1, 0.03, 0, 0), tube(2, 3, 0.024, 0.006, 0), tube(2, 4, 0.024, 0.006, 0));
        assertEquals(2, cavity.openings().size());
        for (Opening o : cavity.openings()) {
            assertEquals(Math.PI * 9e-6, o.areaM2(), 1e-18);
        }
    }

    @Test
    void impossibleMeasuresAreToldInSentences() {
        List<Node> two = List.of(node(0, 0, 0), node(0.3, 0, 0));
        refused("CAV-048", 24, two);
        refused("CAV-048", 4, two, tube(0, 1, 0.03, 0, 0));
        refused("CAV-048", 24, two, tube(0, 1, 0.2, 0, 0));
        refused("CAV-048", 24, two, new Tube(null, 0, 1, 0.03, 0.015, 0, 0, HERE));
        refused("CAV-048", 24, two, tube(0, 1, 0.03, 0, 0), new Tube("tube 1", 1, 0, 0.03, 0.001, 0, 0, HERE));
        refused("CAV-049", 24, two, tube(0, 1, 0.03, 0.029, 0));
        refused("CAV-049", 24, two, tube(0, 1, 0.03, 0.01, 0));
        List<Node> cross =
                List.of(node(-0.2, 0, 0), node(0.2, 0, 0), node(0, 0, 0), node(0, 0, 0.25), node(0, 0, -0.25));
        refused("CAV-048", 24, cross, tube(2, 3, 0.03, 0, 0), tube(0, 1, 0.03, 0, 0));
        refused("CAV-048", 24, cross, tube(0, 1, 0.03, 0, 0), tube(3, 4, 0.03, 0, 0));
        // a thin main tube has no wall as wide as the branch's hole
        refused("CAV-049", 24, cross, tube(0, 1, 0.01, 0, 0), tube(2, 3, 0.04, 0.02, 0));
    }

    private static void refused(String id, int segments, List<Node> nodes, Tube... tubes) {
        SceneException e = assertThrows(SceneException.class, () -> build(segments, nodes, tubes), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
        assertFalse(e.getMessage().contains("NaN"), e.getMessage());
    }

    private static Gusset gusset(int node, int first, int second, double reach) {
        return new Gusset(null, node, first, second, reach, 0.001, HERE);
    }

    private static Cavity teeWith(Gusset... gussets) {
        List<Node> nodes = List.of(node(-0.2, 0, 0), node(0.2, 0, 0), node(0, 0, 0), node(0, 0, 0.25));
        List<Tube> tubes = List.of(tube(0, 1, 0.03, 0, 0), tube(2, 3, 0.02, 0.008, 0));
        TubeFrameSpec shape = new TubeFrameSpec(nodes, tubes, 96, List.of(gussets));
        return CavityFixtures.build(new CavitySpec.TubeFrame("frame", shape, List.of(), HERE));
    }

    @Test
    void gussetStandsAcrossBothBoresInThePlaneOfTheirAxes() {
        double reach = 0.06;
        Cavity cavity = teeWith(gusset(2, 0, 1, reach));
        // both ways along the main tube, 28 mm wide; along the branch from the main bore's wall, 18 mm wide
        double exact = 2 * reach * 0.028 + (reach - 0.014) * 0.018;
        assertEquals(exact, MeshSums.wholeArea(cavity, "gusset 1"), 1e-3 * exact);
        int part = cavity.parts()
                .indexOf(cavity.parts().stream()
                        .filter(p -> p.name().equals("gusset 1"))
                        .findFirst()
                        .orElseThrow());
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            if (cavity.partOfSheet(t) == part) {
                for (int k = 0; k < 3; k++) {
                    assertEquals(0, cavity.sheets().point(t, k).y(), 1e-15);
                }
            }
        }
    }

    @Test
    void gussetsThatDoNotFitAreRefused() {
        assertRefused("reaches 200.0 mm", gusset(2, 0, 1, 0.2));
        assertRefused("where that tube does not stand", gusset(0, 0, 1, 0.05));
        assertRefused("run in one line", gusset(2, 0, 0, 0.05));
        assertRefused(
                "both called 'gusset 1'", gusset(2, 0, 1, 0.05), new Gusset("gusset 1", 2, 0, 1, 0.05, 0.001, HERE));
    }

    private static void assertRefused(String words, Gusset... gussets) {
        SceneException refused = assertThrows(SceneException.class, () -> teeWith(gussets));
        assertTrue(refused.getMessage().contains(words), refused.getMessage());
        assertEquals("CAV-038", refused.findings().get(0).id());
    }
}
