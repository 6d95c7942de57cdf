package baymist.fog;

import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * What the air does in one window to every bin alike: all of it at links that nothing falls through, the air's own part at the others.
 * Refilled for each window, then read by all bins.
 */
final class FogCommon {
    private final VoxelGrid grid;
    private final FogLinks links;

    /** Whether droplets fall through links of an axis, [3]. */
    final boolean[] fallsAlong = new boolean[3];

    /** Links that droplets fall through, and the place of each link among them, or -1, [links]. */
    final int[] fallingLink;

    final int[] falling;

    /** 1/m³, [cells]. */
    final double[] perM3;

    /** Volumes that pass from low to high and back, m³/s, [links]; 0 where droplets fall. */
    final double[] up;

    final double[] down;

    /** {@link FogRates#lean} and {@link FogRates#drift}, m³/s, [links]; 0 where droplets fall. */
    final double[] lean;

    final double[] drift;

    /** The air's part of passing, 1/s, [links]. */
    final double[] airUp;

    final double[] airDown;

    /** Rate of leaving each cell through links that nothing falls through, 1/s, [cells]; the part of it that drifts with slopes. */
    final double[] outRate;

    final double[] slopedRate;

    /** Rate of leaving each cell with the air, 1/s, [cells]; the part of it that may drift with slopes. */
    final double[] airOutRate;

    final double[] airSlopedRate;

    /** Largest relative error of a cell's air budget. */
    double airBudgetError;

    /** Largest of {@link #airOutRate}, and with the weight of what drifts with slopes, 1/s. */
    double largestAirRate;

    double largestAirPace;

    /** Air that leaves and enters each cell by vents, m³/s, [cells]. */
    private final double[] ventOut;

    private final double[] ventIn;
    private final double[] worst;
    private final boolean slopes;

    /** @param slopes whether any window has slopes */
    FogCommon(VoxelGrid grid, FogLinks links, Vec3 downwards, boolean slopes) {
        this.slopes = slopes;
        this.grid = grid;
        this.links = links;
        for (int a = 0; a < 3; a++) {
            fallsAlong[a] = downwards.get(a) != 0;
        }
        int n = links.count();
        int cells = grid.cellCount();
        falling = new int[n];
        int[] found = new int[n];
        int count = 0;
        for (int l = 0; l < n; l++) {
            falling[l] = fallsAlong[links.axis[l]] ? count : -1;
            if (falling[l] >= 0) {
                found[count++] = l;
            }
        }
        fallingLink = Arrays.copyOf(found, count);
        perM3 = new double[cells];
        Arrays.setAll(perM3, c -> 1 / grid.volumeM3(c));
        up = new double[n];
        down = new double[n];
        lean = new double[slopes ? n : 0];
        drift = new double[slopes ? n : 0];
        airUp = new double[n];
        airDown = new double[n];
        outRate = new double[cells];
        slopedRate = new double[slopes ? cells : 0];
        airOutRate = new double[cells];
        airSlopedRate = new double[slopes ? cells : 0];
        ventOut = new double[cells];
        ventIn = new double[cells];
        worst = new double[cells / FogLinks.BLOCK + 1];
    }

    void fill(FogWindow window, Workers workers) {
        FaceSet faces = grid.faces();
        Arrays.fill(ventOut, 0);
        Arrays.fill(ventIn, 0);
        for (int v = 0; v < window.ventFlux.length; v++) {
            (window.ventFlux[v] > 0 ? ventOut : ventIn)[faces.ventCell()[v]] += Math.abs(window.ventFlux[v]);
        }
        workers.forBlocks(links.count(), FogLinks.BLOCK, (from, to) -> fillLinks(window, from, to));
        workers.forBlocks(outRate.length, FogLinks.BLOCK, (from, to) -> fillCells(window, from, to));
        airBudgetError = 0;
        for (double w : worst) {
            airBudgetError = Math.max(airBudgetError, window.airMoves ? w : 0);
        }
        largestAirRate = 0;
        largestAirPace = 0;
        for (int c = 0; c < airOutRate.length; c++) {
            largestAirRate = Math.max(largestAirRate, airOutRate[c]);
            double weighed = slopes ? FogRates.SLOPED_WEIGHT * airSlopedRate[c] : 0;
            largestAirPace = Math.max(largestAirPace, airOutRate[c] + weighed);
        }
    }

    private void fillLinks(FogWindow window, int from, int to) {
        double lastDrift = 0;
        double lastConductance = 0;
        double against = 0;
        if (slopes) {
            Arrays.fill(lean, from, to, 0);
        }
        for (int l = from; l < to; l++) {
            boolean level = falling[l] < 0;
            double airForth = 0;
            double airBack = 0;
            up[l] = 0;
            down[l] = 0;
            for (int e = links.entryStart[l]; e < links.entryStart[l + 1]; e++) {
                double air = window.flux[e];
                double conductance = window.conductance[e];
                airForth += Math.max(air, 0);
                airBack += Math.max(-air, 0);
                if (!level) {
                    continue;
                }
                if (air != lastDrift || conductance != lastConductance) {
                    lastDrift = air;
                    lastConductance = conductance;
                    against = ExponentialFlux.againstDrift(air, conductance);
                }
                up[l] += against + Math.max(air, 0);
                down[l] += against + Math.max(-air, 0);
                if (slopes) {
                    lean(l, air, FogRates.excess(air, against, conductance));
                }
            }
            airUp[l] = airForth * perM3[links.low[l]];
            airDown[l] = airBack * perM3[links.high[l]];
        }
    }

    private void lean(int l, double air, double excess) {
        int behind = air > 0 ? links.behindLow[l] : links.behindHigh[l];
        if (behind >= 0 && excess > LimitedSlope.NEGLIGIBLE * Math.abs(air)) {
            lean[l] = Math.copySign(excess, air);
            drift[l] = air;
        }
    }

    private void fillCells(FogWindow window, int from, int to) {
        double most = 0;
        double[] source = window.field.sourceM3PerS();
        double expansion = window.field.expansionPerS();
        for (int c = from; c < to; c++) {
            double out = 0;
            double airOut = 0;
            double airIn = 0;
            for (int j = links.cellStart[c]; j < links.cellStart[c + 1]; j++) {
                int l = links.ofCell[j] >> 1;
                boolean high = (links.ofCell[j] & 1) != 0;
                int other = high ? links.low[l] : links.high[l];
                double air = high ? airDown[l] : airUp[l];
                out += high ? down[l] : up[l];
                airOut += air;
                airIn += (high ? airUp[l] : airDown[l]) / perM3[other];
            }
            outRate[c] = out * perM3[c];
            airOutRate[c] = airOut;
            if (slopes) {
                fillSloped(c);
            }
            double in = airIn + ventIn[c] + source[c];
            double leaving = airOut / perM3[c] + ventOut[c];
            double larger = Math.max(in, leaving);
            if (larger > 0) {
                most = Math.max(most, Math.abs(in - leaving - expansion * grid.volumeM3(c)) / larger);
            }
        }
        worst[from / FogLinks.BLOCK] = most;
    }

    private void fillSloped(int c) {
        double sloped = 0;
        double airSloped = 0;
        for (int j = links.cellStart[c]; j < links.cellStart[c + 1]; j++) {
            int l = links.ofCell[j] >> 1;
            boolean high = (links.ofCell[j] & 1) != 0;
            sloped += Math.max(0, high ? -lean[l] : lean[l]);
            airSloped += (high ? links.behindHigh[l] : links.behindLow[l]) < 0 ? 0 : high ? airDown[l] : airUp[l];
        }
        slopedRate[c] = sloped * perM3[c];
        airSlopedRate[c] = airSloped;
    }
}
