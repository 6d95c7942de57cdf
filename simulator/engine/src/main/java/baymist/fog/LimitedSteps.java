package baymist.fog;

import baymist.voxel.VoxelGrid;

/**
 * Explicit steps with limited slopes, second order in space and time, every cell at the pace of its level: docs/theory/fog.md, section 2.
 *
 * <p>As in {@link MultirateSteps} a link moves fog at the steps of the finer of its cells, cells are seen by others as they were at the start of
 * their own step, and what passes is gathered until that step ends. First the donor cells give; that tells how each cell changes. Then, where fog drifts,
 * follows what the value at the link in the middle of its step has beyond the donor's: a limited slope along the link, and the donor's change by everything
 * else (Colella 1990, J. Comput. Phys. 87, 171-200: corner transport upwind). Conservative; positive, as the additions take no more than the share
 * that a step leaves; uniform fog has no slopes and does not change, and stays uniform.
 *
 * <p>Scratch memory: arranged anew for each bin and window.
 */
final class LimitedSteps {
    private static final int EVEN = 0;
    private static final int UNEVEN = 1;
    private static final int PLAIN = 2;

    private final FogLinks links;
    private final double[] perM3;
    final RateLevels levels;

    /** Place of each cell in the sorted lists, [cells]. */
    private final int[] place;

    /** Sorted by level, [cells]: mass and what has passed since the cell's step began, kg; concentration, kg/m³. */
    private final double[] mass;

    private final double[] gathered;
    private final double[] held;

    /** Sorted by level, [cells]: what the donor cells move at this moment, kg/s; the same as a rate, kg/m³/s, and over the cell's step, kg/m³. */
    private final double[] flow;

    private final double[] rate;
    private final double[] change;

    /** Sorted by level, [cells]: sum of the masses at the starts of steps, kg; inflow per step, kg; share lost per step; 1/m³; room. */
    private final double[] massSum;

    private final double[] inflow;
    private final double[] loss;
    private final double[] perVolume;
    private final double[] room;

    /**
     * Sorted by level, those with slopes first, those whose three cells go at one pace before the others, [links]: places of donor and receiver, and of
     * the cell behind the donor.
     */
    private final int[] donor;

    private final int[] receiver;
    private final int[] behind;

    /** The same order: volumes that pass from the donor, from the receiver, and with the slope, m³; levels of donor, receiver and the one behind. */
    private final double[] give;

    private final double[] take;
    private final double[] beyond;
    private final byte[] donorLevel;
    private final byte[] receiverLevel;
    private final byte[] behindLevel;

    /** Where each level ends in the lists, and where its links with slopes end: at one pace, and all, [levels]. */
    private final int[] cellEnd = new int[RateLevels.COARSEST + 1];

    private final int[] linkEnd = new int[RateLevels.COARSEST + 1];
    private final int[] evenEnd = new int[RateLevels.COARSEST + 1];
    private final int[] slopedEnd = new int[RateLevels.COARSEST + 1];

    LimitedSteps(VoxelGrid grid, FogLinks links) {
        this.links = links;
        int cells = grid.cellCount();
        perM3 = new double[cells];
        for (int c = 0; c < cells; c++) {
            perM3[c] = 1 / grid.volumeM3(c);
        }
        levels = new RateLevels(links, cells);
        place = new int[cells];
        mass = new double[cells];
        gathered = new double[cells];
        held = new double[cells];
        flow = new double[cells];
        rate = new double[cells];
        change = new double[cells];
        massSum = new double[cells];
        inflow = new double[cells];
        loss = new double[cells];
        perVolume = new double[cells];
        room = new double[cells];
        int n = links.count();
        donor = new int[n];
        receiver = new int[n];
        behind = new int[n];
        give = new double[n];
        take = new double[n];
        beyond = new double[n];
        donorLevel = new byte[n];
        receiverLevel = new byte[n];
        behindLevel = new byte[n];
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
        double[] since = new double[RateLevels.COARSEST + 1];
        for (long i = 0; i < steps; i++) {
            int level = Math.min(top, Long.numberOfTrailingZeros(i));
            for (int k = 0; k <= top; k++) {
                since[k] = levels.stepS(0) * (i & ((1L << k) - 1));
            }
            for (int k = 0; k <= level; k++) {
                turn(start(cellEnd, k), cellEnd[k], 1 / levels.stepS(k));
            }
            for (int k = 0; k <= level; k++) {
                give(start(linkEnd, k), linkEnd[k], 1 / levels.stepS(k));
            }
            for (int k = 0; k <= level; k++) {
                noteRates(start(cellEnd, k), cellEnd[k], levels.stepS(k));
            }
            for (int k = 0; k <= level; k++) {
                leanEven(start(linkEnd, k), evenEnd[k]);
                leanAcross(evenEnd[k], slopedEnd[k], levels.stepS(k), since);
            }
        }
        for (int c = 0; c < fog.length; c++) {
            int p = place[c];
            fog[c] = mass[p] + gathered[p];
            rates.exposure[c] += levels.stepS(levels.ofCell[c]) * massSum[p];
        }
    }

    private static int start(int[] end, int level) {
        return level == 0 ? 0 : end[level - 1];
    }

    /** Ends the step of some cells and begins their next one. */
    private void turn(int from, int to, double perStep) {
        for (int p = from; p < to; p++) {
            double m = mass[p] + gathered[p];
            if (m < FogBin.VANISHING_KG && m > -FogBin.VANISHING_KG) {
                m = 0;
            }
            mass[p] = m;
            held[p] = m * perVolume[p];
            massSum[p] += m;
            double own = inflow[p] - loss[p] * m;
            gathered[p] = own;
            flow[p] = own * perStep;
        }
    }

    private void noteRates(int from, int to, double stepS) {
        for (int p = from; p < to; p++) {
            double r = flow[p] * perVolume[p];
            rate[p] = r;
            change[p] = r * stepS;
        }
    }

    /** What donor cells give. */
    private void give(int from, int to, double perStep) {
        for (int l = from; l < to; l++) {
            int a = donor[l];
            int b = receiver[l];
            double moved = give[l] * held[a] - take[l] * held[b];
            double flowing = moved * perStep;
            gathered[a] -= moved;
            flow[a] -= flowing;
            gathered[b] += moved;
            flow[b] += flowing;
        }
    }

    /** What the slopes add between cells that begin their steps together. */
    private void leanEven(int from, int to) {
        for (int l = from; l < to; l++) {
            int a = donor[l];
            int b = receiver[l];
            double c = held[a];
            double back = c - held[behind[l]];
            double along = (give[l] - take[l]) * perVolume[a];
            double across = 0.5 * (change[a] + along * back);
            double moved = beyond[l] * LimitedSlope.beyond(c, back, held[b] - c, along, across, room[a]);
            gathered[a] -= moved;
            gathered[b] += moved;
        }
    }

    /** The same where some of the cells began their steps earlier: their values are carried on to the beginning of the link's step. */
    private void leanAcross(int from, int to, double stepS, double[] since) {
        for (int l = from; l < to; l++) {
            int a = donor[l];
            int b = receiver[l];
            int f = behind[l];
            double late = since[donorLevel[l]] * rate[a];
            double c = held[a] + late;
            double back = c - held[f] - since[behindLevel[l]] * rate[f];
            double ahead = held[b] + since[receiverLevel[l]] * rate[b] - c;
            double along = (give[l] - take[l]) * perVolume[a];
            double across = late + 0.5 * (stepS * rate[a] + along * back);
            double moved = beyond[l] * LimitedSlope.beyond(held[a], back, ahead, along, across, room[a]);
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
            perVolume[p] = perM3[c];
            room[p] = LimitedSlope.room(stepS * rates.outRate[c], stepS * rates.slopedRate[c]);
        }
    }

    private void arrangeLinks(FogRates rates) {
        int[] next = starts(levels.linksIn, linkEnd);
        arrange(rates, next, EVEN);
        System.arraycopy(next, 0, evenEnd, 0, next.length);
        arrange(rates, next, UNEVEN);
        System.arraycopy(next, 0, slopedEnd, 0, next.length);
        arrange(rates, next, PLAIN);
    }

    private void arrange(FogRates rates, int[] next, int kind) {
        for (int l = 0; l < links.count(); l++) {
            if (kind(rates.lean[l], l) == kind) {
                arrange(l, next, rates);
            }
        }
    }

    private int kind(double lean, int l) {
        if (lean == 0) {
            return PLAIN;
        }
        byte[] level = levels.ofCell;
        int k = level[links.low[l]];
        int far = lean > 0 ? links.behindLow[l] : links.behindHigh[l];
        return level[links.high[l]] == k && level[far] == k ? EVEN : UNEVEN;
    }

    private void arrange(int l, int[] next, FogRates rates) {
        int level = levels.ofLink[l];
        double stepS = levels.stepS(level);
        int p = next[level]++;
        boolean upwards = rates.lean[l] >= 0;
        int from = upwards ? links.low[l] : links.high[l];
        int far = upwards ? links.behindLow[l] : links.behindHigh[l];
        double forth = stepS * rates.up[l] / perM3[links.low[l]];
        double back = stepS * rates.down[l] / perM3[links.high[l]];
        donor[p] = place[from];
        receiver[p] = place[upwards ? links.high[l] : links.low[l]];
        behind[p] = far < 0 ? place[from] : place[far];
        give[p] = upwards ? forth : back;
        take[p] = upwards ? back : forth;
        beyond[p] = stepS * Math.abs(rates.lean[l]);
        donorLevel[p] = levels.ofCell[from];
        receiverLevel[p] = levels.ofCell[upwards ? links.high[l] : links.low[l]];
        behindLevel[p] = levels.ofCell[far < 0 ? from : far];
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
