package baymist.airflow;

import baymist.geom.Vec3;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/**
 * Nearest field with a wanted divergence: {@code F = F0 - g (phi_high - phi_low)} on each face, with phi such that the
 * outflow of every cell equals its source (Sasaki 1970; Sherman 1978). Weights along the axes make it the variational
 * problem that minimises {@code sum a_i² (u_i - u0_i)²}: the weight of an axis is {@code 1/a_i²}.
 */
final class Projection {
    /** Scale of the relative residual in dead corners: share of the field's largest flux. */
    private static final double DEAD_CORNER = 1e-3;

    private final VoxelGrid grid;
    private final double[] conductanceM;
    private final PoissonSolver solver;

    Projection(VoxelGrid grid, double[] openFraction, Vec3 weights, Components groups) {
        this.grid = grid;
        this.conductanceM = new double[grid.faces().count()];
        for (int f = 0; f < conductanceM.length; f++) {
            conductanceM[f] = FaceGraph.conductance(grid, f, openFraction, weights);
        }
        this.solver = PoissonSolver.of(grid, openFraction, weights, groups);
    }

    /**
     * A projected field.
     *
     * @param fluxM3PerS [faces]
     * @param residual largest divergence error, see {@link AirField#residual()}
     */
    record Result(double[] fluxM3PerS, double residual, PoissonSolver.Solution solution) {}

    /**
     * Projects a start field.
     *
     * @param start [faces] volume fluxes, m³/s; not changed
     * @param outflow [cells] wanted sum of the outgoing face fluxes of each cell, m³/s, zero in sum over each group
     */
    Result project(double[] start, double[] outflow, double tolerance) {
        FaceSet faces = grid.faces();
        double[] b = missing(grid.faces(), start, outflow);
        PoissonSolver.Solution solution = solver.solve(b, tolerance);
        double[] phi = solution.potential();
        double[] flux = start.clone();
        for (int f = 0; f < flux.length; f++) {
            flux[f] -= conductanceM[f] * (phi[faces.high()[f]] - phi[faces.low()[f]]);
        }
        return new Result(flux, residual(grid, flux, outflow), solution);
    }

    /** Wanted outflow of each cell less what it has, m³/s. */
    private static double[] missing(FaceSet faces, double[] flux, double[] outflow) {
        double[] b = outflow.clone();
        for (int f = 0; f < flux.length; f++) {
            b[faces.low()[f]] -= flux[f];
            b[faces.high()[f]] += flux[f];
        }
        return b;
    }

    /** Largest divergence error of fluxes, see {@link AirField#residual()}. */
    static double residual(VoxelGrid grid, double[] flux, double[] outflow) {
        return residual(grid, flux, outflow.clone(), new double[outflow.length]);
    }

    /** The same for one who keeps scratch space: {@code left} holds the wanted outflow, both arrays are taken over. */
    static double residual(VoxelGrid grid, double[] flux, double[] left, double[] scale) {
        int[] low = grid.faces().low();
        int[] high = grid.faces().high();
        double largest = 0;
        for (int c = 0; c < left.length; c++) {
            scale[c] = Math.abs(left[c]);
            largest = Math.max(largest, scale[c]);
        }
        for (int f = 0; f < flux.length; f++) {
            double size = Math.abs(flux[f]);
            int p = low[f];
            int q = high[f];
            left[p] -= flux[f];
            left[q] += flux[f];
            // Comparisons, not Math.max: that asks for the sign of zero, and costs as much as all the rest.
            scale[p] = size > scale[p] ? size : scale[p];
            scale[q] = size > scale[q] ? size : scale[q];
            largest = size > largest ? size : largest;
        }
        double worst = 0;
        for (int c = 0; c < left.length; c++) {
            double size = Math.max(scale[c], DEAD_CORNER * largest);
            worst = size > 0 ? Math.max(worst, Math.abs(left[c]) / size) : worst;
        }
        return worst;
    }
}
