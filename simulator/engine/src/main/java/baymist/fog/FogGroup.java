package baymist.fog;

/**
 * Up to four bins side by side, as the kernels step them: the bin innermost, so that what four bins do at a link is done at once. Owned by one
 * {@link FogGroupSteps}; filled anew for each window.
 */
final class FogGroup {
    /** Bins side by side: a vector of four doubles. Lanes without a bin hold nothing and move nothing. */
    static final int LANES = 4;

    /** Bins in use, 1..4. */
    int used;

    /** 1/m³, [cells]. */
    final double[] perM3;

    /** [cells * LANES]: mass at the start of the cell's step, and what has passed since, kg; concentration at the start, kg/m³. */
    final double[] mass;

    final double[] gathered;
    final double[] held;

    /** [cells * LANES]: change of the concentration in the cell's step by donor cells, kg/m³; what finer links have yet to move of it, kg. */
    final double[] change;

    final double[] missing;

    /** [cells * LANES]: sum of the masses at the starts of steps, kg. */
    final double[] massSum;

    /** [cells * LANES]: inflow, kg/s; loss to walls, vents and beams, 1/s; {@link LimitedSlope#room}. */
    final double[] source;

    final double[] loss;
    final double[] room;

    /**
     * Volumes that pass: from low to high and back, with the slope, and with the drift, signed, m³/s. Links that nothing falls through: one for
     * all bins, [links]. The others: [falling * LANES].
     */
    final double[] up;

    final double[] down;
    final double[] lean;
    final double[] drift;
    final double[] upOf;
    final double[] downOf;
    final double[] leanOf;
    final double[] driftOf;

    /** Place among the links that droplets fall through, or -1, [links]. */
    final int[] falling;

    private final FogLinks links;

    /** What all groups share at links that nothing falls through, [links], m³/s. */
    record Level(double[] up, double[] down, double[] lean, double[] drift) {}

    /**
     * @param perM3 1 over the cells' volumes, 1/m³
     * @param falling place of each link among those that droplets fall through, or -1; count of them
     */
    FogGroup(FogLinks links, double[] perM3, int[] falling, int fallingCount, Level level) {
        this.links = links;
        this.falling = falling;
        this.perM3 = perM3;
        int cells = perM3.length;
        mass = new double[LANES * cells];
        gathered = new double[LANES * cells];
        held = new double[LANES * cells];
        change = new double[LANES * cells];
        missing = new double[LANES * cells];
        massSum = new double[LANES * cells];
        source = new double[LANES * cells];
        loss = new double[LANES * cells];
        room = new double[LANES * cells];
        up = level.up;
        down = level.down;
        lean = level.lean;
        drift = level.drift;
        upOf = new double[LANES * fallingCount];
        downOf = new double[LANES * fallingCount];
        leanOf = new double[LANES * fallingCount];
        driftOf = new double[LANES * fallingCount];
    }

    /** Takes one bin's mass and rates into a lane. What a cell gives goes into {@link #room} and {@link #change} until levels are known. */
    void take(int lane, double[] fog, FogRates rates, int[] fallingLink) {
        for (int c = 0; c < fog.length; c++) {
            int p = LANES * c + lane;
            mass[p] = fog[c];
            source[p] = rates.source[c];
            loss[p] = rates.loss[c];
            room[p] = rates.outRate[c];
            change[p] = rates.slopedRate[c];
        }
        for (int place = 0; place < fallingLink.length; place++) {
            int l = fallingLink[place];
            int p = LANES * place + lane;
            upOf[p] = rates.up[l] / perM3[links.low[l]];
            downOf[p] = rates.down[l] / perM3[links.high[l]];
            leanOf[p] = rates.lean[l];
            driftOf[p] = rates.drift[l];
        }
    }

    /** Empties a lane that has no bin. */
    void clear(int lane) {
        for (double[] of : new double[][] {mass, source, loss, room, change, upOf, downOf, leanOf, driftOf}) {
            for (int p = lane; p < of.length; p += LANES) {
                of[p] = 0;
            }
        }
    }

    /** Hands a bin's mass back and its time integral, kg s, both [cells]. */
    void give(int lane, double[] fog, RateLevels levels, double[] exposure) {
        for (int c = 0; c < fog.length; c++) {
            int p = LANES * c + lane;
            fog[c] = mass[p] + gathered[p];
            exposure[c] = levels.stepS(levels.ofCell[c]) * massSum[p];
        }
    }
}
