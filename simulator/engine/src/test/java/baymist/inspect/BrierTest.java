package baymist.inspect;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.Inspection.Seen;
import baymist.scene.TargetSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

class BrierTest {
    /**
     * Brier (1950), Monthly Weather Review 78(1), table 1: ten forecasts of "rain" and "no rain", three of which met rain; the score given is
     * 0.19 (table and score from memory, recomputed here).
     */
    @Test
    void tenForecastsOfRainScoreAsInBriersTable() {
        double[] rain = {0.7, 0.9, 0.8, 0.4, 0.2, 0, 0, 0, 0, 0.1};
        int[] outcome = {1, 0, 0, 0, 1, 1, 1, 1, 1, 1}; // 0 = rain
        double[][] forecast = new double[rain.length][];
        for (int i = 0; i < rain.length; i++) {
            forecast[i] = new double[] {rain[i], 1 - rain[i]};
        }
        assertEquals(0.19, Brier.score(forecast, outcome), 1e-12);
    }

    /** The ends of the scale and the value of "no idea" between two classes, Brier (1950): 0, 2 and 0.5. */
    @Test
    void certaintyAndIgnoranceHaveTheirScores() {
        assertEquals(0, Brier.score(new double[][] {{1, 0, 0}}, new int[] {0}), 0);
        assertEquals(2, Brier.score(new double[][] {{1, 0, 0}}, new int[] {2}), 0);
        assertEquals(0.5, Brier.score(new double[][] {{0.5, 0.5}}, new int[] {0}), 1e-15);
    }

    @Test
    void frequenciesScoreAsAForecastThatAlwaysStatesThem() {
        int[] outcome = {0, 0, 1, 2, 2, 2};
        double[] often = {2 / 6.0, 1 / 6.0, 3 / 6.0};
        double[][] forecast = {often, often, often, often, often, often};
        assertEquals(Brier.score(forecast, outcome), Brier.ofFrequencies(outcome, 3), 1e-12);
    }

    /** Normal distribution: Abramowitz and Stegun (1964), table 26.1. */
    @Test
    void normalLawIsThatOfTheTable() {
        assertEquals(0.5, FilmSpread.normal(0), 1e-7);
        assertEquals(0.8413447461, FilmSpread.normal(1), 1e-7);
        assertEquals(0.9772498681, FilmSpread.normal(2), 1e-7);
        assertEquals(0.0227501319, FilmSpread.normal(-2), 1e-7);
    }

    @Test
    void probabilitiesSumToOneAndTurnAtTheLimits() {
        TargetSpec t = TargetSpec.DEFAULT;
        for (double film : new double[] {0, 1e-7, 1e-6, 3e-6, 1e-5, 1e-4}) {
            double[] p = FilmSpread.of(film, t);
            assertEquals(1, p[0] + p[1] + p[2], 1e-12);
            int most = p[0] >= p[1] && p[0] >= p[2] ? 0 : p[1] >= p[2] ? 1 : 2;
            // at a limit itself both sides are equally likely
            if (film != t.hazeM() && film != t.buildM()) {
                assertEquals(FilmSpread.expected(film, t).index(), most, "film " + film);
            }
        }
        // half of what is predicted at the target build is above it
        assertEquals(0.5, FilmSpread.of(t.buildM(), t)[0], 1e-7);
    }

    /** Two-by-two scores as in Wilks, Statistical Methods in the Atmospheric Sciences: hits over observed, false alarms over forecast. */
    @Test
    void tableCountsHitsMissesAndFalseAlarms() {
        HitTable t = HitTable.of(
                List.of(Seen.DRY, Seen.DRY, Seen.DRY, Seen.WET, Seen.THIN, Seen.WET),
                List.of(Seen.DRY, Seen.DRY, Seen.WET, Seen.DRY, Seen.THIN, Seen.WET));
        assertEquals(6, t.all());
        assertEquals(4, t.hits());
        assertEquals(2.0 / 3, t.dryFound(), 1e-15);
        assertEquals(1.0 / 3, t.falseAlarms(), 1e-15);
        assertTrue(
                Double.isNaN(HitTable.of(List.of(Seen.WET), List.of(Seen.WET)).dryFound()));
        assertArrayEquals(new int[] {1, 0, 1}, t.counts()[Seen.WET.index()]);
    }
}
