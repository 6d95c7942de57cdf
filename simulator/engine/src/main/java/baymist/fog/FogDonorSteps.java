package baymist.fog;

import java.util.Arrays;

/**
 * Explicit steps of donor cells for groups of four bins, every cell at the pace of its level: as {@link MultirateSteps}, with one order of cells and links for
 * all bins. Cells and links lie sorted by level, finest first, with rates already multiplied by the step; cells that neither gain nor lose but through
 * links come first in their level and are spared that part. Scratch memory: arranged anew for each window, then read by all groups.
 */
final class FogDonorSteps {
    private static final int W = FogGroup.LANES;

    private final FogLinks links;
    private final RateLevels levels;
    private final int[] falling;

    /** Place of each cell in the sorted lists, times the lanes, [cells]. */
    private final int[] place;

    /** Where each level's cells begin to have sources or sinks, and where they end, [levels]; places, not times the lanes. */
    private final int[] sinkStart = new int[RateLevels.COARSEST + 1];

    private final int[] cellEnd = new int[RateLevels.COARSEST + 1];

    /** Sorted by level: places of the cells times the lanes; shares that pass per step where nothing falls. */
    private final int[] low;

    private final int[] high;
    private final double[] up;
    private final double[] down;

    /** The same of links that droplets fall through; step and inverse volumes in place of the shares; place among the coefficients times the lanes. */
    private final int[] lowOf;

    private final int[] highOf;
    private final int[] rateOf;
    private final double[] upFactor;
    private final double[] downFactor;

    private final int[] linkEnd = new int[RateLevels.COARSEST + 1];
    private final int[] fallEnd = new int[RateLevels.COARSEST + 1];

    /** @param falling place of each link among those that droplets fall through, or -1; count of them */
    FogDonorSteps(FogLinks links, RateLevels levels, int cells, int[] falling, int fallingCount) {
        this.links = links;
        this.levels = levels;
        this.falling = falling;
        place = new int[cells];
        int level = cells == 0 ? 0 : links.count() - fallingCount;
        low = new int[level];
        high = new int[level];
        up = new double[level];
        down = new double[level];
        int fall = cells == 0 ? 0 : fallingCount;
        lowOf = new int[fall];
        highOf = new int[fall];
        rateOf = new int[fall];
        upFactor = new double[fall];
        downFactor = new double[fall];
    }

    /**
     * Sorts cells and links by the levels that were chosen.
     *
     * @param sink whether a cell gains or loses fog but through links, for any bin, [cells]
     */
    void arrange(FogCommon common, double[] perM3, boolean[] sink) {
        int cell = 0;
        int flat = 0;
        int fall = 0;
        for (int k = 0; k <= levels.coarsest(); k++) {
            cell = arrangeCells(k, cell, sink);
            double stepS = levels.stepS(k);
            for (int l = 0; l < levels.ofLink.length; l++) {
                if (levels.ofLink[l] != k) {
                    continue;
                }
                int a = links.low[l];
                int b = links.high[l];
                if (falling[l] < 0) {
                    low[flat] = a;
                    high[flat] = b;
                    up[flat] = stepS * common.up[l];
                    down[flat++] = stepS * common.down[l];
                } else {
                    lowOf[fall] = a;
                    highOf[fall] = b;
                    rateOf[fall] = W * falling[l];
                    upFactor[fall] = stepS * perM3[a];
                    downFactor[fall++] = stepS * perM3[b];
                }
            }
            linkEnd[k] = flat;
            fallEnd[k] = fall;
        }
        // Cells of coarser levels were not placed yet when finer links were listed.
        placeLinks();
    }

    private int arrangeCells(int k, int from, boolean[] sink) {
        int next = from;
        for (int kind = 0; kind < 2; kind++) {
            sinkStart[k] = next;
            for (int c = 0; c < place.length; c++) {
                if (levels.ofCell[c] == k && sink[c] == (kind == 1)) {
                    place[c] = W * next++;
                }
            }
        }
        cellEnd[k] = next;
        return next;
    }

    private void placeLinks() {
        for (int i = 0; i < low.length; i++) {
            low[i] = place[low[i]];
            high[i] = place[high[i]];
        }
        for (int i = 0; i < lowOf.length; i++) {
            lowOf[i] = place[lowOf[i]];
            highOf[i] = place[highOf[i]];
        }
    }

    /** Advances a group over the window for which this was arranged. Arrays that only slopes need serve as sorted copies meanwhile. */
    void advance(FogGroup g) {
        double[] mass = g.held;
        double[] passed = g.change;
        double[] sum = g.missing;
        double[] inflow = g.gathered;
        double[] loss = g.room;
        double[] upOf = g.leanOf;
        double[] downOf = g.driftOf;
        sortIn(g);
        int top = levels.coarsest();
        long steps = levels.finestSteps();
        for (long i = 0; i < steps; i++) {
            int level = Math.min(top, Long.numberOfTrailingZeros(i));
            int from = 0;
            for (int k = 0; k <= level; k++) {
                turn(mass, passed, W * from, W * sinkStart[k]);
                turnSinks(mass, passed, sum, inflow, loss, W * sinkStart[k], W * cellEnd[k]);
                from = cellEnd[k];
            }
            pass(mass, passed, linkEnd[level]);
            passFalling(mass, passed, upOf, downOf, fallEnd[level]);
        }
        for (int c = 0; c < place.length; c++) {
            for (int q = 0; q < W; q++) {
                g.mass[W * c + q] = mass[place[c] + q] + passed[place[c] + q];
                g.massSum[W * c + q] = sum[place[c] + q];
            }
        }
        Arrays.fill(g.gathered, 0);
    }

    private void sortIn(FogGroup g) {
        for (int c = 0; c < place.length; c++) {
            double stepS = levels.stepS(levels.ofCell[c]);
            for (int q = 0; q < W; q++) {
                int p = place[c] + q;
                g.held[p] = g.mass[W * c + q];
                g.change[p] = 0;
                g.missing[p] = 0;
                g.gathered[p] = stepS * g.source[W * c + q];
                g.room[p] = stepS * g.loss[W * c + q];
            }
        }
        for (int i = 0; i < rateOf.length; i++) {
            for (int q = 0; q < W; q++) {
                g.leanOf[W * i + q] = upFactor[i] * g.upOf[rateOf[i] + q];
                g.driftOf[W * i + q] = downFactor[i] * g.downOf[rateOf[i] + q];
            }
        }
    }

    private static void turn(double[] mass, double[] passed, int from, int to) {
        for (int p = from; p < to; p++) {
            double m = mass[p] + passed[p];
            mass[p] = m < FogBin.VANISHING_KG && m > -FogBin.VANISHING_KG ? 0 : m;
            passed[p] = 0;
        }
    }

    private static void turnSinks(
            double[] mass, double[] passed, double[] sum, double[] inflow, double[] loss, int from, int to) {
        for (int p = from; p < to; p++) {
            double m = mass[p] + passed[p];
            if (m < FogBin.VANISHING_KG && m > -FogBin.VANISHING_KG) {
                m = 0;
            }
            mass[p] = m;
            sum[p] += m;
            passed[p] = inflow[p] - loss[p] * m;
        }
    }

    private void pass(double[] mass, double[] passed, int end) {
        int[] first = low;
        int[] second = high;
        double[] forth = up;
        double[] back = down;
        for (int l = 0; l < end; l++) {
            int a = first[l];
            int b = second[l];
            double f = forth[l];
            double r = back[l];
            double m0 = f * mass[a] - r * mass[b];
            double m1 = f * mass[a + 1] - r * mass[b + 1];
            double m2 = f * mass[a + 2] - r * mass[b + 2];
            double m3 = f * mass[a + 3] - r * mass[b + 3];
            passed[a] -= m0;
            passed[a + 1] -= m1;
            passed[a + 2] -= m2;
            passed[a + 3] -= m3;
            passed[b] += m0;
            passed[b + 1] += m1;
            passed[b + 2] += m2;
            passed[b + 3] += m3;
        }
    }

    private void passFalling(double[] mass, double[] passed, double[] forth, double[] back, int end) {
        int[] first = lowOf;
        int[] second = highOf;
        for (int l = 0; l < end; l++) {
            int a = first[l];
            int b = second[l];
            int k = W * l;
            double m0 = forth[k] * mass[a] - back[k] * mass[b];
            double m1 = forth[k + 1] * mass[a + 1] - back[k + 1] * mass[b + 1];
            double m2 = forth[k + 2] * mass[a + 2] - back[k + 2] * mass[b + 2];
            double m3 = forth[k + 3] * mass[a + 3] - back[k + 3] * mass[b + 3];
            passed[a] -= m0;
            passed[a + 1] -= m1;
            passed[a + 2] -= m2;
            passed[a + 3] -= m3;
            passed[b] += m0;
            passed[b + 1] += m1;
            passed[b + 2] += m2;
            passed[b + 3] += m3;
        }
    }
}
