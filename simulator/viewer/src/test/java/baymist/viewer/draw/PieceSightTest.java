package baymist.viewer.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bent sheets seen from anywhere, held against each triangle on its own. */
class PieceSightTest {
    private static final int N = 8;

    /** A square sheet of 0.2 m bent about y, facing up; {@code bend} above 0 bulges, below 0 is hollow. */
    private static float[] sheet(double bend) {
        float[] xyz = new float[3 * (N + 1) * (N + 1)];
        for (int i = 0; i <= N; i++) {
            for (int j = 0; j <= N; j++) {
                int v = 3 * (i * (N + 1) + j);
                double x = 0.2 * i / N - 0.1;
                xyz[v] = (float) x;
                xyz[v + 1] = (float) (0.2 * j / N - 0.1);
                xyz[v + 2] = (float) (-bend * x * x);
            }
        }
        return xyz;
    }

    private static int[] corners() {
        int[] corners = new int[6 * N * N];
        int at = 0;
        for (int i = 0; i < N; i++) {
            for (int j = 0; j < N; j++) {
                int a = i * (N + 1) + j;
                for (int v : new int[] {a, a + N + 1, a + 1, a + 1, a + N + 1, a + N + 2}) {
                    corners[at++] = v;
                }
            }
        }
        return corners;
    }

    private static Piece piece() {
        int[] all = new int[2 * N * N];
        Arrays.setAll(all, i -> i);
        return new Piece(0, all, new float[] {0, 0, 0});
    }

    @Test
    void flatAndBulgingSheetsNeverHideThemselvesHollowOnesMay() {
        assertTrue(new PieceSight(piece(), sheet(0), corners()).neverHidesItself());
        assertTrue(new PieceSight(piece(), sheet(2), corners()).neverHidesItself());
        assertFalse(new PieceSight(piece(), sheet(-2), corners()).neverHidesItself());
    }

    @Test
    void whatIsSaidToBeSeenFromBehindHasNoTriangleThatFacesTheEye() {
        Random random = new Random(5);
        for (double bend : new double[] {0, 3, -3}) {
            float[] xyz = sheet(bend);
            int[] c = corners();
            PieceSight sight = new PieceSight(piece(), xyz, c);
            int behind = 0;
            int all = 0;
            for (int n = 0; n < 3000; n++) {
                Vec3 eye = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).times(1.5);
                boolean faces = false;
                for (int t = 0; t < c.length / 3; t++) {
                    Vec3 p = at(xyz, c[3 * t]);
                    Vec3 normal = at(xyz, c[3 * t + 1])
                            .minus(p)
                            .cross(at(xyz, c[3 * t + 2]).minus(p));
                    faces |= eye.minus(p).dot(normal) > 0;
                }
                all += faces ? 0 : 1;
                if (sight.fromBehind(eye)) {
                    assertFalse(faces, eye.toString());
                    behind++;
                }
            }
            assertTrue(behind > 0.6 * all && behind <= all, behind + " of " + all);
        }
    }

    private static Vec3 at(float[] xyz, int v) {
        return new Vec3(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]);
    }

    @Test
    void piecesThatNeverHideThemselvesAreNotSorted() {
        float[][] middles = {{0, 0, 0, 1, 0, 0}, {0, 0, 0, 1, 0, 0}};
        PieceSorter sorter = new PieceSorter(middles, new boolean[] {true, false});
        int[] sorted = new int[2];
        Vec3[] ahead = {Vec3.X, Vec3.X};
        assertEquals(0, sorter.sort(ahead, 100, (p, order) -> sorted[p]++));
        assertEquals(0, sorted[0]);
        assertEquals(1, sorted[1]);
        // seen from elsewhere, but in the same order: nothing to be told
        Vec3 slant = new Vec3(1, 1, 0).unit();
        assertEquals(0, sorter.sort(new Vec3[] {slant, slant}, 100, (p, order) -> sorted[p]++));
        assertEquals(1, sorted[1]);
        Vec3 back = Vec3.X.negate();
        assertEquals(0, sorter.sort(new Vec3[] {back, back}, 100, (p, order) -> sorted[p]++));
        assertEquals(2, sorted[1]);
    }
}
