package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.scene.AirSpec;
import baymist.scene.InitialFog;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.voxel.SurfelSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Laws of whole runs, on a block of 1 x 0.2 x 0.15 m with one ring pass. */
class SimulationLawTest {
    private static final double COARSE_M = 0.025;

    private static SceneFixtures job() {
        return SceneFixtures.minimal().withVoxel(COARSE_M, COARSE_M, COARSE_M).withHangS(30);
    }

    @Test
    void theLedgerClosesToABillionthOfWhatWasSprayed() {
        RunResult r = TestScenes.run(job().build(), 2);
        assertTrue(Math.abs(r.ledger().closure()) <= 1e-9, r.ledger().toString());
        assertTrue(r.ledger().filmKg() > 0
                && r.ledger().airborneKg() > 0
                && r.ledger().oversprayKg() > 0);
    }

    @Test
    void sprayedMassIsTheLiquidRateTimesTheTriggerTime() {
        // pass from 0.8 m to 0.05 m at 0.1 m/s = 7.5 s at 3.7e-4 kg/s
        assertEquals(7.5 * 3.7e-4, TestScenes.run(job().build(), 2).ledger().sprayedKg(), 1e-12);
    }

    @Test
    void oneTwoAndThreeThreadsAndASecondRunGiveTheSameBits() {
        Scene scene = job().build();
        String one = TestScenes.run(scene, 1).record().stateHash();
        assertEquals(one, TestScenes.run(scene, 2).record().stateHash());
        assertEquals(one, TestScenes.run(scene, 3).record().stateHash());
        assertEquals(one, TestScenes.run(scene, 2).record().stateHash());
        assertNotEquals(
                one, TestScenes.run(job().withHangS(31).build(), 2).record().stateHash());
    }

    @Test
    void stillFogSettlesOnTheFloorAlone() {
        // Quiet settling, Hinds (1999), chapter 3: floor deposit = c vs A t until the fog's upper edge arrives; nothing
        // elsewhere.
        double c = 1e-3;
        Scene scene = job().withPasses()
                .withFog(new InitialFog(c, null, 0))
                .withAir(new AirSpec(AirSpec.Mode.STILL, 0, 0, 10_000))
                .build();
        RunResult r = TestScenes.run(scene, 2);
        SurfelSet surfels = r.grid().surfels();
        double floor = 0;
        double elsewhere = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.normalZ()[s] > 0.9) {
                floor += r.fogKg()[s];
            } else {
                elsewhere += r.fogKg()[s];
            }
        }
        assertTrue(floor > 0);
        assertEquals(0, elsewhere, 1e-12 * floor);
        assertEquals(c * r.grid().totalVolumeM3(), r.ledger().sprayedKg(), 1e-12);
    }

    @Test
    void turnedOverTheFogSettlesOnTheCeiling() {
        Scene scene = job().withPasses()
                .withFog(new InitialFog(1e-3, null, 0))
                .withAir(new AirSpec(AirSpec.Mode.STILL, 0, 0, 10_000))
                .withGravity(new Vec3(0, 0, 1), 9.80665)
                .build();
        RunResult r = TestScenes.run(scene, 2);
        SurfelSet surfels = r.grid().surfels();
        double ceiling = 0;
        double all = 0;
        for (int s = 0; s < surfels.count(); s++) {
            ceiling += surfels.normalZ()[s] < -0.9 ? r.fogKg()[s] : 0;
            all += r.fogKg()[s];
        }
        assertEquals(all, ceiling, 1e-12 * all);
    }

    @Test
    void aCavityThatWouldBePumpedUpIsRefusedWithTheRemedy() {
        Scene scene = SceneFixtures.minimal()
                .withVoxel(COARSE_M, COARSE_M, COARSE_M)
                .withCuts(SceneFixtures.round("hole", "aft wall", 0.0066, new Vec3(1, 0.1, 0.075)))
                .withAir(new AirSpec(AirSpec.Mode.PROJECTED, -1, -1, 2_000))
                .build();
        SceneException e = assertThrows(SceneException.class, () -> TestScenes.run(scene, 2));
        Finding finding = e.findings().get(0);
        assertEquals("RUN-003", finding.id());
        assertTrue(finding.text().contains("open a vent"), finding.text());
    }

    @Test
    void aTapedOpeningLetsNothingOutAndCatchesProduct() {
        SceneFixtures twoHoles = job().withCuts(
                        SceneFixtures.round("hole", "aft wall", 0.02, new Vec3(1, 0.1, 0.075)),
                        SceneFixtures.round("port", "ceiling", 0.08, new Vec3(0.5, 0.1, 0.15)));
        RunResult open = TestScenes.run(twoHoles.build(), 2);
        PhaseStates taped = new PhaseStates(OpeningState.TAPED, OpeningState.TAPED, OpeningState.OPEN);
        RunResult closed =
                TestScenes.run(twoHoles.withStates(Map.of("port", taped)).build(), 2);
        // The rod in its entry catches next to nothing; there is no other mask.
        assertTrue(open.ledger().maskedKg() < 1e-9 * open.ledger().sprayedKg());
        assertTrue(closed.ledger().maskedKg() > 0);
        assertTrue(closed.ledger().oversprayKg() < open.ledger().oversprayKg());
    }

    @Test
    void fogReleasedOutsideTheCavityIsRefused() {
        Scene scene = job().withFog(new InitialFog(0, new Vec3(5, 0, 0), 1e-6)).build();
        SceneException e = assertThrows(SceneException.class, () -> TestScenes.run(scene, 1));
        assertEquals("RUN-004", e.findings().get(0).id());
    }

    @Test
    void aCancelledRunSaysSo() {
        RunObserver cancels = new RunObserver() {
            @Override
            public void stage(String name) {}

            @Override
            public void progress(double done, double jobTimeS) {}

            @Override
            public boolean cancelled() {
                return true;
            }
        };
        assertThrows(RunCancelledException.class, () -> Simulation.run(job().build(), new RunOptions(1), cancels));
    }

    @Test
    void progressNeverFallsAndEndsAtOne() {
        double[] last = {0};
        RunObserver watcher = new RunObserver() {
            @Override
            public void stage(String name) {}

            @Override
            public void progress(double done, double jobTimeS) {
                assertTrue(done >= last[0]);
                last[0] = done;
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        };
        Simulation.run(job().build(), new RunOptions(2), watcher);
        assertEquals(1, last[0], 1e-12);
    }

    @Test
    void historyRisesInTimeAndEndsWithTheJob() {
        RunResult r = TestScenes.run(job().build(), 2);
        List<TimePoint> h = r.history();
        for (int i = 1; i < h.size(); i++) {
            assertTrue(h.get(i).timeS() > h.get(i - 1).timeS());
        }
        assertEquals(37.5, h.get(h.size() - 1).timeS(), 1e-9);
        assertEquals(r.ledger().filmKg(), h.get(h.size() - 1).filmKg(), 1e-15);
    }
}
