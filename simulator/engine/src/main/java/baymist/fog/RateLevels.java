package baymist.fog;

import java.util.Arrays;

/**
 * Sorts the cells of one bin into levels by how fast they empty: the steps of level k are 2^k times those of level 0. A link
 * goes with the finer level of its two cells. Scratch memory: chosen anew for each bin and window.
 */
final class RateLevels {
    /** Coarsest level that may be chosen; more gained nothing on jet-like fields. */
    static final int COARSEST = 6;

    /** Levels must save this factor of updates to be worth their bookkeeping. */
    private static final double WORTHWHILE_GAIN = 1.5;

    /** Keeps cells whose rates are a power of two below the largest, to rounding, on one side of the limit. */
    private static final double SLACK = 1 + 1e-9;

    private final FogLinks links;

    /** Level of each cell, [cells], and of each link, [links]. */
    final byte[] ofCell;

    final byte[] ofLink;

    /** Cells and links of each level, [COARSEST + 1]. */
    final int[] cells = new int[COARSEST + 1];

    final int[] linksIn = new int[COARSEST + 1];

    private int coarsest;
    private long coarseSteps;
    private double finestStepS;

    RateLevels(FogLinks links, int cells) {
        this.links = links;
        ofCell = new byte[cells];
        ofLink = new byte[links.count()];
    }

    /**
     * Chooses the levels that need the fewest updates.
     *
     * @param outRate rate at which each cell empties, 1/s, [cells]
     * @param plainSteps steps that one level for all would take, 1 or more
     * @return whether levels save enough; if not, nothing here is to be used
     */
    boolean choose(double[] outRate, double durationS, long plainSteps) {
        int best = 0;
        double fewest = (double) plainSteps * outRate.length / WORTHWHILE_GAIN;
        for (int top = 1; top <= COARSEST && 1L << top <= plainSteps; top++) {
            double updates = cellUpdates(outRate, durationS, plainSteps, top);
            if (updates < fewest) {
                best = top;
                fewest = updates;
            }
        }
        if (best == 0) {
            return false;
        }
        assign(outRate, durationS, plainSteps, best);
        return updates() * WORTHWHILE_GAIN <= (double) plainSteps * (ofCell.length + ofLink.length);
    }

    private double cellUpdates(double[] outRate, double durationS, long plainSteps, int top) {
        double stepS = durationS / (stepsAtTop(plainSteps, top) << top);
        double updates = 0;
        for (double rate : outRate) {
            updates += 1L << (top - level(rate, stepS, top));
        }
        return stepsAtTop(plainSteps, top) * updates;
    }

    private static long stepsAtTop(long plainSteps, int top) {
        return (plainSteps + (1L << top) - 1) >> top;
    }

    /** The longest step 2^k that lets no more than the Courant share leave. */
    private static int level(double rate, double finestStepS, int top) {
        double room = FogBin.COURANT * SLACK / (finestStepS * rate);
        return room > 1 ? Math.min(top, Math.getExponent(room)) : 0;
    }

    private void assign(double[] outRate, double durationS, long plainSteps, int top) {
        coarsest = top;
        coarseSteps = stepsAtTop(plainSteps, top);
        finestStepS = durationS / (coarseSteps << top);
        Arrays.fill(cells, 0);
        Arrays.fill(linksIn, 0);
        for (int c = 0; c < ofCell.length; c++) {
            ofCell[c] = (byte) level(outRate[c], finestStepS, top);
            cells[ofCell[c]]++;
        }
        for (int l = 0; l < ofLink.length; l++) {
            ofLink[l] = (byte) Math.min(ofCell[links.low[l]], ofCell[links.high[l]]);
            linksIn[ofLink[l]]++;
        }
    }

    int coarsest() {
        return coarsest;
    }

    /** Steps of level 0 in the window. */
    long finestSteps() {
        return coarseSteps << coarsest;
    }

    /** Step of a level, s. */
    double stepS(int level) {
        return finestStepS * (1L << level);
    }

    /** Cells and links that are updated in the window, all steps together. */
    long updates() {
        long sum = 0;
        for (int k = 0; k <= coarsest; k++) {
            sum += (finestSteps() >> k) * (cells[k] + linksIn[k]);
        }
        return sum;
    }
}
