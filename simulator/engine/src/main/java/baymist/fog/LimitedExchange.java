package baymist.fog;

import baymist.voxel.VoxelGrid;

/** What limited slopes add to a donor-cell step of all cells at one pace. Positive under the bounds of {@link FogGroupSteps}. */
final class LimitedExchange {
    private final FogLinks links;

    /** 1/m³, [cells]. */
    private final double[] perM3;

    /** Change by the donor-cell step, kg, [cells]. */
    private final double[] change;

    LimitedExchange(VoxelGrid grid, FogLinks links) {
        this.links = links;
        perM3 = new double[grid.cellCount()];
        for (int c = 0; c < perM3.length; c++) {
            perM3[c] = 1 / grid.volumeM3(c);
        }
        change = new double[perM3.length];
    }

    /**
     * Adds what the slopes carry beyond the donor cells.
     *
     * @param old masses at the start of the step, kg, [cells]
     * @param next masses after the donor-cell step, kg, [cells], in place
     * @param lean {@link FogRates#lean} or {@link FogRates#airLean}
     * @param drift {@link FogRates#drift} or {@link FogRates#airLean}
     * @param outRate rate at which each cell empties in this step, 1/s, [cells]
     * @param slopedRate the part of it that drifts with slopes, 1/s, [cells]
     */
    void add(
            double[] old,
            double[] next,
            double[] lean,
            double[] drift,
            double[] outRate,
            double[] slopedRate,
            double stepS) {
        for (int c = 0; c < change.length; c++) {
            change[c] = next[c] - old[c];
        }
        for (int l = 0; l < lean.length; l++) {
            double volume = lean[l];
            if (volume == 0) {
                continue;
            }
            boolean upwards = volume > 0;
            int far = upwards ? links.behindLow[l] : links.behindHigh[l];
            int from = upwards ? links.low[l] : links.high[l];
            int to = upwards ? links.high[l] : links.low[l];
            double held = old[from] * perM3[from];
            double ahead = old[to] * perM3[to] - held;
            double behind = held - old[far] * perM3[far];
            double along = stepS * Math.abs(drift[l]) * perM3[from];
            double across = 0.5 * (change[from] * perM3[from] + along * behind);
            double room = LimitedSlope.room(stepS * outRate[from], stepS * slopedRate[from]);
            double moved = stepS * Math.abs(volume) * LimitedSlope.beyond(held, behind, ahead, along, across, room);
            next[from] -= moved;
            next[to] += moved;
        }
    }
}
