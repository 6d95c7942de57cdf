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

    /** Passing from low to high and back, [links]: everything; what the air does; settling and eddies. */
    final double[] up;

    final double[] down;
    final double[] airUp;
    final double[] airDown;
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

    private final double[] lastDrift = new double[6];
    private final double[] lastConductance = new double[6];
    private final double[] lastAgainst = new double[6];
    private boolean limitedSlopes;
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
        airUp = new double[links.count()];
        airDown = new double[links.count()];
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

    void fill(FogWindow window, int bin, int bins, double settlingMPerS, WallSpeed walls, boolean limited) {
        this.limitedSlopes = limited;
        clear();
        airMoves = window.airMoves;
        fillLinks(window, settlingMPerS);
        fillWalls(window, bin, walls);
        fillVents(window, settlingMPerS);
        fillSpray(window, bin, bins);
        findLimits();
    }

    private void clear() {
        for (double[] a :
                new double[][] {up, down, airUp, airDown, ownUp, ownDown, lean, airLean, loss, airLoss, source}) {
            Arrays.fill(a, 0);
        }
        Arrays.fill(exposure, 0);
        Arrays.fill(airExposure, 0);
        for (int a = 0; a < 3; a++) {
            Arrays.fill(axisWallRate[a], 0);
            Arrays.fill(axisExposure[a], 0);
        }
        sourceKgPerS = 0;
    }

    private void fillLinks(FogWindow window, double settlingMPerS) {
        for (int e = 0; e < window.flux.length; e++) {
            int l = links.linkOfEntry[e];
            double fall = settlingMPerS * window.fallArea[e];
            double air = window.flux[e];
            double conductance = window.conductance[e];
            double net = fall + air;
            double against = against(links.axis[l], net, conductance);
            up[l] += against + Math.max(net, 0);
            down[l] += against + Math.max(-net, 0);
            double excess = 2 * (against - conductance) + Math.abs(net);
            int behind = net > 0 ? links.behindLow[l] : links.behindHigh[l];
            if (limitedSlopes && behind >= 0 && excess > LimitedSlope.NEGLIGIBLE * Math.abs(net)) {
                lean[l] = Math.copySign(excess, net);
                drift[l] = net;
                airLean[l] = (air > 0 ? links.behindLow[l] : links.behindHigh[l]) >= 0 ? air : 0;
            }
            if (air != 0) {
                against = against(3 + links.axis[l], fall, conductance);
                airUp[l] += Math.max(air, 0);
                airDown[l] += Math.max(-air, 0);
            }
            ownUp[l] += against + Math.max(fall, 0);
            ownDown[l] += against + Math.max(-fall, 0);
        }
        for (int l = 0; l < up.length; l++) {
            double low = 1 / grid.volumeM3(links.low[l]);
            double high = 1 / grid.volumeM3(links.high[l]);
            up[l] *= low;
            airUp[l] *= low;
            ownUp[l] *= low;
            down[l] *= high;
            airDown[l] *= high;
            ownDown[l] *= high;
        }
    }

    /** The coefficient against the drift; faces of one axis mostly repeat the one before. */
    private double against(int slot, double drift, double conductance) {
        if (drift != lastDrift[slot] || conductance != lastConductance[slot]) {
            lastDrift[slot] = drift;
            lastConductance[slot] = conductance;
            lastAgainst[slot] = ExponentialFlux.againstDrift(drift, conductance);
        }
        return lastAgainst[slot];
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
            axisWallRate[d / 2][c] += wallRate[s];
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

    private void findLimits() {
        double[] out = outRate;
        double[] airOut = airOutRate;
        System.arraycopy(loss, 0, out, 0, out.length);
        System.arraycopy(airLoss, 0, airOut, 0, out.length);
        for (int l = 0; l < up.length; l++) {
            out[links.low[l]] += up[l];
            out[links.high[l]] += down[l];
            airOut[links.low[l]] += airUp[l];
            airOut[links.high[l]] += airDown[l];
        }
        if (limitedSlopes) {
            addSloped(lean, slopedRate);
            addSloped(airLean, airSlopedRate);
        } else {
            Arrays.fill(slopedRate, 0);
            Arrays.fill(airSlopedRate, 0);
        }
        largestRate = 0;
        largestCell = -1;
        largestAirRate = 0;
        for (int c = 0; c < out.length; c++) {
            paceRate[c] = out[c] + SLOPED_WEIGHT * slopedRate[c];
            if (paceRate[c] > largestRate) {
                largestRate = paceRate[c];
                largestCell = c;
            }
            largestAirRate = Math.max(largestAirRate, airOut[c] + SLOPED_WEIGHT * airSlopedRate[c]);
        }
    }

    private void addSloped(double[] lean, double[] rate) {
        Arrays.fill(rate, 0);
        for (int l = 0; l < lean.length; l++) {
            int from = lean[l] > 0 ? links.low[l] : links.high[l];
            rate[from] += Math.abs(lean[l]) / grid.volumeM3(from);
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
