package baymist.fog;

import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.Locale;

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

    /** Loss to each surfel, vent, scour entry of the cell that faces it. */
    final double[] wallRate;

    final double[] ventRate;
    double[] scourRate = new double[0];

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

    double sourceKgPerS;
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
        wallRate = new double[grid.surfels().count()];
        ventRate = new double[grid.faces().vents()];
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

    /** Everything that chooses the way of stepping and that joint steps need; {@link #complete} fills in the rest. */
    void fill(
            FogWindow window,
            FogCommon common,
            int bin,
            int bins,
            double settlingMPerS,
            WallSpeed walls,
            boolean limited) {
        clear();
        airMoves = window.airMoves;
        airUp = common.airUp;
        airDown = common.airDown;
        fillLinks(window, common, settlingMPerS, limited);
        fillWalls(window, bin, walls);
        fillVents(window, settlingMPerS);
        fillSpray(window, bin, bins);
        findLimits(common, limited);
    }

    private void clear() {
        Arrays.fill(loss, 0);
        Arrays.fill(airLoss, 0);
        Arrays.fill(source, 0);
        sourceKgPerS = 0;
    }

    /** Fills in what steps of this bin alone need beside: links that nothing falls through, empty time integrals. */
    void complete(FogCommon common, boolean limited) {
        for (int l : common.levelLink) {
            up[l] = common.up[l];
            down[l] = common.down[l];
            lean[l] = limited ? common.lean[l] : 0;
            drift[l] = common.drift[l];
        }
        Arrays.fill(exposure, 0);
        Arrays.fill(airExposure, 0);
        for (int a = 0; a < 3; a++) {
            Arrays.fill(axisExposure[a], 0);
        }
    }

    private void fillLinks(FogWindow window, FogCommon common, double settlingMPerS, boolean limited) {
        for (int l : common.fallingLink) {
            up[l] = 0;
            down[l] = 0;
            lean[l] = 0;
        }
        double lastNet = 0;
        double lastConductance = 0;
        double against = 0;
        for (int e : common.fallingEntry) {
            int l = links.linkOfEntry[e];
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
        for (int l : common.fallingLink) {
            up[l] /= grid.volumeM3(links.low[l]);
            down[l] /= grid.volumeM3(links.high[l]);
        }
    }

    /** Twice the numerical diffusion of the exponential flux, m³/s. */
    static double excess(double net, double against, double conductance) {
        return 2 * (against - conductance) + Math.abs(net);
    }

    /** Works out the two parts of the completed operator for split steps: settling and eddies alone, and the slopes of the air alone. */
    void part(FogWindow window, double settlingMPerS, boolean limited) {
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
        partWalls();
        Arrays.fill(airSlopedRate, 0);
        for (int l = 0; l < airLean.length; l++) {
            int from = airLean[l] > 0 ? links.low[l] : links.high[l];
            airSlopedRate[from] += Math.abs(airLean[l]) / grid.volumeM3(from);
        }
    }

    private void partWalls() {
        SurfelSet surfels = grid.surfels();
        for (int a = 0; a < 3; a++) {
            Arrays.fill(axisWallRate[a], 0);
        }
        for (int s = 0; s < wallRate.length; s++) {
            axisWallRate[surfels.direction()[s] / 2][surfels.cell()[s]] += wallRate[s];
        }
    }

    private void fillWalls(FogWindow window, int bin, WallSpeed walls) {
        SurfelSet surfels = grid.surfels();
        double[] frictionSpeed = window.field.frictionSpeedMPerS();
        double[] lastFriction = new double[6];
        double[] lastUp = new double[6];
        double[] lastSpeed = new double[6];
        Arrays.fill(lastFriction, Double.NaN);
        for (int s = 0; s < wallRate.length; s++) {
            int c = surfels.cell()[s];
            int d = surfels.direction()[s];
            double area = window.wallArea[s];
            double up = window.normalUp[s];
            if (walls.dependsOnPlace() || frictionSpeed[s] != lastFriction[d] || up != lastUp[d]) {
                lastFriction[d] = frictionSpeed[s];
                lastUp[d] = up;
                lastSpeed[d] = walls.speedMPerS(s, bin, frictionSpeed[s], up);
            }
            wallRate[s] = area > 0 ? lastSpeed[d] * area / grid.volumeM3(c) : 0;
            loss[c] += wallRate[s];
        }
    }

    private void fillVents(FogWindow window, double settlingMPerS) {
        FaceSet faces = grid.faces();
        for (int v = 0; v < ventRate.length; v++) {
            int c = faces.ventCell()[v];
            double out = window.ventFlux[v] + settlingMPerS * window.ventFallArea[v];
            ventRate[v] = Math.max(out, 0) / grid.volumeM3(c);
            loss[c] += ventRate[v];
            airLoss[c] += ventRate[v];
        }
    }

    private void fillSpray(FogWindow window, int bin, int bins) {
        SprayHits spray = window.spray;
        if (spray == null) {
            scourRate = new double[0];
            return;
        }
        for (int i = 0; i < spray.fogCell().length; i++) {
            double kgPerS = spray.fogKgPerS()[i * bins + bin];
            if (!(kgPerS >= 0) || Double.isInfinite(kgPerS)) {
                throw new IllegalArgumentException("fog source " + kgPerS + " kg/s in entry " + i + ", bin " + bin);
            }
            source[spray.fogCell()[i]] += kgPerS;
            sourceKgPerS += kgPerS;
        }
        scourRate = new double[spray.scourCell().length];
        for (int i = 0; i < scourRate.length; i++) {
            int c = spray.scourCell()[i];
            double rate = spray.scourM3PerS()[i] * spray.scourEfficiency()[i * bins + bin] / grid.volumeM3(c);
            if (!(rate >= 0) || Double.isInfinite(rate)) {
                throw new IllegalArgumentException("scour rate " + rate + " 1/s in entry " + i + ", bin " + bin);
            }
            scourRate[i] = rate;
            loss[c] += rate;
            airLoss[c] += rate;
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
        double airWeight = limited ? SLOPED_WEIGHT : 0;
        for (int c = 0; c < out.length; c++) {
            paceRate[c] = out[c] + SLOPED_WEIGHT * slopedRate[c];
            if (paceRate[c] > largestRate) {
                largestRate = paceRate[c];
                largestCell = c;
            }
            largestAirRate = Math.max(largestAirRate, airOut[c] + airWeight * common.airSlopedRate[c]);
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

    /** What empties the limiting cell, in words. */
    String reason() {
        if (largestCell < 0) {
            return "nothing moves";
        }
        double air = airLoss[largestCell];
        double own = 0;
        for (int l = 0; l < up.length; l++) {
            if (links.low[l] == largestCell) {
                air += airUp[l];
                own += ownUp[l];
            } else if (links.high[l] == largestCell) {
                air += airDown[l];
                own += ownDown[l];
            }
        }
        double wall = loss[largestCell] - airLoss[largestCell];
        String main = air >= own && air >= wall ? "air flow" : own >= wall ? "settling and eddies" : "deposition";
        return String.format(
                Locale.ROOT,
                "%s in cell %d at %s: air %.3g, settling and eddies %.3g, walls %.3g per second",
                main,
                largestCell,
                grid.centre(largestCell),
                air,
                own,
                wall);
    }
}
