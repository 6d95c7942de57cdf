package baymist.access;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.scene.Scene;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class StationsTest {
    private static Insertion insertion(double depth, String by) {
        Vec3 origin = new Vec3(0.2, 0, 0.075);
        WandPath path = WandPath.straight(origin, Vec3.Y, 3e-3, depth);
        return new Insertion("e", "w", 0, origin, Vec3.Y, depth, by, true, 1e-3, path);
    }

    @Test
    void stationsCoverTheStrokeAndItsTimeExactly() {
        Scene scene = TestScene.of(0.03, 60, Map.of(), TestScene.pass("p", 0.5, 0.1, 0.02, 1.5, 5));
        PassPlan plan = Stations.plan(scene, List.of(insertion(0.6, AccessFinder.WAND_LENGTH)));
        List<Station> stations = plan.stations();
        assertEquals(1 + 14, stations.size());
        assertEquals(0.5, stations.get(0).depthM());
        assertEquals(0, stations.get(0).travelM());
        double time = 0;
        double travel = 0;
        for (Station s : stations) {
            assertEquals(time, s.startS(), 1e-12);
            time += s.durationS();
            travel += s.travelM();
            assertEquals(s.depthM(), s.pose().positionM().y(), 1e-15);
        }
        assertEquals(1.5 + 0.4 / 0.02, time, 1e-12);
        assertEquals(0.4, travel, 1e-12);
        assertEquals(0.1 + 0.5 * 0.4 / 14, stations.get(14).depthM(), 1e-12);
        assertArrayEquals(new double[] {21.5}, plan.triggerOffS(), 1e-12);
        assertEquals(21.5 + 5 + 60, plan.endS(), 1e-12);
        assertTrue(plan.findings().isEmpty());
    }

    @Test
    void passesFollowOneAnotherAfterTheirHangTimes() {
        Scene scene = TestScene.of(
                0, 10, Map.of(), TestScene.pass("a", 0.3, 0.3, 0, 2, 30), TestScene.pass("b", 0.2, 0.2, 0, 3, 0));
        Insertion in = insertion(0.6, AccessFinder.WAND_LENGTH);
        PassPlan plan = Stations.plan(scene, List.of(in, in));
        assertArrayEquals(new double[] {0, 32}, plan.triggerOnS());
        assertArrayEquals(new double[] {2, 35}, plan.triggerOffS());
        assertEquals(45, plan.endS());
        assertEquals(2, Stations.of(scene, List.of(in, in)).size());
    }

    @Test
    void aDepthBeyondTheStopIsCutAndSaid() {
        Scene scene = TestScene.of(0, 0, Map.of(), TestScene.pass("deep", 0.9, 0.1, 0.02, 0, 0));
        PassPlan plan = Stations.plan(scene, List.of(insertion(0.305, "rib 2")));
        assertEquals("ACC-010", plan.findings().get(0).id());
        assertEquals(Severity.WARNING, plan.findings().get(0).severity());
        assertTrue(plan.findings().get(0).text().contains("900.0 mm"));
        assertTrue(plan.findings().get(0).text().contains("rib 2"));
        Station first = plan.stations().get(0);
        assertEquals(0.305 - Stations.STAND_OFF_M, first.depthM() + 0.5 * first.travelM(), 1e-12);
    }

    @Test
    void aPassThatEndsDeeperThanTheWandGetsIsRefused() {
        Insertion in = insertion(0.305, "rib 2");
        Scene never = TestScene.of(0, 0, Map.of(), TestScene.pass("never", Double.POSITIVE_INFINITY, 0.9, 0.02, 0, 0));
        SceneException e = assertThrows(SceneException.class, () -> Stations.plan(never, List.of(in)));
        assertEquals("ACC-012", e.findings().get(0).id());
        assertTrue(e.findings().get(0).text().contains("900.0 mm"));
        assertTrue(e.findings().get(0).text().contains("303.0 mm"));
        // held at its deepest place it does spray
        Scene held = TestScene.of(0, 0, Map.of(), TestScene.pass("held", 0.9, 0.9, 0, 2, 0));
        assertEquals(1, Stations.plan(held, List.of(in)).stations().size());
    }

    @Test
    void aSearchThatEndedEarlyIsTold() {
        Scene scene = TestScene.of(0, 0, Map.of(), TestScene.pass("aimed", 0.3, 0.1, 0.02, 0, 0));
        PassPlan plan = Stations.plan(scene, List.of(insertion(0.305, "rib 2").within(0.012)));
        assertEquals("ACC-011", plan.findings().get(0).id());
        assertTrue(plan.findings().get(0).text().contains("12 mm"));
        assertTrue(Stations.plan(scene, List.of(insertion(0.305, "rib 2").within(0.002)))
                .findings()
                .isEmpty());
    }

    @Test
    void asDeepAsItGoesNeedsNoWarning() {
        Scene scene = TestScene.of(0, 0, Map.of(), TestScene.pass("all", Double.POSITIVE_INFINITY, 0.0, 0.02, 0, 0));
        assertTrue(Stations.plan(scene, List.of(insertion(0.305, "rib 2")))
                .findings()
                .isEmpty());
    }

    @Test
    void everyPassWhoseWandStaysOutIsNamed() {
        Scene scene = TestScene.of(
                0, 0, Map.of(), TestScene.pass("a", 0.3, 0.3, 0, 2, 0), TestScene.pass("b", 0.3, 0.3, 0, 2, 0));
        Insertion out = new Insertion(
                "e",
                "w",
                0,
                Vec3.ZERO,
                Vec3.Y,
                0,
                "'port' is too small",
                false,
                -1e-3,
                WandPath.straight(Vec3.ZERO, Vec3.Y, 3e-3, 0));
        SceneException e = assertThrows(SceneException.class, () -> Stations.plan(scene, List.of(out, out)));
        assertEquals(2, e.findings().size());
        assertEquals("ACC-003", e.findings().get(1).id());
    }

    @Test
    void spacingIsChosenBetweenTwentyFiveMillimetresAndASixtiethOfTheStroke() {
        assertEquals(4, Stations.pieces(0.1, 0));
        assertEquals(60, Stations.pieces(3.0, 0));
        assertEquals(Stations.LIMIT, Stations.pieces(3.0, 0.001));
        assertEquals(1, Stations.pieces(0.001, 0));
    }

    @Test
    void wrongUseIsRefused() {
        Scene scene = TestScene.of(0, 0, Map.of(), TestScene.pass("a", 0.3, 0.1, 0, 2, 0));
        assertThrows(IllegalArgumentException.class, () -> Stations.plan(scene, List.of()));
        assertThrows(
                IllegalArgumentException.class,
                () -> Stations.plan(scene, List.of(insertion(0.6, AccessFinder.WAND_LENGTH))));
    }

    @Test
    void theScenesStateOfAnOpeningOutranksTheModels() {
        Cavity cavity = TestCavity.box(0.4, 0.6, 0.15, TestCavity.port("port", 0.2, 0.075, 20e-3, TestCavity.OPEN))
                .build();
        assertArrayEquals(new boolean[] {true}, OpenInPass.of(cavity, TestScene.of(0, 0, Map.of())));
        assertArrayEquals(
                new boolean[] {false}, OpenInPass.of(cavity, TestScene.of(0, 0, Map.of("port", TestCavity.PLUGGED))));
    }
}
