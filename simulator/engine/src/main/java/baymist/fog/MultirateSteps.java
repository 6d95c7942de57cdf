package baymist.fog;

/**
 * Explicit steps in which every cell goes at the pace of its level: docs/theory/fog.md, section 2.
 *
 * <p>A link moves mass at the steps of the finer of its cells. The coarser cell's mass is held as it was at the start of its own
 * step, and what passes is gathered until that step ends. So each cell loses in its step what its rates times its mass at the
 * start say (at most the Courant share: positive), what one cell loses another gains (conservative), and where all
 * concentrations are equal, all fluxes are those of the air (uniform stays uniform).
 *
 * <p>Cells and links lie sorted by level, finest first, with rates already multiplied by the step: whatever moves at one moment is
 * the front part of the lists. Scratch memory: arranged anew for each bin and window.
 */
final class MultirateSteps {
    private final FogLinks links;
    final RateLevels levels;

    /** Place of each cell in the sorted lists, [cells]. */
    private final int[] place;

    /** Sorted by level, [cells]: mass, what has passed since the cell's step began, sum of the masses at the starts of steps, kg. */
    private final double[] mass;

    private final double[] gathered;
    private final double[] massSum;

    /** Sorted by level, [cells]: what comes in per step, kg; share that leaves through walls, vents and beams per step. */
    private final double[] inflow;

    private final double[] loss;

    /** Sorted by level, [links]: places of the cells and shares that pass per step. */
    private final int[] low;

    private final int[] high;
    private final double[] up;
    private final double[] down;

    /** Where each level ends in the lists, [levels]. */
    private final int[] cellEnd = new int[RateLevels.COARSEST + 1];

    private final int[] linkEnd = new int[RateLevels.COARSEST + 1];

    MultirateSteps(FogLinks links, int cells) {
        this.links = links;
        levels = new RateLevels(links, cells);
        place = new int[cells];
        mass = new double[cells];
        gathered = new double[cells];
        massSum = new double[cells];
        inflow = new double[cells];
        loss = new double[cells];
        low = new int[links.count()];
        high = new int[links.count()];
        up = new double[links.count()];
        down = new double[links.count()];
    }

    /**
     * Advances over the window for which {@link #levels} were chosen.
     *
     * @param fog kg, [cells], in place; step times mass is added to {@code rates.exposure}
     */
    void advance(double[] fog, FogRates rates) {
        arrangeCells(fog, rates);
        arrangeLinks(rates);
        int top = levels.coarsest();
        long steps = levels.finestSteps();
        for (long i = 0; i < steps; i++) {
            int level = Math.min(top, Long.numberOfTrailingZeros(i));
            turn(cellEnd[level]);
            pass(linkEnd[level]);
        }
        for (int c = 0; c < fog.length; c++) {
            int p = place[c];
            fog[c] = mass[p] + gathered[p];
            rates.exposure[c] += levels.stepS(levels.ofCell[c]) * massSum[p];
        }
    }

    /** Ends the step of the first cells and begins their next one. */
    private void turn(int end) {
        for (int p = 0; p < end; p++) {
            double m = mass[p] + gathered[p];
            if (m < FogBin.VANISHING_KG && m > -FogBin.VANISHING_KG) {
                m = 0;
            }
            mass[p] = m;
            massSum[p] += m;
            gathered[p] = inflow[p] - loss[p] * m;
        }
    }

    private void pass(int end) {
        for (int l = 0; l < end; l++) {
            int a = low[l];
            int b = high[l];
            double moved = up[l] * mass[a] - down[l] * mass[b];
            gathered[a] -= moved;
            gathered[b] += moved;
        }
    }

    private void arrangeCells(double[] fog, FogRates rates) {
        int[] next = starts(levels.cells, cellEnd);
        for (int c = 0; c < fog.length; c++) {
            int level = levels.ofCell[c];
            double stepS = levels.stepS(level);
            int p = next[level]++;
            place[c] = p;
            mass[p] = fog[c];
            gathered[p] = 0;
            massSum[p] = 0;
            inflow[p] = stepS * rates.source[c];
            loss[p] = stepS * rates.loss[c];
        }
    }

    private void arrangeLinks(FogRates rates) {
        int[] next = starts(levels.linksIn, linkEnd);
        for (int l = 0; l < links.count(); l++) {
            int level = levels.ofLink[l];
            double stepS = levels.stepS(level);
            int p = next[level]++;
            low[p] = place[links.low[l]];
            high[p] = place[links.high[l]];
            up[p] = stepS * rates.up[l];
            down[p] = stepS * rates.down[l];
        }
    }

    /** First place of each level, finest first; fills in where each level ends. */
    private static int[] starts(int[] counts, int[] end) {
        int[] start = new int[counts.length];
        int sum = 0;
        for (int k = 0; k < counts.length; k++) {
            start[k] = sum;
            sum += counts[k];
            end[k] = sum;
        }
        return start;
    }
}
