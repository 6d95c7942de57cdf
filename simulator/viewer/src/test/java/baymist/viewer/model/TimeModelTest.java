package baymist.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Laws of played time: job time = speed x clock time while it plays, continuous through every change. */
class TimeModelTest {
    @Test
    void timeGoesAtItsSpeedAndStopsAtTheEnd() {
        TimeModel t = TimeModel.atEnd(100).scrub(10, 0).play(5).withSpeed(4, 5);
        assertEquals(10, t.jobTimeS(5));
        assertEquals(10 + 4 * 7.5, t.jobTimeS(12.5), 1e-12);
        assertEquals(100, t.jobTimeS(1000));
        assertTrue(t.running(20) && !t.running(1000));
    }

    @Test
    void aPausedJobStandsStill() {
        TimeModel t = TimeModel.atEnd(100).scrub(10, 0).play(0).pause(3);
        assertEquals(13, t.jobTimeS(3));
        assertEquals(13, t.jobTimeS(500));
        assertFalse(t.running(500));
    }

    @Test
    void playAtTheEndBeginsAnew() {
        TimeModel t = TimeModel.atEnd(60);
        assertEquals(60, t.jobTimeS(0));
        assertEquals(2, t.playOrPause(10).jobTimeS(12), 1e-12);
    }

    /** No change of speed, play or pause makes time jump; whatever is done, it stays within the job. */
    @Test
    void timeIsContinuousThroughEveryChange() {
        Random random = new Random(11);
        TimeModel t = TimeModel.atEnd(80).scrub(0, 0);
        double clock = 0;
        for (int n = 0; n < 2000; n++) {
            clock += random.nextDouble();
            double before = t.jobTimeS(clock);
            boolean ended = before >= 80;
            switch (random.nextInt(4)) {
                case 0 -> t = ended ? t : t.play(clock);
                case 1 -> t = t.pause(clock);
                case 2 -> t = t.faster(random.nextInt(3) - 1, clock);
                default -> t = t.withSpeed(0.1 + random.nextDouble(), clock);
            }
            assertEquals(before, t.jobTimeS(clock), 1e-9);
            if (n % 50 == 0) {
                t = t.scrub(200 * random.nextDouble() - 60, clock);
                assertTrue(t.jobTimeS(clock) >= 0 && t.jobTimeS(clock) <= 80);
            }
        }
    }

    @Test
    void speedsStepThroughTheirListAndEndThere() {
        TimeModel t = TimeModel.atEnd(10);
        for (int n = 0; n < 20; n++) {
            t = t.faster(1, 0);
        }
        assertEquals(TimeModel.SPEEDS.get(TimeModel.SPEEDS.size() - 1), t.speed());
        assertEquals(20, t.faster(-1, 0).speed());
    }
}
