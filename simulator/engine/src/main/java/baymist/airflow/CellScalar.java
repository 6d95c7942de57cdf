package baymist.airflow;

import java.util.Arrays;

/**
 * Advances a quantity per volume of air that cells carry: limited advection with the faces' fluxes, diffusion, conservative.
 * Euler step; positive while less than half of each cell's air leaves in the step. Scratch space of one solver.
 */
final class CellScalar {
    private final FlowGrid grid;
    private final int[] beside;
    private final double[] volumeM3;
    private final double[] change;

    /** @param volumeM3 [cells] air volume that each cell's value stands for */
    CellScalar(FlowGrid grid, double[] volumeM3) {
        this.grid = grid;
        this.volumeM3 = volumeM3;
        change = new double[grid.cells];
        beside = new int[6 * grid.cells];
        for (int c = 0; c < grid.cells; c++) {
            for (int d = 0; d < 6; d++) {
                beside[6 * c + d] = neighbour(c, d);
            }
        }
    }

    /** Cell behind the widest face of a side, or -1. */
    private int neighbour(int c, int d) {
        int best = -1;
        double most = 0;
        for (int f : grid.side(c, d)) {
            if (f < grid.faces && grid.areaM2[f] > most) {
                most = grid.areaM2[f];
                best = grid.low[f] == c ? grid.high[f] : grid.low[f];
            }
        }
        return best;
    }

    int beside(int cell, int d) {
        return beside[6 * cell + d];
    }

    /**
     * One step.
     *
     * @param value per m³ (or per unit mass of air of one density), [cells], changed
     * @param fluxM3PerS [faces]
     * @param ventFluxM3PerS outwards, [vents]; what enters carries nothing
     * @param diffusivityM2PerS [cells]
     * @param carried whether the quantity goes by mass of air, so that a uniform value stays uniform whatever the fluxes'
     *     balance; else by volume, conservative
     */
    void step(
            double[] value,
            double[] fluxM3PerS,
            double[] ventFluxM3PerS,
            double[] diffusivityM2PerS,
            boolean carried,
            double stepS) {
        Arrays.fill(change, 0);
        for (int f = 0; f < grid.faces; f++) {
            int p = grid.low[f];
            int q = grid.high[f];
            double flux = fluxM3PerS[f];
            int a = grid.axis[f];
            double at;
            if (flux >= 0) {
                int far = beside[6 * p + 2 * a];
                at = Limiter.between(far >= 0 ? value[far] : value[p], value[p], value[q]);
            } else {
                int far = beside[6 * q + 2 * a + 1];
                at = Limiter.between(far >= 0 ? value[far] : value[q], value[q], value[p]);
            }
            double spread = 0.5 * (diffusivityM2PerS[p] + diffusivityM2PerS[q]) * grid.conductanceM(f);
            double moved = flux * at - spread * (value[q] - value[p]);
            change[p] -= moved - (carried ? flux * value[p] : 0);
            change[q] += moved - (carried ? flux * value[q] : 0);
        }
        for (int v = 0; v < grid.vents && !carried; v++) {
            change[grid.ventCell[v]] -= Math.max(0, ventFluxM3PerS[v]) * value[grid.ventCell[v]];
        }
        for (int c = 0; c < grid.cells; c++) {
            value[c] += stepS * change[c] / volumeM3[c];
        }
    }

    /** Largest share of a cell's air exchanged per second by flow and diffusion, 1/s. */
    double rate(double[] fluxM3PerS, double[] diffusivityM2PerS) {
        double[] out = new double[grid.cells];
        for (int f = 0; f < grid.faces; f++) {
            int p = grid.low[f];
            int q = grid.high[f];
            double spread = 0.5 * (diffusivityM2PerS[p] + diffusivityM2PerS[q]) * grid.conductanceM(f);
            out[p] += spread + Math.max(fluxM3PerS[f], 0);
            out[q] += spread + Math.max(-fluxM3PerS[f], 0);
        }
        double most = 0;
        for (int c = 0; c < grid.cells; c++) {
            most = Math.max(most, out[c] / volumeM3[c]);
        }
        return most;
    }
}
