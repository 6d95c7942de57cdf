package baymist.airflow;

import java.util.Arrays;

/**
 * Turbulent energy k of every cell (m²/s²), carried, spread, made and dissipated:
 *
 * <pre>  dk/dt + u grad k = div((nu + nu_t) grad k) + nu_t S² + P - 0.1643 k^1.5/l,   nu_t = 0.5477 sqrt(k) l</pre>
 *
 * Prandtl (1945) with the constants of Launder and Spalding (1972), see {@link BulkTurbulence}. {@code l = min(kappa y/0.5477,
 * bay scale)} with y the distance to the nearest wall along the axes. S² = 2 S_ij S_ij of the resolved field; P what jets hand over. Owned
 * by one solver.
 */
final class FlowTurbulence {
    /** Bay scale over hydraulic diameter, as in {@link BulkTurbulence} (ASSUMED there). */
    private static final double LENGTH_SHARE = 0.07;

    /** Cells emptier than this share of a block count as this full: k is no budget, and steps stay long (ASSUMED). */
    private static final double LEAST_SHARE = 1;

    private final FlowGrid grid;
    private final CellScalar carrier;
    private final double[] volume;
    private final double[] lengthM;
    private final double[] k;
    private final double[] eddy;
    private final double[] spread;
    private final double[] speed;
    private final double molecular;

    /** Places of the neighbours' speeds below and above along each axis, the cell's own where there is none, and one over the distance, 1/m, [3 * cells]. */
    private final int[] below;

    private final int[] above;
    private final double[] perDistance;

    FlowTurbulence(FlowGrid grid, double kinematicViscosityM2PerS) {
        this.grid = grid;
        this.molecular = kinematicViscosityM2PerS;
        volume = new double[grid.cells];
        double whole = grid.h[0] * grid.h[1] * grid.h[2];
        for (int c = 0; c < grid.cells; c++) {
            volume[c] = Math.max(grid.volumeM3[c], LEAST_SHARE * whole);
        }
        carrier = new CellScalar(grid, volume);
        lengthM = new double[grid.cells];
        k = new double[grid.cells];
        eddy = new double[grid.cells];
        spread = new double[grid.cells];
        speed = new double[3 * grid.cells];
        below = new int[3 * grid.cells];
        above = new int[3 * grid.cells];
        perDistance = new double[3 * grid.cells];
        fillNeighbours();
        fillLengths();
    }

    /** Where a side is shut the gradient is taken on the open side alone. */
    private void fillNeighbours() {
        for (int i = 0; i < below.length; i++) {
            int c = i / 3;
            int p = carrier.beside(c, 2 * (i % 3));
            int q = carrier.beside(c, 2 * (i % 3) + 1);
            below[i] = 3 * (p < 0 ? c : p);
            above[i] = 3 * (q < 0 ? c : q);
            perDistance[i] = p < 0 && q < 0 ? 0 : 1 / (grid.h[i % 3] * (p < 0 || q < 0 ? 1 : 2));
        }
    }

    private void fillLengths() {
        double[] bay = bayScale();
        double[] wall = new double[grid.cells];
        Arrays.fill(wall, Double.POSITIVE_INFINITY);
        for (int d = 0; d < 6; d++) {
            // Cells are numbered with rising position, so a walk against the direction sees the neighbour first.
            boolean up = d % 2 == 1;
            double[] reach = new double[grid.cells];
            for (int n = 0; n < grid.cells; n++) {
                int c = up ? grid.cells - 1 - n : n;
                int next = carrier.beside(c, d);
                boolean open = next >= 0 && grid.openShare(c, d) > 0.5;
                reach[c] = open ? reach[next] + grid.h[d / 2] : 0.5 * grid.h[d / 2];
                wall[c] = Math.min(wall[c], reach[c]);
            }
        }
        for (int c = 0; c < grid.cells; c++) {
            lengthM[c] = Math.min(WallLaw.KAPPA * wall[c] / BulkTurbulence.VISCOSITY_FACTOR, bay[c]);
        }
    }

    /** 0.07 of 4V/A of the group of cells joined by openings wider than half a side. */
    private double[] bayScale() {
        UnionFind sets = new UnionFind(grid.cells);
        for (int f = 0; f < grid.faces; f++) {
            if (grid.share[f] > 0.5) {
                sets.join(grid.low[f], grid.high[f]);
            }
        }
        int[] bay = sets.numbered();
        double[] v = new double[sets.sets()];
        double[] area = new double[sets.sets()];
        for (int c = 0; c < grid.cells; c++) {
            v[bay[c]] += grid.volumeM3[c];
            for (int d = 0; d < 6; d++) {
                area[bay[c]] += (1 - grid.openShare(c, d)) * grid.sideM2[d / 2];
            }
        }
        double[] scale = new double[grid.cells];
        for (int c = 0; c < grid.cells; c++) {
            scale[c] = LENGTH_SHARE * 4 * v[bay[c]] / Math.max(area[bay[c]], 1e-30);
        }
        return scale;
    }

    /** Turbulent energy, m²/s², [cells]; the state itself. */
    double[] k() {
        return k;
    }

    double[] lengthM() {
        return lengthM;
    }

    /** Eddy viscosity of each cell, m²/s, as of the last {@link #refresh}. */
    double[] eddyViscosityM2PerS() {
        return eddy;
    }

    void refresh() {
        for (int c = 0; c < grid.cells; c++) {
            eddy[c] = BulkTurbulence.VISCOSITY_FACTOR * Math.sqrt(k[c]) * lengthM[c];
        }
    }

    /** Largest rate of exchange of k, 1/s. */
    double rate(double[] fluxM3PerS) {
        fillSpread();
        return carrier.rate(fluxM3PerS, spread);
    }

    private void fillSpread() {
        for (int c = 0; c < grid.cells; c++) {
            spread[c] = molecular + eddy[c];
        }
    }

    /** One step; {@link #refresh} must have been called since k last changed. */
    void step(double[] fluxM3PerS, FlowDrive drive, double stepS) {
        fillSpread();
        strain(fluxM3PerS);
        for (int c = 0; c < grid.cells; c++) {
            k[c] += stepS * (eddy[c] * strainOf(c) + drive.turbulenceM5PerS3()[c] / volume[c]);
        }
        carrier.step(k, fluxM3PerS, drive.ventFluxM3PerS(), spread, true, stepS);
        for (int c = 0; c < grid.cells; c++) {
            double root = Math.sqrt(Math.max(0, k[c]));
            // Decay alone is exact: k = k0 / (1 + 0.1643 sqrt(k0) t / (2 l))².
            double fade = 1 + 0.5 * BulkTurbulence.DISSIPATION_FACTOR * root * stepS / lengthM[c];
            k[c] = root * root / (fade * fade);
        }
        refresh();
    }

    /** Mean velocity of each cell from the fluxes through its sides. */
    private void strain(double[] fluxM3PerS) {
        Arrays.fill(speed, 0);
        double[] halfPerSide = {0.5 / grid.sideM2[0], 0.5 / grid.sideM2[1], 0.5 / grid.sideM2[2]};
        for (int f = 0; f < grid.faces; f++) {
            int a = grid.axis[f];
            double half = fluxM3PerS[f] * halfPerSide[a];
            speed[3 * grid.low[f] + a] += half;
            speed[3 * grid.high[f] + a] += half;
        }
    }

    /** S² = 2 S_ij S_ij of a cell: the diagonal 2 (s/2)² once, off the diagonal twice. */
    private double strainOf(int c) {
        double[] v = speed;
        int i = 3 * c;
        int px = below[i];
        int qx = above[i];
        double sx = perDistance[i];
        int py = below[i + 1];
        int qy = above[i + 1];
        double sy = perDistance[i + 1];
        int pz = below[i + 2];
        int qz = above[i + 2];
        double sz = perDistance[i + 2];
        double xx = (v[qx] - v[px]) * sx;
        double yy = (v[qy + 1] - v[py + 1]) * sy;
        double zz = (v[qz + 2] - v[pz + 2]) * sz;
        double xy = (v[qy] - v[py]) * sy + (v[qx + 1] - v[px + 1]) * sx;
        double xz = (v[qz] - v[pz]) * sz + (v[qx + 2] - v[px + 2]) * sx;
        double yz = (v[qz + 1] - v[pz + 1]) * sz + (v[qy + 2] - v[py + 2]) * sy;
        return 2 * (xx * xx + yy * yy + zz * zz) + xy * xy + xz * xz + yz * yz;
    }
}
