package baymist.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.run.TimePoint;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** A recording must be the run, only kept; references are the run itself, its ledger and the kinematics of the draw-back. */
class RecordingLawTest {
    private static final Scene SCENE = scene();
    private static final RunResult PLAIN = Simulation.run(SCENE, new RunOptions(2), RunObserver.NONE);
    private static final RecordingOptions ALL = new RecordingOptions(10_000, 1_000_000, 1L << 30);
    private static final Recording WHOLE = Recorder.run(SCENE, new RunOptions(2), ALL, RunObserver.NONE);

    private static Scene scene() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("scenes"))) {
            folder = folder.getParent();
        }
        Scene scene = SceneReader.read(folder.resolve("scenes/control-surface-pin-forward.yaml"));
        return SceneEdit.of(scene)
                .voxel(new VoxelSpec(0.016, 0.016, 0.016))
                .air(scene.air().withMode(AirSpec.Mode.PROJECTED, 0))
                .numerics(4, 64, 0.08)
                .hangS(40)
                .done();
    }

    @Test
    void aWatchedRunHasTheBitsOfAnUnwatchedOne() {
        assertEquals(PLAIN.record().stateHash(), WHOLE.result().record().stateHash());
        assertArrayEquals(PLAIN.filmM(), WHOLE.result().filmM());
    }

    @Test
    void theLastFrameIsTheResultAndTheFirstIsBare() {
        for (int s = 0; s < PLAIN.filmM().length; s++) {
            assertEquals((float) PLAIN.filmM()[s], WHOLE.filmM(WHOLE.frames() - 1)[s]);
            assertEquals(0, WHOLE.filmM(0)[s]);
        }
        assertEquals(0, WHOLE.timesS()[0]);
        assertEquals(PLAIN.history().get(PLAIN.history().size() - 1).timeS(), WHOLE.endS());
    }

    /** Conservation: frames hold the mass that the run's own curves state at that time. */
    @Test
    void framesHoldTheMassOfTheCurves() {
        double density = SCENE.product().densityKgPerM3();
        assertEquals(PLAIN.history().size(), WHOLE.frames());
        for (int f = 0; f < WHOLE.frames(); f++) {
            TimePoint at = PLAIN.history().get(f);
            assertEquals(at.timeS(), WHOLE.timesS()[f]);
            double fog = 0;
            for (int b = 0; b < WHOLE.fog().count(); b++) {
                fog += WHOLE.fogKgPerM3(f)[b] * WHOLE.fog().volumeM3()[b];
            }
            double film = 0;
            for (int s = 0; s < PLAIN.filmM().length; s++) {
                film += PLAIN.grid().surfels().closure()[s] < 0
                        ? WHOLE.filmM(f)[s] * density * PLAIN.grid().surfels().areaM2()[s]
                        : 0;
            }
            assertEquals(at.airborneKg(), fog, 1e-6 * PLAIN.ledger().sprayedKg());
            assertEquals(at.filmKg(), film, 1e-6 * PLAIN.ledger().sprayedKg());
        }
    }

    @Test
    void decimatedFogKeepsItsMassAndItsLimit() {
        RecordingOptions few = new RecordingOptions(10_000, 200, 1L << 30);
        Recording r = Recorder.run(SCENE, new RunOptions(2), few, RunObserver.NONE);
        assertTrue(r.fog().count() <= 200 && r.fog().edge() > 1, r.fog().sentence());
        assertTrue(r.statement().contains("blocks of " + r.fog().edge()), r.statement());
        int middle = r.frames() / 2;
        double fog = 0;
        for (int b = 0; b < r.fog().count(); b++) {
            fog += r.fogKgPerM3(middle)[b] * r.fog().volumeM3()[b];
        }
        assertEquals(
                PLAIN.history().get(middle).airborneKg(),
                fog,
                1e-6 * PLAIN.ledger().sprayedKg());
    }

    @Test
    void memoryIsBoundedAndWhatIsLeftOutIsSmall() {
        long each = 4L * (PLAIN.filmM().length + WHOLE.fog().count());
        Recording r = Recorder.run(
                SCENE, new RunOptions(2), new RecordingOptions(120, 1_000_000, 12 * each), RunObserver.NONE);
        assertEquals(12, r.frames());
        assertEquals(0, r.timesS()[0]);
        assertEquals(WHOLE.endS(), r.endS());
        // held against the whole recording, not against the keeper's own account
        double worst = 0;
        for (int f = 0; f < WHOLE.frames(); f++) {
            float[] film = r.filmAt(WHOLE.timesS()[f]);
            double off = 0;
            for (int s = 0; s < film.length; s++) {
                off += Math.abs(film[s] - WHOLE.filmM(f)[s])
                        * SCENE.product().densityKgPerM3()
                        * PLAIN.grid().surfels().areaM2()[s];
            }
            worst = Math.max(worst, off / PLAIN.ledger().sprayedKg());
        }
        assertTrue(worst < 0.12, "12 frames misplace " + worst + " of what was sprayed");
        assertTrue(r.statement().startsWith("12 of " + WHOLE.frames()), r.statement());
    }

    @Test
    void betweenFramesFilmLiesBetweenThem() {
        int f = WHOLE.frames() / 3;
        float[] at = WHOLE.filmAt(0.25 * WHOLE.timesS()[f] + 0.75 * WHOLE.timesS()[f + 1]);
        for (int s = 0; s < at.length; s++) {
            double expected = 0.25 * WHOLE.filmM(f)[s] + 0.75 * WHOLE.filmM(f + 1)[s];
            assertEquals(expected, at[s], 1e-6 * Math.max(expected, 1e-12));
        }
        assertArrayEquals(WHOLE.filmM(f), WHOLE.filmAt(WHOLE.timesS()[f]));
        assertArrayEquals(WHOLE.filmM(WHOLE.frames() - 1), WHOLE.filmAt(1e9));
    }

    /** Kinematics: drawn back at the stated rate, depth falls by rate times time; the body ends at the tip. */
    @Test
    void theWandIsDrawnBackAtItsRate() {
        double rate = SCENE.passes().get(0).drawBackMPerS();
        double begin = SCENE.passes().get(0).holdS();
        WandMoment early = WHOLE.wandAt(begin + 0.31);
        WandMoment late = WHOLE.wandAt(begin + 2.77);
        assertTrue(early.spraying() && late.spraying());
        assertEquals(rate * 2.46, early.depthM() - late.depthM(), 1e-6);
        assertNotNull(early.tip());
        Vec3 end = early.bodyM().get(early.bodyM().size() - 1);
        assertEquals(0, end.distance(early.tip().positionM()), 1e-9);
        assertEquals(WandMoment.OUT, WHOLE.wandAt(WHOLE.endS()));
    }

    @Test
    void jetsLeaveTheTipAndEndAtASheet() {
        WandMoment now = WHOLE.wandAt(SCENE.passes().get(0).holdS() + 0.5);
        double liquid = 0;
        for (Jet j : now.jets()) {
            assertEquals(1, j.direction().length(), 1e-12);
            assertTrue(j.reachM() > 0 && j.reachM() < 3, "reach " + j.reachM());
            liquid += j.flowKgPerS();
        }
        assertEquals(SCENE.supply().liquidKgPerS(), liquid, 1e-12);
    }

    /** Conservation: what arrived is what is film, what is on masks and what dripped out; what moved away arrived elsewhere. */
    @Test
    void arrivalsAreFilmAndWhatRanAway() {
        double arrived = 0;
        double moved = 0;
        for (int s = 0; s < PLAIN.filmM().length; s++) {
            arrived += WHOLE.arrivedDirectKg()[s] + WHOLE.arrivedFogKg()[s];
            moved += WHOLE.movedKg(s);
        }
        double sprayed = PLAIN.ledger().sprayedKg();
        assertEquals(
                PLAIN.ledger().filmKg()
                        + PLAIN.ledger().maskedKg()
                        + PLAIN.ledger().drippedKg(),
                arrived,
                1e-9 * sprayed);
        assertEquals(-PLAIN.ledger().drippedKg(), moved, 1e-9 * sprayed);
    }

    @Test
    void curvesCarryTheLedger() {
        Curves c = WHOLE.curves();
        int last = c.count() - 1;
        assertEquals(PLAIN.ledger().sprayedKg(), c.sprayedKg()[last], 1e-12);
        assertEquals(PLAIN.ledger().airborneKg(), c.airborneKg()[last], 1e-12);
        assertEquals(PLAIN.coverage().total().reached(), c.reached()[last], 1e-9);
        assertEquals(c.sprayedKg()[last] / 2, c.at(c.sprayedKg(), halfTime(c)), 1e-6 * c.sprayedKg()[last]);
    }

    /** The trigger passes liquid evenly while it is held: half of it at half of the time. */
    private static double halfTime(Curves c) {
        double stroke = 0;
        for (int n = 1; n < c.count(); n++) {
            stroke = c.sprayedKg()[n] > c.sprayedKg()[n - 1] ? c.timeS()[n] : stroke;
        }
        return stroke / 2;
    }

    @Test
    void aRecordedRunCanBeCancelled() {
        RunObserver stop = new RunObserver() {
            private double reached;

            @Override
            public void stage(String name) {}

            @Override
            public void progress(double done, double jobTimeS) {
                reached = done;
            }

            @Override
            public boolean cancelled() {
                return reached > 0.3;
            }
        };
        assertThrows(
                RunCancelledException.class,
                () -> Recorder.run(SCENE, new RunOptions(2), RecordingOptions.DEFAULT, stop));
    }
}
