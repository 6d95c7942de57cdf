package baymist.geom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PredicatesTest {
    /** Slow oracle: 4 x 4 determinant by minors of the untranslated coordinates, in exact decimals. */
    private static int oracle(Vec3... p) {
        BigDecimal sum = BigDecimal.ZERO;
        for (int row = 0; row < 4; row++) {
            Vec3[] rest = new Vec3[3];
            for (int i = 0, k = 0; i < 4; i++) {
                if (i != row) {
                    rest[k++] = p[i];
                }
            }
            BigDecimal minor = det(rest);
            // cofactors of the last column, all ones: sign (-1)^(row + 3)
            sum = row % 2 == 0 ? sum.subtract(minor) : sum.add(minor);
        }
        return sum.signum();
    }

    private static BigDecimal det(Vec3[] r) {
        BigDecimal sum = BigDecimal.ZERO;
        int[][] permutations = {{0, 1, 2, 1}, {1, 2, 0, 1}, {2, 0, 1, 1}, {0, 2, 1, -1}, {1, 0, 2, -1}, {2, 1, 0, -1}};
        for (int[] q : permutations) {
            BigDecimal term = new BigDecimal(r[0].get(q[0]))
                    .multiply(new BigDecimal(r[1].get(q[1])))
                    .multiply(new BigDecimal(r[2].get(q[2])));
            sum = q[3] > 0 ? sum.add(term) : sum.subtract(term);
        }
        return sum;
    }

    @Test
    void spatialSignIsExactOnNearlyCoplanarLatticePoints() {
        // the classic test of robust predicates: points on a plane, nudged by single units in the last place
        Random random = new Random(20);
        int[] seen = new int[3];
        for (int i = 0; i < 4000; i++) {
            Vec3[] p = new Vec3[4];
            for (int k = 0; k < 4; k++) {
                double x = 0.1 * random.nextInt(12);
                double y = 0.1 * random.nextInt(12);
                double z = 0.3 * x + 0.7 * y;
                for (int n = random.nextInt(3); n > 0; n--) {
                    z = Math.nextUp(z);
                }
                p[k] = new Vec3(x, y, z);
            }
            int sign = Predicates.orient3d(p[0], p[1], p[2], p[3]);
            assertEquals(oracle(p), sign);
            assertEquals(-sign, Predicates.orient3d(p[1], p[0], p[2], p[3]));
            assertEquals(sign, Predicates.orient3d(p[1], p[2], p[0], p[3]));
            seen[sign + 1]++;
        }
        assertTrue(seen[0] > 100 && seen[1] > 50 && seen[2] > 100, Arrays.toString(seen));
    }

    @Test
    void spatialSignFollowsItsConvention() {
        assertEquals(1, Predicates.orient3d(Vec3.ZERO, Vec3.X, Vec3.Y, Vec3.Z.negate()));
        assertEquals(-1, Predicates.orient3d(Vec3.ZERO, Vec3.X, Vec3.Y, Vec3.Z));
        assertEquals(0, Predicates.orient3d(Vec3.ZERO, Vec3.X, Vec3.Y, new Vec3(0.3, 0.1, 0)));
    }

    @Test
    void signSurvivesUnderflowAndOverflow() {
        double tiny = 1e-160;
        assertEquals(1, Predicates.orient2d(0, 0, tiny, 0, 0, tiny));
        assertEquals(-1, Predicates.orient2d(0, 0, 0, tiny, tiny, 0));
        double huge = 1e200;
        assertEquals(1, Predicates.orient2d(0, 0, huge, 0, 0, huge));
        assertEquals(-1, Predicates.orient3d(Vec3.ZERO, Vec3.X.times(huge), Vec3.Y.times(huge), Vec3.Z.times(huge)));
        assertEquals(-1, Predicates.orient3d(Vec3.ZERO, Vec3.X.times(tiny), Vec3.Y.times(tiny), Vec3.Z.times(tiny)));
    }

    @Test
    void planarSignIsExactNearALine() {
        // Kettner et al. (2008), Classroom examples of robustness problems in geometric computations, figure 2:
        // p near (0.5, 0.5) against the line through (12, 12) and (24, 24)
        for (int i = -8; i <= 8; i++) {
            for (int k = -8; k <= 8; k++) {
                double x = 0.5 + i * 0x1p-53;
                double y = 0.5 + k * 0x1p-53;
                int exact = new BigDecimal(y).compareTo(new BigDecimal(x));
                assertEquals(exact, Predicates.orient2d(12, 12, 24, 24, x, y));
            }
        }
    }

    @Test
    void notANumberIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Predicates.orient2d(0, 0, Double.NaN, 0, 1, 1));
        assertThrows(
                IllegalArgumentException.class,
                () -> Predicates.orient3d(Vec3.ZERO, Vec3.X, Vec3.Y, new Vec3(0, 0, Double.POSITIVE_INFINITY)));
    }
}
