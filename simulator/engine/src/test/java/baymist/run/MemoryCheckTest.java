package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyStore;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A run that has no room is refused before it begins, in a sentence that can be followed. */
class MemoryCheckTest {
    private static final Pattern VOXEL = Pattern.compile("voxels of ([0-9.]+) mm x ([0-9.]+) mm x ([0-9.]+) mm would");
    private static final Scene SCENE = TestScenes.read("control-surface-pin-forward.yaml")
            .withVoxel(new VoxelSpec(0.012, 0.012, 0.012))
            .withHangS(1)
            .withNumerics(3, 16)
            .withAir(AirSpec.DEFAULT.withMode(AirSpec.Mode.PROJECTED, 0));

    private static CheckResult check(Scene scene, long bytes) {
        return Simulation.check(scene, new RunOptions(1, new MemoryBudget(bytes)), RunObserver.NONE);
    }

    private static long needed(CheckResult check) {
        assertNotNull(check.estimate());
        return check.estimate().memory().totalBytes();
    }

    private static SceneException refused(long bytes) {
        RunOptions options = new RunOptions(1, new MemoryBudget(bytes));
        return assertThrows(SceneException.class, () -> Simulation.run(SCENE, options, RunObserver.NONE));
    }

    @Test
    void aRunWithoutRoomIsRefusedAndTheVoxelsItNamesFit() {
        long needed = needed(check(SCENE, Long.MAX_VALUE));
        for (double share : new double[] {0.95, 0.5, 0.25}) {
            long there = Math.round(share * needed);
            SceneException e = refused(there);
            Finding f = e.findings().get(0);
            assertEquals("RUN-008", f.id());
            assertTrue(f.place().field().equals("voxel") && f.text().contains("-Xmx"), f.toString());
            Matcher m = VOXEL.matcher(f.text());
            assertTrue(m.find(), f.text());
            VoxelSpec named = new VoxelSpec(mm(m.group(1)), mm(m.group(2)), mm(m.group(3)));
            long then = needed(check(SCENE.withVoxel(named), Long.MAX_VALUE));
            assertTrue(then <= there, then + " bytes with the named voxels, " + there + " there");
            assertTrue(then > 0.4 * there, "needlessly coarse: " + then + " of " + there);
        }
    }

    private static double mm(String number) {
        return 1e-3 * Double.parseDouble(number);
    }

    @Test
    void withJustEnoughItRuns() {
        long needed = needed(check(SCENE, Long.MAX_VALUE));
        Scene coarse = SCENE.withVoxel(new VoxelSpec(0.03, 0.03, 0.02));
        long less = needed(check(coarse, Long.MAX_VALUE));
        assertTrue(less < needed);
        RunOptions options = new RunOptions(1, new MemoryBudget(less));
        assertNotNull(Simulation.run(coarse, options, RunObserver.NONE));
    }

    @Test
    void voxelsWithoutRoomAreRefusedBeforeTheyAreMade() {
        SceneException e = refused(10_000);
        assertTrue(e.findings().get(0).text().contains("making the voxels needs"), e.getMessage());
    }

    @Test
    void aLookAtTheSceneWarnsAndNamesTheSame() {
        long needed = needed(check(SCENE, Long.MAX_VALUE));
        List<Finding> findings = check(SCENE, needed / 2).findings();
        assertTrue(findings.stream()
                .anyMatch(f -> f.id().equals("RUN-008") && f.text().contains("would fit")));
        assertTrue(check(SCENE, Long.MAX_VALUE).findings().stream().noneMatch(f -> f.id().equals("RUN-008")));
    }

    @Test
    void aStudyIsRefusedRatherThanToldAsUndoable() {
        PlanningRun runs = new PlanningRun(Planning.OWN, StudyStore.none()).within(new MemoryBudget(2_000_000));
        SceneException e =
                assertThrows(SceneException.class, () -> runs.runAll(List.of(SCENE), 1, PlanningRun.Watch.NONE));
        assertTrue(MemoryCheck.isRefusal(e));
    }

    @Test
    void aJobWaitsUntilAnotherGivesItsMemoryBack() throws InterruptedException {
        MemoryBudget memory = new MemoryBudget(100);
        AtomicBoolean in = new AtomicBoolean();
        CountDownLatch started = new CountDownLatch(1);
        MemoryBudget.Lease small = memory.lease();
        small.take(30);
        try (MemoryBudget.Lease beside = memory.lease()) {
            beside.take(70);
            assertThrows(IllegalStateException.class, () -> beside.take(1));
        }
        Thread other = new Thread(() -> {
            try (MemoryBudget.Lease large = memory.lease()) {
                started.countDown();
                large.take(71);
                in.set(true);
            }
        });
        other.start();
        assertTrue(started.await(10, TimeUnit.SECONDS));
        other.join(200);
        assertFalse(in.get(), "it was let in beside another");
        small.close();
        other.join(10_000);
        assertTrue(in.get());
    }
}
