package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PairKeyTest {
    @Test
    void sameForBothOrdersAndDifferentForDifferentPairs() {
        assertEquals(PairKey.of(7, 3), PairKey.of(3, 7));
        Set<Long> keys = new HashSet<>();
        for (int a = 0; a < 100; a++) {
            for (int b = a; b < 100; b++) {
                keys.add(PairKey.of(a, b));
            }
        }
        // pairs of 100 with repetition: 100 * 101 / 2
        assertEquals(5050, keys.size());
    }

    @Test
    void edgesBetweenNeighboursFillATableEvenly() {
        // Of n balls thrown into n boxes at random a share 1/e stays empty (Feller, An Introduction to Probability
        // Theory, I, IV.2);
        // the plain hash of neighbouring pairs, high bits xor low bits, would use not even a hundred
        int boxes = 1 << 14;
        Set<Integer> used = new HashSet<>();
        for (int a = 0; a < boxes; a++) {
            long key = PairKey.of(a, a + 1 + a % 16);
            int hash = Long.hashCode(key);
            used.add((hash ^ hash >>> 16) & boxes - 1);
        }
        assertTrue(used.size() > (1 - 1 / Math.E) * boxes * 0.95, used.size() + " of " + boxes);
    }
}
