package baymist.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.run.RunObserver;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The linear program against its own definition: no feasible times near the solution leave less short. */
class ShortfallProgramTest {
    private static final double LIMIT_S = 4;
    private static final double SLOWEST = 0.05;

    private final DoseMatrix matrix = DoseMatrixTest.matrix(DoseStore.none(), 2, RunObserver.NONE);
    private final Patches patches = Patches.of(matrix.grid());

    private double objective(double[][] seconds) {
        double all = java.util.Arrays.stream(patches.areaM2()).sum();
        double[] film = new double[matrix.grid().surfels().count()];
        double time = 0;
        for (int l = 0; l < seconds.length; l++) {
            for (int k = 0; k < seconds[l].length; k++) {
                time += seconds[l][k];
                matrix.addAt(l, k, seconds[l][k], film);
            }
        }
        double[] mean = patches.means(film, matrix.grid().surfels());
        double haze = ShortfallProgram.MARGIN * matrix.scene().targets().hazeM();
        double build = matrix.scene().targets().buildM();
        double sum = PlanScore.USE_WORTH * time / LIMIT_S;
        for (int p = 0; p < mean.length; p++) {
            double share = patches.areaM2()[p] / all;
            sum += share * Math.max(0, 1 - mean[p] / haze);
            sum += PlanScore.BUILD_WORTH * share * Math.max(0, 1 - mean[p] / build);
        }
        return sum;
    }

    @Test
    void noFeasibleTimesLeaveLessShort() {
        // optimality of a linear program: every feasible point, here a thousand at random and on the way to them, is no
        // better
        double[][] best = ShortfallProgram.solve(
                matrix, patches, new PlanLimits(SLOWEST, 0.5, LIMIT_S, Double.POSITIVE_INFINITY, 12));
        double least = objective(best);
        Random random = new Random(4);
        double used = 0;
        for (double[] line : best) {
            for (double t : line) {
                assertTrue(t >= 0 && t <= matrix.lines().get(0).spacingM() / SLOWEST + 1e-9);
                used += t;
            }
        }
        assertTrue(used <= LIMIT_S + 1e-9 && used > 0);
        for (int i = 0; i < 1000; i++) {
            double[][] other = new double[best.length][];
            double sum = 0;
            for (int l = 0; l < best.length; l++) {
                other[l] = new double[best[l].length];
                for (int k = 0; k < best[l].length; k++) {
                    double t = random.nextDouble() < 0.3 ? random.nextDouble() : 0;
                    other[l][k] = t * matrix.lines().get(l).spacingM() / SLOWEST;
                    sum += other[l][k];
                }
            }
            double scale = Math.min(1, LIMIT_S / sum);
            double step = i % 2 == 0 ? 1 : 0.01;
            for (int l = 0; l < best.length; l++) {
                for (int k = 0; k < best[l].length; k++) {
                    other[l][k] = best[l][k] + step * (scale * other[l][k] - best[l][k]);
                }
            }
            assertTrue(objective(other) >= least - 1e-7, objective(other) + " < " + least);
        }
    }

    @Test
    void patchesHoldAllStructureOnce() {
        double structure = 0;
        for (int s = 0; s < matrix.grid().surfels().count(); s++) {
            boolean is = matrix.grid().surfels().isStructure(s);
            structure += is ? matrix.grid().surfels().areaM2()[s] : 0;
            assertEquals(is, patches.of()[s] >= 0);
        }
        assertEquals(structure, java.util.Arrays.stream(patches.areaM2()).sum(), 1e-12);
        assertTrue(patches.count() <= 600);
    }
}
