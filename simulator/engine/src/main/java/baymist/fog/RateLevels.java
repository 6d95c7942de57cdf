package baymist.fog;

import java.util.Arrays;

/**
 * Sorts the cells of one bin into levels by how fast they empty: the steps of level k are 2^k times those of level 0. A link
 * goes with the finer level of its two cells. Scratch memory: chosen anew for each bin and window.
 */
final class RateLevels {
    /** Coarsest level that may be chosen; more save little and show fog later to its neighbours. */
    static final int COARSEST = 5;

    /**
     * Least and most steps that the coarsest level is asked to make in a window, however slow its cells. ASSUMED: fog seen late by half a coarse step H
     * shifts the film of a job that lasts T by H/(2T); so no coarse step of donor cells need be shorter than {@link #LATE_S} s for jobs of many seconds.
     */
    static final int FEWEST_COARSE_STEPS = 4;

    static final int LEAST_COARSE_STEPS = 16;

    /** Coarse step that is short enough for donor cells, s: a film of 5 s is moved by 0.2 %. */
    static final double LATE_S = 0.02;

    /** The same where slopes carry what cells of other paces hold on to the moment of the link's step, s. */
    static final double CARRIED_S = 0.25;

    /** Levels must save this factor of updates to be worth their bookkeeping. */
    private static final double WORTHWHILE_GAIN = 1.5;

    /** Keeps cells whose rates are a power of two below the largest, to rounding, on one side of the limit. */
    private static final double SLACK = 1 + 1e-9;

    /** Parts of an octave in which cells are counted and finest steps tried. */
    private static final int PARTS = 8;

    /** Where the parts of an octave begin, as ratios. */
    private static final double[] OCTAVE = new double[PARTS];

    static {
        Arrays.setAll(OCTAVE, i -> Math.pow(2, (double) i / PARTS));
    }

    private final FogLinks links;

    /** Cells by rate, fastest first, [parts of octaves]. */
    private final int[] crowd = new int[PARTS * (COARSEST + 1) + 1];

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
     * Chooses the levels and the finest step that need the fewest updates. A finest step somewhat shorter than it must be can let
     * the crowd of cells take steps twice as long.
     *
     * @param outRate rate by which each cell is paced, 1/s, [cells]
     * @param largestRate the largest of them, 1/s
     * @param plainSteps steps that one level for all would take, 1 or more
     * @param shortS coarse step that is short enough for all purposes, s
     * @return whether levels save enough; if not, nothing here is to be used
     */
    boolean choose(double[] outRate, double largestRate, double durationS, long plainSteps, double shortS) {
        int least = (int) Math.max(FEWEST_COARSE_STEPS, Math.min(LEAST_COARSE_STEPS, Math.ceil(durationS / shortS)));
        if (plainSteps < least) {
            return false;
        }
        count(outRate, largestRate);
        int bestTop = 0;
        long bestCoarse = 0;
        double fewest = (double) plainSteps * outRate.length;
        for (int top = 1; top <= COARSEST && (long) least << top <= 2 * plainSteps; top++) {
            for (int i = 0; i < PARTS; i++) {
                double needed = plainSteps * Math.pow(2, (double) i / PARTS - top);
                long coarse = Math.max(least, (long) Math.ceil(needed));
                double updates = cellUpdates(largestRate, durationS / (coarse << top), top, coarse);
                if (updates < fewest) {
                    bestTop = top;
                    bestCoarse = coarse;
                    fewest = updates;
                }
            }
        }
        if (bestTop == 0) {
            return false;
        }
        assign(outRate, durationS, bestTop, bestCoarse);
        return updates() * WORTHWHILE_GAIN <= (double) plainSteps * (ofCell.length + ofLink.length);
    }

    /** One level for all. */
    void choosePlain(double[] rate, double durationS, long steps) {
        assign(rate, durationS, 0, steps);
    }

    /** Counts the cells by the ratio of the largest rate to theirs, in parts of an octave; the last entry takes all the rest. */
    private void count(double[] outRate, double largestRate) {
        Arrays.fill(crowd, 0);
        for (double rate : outRate) {
            crowd[part(SLACK * largestRate / rate)]++;
        }
    }

    /** Parts of an octave by which a ratio of 1 or more lies above 1, at most the last entry. */
    private int part(double ratio) {
        int octaves = Math.max(0, Math.getExponent(ratio));
        if (octaves > COARSEST) {
            return crowd.length - 1;
        }
        double rest = ratio / (1 << octaves);
        int i = 0;
        while (i < PARTS - 1 && rest >= OCTAVE[i + 1]) {
            i++;
        }
        return PARTS * octaves + i;
    }

    /** Updates of cells in the window, if each counted cell had the largest rate of its part. */
    private double cellUpdates(double largestRate, double finestStepS, int top, long coarse) {
        double updates = 0;
        for (int i = 0; i < crowd.length; i++) {
            double rate = largestRate * Math.pow(2, -(double) i / PARTS);
            updates += (double) crowd[i] * (coarse << (top - level(rate, finestStepS, top)));
        }
        return updates;
    }

    /** The longest step 2^k that lets no more than the Courant share leave. */
    private static int level(double rate, double finestStepS, int top) {
        double room = FogBin.COURANT * SLACK / (finestStepS * rate);
        return room > 1 ? Math.min(top, Math.getExponent(room)) : 0;
    }

    private void assign(double[] outRate, double durationS, int top, long coarse) {
        coarsest = top;
        coarseSteps = coarse;
        finestStepS = durationS / (coarse << top);
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
