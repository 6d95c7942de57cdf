package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.Flexibility;
import baymist.scene.TipSpec;
import baymist.scene.WandAim;
import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class RigidReachTest {
    private static final SourcePlace HERE = new SourcePlace("job.yaml", 12, "entries[1]");
    private static final TipSpec TIP = new TipSpec("t", List.of());

    private static WandSpec rod(double lengthM, double outerM) {
        return new WandSpec("w", lengthM, outerM, outerM / 2, TIP);
    }

    private static ReachProblem problem(Cavity cavity, WandSpec wand) {
        return problem(cavity, wand, new EntrySpec("e", "port", null, HERE));
    }

    private static ReachProblem problem(Cavity cavity, WandSpec wand, EntrySpec entry) {
        boolean[] open = new boolean[cavity.openings().size()];
        Arrays.fill(open, true);
        return new ReachProblem(
                Surroundings.of(cavity, open, List.of()), entry, wand, new ReachSettings(2e-3, 8_000, 400));
    }

    /** Box 0.4 x 0.6 x 0.15 m, port of 20 mm at x 0.2, z 0.075; a rib at y 0.3 with a hole of 20 mm moved aft. */
    private static Cavity offset(double moved) {
        return TestCavity.box(0.4, 0.6, 0.15, TestCavity.port("port", 0.2, 0.075, 20e-3, TestCavity.OPEN))
                .sheet(
                        "rib 2",
                        new Vec3(0, 0.3, 0),
                        new Vec3(0.4, 0, 0),
                        new Vec3(0, 0, 0.15),
                        new TestCavity.Hole(
                                "rib hole",
                                new Outline.Circle(0.010),
                                new Vec3(0.2 + moved, 0.3, 0.075),
                                Vec3.Y,
                                false,
                                TestCavity.OPEN))
                .build();
    }

    @Test
    void aRodIsLeanedToPassHolesThatDoNotLineUp() {
        Cavity cavity = offset(0.05);
        ReachProblem p = problem(cavity, rod(2, 8e-3));
        assertEquals("rib 2", AccessFinder.find(p).stoppedBy());
        WandReach reach = new RigidReach().search(p);
        assertTrue(reach.feasible());
        assertEquals("right wall", reach.stop().partName());
        assertEquals(2e-3, reach.resolutionM());
        // through the middles of both holes the axis leans by atan(50 / 300) and the nose's rim meets the wall at
        // 0.6 / cos - r tan; leaning on the edges it can lie up to 12 mm more askew over 300 mm
        double slope = 0.05 / 0.3;
        double most = (0.05 + 0.012) / 0.3;
        assertTrue(reach.maxDepthM() > 0.6 * Math.hypot(1, slope) - 4e-3 * slope - 2e-3, reach + "");
        assertTrue(reach.maxDepthM() < 0.6 * Math.hypot(1, most), reach + "");
    }

    @Test
    void holesTooFarAsideStopEveryLine() {
        // A rod of 8 mm in thin holes of 20 mm: each edge gives (D - d / cos) / 2, so between the holes the axis must
        // move aside
        // by 0.2 m over 0.3 m, a tilt of 33.7 degrees; d / cos = 9.6 mm still passes. With 19 mm it takes 22.8 mm.
        Cavity cavity = offset(0.19);
        assertEquals(
                "aft wall",
                new RigidReach().search(problem(cavity, rod(2, 8e-3))).stop().partName());
        WandReach thick = new RigidReach().search(problem(cavity, rod(2, 19e-3)));
        assertTrue(thick.feasible());
        assertTrue(thick.tips().get(0).tipM().y() < 0.3, thick + "");
    }

    @Test
    void theDeepestLineInAnEmptyBoxRunsToAFarCorner() {
        Cavity cavity = TestCavity.box(0.4, 0.6, 0.15, TestCavity.port("port", 0.2, 0.075, 20e-3, TestCavity.OPEN))
                .build();
        WandReach reach = new RigidReach().search(problem(cavity, rod(2, 2e-3)));
        double corner = Math.sqrt(0.2 * 0.2 + 0.6 * 0.6 + 0.075 * 0.075);
        double edge = Math.sqrt(0.21 * 0.21 + 0.6 * 0.6 + 0.085 * 0.085);
        assertTrue(reach.maxDepthM() > corner - 6e-3 && reach.maxDepthM() < edge, reach.maxDepthM() + " m");
        for (WandPose pose : reach.tips()) {
            assertTrue(pose.tipM().x() > -1e-9 && pose.tipM().x() < 0.4 + 1e-9);
        }
        assertTrue(reach.tips().size() > 50, reach.tips().size() + " tips");
    }

    @Test
    void theCentralLineRunsThroughTheMiddlesOfBothHoles() {
        RigidReach.Choice c = new RigidReach().best(problem(offset(0.03), rod(2, 8e-3)), new WandAim.Central(), 0.5);
        Insertion in = c.insertion();
        Vec3 through = in.originM().plus(0.3 / in.axis().y(), in.axis());
        // room (20 - 8 / cos 5.7 degrees) / 2 = 5.98 mm at both holes; within the tolerance of 0.5 mm that is the
        // middle line
        assertEquals(0.2, in.originM().x(), 0.7e-3);
        assertEquals(0.075, in.originM().z(), 2.6e-3);
        assertEquals(0.23, through.x(), 0.7e-3);
        assertEquals(0.5 * (0.02 - 8e-3 / in.axis().y()), in.edgeClearanceM(), 0.6e-3);
    }

    @Test
    void theTipIsBroughtNearestToARegion() {
        Cavity cavity = TestCavity.box(0.4, 0.6, 0.15, TestCavity.port("port", 0.2, 0.075, 30e-3, TestCavity.OPEN))
                .build();
        Vec3 target = new Vec3(0.3, 0.4, 0.12);
        ReachProblem p = problem(cavity, rod(2, 4e-3));
        Insertion free = new RigidReach()
                .best(p, new WandAim.Near(new Box3(target, target)), 1)
                .insertion();
        assertTrue(LineGoals.distanceM(free.originM(), free.axis(), free.maxDepthM(), new Box3(target, target)) < 2e-3);
        // behind the rib only what its hole lets through is near: the axis stays within 6 mm of its middle at y = 0.3
        Vec3 corner = new Vec3(0.05, 0.55, 0.075);
        ReachProblem ribbed = problem(offset(0), rod(2, 8e-3));
        Insertion in = new RigidReach()
                .best(ribbed, new WandAim.Near(new Box3(corner, corner)), 1)
                .insertion();
        // leaned from edge to edge the axis moves aside by 2 x (20 - 8) / 2 = 12 mm over 300 mm, 22 mm at y = 0.55
        double nearest = LineGoals.distanceM(in.originM(), in.axis(), in.maxDepthM(), new Box3(corner, corner));
        double wanted = 0.15 - 0.006 - 0.012 * 0.25 / 0.3;
        assertEquals(wanted, nearest, 4e-3);
    }

    @Test
    void aThickTipOrCouplingEndsWhereItNoLongerPasses() {
        Cavity cavity = offset(0);
        WandSpec tip = new WandSpec(
                "w",
                1,
                6e-3,
                2e-3,
                TIP,
                List.of(new WandPiece.Straight(1)),
                WandMaterial.STEEL,
                null,
                List.of(),
                21e-3,
                0.03);
        assertFalse(new RigidReach().search(problem(cavity, tip)).feasible());
        WandSpec coupled = new WandSpec(
                "w",
                1,
                6e-3,
                2e-3,
                TIP,
                List.of(new WandPiece.Straight(1)),
                WandMaterial.STEEL,
                null,
                List.of(new WandSpec.Coupling(0.25, 21e-3, 0.02)),
                6e-3,
                0);
        WandReach reach = new RigidReach().search(problem(cavity, coupled));
        assertEquals(0.24, reach.maxDepthM(), 1e-12);
        assertTrue(
                reach.stop().why().contains("coupling does not pass"),
                reach.stop().why());
    }

    @Test
    void sectionsAreFedInOneByOne() {
        WandSpec w = new WandSpec(
                "w",
                2.4,
                6e-3,
                2e-3,
                TIP,
                List.of(new WandPiece.Straight(2.4)),
                WandMaterial.STEEL,
                null,
                List.of(new WandSpec.Coupling(1.0, 8e-3, 0.02), new WandSpec.Coupling(1.6, 8e-3, 0.02)),
                6e-3,
                0);
        assertEquals(0, w.feedableM(0.9));
        assertEquals(2.4, w.feedableM(1.0));
        assertEquals(2.4, rod(2.4, 6e-3).feedableM(2.4));
        assertEquals(0, rod(2.4, 6e-3).feedableM(2.3));
    }

    @Test
    void aGrommetOrAGuideKeepsTheRodStraight() {
        Cavity cavity = offset(0.05);
        EntrySpec guided = new EntrySpec(
                "e", "port", null, null, new EntrySpec.SecondPlate(-0.1, 1e-3, new Outline.Circle(0.005)), HERE);
        // the hole of 10 mm stands 100 mm outside: the rod of 8 mm leans by no more than about (12 + 2) / 2 / 100
        WandReach reach = new RigidReach().search(problem(cavity, rod(2, 8e-3), guided));
        assertTrue(reach.tips().get(0).tipM().y() < 0.31, reach + "");
        EntrySpec lined = new EntrySpec("e", "port", null, new EntrySpec.Grommet(7e-3, 5e-3), null, HERE);
        assertFalse(
                new RigidReach().search(problem(cavity, rod(2, 8e-3), lined)).feasible());
    }

    @Test
    void aWandThatComesOutOfAnotherPortHasEnded() {
        Cavity cavity = new TestCavity()
                .sheet(
                        "left wall",
                        Vec3.ZERO,
                        new Vec3(0.4, 0, 0),
                        new Vec3(0, 0, 0.15),
                        TestCavity.port("port", 0.2, 0.075, 20e-3, TestCavity.OPEN))
                .sheet(
                        "right wall",
                        new Vec3(0, 0.6, 0),
                        new Vec3(0.4, 0, 0),
                        new Vec3(0, 0, 0.15),
                        new TestCavity.Hole(
                                "far port",
                                new Outline.Circle(0.02),
                                new Vec3(0.2, 0.6, 0.075),
                                Vec3.Y.negate(),
                                true,
                                TestCavity.OPEN))
                .build();
        Insertion in = AccessFinder.find(problem(cavity, rod(2, 8e-3)));
        assertEquals(0.6, in.maxDepthM(), 1e-12);
        assertEquals("open opening 'far port'", in.stoppedBy());
    }

    @Test
    void searchesGiveTheSameBitsAgain() {
        ReachProblem p = problem(offset(0.02), rod(1, 6e-3));
        assertEquals(new RigidReach().search(p), new RigidReach().search(p));
    }

    @Test
    void closedEntriesAndOtherWandsAreRefused() {
        Cavity cavity = offset(0);
        ReachProblem inner = problem(cavity, rod(1, 5e-3), new EntrySpec("e", "rib hole", null, HERE));
        WandReach none = new RigidReach().search(inner);
        assertFalse(none.feasible());
        assertTrue(none.stop().why().contains("bay to bay"));
        WandSpec bendy = new WandSpec(
                "w",
                1,
                6e-3,
                2e-3,
                TIP,
                List.of(new WandPiece.Straight(1)),
                WandMaterial.NYLON,
                new Flexibility(0.05, 3, 40, 0.3),
                List.of(),
                6e-3,
                0);
        assertThrows(IllegalArgumentException.class, () -> new RigidReach().search(problem(cavity, bendy)));
    }
}
