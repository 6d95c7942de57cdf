package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Both forms of the resolved air's kernel do what their laws say, and the same. */
class FlowKernelTest {
    private static final FlowKernel PLAIN = new PlainFlowKernel();

    private static FlowKernel vectors() {
        FlowKernel best = FlowKernels.best();
        Assumptions.assumeFalse(
                best instanceof PlainFlowKernel, "this Java was started without --add-modules jdk.incubator.vector");
        return best;
    }

    private static FlowKernel.Links links(SplittableRandom random) {
        FlowKernel.Links links = new FlowKernel.Links();
        for (int i = 0; i < FlowKernel.Links.ROOM; i++) {
            links.flux[i] = random.nextDouble() - 0.5;
            links.upstream[i] = random.nextDouble() - 0.5;
            // Steps of nothing, and steep ones, are among them.
            links.ahead[i] = random.nextInt(8) == 0 ? 0 : (random.nextDouble() - 0.5) * random.nextInt(9);
            links.behind[i] = random.nextInt(8) == 0 ? 0 : random.nextDouble() - 0.5;
        }
        return links;
    }

    @Test
    void vectorsMoveWhatThePlainLoopMoves() {
        FlowKernel vectors = vectors();
        double[] viscous = new SplittableRandom(3).doubles(600).toArray();
        for (int count : new int[] {1, 3, 4, 509, 512}) {
            FlowKernel.Links expected = links(new SplittableRandom(8));
            FlowKernel.Links actual = links(new SplittableRandom(8));
            PLAIN.move(expected, count, viscous, 17);
            vectors.move(actual, count, viscous, 17);
            for (int i = 0; i < count; i++) {
                assertEquals(
                        expected.moved[i], actual.moved[i], 1e-15 * (1 + Math.abs(expected.moved[i])), "link " + i);
            }
        }
    }

    // Koren (1993): psi(r) = max(0, min(2r, (1 + 2r)/3, 2)), r = behind/ahead; and no value beyond the two that it lies
    // between.
    @Test
    void linksMoveTheLimitedValue() {
        FlowKernel.Links links = links(new SplittableRandom(5));
        double[] none = new double[FlowKernel.Links.ROOM];
        PLAIN.move(links, FlowKernel.Links.ROOM, none, 0);
        int limited = 0;
        for (int i = 0; i < FlowKernel.Links.ROOM; i++) {
            double ahead = links.ahead[i];
            double r = links.behind[i] / ahead;
            double psi = ahead == 0 ? 0 : Math.max(0, Math.min(Math.min(2 * r, (1 + 2 * r) / 3), 2));
            double value = links.upstream[i] + 0.5 * psi * ahead;
            assertEquals(Math.abs(links.flux[i]) * value, links.moved[i], 1e-14);
            limited += psi == 0 || psi == 2 ? 1 : 0;
        }
        assertTrue(limited > 100 && limited < 400, "limited " + limited);
    }

    /** A chain of blocks of 4 x 4 cells with random links, as the refinement has it. */
    private static final class Chain {
        private final int n;
        private final double[] full;
        private final BandFactor factor;

        Chain(int n, int width, SplittableRandom random) {
            this.n = n;
            full = new double[n * n];
            int count = 0;
            int[] row = new int[3 * n];
            int[] column = new int[3 * n];
            double[] value = new double[3 * n];
            double[] diagonal = new double[n];
            for (int i = 0; i < n; i++) {
                for (int d : new int[] {1, 4, width}) {
                    if (i >= d) {
                        double g = 0.01 + random.nextDouble();
                        row[count] = i;
                        column[count] = i - d;
                        value[count++] = -g;
                        full[i * n + i - d] -= g;
                        full[(i - d) * n + i] -= g;
                        diagonal[i] += g;
                        diagonal[i - d] += g;
                    }
                }
            }
            diagonal[0] *= 2;
            for (int i = 0; i < n; i++) {
                full[i * n + i] += diagonal[i];
            }
            factor = new BandFactor(
                    diagonal, Arrays.copyOf(row, count), Arrays.copyOf(column, count), Arrays.copyOf(value, count));
        }

        double[] solve(double[] right, FlowKernel kernel) {
            double[] x = new double[factor.length()];
            // What is left there from a larger block must not matter.
            Arrays.fill(x, 7);
            System.arraycopy(right, 0, x, factor.first(), n);
            factor.solve(x, kernel);
            return Arrays.copyOfRange(x, factor.first(), factor.first() + n);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {9, 12, 16})
    void bandedFactorsSolveTheirEquations(int width) {
        Chain chain = new Chain(64, width, new SplittableRandom(width));
        double[] right = new SplittableRandom(2).doubles(64, -1, 1).toArray();
        double[] x = chain.solve(right, PLAIN);
        for (int i = 0; i < 64; i++) {
            double sum = 0;
            for (int j = 0; j < 64; j++) {
                sum += chain.full[i * 64 + j] * x[j];
            }
            assertEquals(right[i], sum, 1e-12);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {9, 12, 16})
    void vectorsSolveAsThePlainLoopSolves(int width) {
        FlowKernel vectors = vectors();
        Chain chain = new Chain(48, width, new SplittableRandom(width));
        double[] right = new SplittableRandom(4).doubles(48, -1, 1).toArray();
        double[] expected = chain.solve(right, PLAIN);
        double[] actual = chain.solve(right, vectors);
        for (int i = 0; i < 48; i++) {
            assertEquals(expected[i], actual[i], 1e-13 * (1 + Math.abs(expected[i])));
        }
    }
}
