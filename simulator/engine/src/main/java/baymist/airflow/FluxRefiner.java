package baymist.airflow;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Fluxes on the fog's faces from fluxes on the air's faces. A face of the air shares its flux over the fog's faces in it by
 * open area, less into slivers of cells, which a sheet's friction keeps slow and which would ask for needlessly short steps; inside a block the flux is the irrotational one that gives every fog cell its wanted outflow, solved exactly block by
 * block. What the air's own field leaves of a cell's balance is spread evenly over the block, so the fog sees that residual and no
 * other. A block's cells are numbered along its longest side last, so that its matrix is a narrow band; blocks that look alike share one factor. Holds scratch space: used by
 * one thread.
 */
final class FluxRefiner {
    private final VoxelGrid grid;
    private final FlowGrid air;

    /** Fog faces in faces of the air, the air's face of each, and its share of that face's flux, [outer]. */
    private final int[] outer;

    private final int[] outerOf;
    private final double[] outerShare;

    /** Fog cells of each air cell, [air cells + 1] and [fog cells]. */
    private final int[] start;

    private final int[] member;

    /** Fog faces inside each air cell, [air cells + 1] and [inner]: face, places of its cells among the members, conductance in m. */
    private final int[] innerStart;

    private final int[] inner;
    private final short[] innerLow;
    private final short[] innerHigh;
    private final double[] innerM;

    private final List<BandFactor> factorOf = new ArrayList<>();
    private final FlowKernel kernel = FlowKernels.best();

    /** What each fog cell still wants of its outflow, m³/s, and a block's potential. */
    private final double[] need;

    private final double[] phi;

    FluxRefiner(VoxelGrid grid, FlowGrid air, double[] openFraction) {
        this.grid = grid;
        this.air = air;
        double[] wayM2 = ways(openFraction);
        int[] count = new int[2];
        for (int f = 0; f < wayM2.length; f++) {
            count[0] += air.faceOf[f] >= 0 ? 1 : 0;
            count[1] += isInner(f, wayM2) ? 1 : 0;
        }
        outer = new int[count[0]];
        outerOf = new int[count[0]];
        outerShare = new double[count[0]];
        fillOuter(wayM2);
        start = new int[air.cells + 1];
        member = new int[grid.cellCount()];
        int[] placeOf = fillMembers();
        innerStart = new int[air.cells + 1];
        inner = new int[count[1]];
        innerLow = new short[count[1]];
        innerHigh = new short[count[1]];
        innerM = new double[count[1]];
        fillInner(wayM2, placeOf);
        factorBlocks();
        need = new double[member.length];
        phi = new double[factorOf.stream().mapToInt(BandFactor::length).max().orElse(0)];
    }

    /** Open area of each fog face, less where it leads into a sliver of a cell, m². */
    private double[] ways(double[] openFraction) {
        FaceSet faces = grid.faces();
        double[] way = new double[faces.count()];
        double whole = grid.sizeM().x() * grid.sizeM().y() * grid.sizeM().z();
        for (int f = 0; f < way.length; f++) {
            double least = Math.min(grid.volumeM3(faces.low()[f]), grid.volumeM3(faces.high()[f]));
            way[f] = Components.openAreaM2(faces, f, openFraction) * Math.min(1, least / whole);
        }
        return way;
    }

    private void fillOuter(double[] wayM2) {
        double[] all = new double[air.faces];
        for (int f = 0; f < wayM2.length; f++) {
            if (air.faceOf[f] >= 0) {
                all[air.faceOf[f]] += wayM2[f];
            }
        }
        int at = 0;
        for (int f = 0; f < wayM2.length; f++) {
            int of = air.faceOf[f];
            if (of >= 0) {
                outer[at] = f;
                outerOf[at] = of;
                outerShare[at++] = wayM2[f] / all[of];
            }
        }
    }

    /** Sorts the fog cells by block; returns the place of each in its block. */
    private int[] fillMembers() {
        int n = member.length;
        for (int c = 0; c < n; c++) {
            start[air.cellOf[c] + 1]++;
        }
        for (int b = 0; b < air.cells; b++) {
            start[b + 1] += start[b];
        }
        int[] fill = start.clone();
        for (int c = 0; c < n; c++) {
            member[fill[air.cellOf[c]]++] = c;
        }
        int[] placeOf = new int[n];
        for (int b = 0; b < air.cells; b++) {
            lieAlong(b);
            for (int i = start[b]; i < start[b + 1]; i++) {
                placeOf[member[i]] = i - start[b];
            }
        }
        return placeOf;
    }

    /** Orders a block's cells with its longest side slowest. */
    private void lieAlong(int b) {
        int[] least = new int[3];
        int[] most = new int[3];
        Arrays.fill(least, Integer.MAX_VALUE);
        Arrays.fill(most, Integer.MIN_VALUE);
        Integer[] cells = new Integer[start[b + 1] - start[b]];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = member[start[b] + i];
            for (int a = 0; a < 3; a++) {
                least[a] = Math.min(least[a], index(cells[i], a));
                most[a] = Math.max(most[a], index(cells[i], a));
            }
        }
        Integer[] axes = {0, 1, 2};
        Arrays.sort(axes, Comparator.comparingInt(a -> least[a] - most[a]));
        Arrays.sort(
                cells,
                Comparator.<Integer>comparingInt(c -> index(c, axes[0]))
                        .thenComparingInt(c -> index(c, axes[1]))
                        .thenComparingInt(c -> index(c, axes[2])));
        for (int i = 0; i < cells.length; i++) {
            member[start[b] + i] = cells[i];
        }
    }

    private int index(int cell, int axis) {
        return axis == 0 ? grid.i(cell) : axis == 1 ? grid.j(cell) : grid.k(cell);
    }

    private boolean isInner(int f, double[] wayM2) {
        FaceSet faces = grid.faces();
        return air.cellOf[faces.low()[f]] == air.cellOf[faces.high()[f]] && wayM2[f] > 0;
    }

    private void fillInner(double[] wayM2, int[] placeOf) {
        FaceSet faces = grid.faces();
        for (int f = 0; f < wayM2.length; f++) {
            if (isInner(f, wayM2)) {
                innerStart[air.cellOf[faces.low()[f]] + 1]++;
            }
        }
        for (int b = 0; b < air.cells; b++) {
            innerStart[b + 1] += innerStart[b];
        }
        int[] fill = innerStart.clone();
        for (int f = 0; f < wayM2.length; f++) {
            if (isInner(f, wayM2)) {
                int at = fill[air.cellOf[faces.low()[f]]]++;
                inner[at] = f;
                innerLow[at] = (short) placeOf[faces.low()[f]];
                innerHigh[at] = (short) placeOf[faces.high()[f]];
                innerM[at] = wayM2[f] / grid.sizeM().get(faces.axis()[f]);
            }
        }
    }

    private void factorBlocks() {
        Map<List<Double>, BandFactor> known = new HashMap<>();
        for (int b = 0; b < air.cells; b++) {
            int block = b;
            List<Double> key = new ArrayList<>();
            key.add((double) (start[b + 1] - start[b]));
            for (int e = innerStart[b]; e < innerStart[b + 1]; e++) {
                key.add((double) innerLow[e]);
                key.add((double) innerHigh[e]);
                key.add(innerM[e]);
            }
            factorOf.add(known.computeIfAbsent(key, k -> factor(block)));
        }
    }

    private BandFactor factor(int b) {
        int edges = innerStart[b + 1] - innerStart[b];
        double[] diagonal = new double[start[b + 1] - start[b]];
        int[] row = new int[edges];
        int[] column = new int[edges];
        double[] value = new double[edges];
        for (int i = 0; i < edges; i++) {
            int e = innerStart[b] + i;
            row[i] = Math.max(innerLow[e], innerHigh[e]);
            column[i] = Math.min(innerLow[e], innerHigh[e]);
            value[i] = -innerM[e];
            diagonal[row[i]] += innerM[e];
            diagonal[column[i]] += innerM[e];
        }
        // The sum of the equations is nothing: doubling one diagonal fixes the free constant.
        diagonal[0] *= 2;
        return new BandFactor(diagonal, row, column, value);
    }

    /**
     * Refines.
     *
     * @param airFlux m³/s, [air faces]
     * @param outflowM3PerS wanted sum of outgoing face fluxes of each fog cell, [fog cells]
     * @return m³/s, [fog faces]
     */
    double[] refine(double[] airFlux, double[] outflowM3PerS) {
        int[] low = grid.faces().low();
        int[] high = grid.faces().high();
        double[] flux = new double[grid.faces().count()];
        System.arraycopy(outflowM3PerS, 0, need, 0, need.length);
        for (int i = 0; i < outer.length; i++) {
            int f = outer[i];
            double through = airFlux[outerOf[i]] * outerShare[i];
            flux[f] = through;
            need[low[f]] -= through;
            need[high[f]] += through;
        }
        for (int b = 0; b < air.cells; b++) {
            if (innerStart[b + 1] > innerStart[b]) {
                inside(b, flux);
            }
        }
        return flux;
    }

    private void inside(int b, double[] flux) {
        BandFactor factor = factorOf.get(b);
        int from = start[b];
        int n = factor.size();
        int first = factor.first();
        double sum = 0;
        for (int i = 0; i < n; i++) {
            phi[first + i] = need[member[from + i]];
            sum += phi[first + i];
        }
        double mean = sum / n;
        for (int i = first; i < first + n; i++) {
            phi[i] -= mean;
        }
        factor.solve(phi, kernel);
        for (int e = innerStart[b]; e < innerStart[b + 1]; e++) {
            flux[inner[e]] = innerM[e] * (phi[first + innerLow[e]] - phi[first + innerHigh[e]]);
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

    /** The same of values per m³. */
    double[] gatherPerM3(double[] perM3) {
        double[] sum = new double[air.cells];
        for (int c = 0; c < perM3.length; c++) {
            sum[air.cellOf[c]] += perM3[c] * grid.volumeM3(c);
        }
        return sum;
    }

    /** Adds a multiple of the values of air cells to those of the fog's cells. */
    void spread(double[] perAirCell, double times, double[] into) {
        for (int c = 0; c < into.length; c++) {
            into[c] += perAirCell[air.cellOf[c]] * times;
        }
    }
}
