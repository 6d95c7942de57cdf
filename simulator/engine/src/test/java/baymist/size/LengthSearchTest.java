package baymist.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.WandMaterial;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LengthSearchTest {
    private static final SizeRequest GOAL = new SizeRequest(
            0.9, 0, 0.05, 3, Tube.USUAL, List.of(Pattern.ring(6, 0.0004)), List.of(), false, WandMaterial.STAINLESS);

    /** Runs a search to its end; returns how many runs it took. */
    private static int runs(LengthSearch search, IntToDoubleFunction reached) {
        int runs = 0;
        for (List<Integer> next = search.wanted(); !next.isEmpty(); next = search.wanted()) {
            for (int k : next) {
                search.learn(k, SampleSize.run(reached.applyAsDouble(k)));
                runs++;
            }
            assertTrue(runs < 100, "the search does not end");
        }
        return runs;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 7, 16, 33, 60})
    void findsTheStepOfEveryGrowingCoverageToTheMark(int most) {
        for (int least = 1; least <= Math.min(most, 3); least++) {
            for (int needed = least; needed <= most; needed++) {
                int step = needed;
                LengthSearch search = new LengthSearch(least, most, GOAL);
                int runs = runs(search, k -> k >= step ? 0.93 : 0.85);
                assertEquals(needed, search.shortest());
                assertTrue(runs <= 4 + Math.ceil(Math.log(most) / Math.log(2)), runs + " runs for " + most + " marks");
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aLongerWandNeverGetsLessWhateverTheRunsSay(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            int most = 1 + random.nextInt(60);
            double[] reached = new double[most + 1];
            for (int k = 1; k <= most; k++) {
                reached[k] = 0.82 + 0.18 * random.nextDouble();
            }
            LengthSearch search = new LengthSearch(1, most, GOAL);
            runs(search, k -> reached[k]);
            double before = 0;
            for (int k : search.lengths()) {
                int stop = search.bestStop(k);
                double best = search.result(stop).reached();
                assertTrue(stop <= k && best >= before && best >= reached[k], "seed " + seed + ", draw " + i);
                assertEquals(reached[stop], best);
                before = best;
            }
        }
    }

    @Test
    void whatIsFarOffAtItsDeepestIsGivenUpAfterOneRun() {
        LengthSearch search = new LengthSearch(1, 40, GOAL);
        assertEquals(1, runs(search, k -> 0.5));
        assertTrue(search.hopeless());
        assertNull(search.shortest());
    }

    @Test
    void theSeamsCountWhereTheyAreAskedFor() {
        SizeRequest seams = new SizeRequest(
                0.5, 0.9, 0.05, 3, Tube.USUAL, GOAL.patterns(), List.of(), false, WandMaterial.STAINLESS);
        LengthSearch search = new LengthSearch(1, 20, seams);
        // seams are reached like the surface in these runs: 0.9 of them takes 18 of 20 marks, half of the surface 10
        runs(search, k -> k / 20.0);
        assertEquals(18, search.shortest());
    }
}
