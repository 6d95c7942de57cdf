package baymist.fog;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.WallFinish;
import baymist.spray.SizeBins;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;

/**
 * The first-order fog operator of one droplet size while one air field holds, as a matrix and its transpose:
 *
 * <pre>  dm/dt = A m,   (A m)_c = Σ_n r_nc m_n - (Σ_n r_cn + loss_c) m_c </pre>
 *
 * {@code m} mass in each cell, kg; {@code r_cn} rate of passing from c to n by air, settling and eddies; {@code loss} rate of leaving to walls
 * and through vents, 1/s. Coefficients are those that {@link FogStepper} steps with (equations (2) to (6) of docs/theory/fog.md).
 * Each row of the transpose says what becomes of a droplet in one cell: docs/theory/field.md. Immutable.
 */
public final class FogOperator {
    private final VoxelGrid grid;
    private final int[] low;
    private final int[] high;
    private final double[] up;
    private final double[] down;
    private final double[] loss;
    private final double[] leaving;
    private final double[] wallRate;
    private final double[] ventRate;

    private FogOperator(VoxelGrid grid, FogLinks links, FogRates rates, FogSinks sinks) {
        this.grid = grid;
        this.low = links.low;
        this.high = links.high;
        this.up = rates.up.clone();
        this.down = rates.down.clone();
        this.loss = rates.loss.clone();
        this.wallRate = sinks.wallRate.clone();
        this.ventRate = sinks.ventRate.clone();
        this.leaving = loss.clone();
        for (int l = 0; l < low.length; l++) {
            leaving[low[l]] += up[l];
            leaving[high[l]] += down[l];
        }
    }

    /**
     * The operator of one size.
     *
     * @param field air that holds; without jets
     * @param bin size, 0..bins-1
     * @param productDensityKgPerM3 density of the liquid, kg/m³
     * @param gravityMPerS2 gravity as a vector, m/s²
     */
    public static FogOperator of(
            VoxelGrid grid,
            AirField field,
            SizeBins bins,
            int bin,
            double productDensityKgPerM3,
            Air air,
            Vec3 gravityMPerS2,
            WallFinish finish) {
        double strength = gravityMPerS2.length();
        Vec3 down = strength > 0 ? gravityMPerS2.unit() : Vec3.ZERO;
        FogDroplet droplet = FogDroplet.of(bins.diameterM()[bin], productDensityKgPerM3, air, strength);
        DepositionLaw law = new DepositionLaw(droplet, air, finish);
        FogLinks links = new FogLinks(grid);
        FogRates rates = new FogRates(grid, links);
        WallSpeed walls = new WallSpeed() {
            @Override
            public double speedMPerS(int surfel, int b, double frictionSpeedMPerS, double normalUp) {
                return law.speedMPerS(frictionSpeedMPerS, normalUp);
            }

            @Override
            public boolean dependsOnPlace() {
                return false;
            }
        };
        FogCommon common = new FogCommon(grid, links, down, false);
        FogSinks sinks = new FogSinks(grid, bin, bins.count());
        try (Workers one = new Workers(1)) {
            FogWindow window = new FogWindow(grid, field, null, down, one);
            common.fill(window, one);
            sinks.fill(window, droplet.settlingMPerS(), walls);
            rates.fill(window, common, sinks, bin, bins.count(), droplet.settlingMPerS(), false);
        }
        rates.complete(common, false);
        return new FogOperator(grid, links, rates, sinks);
    }

    /** Number of cells. */
    public int cells() {
        return loss.length;
    }

    /** Pairs of cells between which fog passes. */
    public int links() {
        return low.length;
    }

    /** Cell of a link on its low side. */
    public int low(int link) {
        return low[link];
    }

    /** Cell of a link on its high side. */
    public int high(int link) {
        return high[link];
    }

    /** Rate of passing from low to high, 1/s of the low cell's mass. */
    public double upPerS(int link) {
        return up[link];
    }

    /** Rate of passing from high to low, 1/s of the high cell's mass. */
    public double downPerS(int link) {
        return down[link];
    }

    /** Rate of leaving a cell by any way, 1/s: the diagonal of -A. */
    public double leavingPerS(int cell) {
        return leaving[cell];
    }

    /** Rate of reaching a surfel, 1/s of the mass in the cell that it faces. */
    public double wallPerS(int surfel) {
        return wallRate[surfel];
    }

    /** Rate of leaving through a vent entry, 1/s of the mass in its cell. */
    public double ventPerS(int vent) {
        return ventRate[vent];
    }

    /** Rate of reaching some surfels from each cell, 1/s, [cells]. */
    public double[] rateOfReaching(int[] surfels) {
        double[] rate = new double[loss.length];
        int[] cellOf = grid.surfels().cell();
        for (int s : surfels) {
            rate[cellOf[s]] += wallRate[s];
        }
        return rate;
    }

    /** {@code A m}: rate of change of the mass in each cell, kg/s, [cells]. */
    public double[] apply(double[] massKg) {
        double[] out = new double[massKg.length];
        for (int c = 0; c < out.length; c++) {
            out[c] = -loss[c] * massKg[c];
        }
        for (int l = 0; l < low.length; l++) {
            double moved = up[l] * massKg[low[l]] - down[l] * massKg[high[l]];
            out[low[l]] -= moved;
            out[high[l]] += moved;
        }
        return out;
    }

    /** {@code A^T p}, [cells]. */
    public double[] applyTransposed(double[] p) {
        double[] out = new double[p.length];
        applyTransposed(p, out);
        return out;
    }

    void applyTransposed(double[] p, double[] out) {
        for (int c = 0; c < out.length; c++) {
            out[c] = -loss[c] * p[c];
        }
        for (int l = 0; l < low.length; l++) {
            double gain = p[high[l]] - p[low[l]];
            out[low[l]] += up[l] * gain;
            out[high[l]] -= down[l] * gain;
        }
    }
}
