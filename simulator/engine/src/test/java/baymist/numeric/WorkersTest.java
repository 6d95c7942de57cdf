package baymist.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
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

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void workBesideHoldsUpNoPieces(int threads) {
        try (Workers workers = new Workers(threads)) {
            CountDownLatch piecesDone = new CountDownLatch(threads == 1 ? 0 : 50);
            Supplier<Integer> beside = workers.beside(() -> {
                try {
                    // Ends only after all pieces have: they must not wait for it.
                    return piecesDone.await(20, TimeUnit.SECONDS) ? 7 : 0;
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
            });
            workers.forEach(50, i -> piecesDone.countDown());
            assertEquals(7, beside.get());
            Supplier<Integer> failing = workers.beside(() -> {
                throw new IllegalArgumentException("no");
            });
            assertThrows(IllegalArgumentException.class, failing::get);
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
