package baymist.airflow;

import java.util.Arrays;

/**
 * Advances a quantity per volume of air that cells carry: limited advection with the faces' fluxes, diffusion, conservative.
 * Euler step; positive while less than half of each cell's air leaves in the step. Scratch space of one solver.
 */
final class CellScalar {
    private final FlowGrid grid;
    private final int[] beside;
    private final double[] perVolume;
    private final double[] conductanceM;
    private final double[] change;

    /** Cell behind each face's low cell, and behind its high one; the cell itself where there is none, [faces]. */
    private final int[] behindLow;

    private final int[] behindHigh;

    /** @param volumeM3 [cells] air volume that each cell's value stands for */
    CellScalar(FlowGrid grid, double[] volumeM3) {
        this.grid = grid;
        change = new double[grid.cells];
        beside = new int[6 * grid.cells];
        for (int c = 0; c < grid.cells; c++) {
            for (int d = 0; d < 6; d++) {
                beside[6 * c + d] = neighbour(c, d);
            }
        }
        perVolume = new double[grid.cells];
        for (int c = 0; c < grid.cells; c++) {
            perVolume[c] = 1 / volumeM3[c];
        }
        conductanceM = new double[grid.faces];
        behindLow = new int[grid.faces];
        behindHigh = new int[grid.faces];
        for (int f = 0; f < grid.faces; f++) {
            conductanceM[f] = grid.conductanceM(f);
            int low = beside[6 * grid.low[f] + 2 * grid.axis[f]];
            int high = beside[6 * grid.high[f] + 2 * grid.axis[f] + 1];
            behindLow[f] = low >= 0 ? low : grid.low[f];
            behindHigh[f] = high >= 0 ? high : grid.high[f];
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
            double at = flux >= 0
                    ? Limiter.between(value[behindLow[f]], value[p], value[q])
                    : Limiter.between(value[behindHigh[f]], value[q], value[p]);
            double spread = 0.5 * (diffusivityM2PerS[p] + diffusivityM2PerS[q]) * conductanceM[f];
            double moved = flux * at - spread * (value[q] - value[p]);
            change[p] -= moved - (carried ? flux * value[p] : 0);
            change[q] += moved - (carried ? flux * value[q] : 0);
        }
        for (int v = 0; v < grid.vents && !carried; v++) {
            change[grid.ventCell[v]] -= Math.max(0, ventFluxM3PerS[v]) * value[grid.ventCell[v]];
        }
        for (int c = 0; c < grid.cells; c++) {
            value[c] += stepS * change[c] * perVolume[c];
        }
    }

    /** Largest share of a cell's air exchanged per second by flow and diffusion, 1/s. */
    double rate(double[] fluxM3PerS, double[] diffusivityM2PerS) {
        double[] out = change;
        Arrays.fill(out, 0);
        for (int f = 0; f < grid.faces; f++) {
            int p = grid.low[f];
            int q = grid.high[f];
            double spread = 0.5 * (diffusivityM2PerS[p] + diffusivityM2PerS[q]) * conductanceM[f];
            double size = Math.abs(fluxM3PerS[f]);
            out[p] += spread + 0.5 * (size + fluxM3PerS[f]);
            out[q] += spread + 0.5 * (size - fluxM3PerS[f]);
        }
        double most = 0;
        for (int c = 0; c < grid.cells; c++) {
            most = Math.max(most, out[c] * perVolume[c]);
        }
        return most;
    }
}
