package baymist.airflow;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Fluxes on the fog's faces from fluxes on the air's faces. A face of the air shares its flux over the fog's faces in it by
 * open area, less into slivers of cells, which a sheet's friction keeps slow and which would ask for needlessly short steps; inside a block the flux is the irrotational one that gives every fog cell its wanted outflow, solved exactly block by
 * block. What the air's own field leaves of a cell's balance is spread evenly over the block, so the fog sees that residual and no
 * other. Immutable.
 */
final class FluxRefiner {
    private final VoxelGrid grid;
    private final FlowGrid air;
    /** Open area of each fog face, less where it leads into a sliver of a cell, m², [fog faces]. */
    private final double[] wayM2;

    /** The same summed over the fog's faces in each face of the air, m², [air faces]. */
    private final double[] airWayM2;

    /** Conductance of each fog face, m, [fog faces]. */
    private final double[] conductanceM;

    private final int[] start;
    private final int[] member;
    private final int[] placeOf;
    private final int[] innerStart;
    private final int[] inner;
    private final List<double[]> factorOf = new ArrayList<>();

    FluxRefiner(VoxelGrid grid, FlowGrid air, double[] openFraction) {
        this.grid = grid;
        this.air = air;
        int n = grid.cellCount();
        wayM2 = new double[grid.faces().count()];
        airWayM2 = new double[air.faces];
        conductanceM = new double[wayM2.length];
        double whole = grid.sizeM().x() * grid.sizeM().y() * grid.sizeM().z();
        for (int f = 0; f < wayM2.length; f++) {
            double least = Math.min(
                    grid.volumeM3(grid.faces().low()[f]),
                    grid.volumeM3(grid.faces().high()[f]));
            wayM2[f] = Components.openAreaM2(grid.faces(), f, openFraction) * Math.min(1, least / whole);
            conductanceM[f] = wayM2[f] / grid.sizeM().get(grid.faces().axis()[f]);
            if (air.faceOf[f] >= 0) {
                airWayM2[air.faceOf[f]] += wayM2[f];
            }
        }
        start = new int[air.cells + 1];
        for (int c = 0; c < n; c++) {
            start[air.cellOf[c] + 1]++;
        }
        for (int b = 0; b < air.cells; b++) {
            start[b + 1] += start[b];
        }
        member = new int[n];
        placeOf = new int[n];
        int[] fill = start.clone();
        for (int c = 0; c < n; c++) {
            int b = air.cellOf[c];
            placeOf[c] = fill[b] - start[b];
            member[fill[b]++] = c;
        }
        innerStart = new int[air.cells + 1];
        inner = innerFaces();
        factorBlocks();
    }

    private int[] innerFaces() {
        FaceSet faces = grid.faces();
        for (int f = 0; f < faces.count(); f++) {
            if (isInner(f)) {
                innerStart[air.cellOf[faces.low()[f]] + 1]++;
            }
        }
        for (int b = 0; b < air.cells; b++) {
            innerStart[b + 1] += innerStart[b];
        }
        int[] list = new int[innerStart[air.cells]];
        int[] fill = innerStart.clone();
        for (int f = 0; f < faces.count(); f++) {
            if (isInner(f)) {
                list[fill[air.cellOf[faces.low()[f]]]++] = f;
            }
        }
        return list;
    }

    private boolean isInner(int f) {
        FaceSet faces = grid.faces();
        return air.cellOf[faces.low()[f]] == air.cellOf[faces.high()[f]] && wayM2[f] > 0;
    }

    /** Cholesky factors; blocks that look alike share one. */
    private void factorBlocks() {
        Map<List<Double>, double[]> known = new HashMap<>();
        for (int b = 0; b < air.cells; b++) {
            int n = start[b + 1] - start[b];
            List<Double> key = new ArrayList<>();
            double[] matrix = new double[n * n];
            for (int e = innerStart[b]; e < innerStart[b + 1]; e++) {
                int p = placeOf[grid.faces().low()[inner[e]]];
                int q = placeOf[grid.faces().high()[inner[e]]];
                double g = conductanceM[inner[e]];
                key.add((double) p);
                key.add((double) q);
                key.add(g);
                matrix[p * n + p] += g;
                matrix[q * n + q] += g;
                matrix[p * n + q] -= g;
                matrix[q * n + p] -= g;
            }
            factorOf.add(n == 1 ? new double[0] : known.computeIfAbsent(key, k -> factor(matrix, n)));
        }
    }

    private static double[] factor(double[] m, int n) {
        // The sum of the equations is nothing: doubling one diagonal fixes the free constant.
        m[0] *= 2;
        for (int j = 0; j < n; j++) {
            double pivot = m[j * n + j];
            for (int k = 0; k < j; k++) {
                pivot -= m[j * n + k] * m[j * n + k];
            }
            pivot = Math.sqrt(pivot);
            m[j * n + j] = pivot;
            for (int i = j + 1; i < n; i++) {
                double sum = m[i * n + j];
                for (int k = 0; k < j; k++) {
                    sum -= m[i * n + k] * m[j * n + k];
                }
                m[i * n + j] = sum / pivot;
            }
        }
        // Above the diagonal the factor again, transposed: both substitutions then run along rows.
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                m[j * n + i] = m[i * n + j];
            }
        }
        return m;
    }

    /**
     * Refines.
     *
     * @param airFlux m³/s, [air faces]
     * @param outflowM3PerS wanted sum of outgoing face fluxes of each fog cell, [fog cells]
     * @return m³/s, [fog faces]
     */
    double[] refine(double[] airFlux, double[] outflowM3PerS) {
        FaceSet faces = grid.faces();
        double[] flux = new double[faces.count()];
        double[] need = outflowM3PerS.clone();
        for (int f = 0; f < flux.length; f++) {
            int at = air.faceOf[f];
            if (at >= 0) {
                flux[f] = airFlux[at] * wayM2[f] / airWayM2[at];
                need[faces.low()[f]] -= flux[f];
                need[faces.high()[f]] += flux[f];
            }
        }
        for (int b = 0; b < air.cells; b++) {
            if (innerStart[b + 1] > innerStart[b]) {
                inside(b, need, flux);
            }
        }
        return flux;
    }

    private void inside(int b, double[] need, double[] flux) {
        int n = start[b + 1] - start[b];
        double[] phi = new double[n];
        double sum = 0;
        for (int i = 0; i < n; i++) {
            phi[i] = need[member[start[b] + i]];
            sum += phi[i];
        }
        for (int i = 0; i < n; i++) {
            phi[i] -= sum / n;
        }
        substitute(factorOf.get(b), n, phi);
        for (int e = innerStart[b]; e < innerStart[b + 1]; e++) {
            int f = inner[e];
            flux[f] = conductanceM[f]
                    * (phi[placeOf[grid.faces().low()[f]]]
                            - phi[placeOf[grid.faces().high()[f]]]);
        }
    }

    private static void substitute(double[] m, int n, double[] phi) {
        for (int k = 0; k < n; k++) {
            int row = k * n;
            double known = phi[k] / m[row + k];
            phi[k] = known;
            for (int i = k + 1; i < n; i++) {
                phi[i] -= m[row + i] * known;
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            int row = k * n;
            double known = phi[k] / m[row + k];
            phi[k] = known;
            for (int i = 0; i < k; i++) {
                phi[i] -= m[row + i] * known;
            }
        }
    }

    /** Sums of values of fog cells over each air cell. */
    double[] gather(double[] perFogCell) {
        double[] sum = new double[air.cells];
        for (int c = 0; c < perFogCell.length; c++) {
            sum[air.cellOf[c]] += perFogCell[c];
        }
        return sum;
    }

    /** Values of air cells on the fog's cells. */
    double[] spread(double[] perAirCell) {
        double[] out = new double[grid.cellCount()];
        Arrays.setAll(out, c -> perAirCell[air.cellOf[c]]);
        return out;
    }
}
