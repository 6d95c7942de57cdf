package baymist.fog;

import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Up to four bins side by side, as the kernels step them: the bin innermost, so that what four bins do at a link is done at once. Filled
 * anew for each
 * window. Arrays of lanes hold {@link #LANES} values a place; lanes without a bin hold zeros.
 */
final class FogGroup {
    /** Bins side by side: a vector of four doubles. */
    static final int LANES = 4;

    /** Bins in use, 1..4, and their numbers. */
    int used;

    final int[] bin = new int[LANES];

    /** Volumes that pass from low to high and back, with the slope, and with the drift, signed, m³/s, [falling links], lanes. */
    final double[] upOf;

    final double[] downOf;
    final double[] leanOf;
    final double[] driftOf;

    /** Rate of leaving a cell, and the part of it that drifts with slopes, 1/s, [cells] in the grid's order, lanes. */
    final double[] out;

    final double[] sloped;

    /** Concentrations at the starts of the cells' steps and at their ends, kg/m³, for each level one of two arrays, [places], lanes. */
    final double[][] now = new double[RateLevels.COARSEST + 1][];

    final double[][] next = new double[RateLevels.COARSEST + 1][];

    /** Share that leaves a cell in its step but to cells of other levels, [places], lanes. */
    final double[] give;

    /** Share of a neighbour's concentration that comes in through a link that droplets fall through, [places * falling sides], lanes. */
    final double[] fallIn;

    /** Sum of the concentrations at the starts of steps, kg/m³, [places], lanes; kept at sinks alone. */
    final double[] sum;

    /** Change in the cell's step by donor cells, kg/m³; {@link LimitedSlope#room}; [places], lanes. */
    final double[] change;

    final double[] room;

    /**
     * Share of the other cell's concentration that comes across in a step of the finer cell, into it and into the coarser one, [across],
     * lanes.
     */
    double[] acrossFiner = new double[0];

    double[] acrossCoarser = new double[0];

    /** What the spray adds in a step, kg/m³, [entries of the spray by level], lanes. */
    double[] added = new double[0];

    private final FogLinks links;
    private final FogCommon common;
    private final double[] one;
    private final double[] two;

    /** @param sides sides of a cell that droplets fall through: 0, 2, 4, 6 */
    FogGroup(FogLinks links, FogCommon common, int sides) {
        this.links = links;
        this.common = common;
        int cells = common.perM3.length;
        int fall = LANES * common.fallingLink.length;
        upOf = new double[fall];
        downOf = new double[fall];
        leanOf = new double[fall];
        driftOf = new double[fall];
        one = new double[LANES * cells];
        two = new double[LANES * cells];
        give = new double[LANES * cells];
        fallIn = new double[LANES * cells * sides];
        sum = new double[LANES * cells];
        change = new double[LANES * cells];
        room = new double[LANES * cells];
        // Rates are of no use any more when the first step fills these.
        out = two;
        sloped = change;
    }

    /** Fills in what passes through falling links from..to-1. */
    void fall(FogWindow window, double[] settlingMPerS, boolean limited, int from, int to) {
        Arrays.fill(upOf, LANES * from, LANES * to, 0);
        Arrays.fill(downOf, LANES * from, LANES * to, 0);
        if (limited) {
            Arrays.fill(leanOf, LANES * from, LANES * to, 0);
        }
        for (int place = from; place < to; place++) {
            int l = common.fallingLink[place];
            for (int e = links.entryStart[l]; e < links.entryStart[l + 1]; e++) {
                double air = window.flux[e];
                double area = window.fallArea[e];
                double conductance = window.conductance[e];
                for (int q = 0; q < used; q++) {
                    int p = LANES * place + q;
                    double net = settlingMPerS[bin[q]] * area + air;
                    double against = ExponentialFlux.againstDrift(net, conductance);
                    upOf[p] += against + Math.max(net, 0);
                    downOf[p] += against + Math.max(-net, 0);
                    if (limited) {
                        lean(l, p, net, FogRates.excess(net, against, conductance));
                    }
                }
            }
        }
    }

    private void lean(int l, int p, double net, double excess) {
        int behind = net > 0 ? links.behindLow[l] : links.behindHigh[l];
        if (behind >= 0 && excess > LimitedSlope.NEGLIGIBLE * Math.abs(net)) {
            leanOf[p] = Math.copySign(excess, net);
            driftOf[p] = net;
        }
    }

    /** Adds up the rates of cells from..to-1 but for vents, beams and links that share a side. */
    void rates(SurfelsByCell walls, FogSinks[] sinks, boolean limited, int from, int to) {
        for (int c = from; c < to; c++) {
            int p = LANES * c;
            double flat = common.outRate[c];
            double flatSloped = common.slopedRate[c];
            for (int q = 0; q < LANES; q++) {
                out[p + q] = q < used ? flat : 0;
            }
            for (int q = 0; limited && q < LANES; q++) {
                sloped[p + q] = q < used ? flatSloped : 0;
            }
            for (int a = 0; a < 3; a++) {
                if (common.fallsAlong[a]) {
                    falls(c, links.side[6 * c + 2 * a], downOf, -common.perM3[c], limited);
                    falls(c, links.side[6 * c + 2 * a + 1], upOf, common.perM3[c], limited);
                }
            }
            for (int j = walls.start()[c]; j < walls.start()[c + 1]; j++) {
                int s = walls.surfel()[j];
                for (int q = 0; q < used; q++) {
                    out[p + q] += sinks[bin[q]].wallRate[s];
                }
            }
        }
    }

    /** Adds what leaves a cell through a falling link; {@code perM3} is negative where the cell is the high one. */
    private void falls(int c, int l, double[] leaving, double perM3, boolean limited) {
        if (l < 0) {
            return;
        }
        int p = LANES * c;
        int at = LANES * common.falling[l];
        double size = Math.abs(perM3);
        for (int q = 0; q < LANES; q++) {
            out[p + q] += size * leaving[at + q];
        }
        if (limited) {
            for (int q = 0; q < LANES; q++) {
                double lean = perM3 * leanOf[at + q];
                sloped[p + q] += lean > 0 ? lean : 0;
            }
        }
    }

    /** The same for links that share a side of a cell with others. */
    void ratesOfExtras(boolean limited) {
        for (int l : links.extras) {
            if (common.falling[l] >= 0) {
                falls(links.low[l], l, upOf, common.perM3[links.low[l]], limited);
                falls(links.high[l], l, downOf, -common.perM3[links.high[l]], limited);
            }
        }
    }

    /** Surfels of each cell. */
    record SurfelsByCell(int[] start, int[] surfel) {
        static SurfelsByCell of(SurfelSet surfels, int cells) {
            int[] start = new int[cells + 1];
            for (int c : surfels.cell()) {
                start[c + 1]++;
            }
            for (int c = 0; c < cells; c++) {
                start[c + 1] += start[c];
            }
            int[] next = start.clone();
            int[] surfel = new int[surfels.count()];
            for (int s = 0; s < surfel.length; s++) {
                surfel[next[surfels.cell()[s]]++] = s;
            }
            return new SurfelsByCell(start, surfel);
        }
    }

    /** Pace of a lane's cell, 1/s. */
    double pace(int place, boolean limited) {
        return limited ? out[place] + FogRates.SLOPED_WEIGHT * sloped[place] : out[place];
    }

    /** Puts all levels back to the first of their two arrays, and sums to nothing. */
    void rewind(FogSchedule s) {
        for (int k = 0; k < next.length; k++) {
            Arrays.fill(sum, LANES * s.sinkStart[k], LANES * s.end[k], 0);
        }
        Arrays.fill(next, one);
        Arrays.fill(now, two);
    }

    /** The ends of a level's steps become the starts of the next. */
    void turn(int level) {
        double[] ended = next[level];
        next[level] = now[level];
        now[level] = ended;
    }

    /** Sorts places from..to-1 in, at the beginning of a window: masses, shares that pass in a step. */
    void sortIn(FogSchedule s, double[][] massKg, boolean limited, int from, int to) {
        for (int q = 0; q < LANES; q++) {
            if (q < used) {
                concentrate(s, massKg[bin[q]], q, from, to);
            } else {
                for (int p = from; p < to; p++) {
                    one[LANES * p + q] = 0;
                }
            }
        }
        for (int p = from; p < to; p++) {
            int c = s.cell[p];
            int at = LANES * p;
            int in = LANES * c;
            double stepS = s.levels.stepS(s.levels.ofCell[c]);
            give[at] = stepS * out[in];
            give[at + 1] = stepS * out[in + 1];
            give[at + 2] = stepS * out[in + 2];
            give[at + 3] = stepS * out[in + 3];
            if (limited) {
                for (int q = 0; q < LANES; q++) {
                    room[at + q] = LimitedSlope.room(give[at + q], stepS * sloped[in + q]);
                }
            }
            fallIn(s, c, p, stepS);
        }
    }

    private void concentrate(FogSchedule s, double[] massKg, int lane, int from, int to) {
        int[] cell = s.cell;
        double[] perM3 = common.perM3;
        for (int p = from; p < to; p++) {
            one[LANES * p + lane] = massKg[cell[p]] * perM3[cell[p]];
        }
    }

    private void fallIn(FogSchedule s, int c, int p, double stepS) {
        int sides = s.fallSides.length;
        double factor = stepS * common.perM3[c];
        for (int i = 0; i < sides; i++) {
            int to = LANES * (sides * p + i);
            if (s.near[6 * p + s.levelSides.length + i] == LANES * p) {
                for (int q = 0; q < LANES; q++) {
                    fallIn[to + q] = 0;
                }
                continue;
            }
            double[] coming = (s.fallSides[i] & 1) != 0 ? downOf : upOf;
            int place = LANES * common.falling[links.side[6 * c + s.fallSides[i]]];
            for (int q = 0; q < LANES; q++) {
                fallIn[to + q] = factor * coming[place + q];
            }
        }
    }

    /** Works out what links across levels pass, and what the spray adds. */
    void sortAcross(FogSchedule s, @Nullable SprayHits spray, int bins) {
        FogAcross across = s.across;
        if (acrossFiner.length < LANES * across.count()) {
            acrossFiner = new double[LANES * (across.count() + across.count() / 4)];
            acrossCoarser = new double[acrossFiner.length];
        }
        for (int i = 0; i < across.count(); i++) {
            int l = across.link[i];
            double stepS = s.levels.stepS(s.levels.ofLink[l]);
            boolean flip = across.finerIsHigh[i];
            int place = common.falling[l];
            double perLow = common.perM3[links.low[l]];
            double perHigh = common.perM3[links.high[l]];
            for (int q = 0; q < LANES; q++) {
                double up = stepS * perHigh * (place < 0 ? common.up[l] : upOf[LANES * place + q]);
                double down = stepS * perLow * (place < 0 ? common.down[l] : downOf[LANES * place + q]);
                acrossFiner[LANES * i + q] = flip ? up : down;
                acrossCoarser[LANES * i + q] = flip ? down : up;
            }
        }
        if (spray == null) {
            return;
        }
        added = added.length == LANES * s.sprayEntry.length ? added : new double[LANES * s.sprayEntry.length];
        for (int i = 0; i < s.sprayEntry.length; i++) {
            int entry = s.sprayEntry[i];
            int c = spray.fogCell()[entry];
            double factor = s.levels.stepS(s.levels.ofCell[c]) * common.perM3[c];
            for (int q = 0; q < LANES; q++) {
                added[LANES * i + q] = q < used ? factor * spray.fogKgPerS()[entry * bins + bin[q]] : 0;
            }
        }
    }
}
