package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.PhaseStates;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

class AccessFinderTest {
    private static final SourcePlace HERE = new SourcePlace("job.yaml", 12, "entries[0]");

    private static WandSpec wand(double lengthM, double outerM) {
        return new WandSpec("w", lengthM, outerM, outerM / 2, new TipSpec("t", List.of()));
    }

    private static EntrySpec entry(Vec3 direction) {
        return new EntrySpec("e", "port", direction, HERE);
    }

    private static Cavity ribbed(PhaseStates ribHole) {
        return TestCavity.box(0.4, 0.6, 0.15, TestCavity.port("port", 0.2, 0.075, 20e-3, TestCavity.OPEN))
                .sheet(
                        "rib 2",
                        new Vec3(0, 0.305, 0),
                        new Vec3(0.4, 0, 0),
                        new Vec3(0, 0, 0.15),
                        new TestCavity.Hole(
                                "rib hole",
                                new Outline.Circle(0.03),
                                new Vec3(0.2, 0.305, 0.075),
                                Vec3.Y,
                                false,
                                ribHole))
                .build();
    }

    private static Insertion find(Cavity cavity, WandSpec wand, EntrySpec entry, boolean... open) {
        return AccessFinder.find(cavity, wand, entry, open);
    }

    @Test
    void aWandGoesThroughALighteningHoleToTheFarWall() {
        Insertion in = find(ribbed(TestCavity.OPEN), wand(2, 6e-3), entry(null), true, true);
        assertTrue(in.feasible());
        assertEquals(0.6, in.maxDepthM(), 1e-12);
        assertEquals("right wall", in.stoppedBy());
        assertEquals(7e-3, in.edgeClearanceM(), 1e-15);
    }

    @Test
    void aShortWandEndsByItsLength() {
        Insertion in = find(ribbed(TestCavity.OPEN), wand(0.5, 6e-3), entry(null), true, true);
        assertEquals(0.5, in.maxDepthM());
        assertEquals(AccessFinder.WAND_LENGTH, in.stoppedBy());
    }

    @Test
    void aPluggedInnerOpeningStopsTheWand() {
        Insertion in = find(ribbed(TestCavity.PLUGGED), wand(2, 6e-3), entry(null), true, false);
        assertEquals(0.305, in.maxDepthM(), 1e-12);
        assertEquals("closed opening 'rib hole'", in.stoppedBy());
    }

    @Test
    void aRodThickerThanTheRibsHoleStopsAtTheRib() {
        Cavity cavity = TestCavity.box(0.4, 0.6, 0.15, TestCavity.port("port", 0.2, 0.075, 80e-3, TestCavity.OPEN))
                .sheet(
                        "rib 2",
                        new Vec3(0, 0.305, 0),
                        new Vec3(0.4, 0, 0),
                        new Vec3(0, 0, 0.15),
                        new TestCavity.Hole(
                                "rib hole",
                                new Outline.Circle(0.03),
                                new Vec3(0.2, 0.305, 0.075),
                                Vec3.Y,
                                false,
                                TestCavity.OPEN))
                .build();
        Insertion in = find(cavity, wand(2, 62e-3), entry(null), true, true);
        assertEquals(0.305, in.maxDepthM(), 1e-12);
        assertEquals("rib 2", in.stoppedBy());
    }

    @Test
    void aTiltedRodMeetsTheCeilingWhereTheClosedFormSays() {
        // Rising at 20 degrees from mid-height: the nose's upper rim meets the ceiling when the axis has climbed
        // h - r cos(20 deg), i.e. at depth (h - r cos)/sin.
        double theta = Math.toRadians(20);
        Vec3 up = new Vec3(0, Math.cos(theta), Math.sin(theta));
        Insertion in = find(ribbed(TestCavity.OPEN), wand(2, 6e-3), entry(up), true, true);
        assertEquals((0.075 - 3e-3 * Math.cos(theta)) / Math.sin(theta), in.maxDepthM(), 1e-12);
        assertEquals("ceiling", in.stoppedBy());
    }

    @Test
    void aTightRodIsNotStoppedByThePolygonOfItsOwnHole() {
        double inch = 0.0254;
        Cavity cavity = TestCavity.box(
                        0.4, 0.6, 0.15, TestCavity.port("port", 0.2, 0.075, 0.1285 * inch, TestCavity.OPEN))
                .build();
        Insertion in = find(cavity, wand(2, 0.1284 * inch), entry(null), true);
        assertEquals(0.6, in.maxDepthM(), 1e-12);
        Insertion thick = find(cavity, wand(2, 3.0 / 16 * inch), entry(null), true);
        assertFalse(thick.feasible());
        assertTrue(thick.stoppedBy().contains("too small"), thick.stoppedBy());
    }

    @Test
    void closedOrInnerOpeningsLetNoWandIn() {
        Insertion closed = find(ribbed(TestCavity.OPEN), wand(2, 6e-3), entry(null), false, true);
        assertFalse(closed.feasible());
        assertTrue(closed.stoppedBy().contains("closed while spraying"));
        Insertion inner =
                find(ribbed(TestCavity.OPEN), wand(2, 6e-3), new EntrySpec("e", "rib hole", null, HERE), true, true);
        assertFalse(inner.feasible());
        assertTrue(inner.stoppedBy().contains("bay to bay"));
    }

    @Test
    void anUnknownOpeningOrADirectionOutIsToldToTheUser() {
        Cavity cavity = ribbed(TestCavity.OPEN);
        EntrySpec unknown = new EntrySpec("e", "hatch", null, HERE);
        SceneException a = assertThrows(SceneException.class, () -> find(cavity, wand(2, 6e-3), unknown, true, true));
        assertEquals("ACC-001", a.findings().get(0).id());
        assertTrue(a.getMessage().contains("port, rib hole"), a.getMessage());
        SceneException b = assertThrows(
                SceneException.class, () -> find(cavity, wand(2, 6e-3), entry(new Vec3(1, -0.5, 0)), true, true));
        assertEquals("ACC-002", b.findings().get(0).id());
        SceneException none = assertThrows(
                SceneException.class, () -> find(TestCavity.box(1, 1, 1).build(), wand(2, 6e-3), unknown));
        assertTrue(none.getMessage().contains("it has none"));
    }
}
