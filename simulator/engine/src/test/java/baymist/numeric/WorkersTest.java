package baymist.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkersTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 8})
    void everyPieceIsDoneExactlyOnce(int threads) {
        try (Workers workers = new Workers(threads)) {
            int[] done = new int[1000];
            workers.forBlocks(1000, 7, (from, to) -> {
                for (int i = from; i < to; i++) {
                    done[i]++;
                }
            });
            int[] expected = new int[1000];
            java.util.Arrays.fill(expected, 1);
            assertArrayEquals(expected, done);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void theLowestFailingPieceIsReported(int threads) {
        try (Workers workers = new Workers(threads)) {
            RuntimeException e = assertThrows(
                    IllegalStateException.class,
                    () -> workers.forEach(20, i -> {
                        if (i % 5 == 3) {
                            throw new IllegalStateException("piece " + i);
                        }
                    }));
            assertEquals("piece 3", e.getMessage());
        }
    }

    @Test
    void noThreadsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Workers(0));
    }

    @Test
    void hashTellsOneBitApart() {
        double[] a = new double[5000];
        double[] b = a.clone();
        assertEquals(new StateHash().add(a).hex(), new StateHash().add(b).hex());
        b[4999] = Double.MIN_VALUE;
        assertNotEquals(new StateHash().add(a).hex(), new StateHash().add(b).hex());
    }
}
