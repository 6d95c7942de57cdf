package baymist.fog;

import baymist.numeric.Workers;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Explicit steps of all bins that need them in a window, with limited slopes or by donor cells: one set of levels for all, by the fastest
 * bin of each cell, so that how sizes are cut into bins does not matter; groups of bins, packed anew for each window, are pieces of
 * parallel work. Owned by {@link FogStepper}, which calls prepare, arrange, step, give and book in this order.
 */
final class FogTogether {
    private final VoxelGrid grid;
    private final FogLinks links;
    private final FogCommon common;
    private final boolean slopesEver;
    private final boolean[] fixedSink;
    private final FogGroup.SurfelsByCell walls;
    private final List<FogGroup> groups = new ArrayList<>();
    private final FogBin[] fog;
    private FogKernel kernel;
    private FogSchedule schedule;

    /** Fastest pace of any bin, 1/s, [cells]. */
    private final double[] pace;

    /** Largest pace of each block of cells and its cell, [blocks * bins]. */
    private final double[] largest;

    private final int[] largestCell;

    /** Largest rate of leaving by vents and beams and the air beside, 1/s, and the sum in cells that have any, [bins], [cells]. */
    private final double[] airRate;

    private final double[] airLoss;

    /** Groups in use in this window. */
    private int busy;

    /**
     * @param fog the bins; none if none will ever go together
     * @param slopesEver whether any window has slopes
     */
    FogTogether(VoxelGrid grid, FogLinks links, FogCommon common, FogBin[] fog, boolean slopesEver) {
        this.grid = grid;
        this.links = links;
        this.common = common;
        this.fog = fog;
        this.slopesEver = slopesEver;
        int cells = fog.length == 0 ? 0 : grid.cellCount();
        fixedSink = new boolean[cells];
        SurfelSet surfels = grid.surfels();
        if (cells > 0) {
            for (int c : surfels.cell()) {
                fixedSink[c] = true;
            }
            for (int c : grid.faces().ventCell()) {
                fixedSink[c] = true;
            }
        }
        kernel = FogKernels.best();
        schedule = new FogSchedule(links, common, fixedSink, kernel.lanes());
        walls = FogGroup.SurfelsByCell.of(surfels, grid.cellCount());
        pace = new double[cells];
        int blocks = cells / FogLinks.BLOCK + 1;
        largest = new double[blocks * fog.length];
        largestCell = new int[blocks * fog.length];
        airRate = new double[fog.length];
        airLoss = new double[cells];
    }

    /** Steps with a given kernel from now on. */
    void use(FogKernel other) {
        kernel = other;
        schedule = new FogSchedule(links, common, fixedSink, kernel.lanes());
        groups.clear();
    }

    /**
     * Works out the rates of bins.
     *
     * @param joint bins that want to go together; those that are better split are taken out
     */
    void prepare(boolean[] joint, boolean slopes, FogWindow window, double durationS, Workers workers) {
        if (!group(joint)) {
            return;
        }
        double[] settling = new double[fog.length];
        FogSinks[] sinks = new FogSinks[fog.length];
        for (int b = 0; b < fog.length; b++) {
            settling[b] = fog[b].settlingMPerS();
            sinks[b] = fog[b].sinks;
        }
        workers.forBlocks(common.fallingLink.length, FogLinks.BLOCK, (from, to) -> {
            for (FogGroup g : groups.subList(0, busy)) {
                g.fall(window, settling, slopes, from, to);
            }
        });
        workers.forBlocks(pace.length, FogLinks.BLOCK, (from, to) -> {
            for (FogGroup g : groups.subList(0, busy)) {
                g.rates(walls, sinks, slopes, from, to);
            }
        });
        for (FogGroup g : groups.subList(0, busy)) {
            g.ratesOfExtras(slopes);
            for (int q = 0; q < g.used; q++) {
                addVentsAndBeams(g, q, sinks[g.bin[q]], window, slopes);
            }
        }
        workers.forBlocks(pace.length, FogLinks.BLOCK, (from, to) -> findPace(slopes, from, to));
        boolean split = false;
        for (int b = 0; b < fog.length; b++) {
            if (joint[b]) {
                int at = largestAt(b);
                joint[b] = !fog[b].splits(largest[at], airRate[b]);
                split |= !joint[b];
                if (joint[b]) {
                    fog[b].join(window, common, largest[at], largestCell[at], durationS);
                }
            }
        }
        if (split) {
            withoutSplit(joint, slopes, window, settling, sinks, workers);
        }
    }

    /** Some bins leave: the others close ranks. */
    private void withoutSplit(
            boolean[] joint, boolean slopes, FogWindow window, double[] settling, FogSinks[] sinks, Workers workers) {
        if (!group(joint)) {
            return;
        }
        workers.forEach(busy, i -> {
            FogGroup g = groups.get(i);
            g.fall(window, settling, slopes, 0, common.fallingLink.length);
            g.rates(walls, sinks, slopes, 0, pace.length);
        });
        for (FogGroup g : groups.subList(0, busy)) {
            g.ratesOfExtras(slopes);
            for (int q = 0; q < g.used; q++) {
                addVentsAndBeams(g, q, sinks[g.bin[q]], window, slopes);
            }
        }
        workers.forBlocks(pace.length, FogLinks.BLOCK, (from, to) -> findPace(slopes, from, to));
    }

    /** Puts the bins that go together into as few groups as hold them, about as many in each; whether there are any. */
    private boolean group(boolean[] joint) {
        int count = 0;
        for (boolean b : joint) {
            count += b ? 1 : 0;
        }
        busy = (count + kernel.lanes() - 1) / kernel.lanes();
        int next = 0;
        for (int i = 0; i < busy; i++) {
            if (i == groups.size()) {
                groups.add(new FogGroup(links, common, schedule.fallSides.length, kernel.lanes(), slopesEver));
            }
            FogGroup g = groups.get(i);
            g.used = count / busy + (i < count % busy ? 1 : 0);
            for (int q = 0; q < g.used; q++) {
                while (!joint[next]) {
                    next++;
                }
                g.bin[q] = next++;
            }
            g.clear();
        }
        return busy > 0;
    }

    private void addVentsAndBeams(FogGroup g, int lane, FogSinks sinks, FogWindow window, boolean slopes) {
        int[] ventCell = grid.faces().ventCell();
        double most = slopes ? common.largestAirPace : common.largestAirRate;
        for (int v = 0; v < sinks.ventRate.length; v++) {
            airLoss[ventCell[v]] += sinks.ventRate[v];
        }
        SprayHits spray = window.spray;
        for (int i = 0; spray != null && i < sinks.scourRate.length; i++) {
            airLoss[spray.scourCell()[i]] += sinks.scourRate[i];
        }
        for (int v = 0; v < sinks.ventRate.length; v++) {
            most = Math.max(most, moveAirLoss(g, lane, ventCell[v], slopes));
        }
        for (int i = 0; spray != null && i < sinks.scourRate.length; i++) {
            most = Math.max(most, moveAirLoss(g, lane, spray.scourCell()[i], slopes));
        }
        airRate[g.bin[lane]] = most;
    }

    /** Moves a cell's loss by vents and beams to the rates of a lane; its pace by the air alone, 1/s. */
    private double moveAirLoss(FogGroup g, int lane, int cell, boolean slopes) {
        double loss = airLoss[cell];
        airLoss[cell] = 0;
        g.out[g.lanes * cell + lane] += (float) loss;
        return loss + common.airOutRate[cell] + (slopes ? FogRates.SLOPED_WEIGHT * common.airSlopedRate[cell] : 0);
    }

    private void findPace(boolean slopes, int from, int to) {
        int at = from / FogLinks.BLOCK * fog.length;
        java.util.Arrays.fill(pace, from, to, 0);
        for (FogGroup g : groups.subList(0, busy)) {
            for (int q = 0; q < g.used; q++) {
                double most = 0;
                int where = -1;
                for (int c = from; c < to; c++) {
                    double p = g.pace(g.lanes * c + q, slopes);
                    pace[c] = p > pace[c] ? p : pace[c];
                    if (p > most) {
                        most = p;
                        where = c;
                    }
                }
                largest[at + g.bin[q]] = most;
                largestCell[at + g.bin[q]] = where;
            }
        }
    }

    /** Entry of the largest pace of a bin. */
    private int largestAt(int bin) {
        int best = bin;
        for (int at = bin; at < largest.length; at += fog.length) {
            best = largest[at] > largest[best] ? at : best;
        }
        return best;
    }

    /** Chooses levels and sorts everything by them, for the bins that are left. */
    void arrange(boolean slopes, @Nullable SprayHits spray, double durationS, Workers workers) {
        if (busy == 0) {
            return;
        }
        double fastest = 0;
        for (double p : pace) {
            fastest = Math.max(fastest, p);
        }
        long count = (long) Math.max(1, Math.ceil(durationS * fastest / FogBin.COURANT));
        double shortS = slopes ? RateLevels.CARRIED_S : RateLevels.LATE_S;
        if (!schedule.levels.choose(pace, fastest, durationS, count, shortS)) {
            schedule.levels.choosePlain(pace, durationS, count);
        }
        schedule.sort(spray);
        double[][] massKg = new double[fog.length][];
        for (int b = 0; b < fog.length; b++) {
            massKg[b] = fog[b].massKg();
        }
        List<FogGroup> used = groups.subList(0, busy);
        workers.forBlocks(pace.length, FogLinks.BLOCK, (from, to) -> {
            schedule.findNear(from, to);
            for (FogGroup g : used) {
                g.sortIn(schedule, massKg, slopes, from, to);
            }
        });
        workers.forEach(busy + 1, i -> {
            if (i > 0) {
                groups.get(i - 1).sortAcross(schedule, spray, fog.length);
            } else if (slopes) {
                schedule.listLeans(used);
            }
        });
    }

    /** Groups to step: {@link #step} for each. */
    int busy() {
        return busy;
    }

    /** Steps one group through the window. */
    void step(int group, boolean slopes) {
        new FogGroupSteps(schedule, kernel, slopes).advance(groups.get(group));
    }

    /** Hands masses back, cells from..to-1. */
    void give(int from, int to) {
        for (FogGroup g : groups.subList(0, busy)) {
            for (int q = 0; q < g.used; q++) {
                double[] massKg = fog[g.bin[q]].massKg();
                for (int c = from; c < to; c++) {
                    float ended = g.next[schedule.levels.ofCell[c]][g.lanes * schedule.place[c] + q];
                    massKg[c] = Math.abs(ended) < PlainKernel.VANISHING ? 0 : ended * grid.volumeM3(c);
                }
            }
        }
    }

    /** Books what walls, vents and beams took of a bin that went along, and audits its mass. */
    void book(int bin, FogWindow window, double durationS) {
        for (FogGroup g : groups.subList(0, busy)) {
            for (int q = 0; q < g.used; q++) {
                if (g.bin[q] == bin) {
                    double[] exposure = new double[pace.length];
                    for (int k = 0; k <= schedule.levels.coarsest(); k++) {
                        double stepS = schedule.levels.stepS(k);
                        for (int p = schedule.sinkStart[k]; p < schedule.end[k]; p++) {
                            int c = schedule.cell[p];
                            exposure[c] = stepS * grid.volumeM3(c) * g.summed(schedule, k, p, q);
                        }
                    }
                    fog[bin].finish(window, schedule.levels, exposure, durationS);
                }
            }
        }
    }
}
