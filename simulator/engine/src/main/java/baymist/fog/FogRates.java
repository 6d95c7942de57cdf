package baymist.fog;

import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Rates of one bin in one window, 1/s, referred to the mass of the cell that gives: the whole operator for explicit steps,
 * and its two parts (air and the rest) for split steps. Scratch memory: refilled for each bin and window.
 */
final class FogRates {
    /**
     * By how much more what drifts with slopes counts towards the step than what leaves a donor cell. ASSUMED: then at least two thirds of the
     * difference behind may be added ({@link LimitedSlope#room}), and smooth slopes across the cells are not cut.
     */
    static final double SLOPED_WEIGHT = 0.5;

    private final VoxelGrid grid;
    private final FogLinks links;

    /** Passing from low to high and back, [links]: everything; what the air does (shared by all bins); settling and eddies ({@link #part}). */
    final double[] up;

    final double[] down;
    double[] airUp = new double[0];
    double[] airDown = new double[0];
    final double[] ownUp;
    final double[] ownDown;

    /**
     * How far a link's flux leans on the limited slope, m³/s, [links]: twice the numerical diffusion of the exponential flux, with the sign of
     * the drift from low to high; 0 where the flux stays as it is. The same for the air's part, whose donor cell it mends.
     */
    final double[] lean;

    final double[] airLean;

    /** Drift of the links that lean, from low to high, m³/s, [links]. */
    final double[] drift;

    /** Loss to walls, vents and scouring beams, [cells]: everything; vents and beams alone. */
    final double[] loss;

    final double[] airLoss;

    /** Loss to walls square to each axis, [3][cells]. */
    final double[][] axisWallRate;

    /** Mass handed in by the spray, kg/s, [cells]. */
    final double[] source;

    /** Time integrals of mass, kg s, [cells]: over explicit steps, over air steps, over line steps of each axis. */
    final double[] exposure;

    final double[] airExposure;
    final double[][] axisExposure;
    double[] next;
    final double[] work;

    /** Total rate of leaving each cell, 1/s, [cells]: everything; the air's part. */
    final double[] outRate;

    final double[] airOutRate;

    /** The parts of them that drift with limited slopes, 1/s, [cells]. */
    final double[] slopedRate;

    final double[] airSlopedRate;

    /** Rate by which a cell's steps are chosen, 1/s, [cells]: that of leaving, what drifts with slopes weighing more. */
    final double[] paceRate;

    /** Steps with levels for these rates. */
    final MultirateSteps multirate;

    /** Limited slopes for steps at one pace. */
    final LimitedExchange exchange;

    boolean airMoves;

    /** Largest rate that paces a cell, 1/s, and its cell; the same for the air's part alone. */
    double largestRate;

    int largestCell;
    double largestAirRate;

    FogRates(VoxelGrid grid, FogLinks links) {
        int cells = grid.cellCount();
        this.grid = grid;
        this.links = links;
        up = new double[links.count()];
        down = new double[links.count()];
        ownUp = new double[links.count()];
        ownDown = new double[links.count()];
        lean = new double[links.count()];
        airLean = new double[links.count()];
        drift = new double[links.count()];
        loss = new double[cells];
        airLoss = new double[cells];
        axisWallRate = new double[3][cells];
        source = new double[cells];
        exposure = new double[cells];
        airExposure = new double[cells];
        axisExposure = new double[3][cells];
        next = new double[cells];
        outRate = new double[cells];
        airOutRate = new double[cells];
        slopedRate = new double[cells];
        airSlopedRate = new double[cells];
        paceRate = new double[cells];
        multirate = new MultirateSteps(links, cells);
        exchange = new LimitedExchange(grid, links);
        int longest = 1;
        for (FogLines lines : links.lines) {
            longest = Math.max(longest, lines.longest());
        }
        work = new double[2 * longest];
    }

    /** Everything that chooses the way of stepping; {@link #complete} fills in the rest. */
    void fill(
            FogWindow window,
            FogCommon common,
            FogSinks sinks,
            int bin,
            int bins,
            double settlingMPerS,
            boolean limited) {
        airMoves = window.airMoves;
        airUp = common.airUp;
        airDown = common.airDown;
        fillLinks(window, common, settlingMPerS, limited);
        fillSinks(window, sinks, bin, bins);
        findLimits(common, limited);
    }

    /** Fills in what steps of this bin alone need beside: links that nothing falls through, losses by axis, empty time integrals. */
    void complete(FogCommon common, boolean limited) {
        for (int l = 0; l < up.length; l++) {
            if (common.falling[l] < 0) {
                up[l] = common.up[l] * common.perM3[links.low[l]];
                down[l] = common.down[l] * common.perM3[links.high[l]];
                lean[l] = limited ? common.lean[l] : 0;
                drift[l] = limited ? common.drift[l] : 0;
            }
        }
        Arrays.fill(exposure, 0);
        Arrays.fill(airExposure, 0);
        for (int a = 0; a < 3; a++) {
            Arrays.fill(axisExposure[a], 0);
        }
    }

    private void fillLinks(FogWindow window, FogCommon common, double settlingMPerS, boolean limited) {
        double lastNet = 0;
        double lastConductance = 0;
        double against = 0;
        for (int l : common.fallingLink) {
            up[l] = 0;
            down[l] = 0;
            lean[l] = 0;
            for (int e = links.entryStart[l]; e < links.entryStart[l + 1]; e++) {
                double net = settlingMPerS * window.fallArea[e] + window.flux[e];
                double conductance = window.conductance[e];
                if (net != lastNet || conductance != lastConductance) {
                    lastNet = net;
                    lastConductance = conductance;
                    against = ExponentialFlux.againstDrift(net, conductance);
                }
                up[l] += against + Math.max(net, 0);
                down[l] += against + Math.max(-net, 0);
                double excess = excess(net, against, conductance);
                int behind = net > 0 ? links.behindLow[l] : links.behindHigh[l];
                if (limited && behind >= 0 && excess > LimitedSlope.NEGLIGIBLE * Math.abs(net)) {
                    lean[l] = Math.copySign(excess, net);
                    drift[l] = net;
                }
            }
            up[l] *= common.perM3[links.low[l]];
            down[l] *= common.perM3[links.high[l]];
        }
    }

    /** Twice the numerical diffusion of the exponential flux, m³/s. */
    static double excess(double net, double against, double conductance) {
        return 2 * (against - conductance) + Math.abs(net);
    }

    /** Works out the two parts of the completed operator for split steps: settling and eddies alone, and the slopes of the air alone. */
    void part(FogWindow window, FogSinks sinks, double settlingMPerS, boolean limited) {
        Arrays.fill(ownUp, 0);
        Arrays.fill(ownDown, 0);
        Arrays.fill(airLean, 0);
        double[] lastFall = new double[3];
        double[] lastConductance = new double[3];
        double[] last = new double[3];
        for (int e = 0; e < window.flux.length; e++) {
            int l = links.linkOfEntry[e];
            int slot = links.axis[l];
            double fall = settlingMPerS * window.fallArea[e];
            double conductance = window.conductance[e];
            if (fall != lastFall[slot] || conductance != lastConductance[slot]) {
                lastFall[slot] = fall;
                lastConductance[slot] = conductance;
                last[slot] = ExponentialFlux.againstDrift(fall, conductance);
            }
            ownUp[l] += last[slot] + Math.max(fall, 0);
            ownDown[l] += last[slot] + Math.max(-fall, 0);
            double air = window.flux[e];
            if (limited && lean[l] != 0 && (air > 0 ? links.behindLow[l] : links.behindHigh[l]) >= 0) {
                airLean[l] = air;
            }
        }
        for (int l = 0; l < up.length; l++) {
            ownUp[l] /= grid.volumeM3(links.low[l]);
            ownDown[l] /= grid.volumeM3(links.high[l]);
        }
        partWalls(sinks.wallRate);
        Arrays.fill(airSlopedRate, 0);
        for (int l = 0; l < airLean.length; l++) {
            int from = airLean[l] > 0 ? links.low[l] : links.high[l];
            airSlopedRate[from] += Math.abs(airLean[l]) / grid.volumeM3(from);
        }
    }

    private void partWalls(double[] wallRate) {
        SurfelSet surfels = grid.surfels();
        for (int a = 0; a < 3; a++) {
            Arrays.fill(axisWallRate[a], 0);
        }
        for (int s = 0; s < wallRate.length; s++) {
            axisWallRate[surfels.direction()[s] / 2][surfels.cell()[s]] += wallRate[s];
        }
    }

    private void fillSinks(FogWindow window, FogSinks sinks, int bin, int bins) {
        Arrays.fill(loss, 0);
        Arrays.fill(airLoss, 0);
        Arrays.fill(source, 0);
        for (int v = 0; v < sinks.ventRate.length; v++) {
            airLoss[grid.faces().ventCell()[v]] += sinks.ventRate[v];
        }
        SprayHits spray = window.spray;
        if (spray != null) {
            for (int i = 0; i < spray.fogCell().length; i++) {
                source[spray.fogCell()[i]] += spray.fogKgPerS()[i * bins + bin];
            }
            for (int i = 0; i < sinks.scourRate.length; i++) {
                airLoss[spray.scourCell()[i]] += sinks.scourRate[i];
            }
        }
        for (int s = 0; s < sinks.wallRate.length; s++) {
            loss[grid.surfels().cell()[s]] += sinks.wallRate[s];
        }
        for (int c = 0; c < loss.length; c++) {
            loss[c] += airLoss[c];
        }
    }

    private void findLimits(FogCommon common, boolean limited) {
        double[] out = outRate;
        double[] airOut = airOutRate;
        for (int c = 0; c < out.length; c++) {
            out[c] = loss[c] + common.outRate[c];
            airOut[c] = airLoss[c] + common.airOutRate[c];
        }
        for (int l : common.fallingLink) {
            out[links.low[l]] += up[l];
            out[links.high[l]] += down[l];
        }
        findSloped(common, limited);
        largestRate = 0;
        largestCell = -1;
        largestAirRate = 0;
        for (int c = 0; c < out.length; c++) {
            paceRate[c] = out[c] + SLOPED_WEIGHT * slopedRate[c];
            if (paceRate[c] > largestRate) {
                largestRate = paceRate[c];
                largestCell = c;
            }
            double weighed = limited ? SLOPED_WEIGHT * common.airSlopedRate[c] : 0;
            largestAirRate = Math.max(largestAirRate, airOut[c] + weighed);
        }
    }

    private void findSloped(FogCommon common, boolean limited) {
        if (!limited) {
            Arrays.fill(slopedRate, 0);
            return;
        }
        System.arraycopy(common.slopedRate, 0, slopedRate, 0, slopedRate.length);
        for (int l : common.fallingLink) {
            int from = lean[l] > 0 ? links.low[l] : links.high[l];
            slopedRate[from] += Math.abs(lean[l]) / grid.volumeM3(from);
        }
    }

    /** Takes over the array that the bin gives back after a step. */
    void swapNext(double[] old) {
        next = old;
    }
}
