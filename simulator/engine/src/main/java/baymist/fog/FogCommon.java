package baymist.fog;

import baymist.geom.Vec3;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What the air does in one window to every bin alike: all of it at links that nothing falls through, the air's own part at the others. Refilled for each
 * window by one thread, then read by all bins.
 */
final class FogCommon {
    private final VoxelGrid grid;
    private final FogLinks links;

    /** Whether droplets fall through links of an axis, [3]. */
    private final boolean[] fallsAlong = new boolean[3];

    /** Face entries and links that droplets fall through. */
    final int[] fallingEntry;

    final int[] fallingLink;

    /** Links that nothing falls through. */
    final int[] levelLink;

    /** Rates of passing from low to high and back, 1/s, [links]; 0 where droplets fall. */
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

    private final double[] lastDrift = new double[3];
    private final double[] lastConductance = new double[3];
    private final double[] lastAgainst = new double[3];

    FogCommon(VoxelGrid grid, FogLinks links, Vec3 down) {
        this.grid = grid;
        this.links = links;
        for (int a = 0; a < 3; a++) {
            fallsAlong[a] = down.get(a) != 0;
        }
        byte[] axis = grid.faces().axis();
        int[] entries = new int[axis.length];
        int[] found = new int[links.count()];
        int entryCount = 0;
        int linkCount = 0;
        for (int e = 0; e < axis.length; e++) {
            if (fallsAlong[axis[e]]) {
                entries[entryCount++] = e;
                int l = links.linkOfEntry[e];
                if (linkCount == 0 || found[linkCount - 1] != l) {
                    found[linkCount++] = l;
                }
            }
        }
        fallingEntry = Arrays.copyOf(entries, entryCount);
        fallingLink = Arrays.copyOf(found, linkCount);
        levelLink = IntStream.range(0, links.count())
                .filter(l -> !fallsAlong[links.axis[l]])
                .toArray();
        up = new double[links.count()];
        this.down = new double[links.count()];
        lean = new double[links.count()];
        drift = new double[links.count()];
        airUp = new double[links.count()];
        airDown = new double[links.count()];
        outRate = new double[grid.cellCount()];
        slopedRate = new double[grid.cellCount()];
        airOutRate = new double[grid.cellCount()];
        airSlopedRate = new double[grid.cellCount()];
    }

    void fill(FogWindow window) {
        for (double[] a :
                new double[][] {up, down, lean, drift, airUp, airDown, outRate, slopedRate, airOutRate, airSlopedRate
                }) {
            Arrays.fill(a, 0);
        }
        for (int e = 0; e < window.flux.length; e++) {
            int l = links.linkOfEntry[e];
            double air = window.flux[e];
            airUp[l] += Math.max(air, 0);
            airDown[l] += Math.max(-air, 0);
            if ((air > 0 ? links.behindLow[l] : links.behindHigh[l]) >= 0) {
                int from = air > 0 ? links.low[l] : links.high[l];
                airSlopedRate[from] += Math.abs(air);
            }
            if (!fallsAlong[links.axis[l]]) {
                fillLevel(l, air, window.conductance[e]);
            }
        }
        for (int l = 0; l < up.length; l++) {
            int a = links.low[l];
            int b = links.high[l];
            outRate[a] += up[l];
            outRate[b] += down[l];
            airOutRate[a] += airUp[l];
            airOutRate[b] += airDown[l];
            slopedRate[lean[l] > 0 ? a : b] += Math.abs(lean[l]);
        }
        scale();
    }

    private void fillLevel(int l, double net, double conductance) {
        int slot = links.axis[l];
        if (net != lastDrift[slot] || conductance != lastConductance[slot]) {
            lastDrift[slot] = net;
            lastConductance[slot] = conductance;
            lastAgainst[slot] = ExponentialFlux.againstDrift(net, conductance);
        }
        double against = lastAgainst[slot];
        up[l] += against + Math.max(net, 0);
        down[l] += against + Math.max(-net, 0);
        double excess = FogRates.excess(net, against, conductance);
        int behind = net > 0 ? links.behindLow[l] : links.behindHigh[l];
        if (behind >= 0 && excess > LimitedSlope.NEGLIGIBLE * Math.abs(net)) {
            lean[l] = Math.copySign(excess, net);
            drift[l] = net;
        }
    }

    private void scale() {
        for (int c = 0; c < outRate.length; c++) {
            double perM3 = 1 / grid.volumeM3(c);
            outRate[c] *= perM3;
            slopedRate[c] *= perM3;
            airOutRate[c] *= perM3;
            airSlopedRate[c] *= perM3;
        }
        for (int l = 0; l < up.length; l++) {
            double low = 1 / grid.volumeM3(links.low[l]);
            double high = 1 / grid.volumeM3(links.high[l]);
            up[l] *= low;
            airUp[l] *= low;
            down[l] *= high;
            airDown[l] *= high;
        }
    }
}
