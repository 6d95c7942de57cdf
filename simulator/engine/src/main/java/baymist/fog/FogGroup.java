package baymist.fog;

import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Some bins side by side, as the kernels step them: the bin innermost, so that what they do at a link is done at once. In single precision;
 * {@link FogTogether} audits the masses in double. Filled anew for each window. Arrays of lanes hold {@link #lanes} values a place; lanes
 * without a bin hold zeros.
 */
final class FogGroup {
    /** Values a place: bins that the kernel takes at once. */
    final int lanes;

    /** Bins in use, 1..lanes, and their numbers. */
    int used;

    final int[] bin;

    /** Volumes that pass from low to high and back, with the slope, and with the drift, signed, m³/s, [falling links], lanes. */
    final float[] upOf;

    final float[] downOf;
    final float[] leanOf;
    final float[] driftOf;

    /** Rate of leaving a cell, and the part of it that drifts with slopes, 1/s, [cells] in the grid's order, lanes. */
    final float[] out;

    final float[] sloped;

    /** Concentrations at the starts of the cells' steps and at their ends, kg/m³, for each level one of two arrays, [places], lanes. */
    final float[][] now = new float[RateLevels.COARSEST + 1][];

    final float[][] next = new float[RateLevels.COARSEST + 1][];

    /** Share that leaves a cell in its step but to cells of other levels, [places], lanes. */
    final float[] give;

    /** Share of a neighbour's concentration that comes in through a link that droplets fall through, [places * falling sides], lanes. */
    final float[] fallIn;

    /**
     * Sum of the concentrations at the starts of steps, kg/m³, and what rounding has made of it too much (Kahan's sum), [sinks] in the order
     * of places, lanes.
     */
    float[] sum = new float[0];

    float[] excess = new float[0];

    /** Change in the cell's step by donor cells, kg/m³; {@link LimitedSlope#room}; [places], lanes; empty where slopes are never used. */
    final float[] change;

    final float[] room;

    /**
     * Share of the other cell's concentration that comes across in a step of the finer cell, into it and into the coarser one, [across],
     * lanes.
     */
    float[] acrossFiner = new float[0];

    float[] acrossCoarser = new float[0];

    /** What the spray adds in a step, kg/m³, [entries of the spray by level], lanes. */
    float[] added = new float[0];

    private final FogLinks links;
    private final FogCommon common;
    private final float[] one;
    private final float[] two;

    /** Lanes that were in use at the last filling. */
    private int filled;

    /**
     * @param sides sides of a cell that droplets fall through: 0, 2, 4, 6
     * @param slopes whether slopes are ever used
     */
    FogGroup(FogLinks links, FogCommon common, int sides, int lanes, boolean slopes) {
        this.links = links;
        this.common = common;
        this.lanes = lanes;
        bin = new int[lanes];
        int cells = common.perM3.length;
        int fall = lanes * common.fallingLink.length;
        upOf = new float[fall];
        downOf = new float[fall];
        leanOf = new float[slopes ? fall : 0];
        driftOf = new float[slopes ? fall : 0];
        one = new float[lanes * cells];
        two = new float[lanes * cells];
        give = new float[lanes * cells];
        fallIn = new float[lanes * cells * sides];
        change = new float[slopes ? lanes * cells : 0];
        room = new float[slopes ? lanes * cells : 0];
        // Rates are of no use any more when the first step fills these.
        out = two;
        sloped = change;
    }

    /** Empties lanes that no bin uses any more. To be called when the bins have been chosen. */
    void clear() {
        if (used < filled) {
            for (float[] values : new float[][] {upOf, downOf, leanOf, driftOf, one, two, give, fallIn, change, room}) {
                Arrays.fill(values, 0);
            }
        }
        filled = used;
    }

    /** Fills in what passes through falling links from..to-1. */
    void fall(FogWindow window, double[] settlingMPerS, boolean limited, int from, int to) {
        if (limited) {
            Arrays.fill(leanOf, lanes * from, lanes * to, 0);
        }
        for (int place = from; place < to; place++) {
            int l = common.fallingLink[place];
            int last = links.entryStart[l + 1] - 1;
            for (int q = 0; q < used; q++) {
                int p = lanes * place + q;
                double up = 0;
                double down = 0;
                for (int e = links.entryStart[l]; e <= last; e++) {
                    double conductance = window.conductance[e];
                    double net = settlingMPerS[bin[q]] * window.fallArea[e] + window.flux[e];
                    double against = ExponentialFlux.againstDriftSingle(net, conductance);
                    up += against + (net > 0 ? net : 0);
                    down += against + (net < 0 ? -net : 0);
                    if (limited) {
                        lean(l, p, net, FogRates.excess(net, against, conductance));
                    }
                }
                upOf[p] = (float) up;
                downOf[p] = (float) down;
            }
        }
    }

    private void lean(int l, int p, double net, double excess) {
        int behind = net > 0 ? links.behindLow[l] : links.behindHigh[l];
        if (behind >= 0 && excess > LimitedSlope.NEGLIGIBLE * Math.abs(net)) {
            leanOf[p] = (float) Math.copySign(excess, net);
            driftOf[p] = (float) net;
        }
    }

    /** Adds up the rates of cells from..to-1 but for vents, beams and links that share a side. */
    void rates(SurfelsByCell walls, FogSinks[] sinks, boolean limited, int from, int to) {
        double[] rate = new double[lanes];
        for (int c = from; c < to; c++) {
            Arrays.fill(rate, common.outRate[c]);
            for (int a = 0; a < 3; a++) {
                if (common.fallsAlong[a]) {
                    addFall(rate, links.side[6 * c + 2 * a], downOf, common.perM3[c]);
                    addFall(rate, links.side[6 * c + 2 * a + 1], upOf, common.perM3[c]);
                }
            }
            for (int j = walls.start()[c]; j < walls.start()[c + 1]; j++) {
                int s = walls.surfel()[j];
                for (int q = 0; q < used; q++) {
                    rate[q] += sinks[bin[q]].wallRate[s];
                }
            }
            int p = lanes * c;
            for (int q = 0; q < used; q++) {
                out[p + q] = Dither.round(rate[q], key(c, q));
            }
            if (limited) {
                slopedRates(c);
            }
        }
    }

    private int key(int place, int lane) {
        return 37 * place + 5 * bin[lane];
    }

    /** Adds what leaves a cell of a volume through a falling link. */
    private void addFall(double[] rate, int l, float[] leaving, double perM3) {
        if (l >= 0) {
            int at = lanes * common.falling[l];
            for (int q = 0; q < used; q++) {
                rate[q] += perM3 * leaving[at + q];
            }
        }
    }

    private void slopedRates(int c) {
        int p = lanes * c;
        float flat = (float) common.slopedRate[c];
        for (int q = 0; q < used; q++) {
            sloped[p + q] = flat;
        }
        for (int a = 0; a < 3; a++) {
            if (common.fallsAlong[a]) {
                addSloped(c, links.side[6 * c + 2 * a], -common.perM3[c]);
                addSloped(c, links.side[6 * c + 2 * a + 1], common.perM3[c]);
            }
        }
    }

    /** Adds what drifts out of a cell through a falling link; {@code perM3} is negative where the cell is the high one. */
    private void addSloped(int c, int l, double perM3) {
        if (l >= 0) {
            int p = lanes * c;
            int at = lanes * common.falling[l];
            for (int q = 0; q < used; q++) {
                double lean = perM3 * leanOf[at + q];
                sloped[p + q] = (float) (sloped[p + q] + Math.max(lean, 0));
            }
        }
    }

    /** The same for links that share a side of a cell with others. */
    void ratesOfExtras(boolean limited) {
        for (int l : links.extras) {
            if (common.falling[l] >= 0) {
                addExtra(links.low[l], l, upOf, common.perM3[links.low[l]], limited);
                addExtra(links.high[l], l, downOf, -common.perM3[links.high[l]], limited);
            }
        }
    }

    private void addExtra(int c, int l, float[] leaving, double perM3, boolean limited) {
        int at = lanes * common.falling[l];
        for (int q = 0; q < used; q++) {
            out[lanes * c + q] = (float) (out[lanes * c + q] + Math.abs(perM3) * leaving[at + q]);
        }
        if (limited) {
            addSloped(c, l, perM3);
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
    float pace(int place, boolean limited) {
        return limited ? out[place] + (float) FogRates.SLOPED_WEIGHT * sloped[place] : out[place];
    }

    /** Puts all levels back to the first of their two arrays, and sums to nothing. */
    void rewind(FogSchedule s) {
        int sinks = lanes * s.sinks();
        if (sum.length < sinks) {
            sum = new float[sinks];
            excess = new float[sinks];
        }
        Arrays.fill(sum, 0, sinks, 0);
        Arrays.fill(excess, 0, sinks, 0);
        Arrays.fill(next, one);
        Arrays.fill(now, two);
    }

    /** Sum of the concentrations at the starts of steps, kg/m³, of a lane at the place of a sink. */
    double summed(FogSchedule s, int level, int place, int lane) {
        int i = lanes * (place - s.sinkStart[level] + s.firstSink[level]) + lane;
        // Slopes may leave a cell with some 1e-38 less than nothing, by rounding.
        return Math.max(0, (double) sum[i] - excess[i]);
    }

    /** The ends of a level's steps become the starts of the next. */
    void turn(int level) {
        float[] ended = next[level];
        next[level] = now[level];
        now[level] = ended;
    }

    /** Sorts places from..to-1 in, at the beginning of a window: masses, shares that pass in a step. */
    void sortIn(FogSchedule s, double[][] massKg, boolean limited, int from, int to) {
        for (int q = 0; q < used; q++) {
            concentrate(s, massKg[bin[q]], q, from, to);
        }
        for (int p = from; p < to; p++) {
            int c = s.cell[p];
            int at = lanes * p;
            int in = lanes * c;
            // Factors that many cells share are not rounded by themselves: their rounding would not cancel.
            double stepS = s.levels.stepS(s.levels.ofCell[c]);
            for (int q = 0; q < used; q++) {
                give[at + q] = Dither.round(stepS * out[in + q], key(p, q));
            }
            if (limited) {
                for (int q = 0; q < used; q++) {
                    room[at + q] = LimitedSlope.room(give[at + q], (float) (stepS * sloped[in + q]));
                }
            }
            fallIn(s, c, p, stepS);
        }
    }

    private void concentrate(FogSchedule s, double[] massKg, int lane, int from, int to) {
        int[] cell = s.cell;
        double[] perM3 = common.perM3;
        for (int p = from; p < to; p++) {
            // Masses come from floats, put right by an audit whose factor is less than their last place: plain rounding
            // would undo it each time.
            one[lanes * p + lane] = Dither.round(massKg[cell[p]] * perM3[cell[p]], key(p, lane) + 2);
        }
    }

    private void fallIn(FogSchedule s, int c, int p, double stepS) {
        int sides = s.fallSides.length;
        double factor = stepS * common.perM3[c];
        for (int i = 0; i < sides; i++) {
            int to = lanes * (sides * p + i);
            if (s.near[6 * p + s.levelSides.length + i] == lanes * p) {
                for (int q = 0; q < used; q++) {
                    fallIn[to + q] = 0;
                }
                continue;
            }
            float[] coming = (s.fallSides[i] & 1) != 0 ? downOf : upOf;
            int place = lanes * common.falling[links.side[6 * c + s.fallSides[i]]];
            for (int q = 0; q < used; q++) {
                fallIn[to + q] = Dither.round(factor * coming[place + q], key(p, q) + 2 * i + 1);
            }
        }
    }

    /** Works out what links across levels pass, and what the spray adds. */
    void sortAcross(FogSchedule s, @Nullable SprayHits spray, int bins) {
        FogAcross across = s.across;
        if (acrossFiner.length < lanes * across.count()) {
            acrossFiner = new float[lanes * (across.count() + across.count() / 4)];
            acrossCoarser = new float[acrossFiner.length];
        }
        for (int i = 0; i < across.count(); i++) {
            int l = across.link[i];
            double stepS = s.levels.stepS(s.levels.ofLink[l]);
            boolean flip = across.finerIsHigh[i];
            int place = common.falling[l];
            double perLow = common.perM3[links.low[l]];
            double perHigh = common.perM3[links.high[l]];
            for (int q = 0; q < used; q++) {
                double up = stepS * perHigh * (place < 0 ? common.up[l] : upOf[lanes * place + q]);
                double down = stepS * perLow * (place < 0 ? common.down[l] : downOf[lanes * place + q]);
                acrossFiner[lanes * i + q] = Dither.round(flip ? up : down, i + 5 * bin[q]);
                acrossCoarser[lanes * i + q] = Dither.round(flip ? down : up, i + 5 * bin[q] + 1);
            }
        }
        if (spray == null) {
            return;
        }
        added = added.length == lanes * s.sprayEntry.length ? added : new float[lanes * s.sprayEntry.length];
        for (int i = 0; i < s.sprayEntry.length; i++) {
            int entry = s.sprayEntry[i];
            int c = spray.fogCell()[entry];
            double factor = s.levels.stepS(s.levels.ofCell[c]) * common.perM3[c];
            for (int q = 0; q < lanes; q++) {
                added[lanes * i + q] = q < used ? (float) (factor * spray.fogKgPerS()[entry * bins + bin[q]]) : 0;
            }
        }
    }
}
