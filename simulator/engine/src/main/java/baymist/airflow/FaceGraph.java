package baymist.airflow;

import baymist.geom.Vec3;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Cells joined by conductances, with the lattice block that each cell lies in: one level of the multigrid before it is laid
 * out for the solver.
 *
 * @param cells number of cells
 * @param low,high the two cells of each link, [links]
 * @param axis lattice axis of each link, [links]
 * @param conductanceM area over distance, m (times the axis weight), [links]; parallel links may occur on the finest level
 * @param block lattice block of each cell, [3 * cells], x y z
 * @param spacing effective size of a block along each axis (m over the root of the axis weight), [3]
 */
record FaceGraph(int cells, int[] low, int[] high, byte[] axis, double[] conductanceM, int[] block, double[] spacing) {
    /** Axes whose spacing lies within this factor of the smallest are coarsened together; the others wait. */
    private static final double COARSEN_TOGETHER = 1.5;

    /** Cells of a block are merged over links at least this strong against the weaker cell's strongest link. */
    private static final double STRONG = 0.1;

    /** The grid's own faces under the given openings; {@code weights} scale the conductances along x, y, z. */
    static FaceGraph of(VoxelGrid grid, double[] openFraction, Vec3 weights) {
        FaceSet faces = grid.faces();
        int[] low = new int[faces.count()];
        int[] high = new int[faces.count()];
        byte[] axis = new byte[faces.count()];
        double[] conductance = new double[faces.count()];
        int n = 0;
        for (int f = 0; f < faces.count(); f++) {
            double g = conductance(grid, f, openFraction, weights);
            if (g > 0) {
                low[n] = faces.low()[f];
                high[n] = faces.high()[f];
                axis[n] = faces.axis()[f];
                conductance[n++] = g;
            }
        }
        int[] block = new int[3 * grid.cellCount()];
        for (int c = 0; c < grid.cellCount(); c++) {
            block[3 * c] = grid.i(c);
            block[3 * c + 1] = grid.j(c);
            block[3 * c + 2] = grid.k(c);
        }
        double[] spacing = new double[3];
        for (int a = 0; a < 3; a++) {
            spacing[a] = grid.sizeM().get(a) / Math.sqrt(weights.get(a));
        }
        return new FaceGraph(
                grid.cellCount(),
                Arrays.copyOf(low, n),
                Arrays.copyOf(high, n),
                Arrays.copyOf(axis, n),
                Arrays.copyOf(conductance, n),
                block,
                spacing);
    }

    /** Open area over centre distance times the axis weight, m. */
    static double conductance(VoxelGrid grid, int face, double[] openFraction, Vec3 weights) {
        int a = grid.faces().axis()[face];
        return Components.openAreaM2(grid.faces(), face, openFraction)
                / grid.sizeM().get(a)
                * weights.get(a);
    }

    /** Axes to coarsen next: those of small spacing among the axes that still have links. */
    boolean[] axesToCoarsen() {
        boolean[] linked = new boolean[3];
        for (byte a : axis) {
            linked[a] = true;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int a = 0; a < 3; a++) {
            least = linked[a] ? Math.min(least, spacing[a]) : least;
        }
        boolean[] chosen = new boolean[3];
        for (int a = 0; a < 3; a++) {
            chosen[a] = !linked[a] || spacing[a] <= COARSEN_TOGETHER * least;
        }
        return chosen;
    }

    /**
     * Coarse cell of each cell: cells of one 2 x 2 x 2 block that strong links join inside it. A sheet through a block
     * therefore splits it, so thin walls survive on every level. Cells without links get -1 (nothing to solve).
     */
    int[] aggregate(boolean[] coarsen) {
        double[] strongest = strongest();
        UnionFind sets = new UnionFind(cells);
        for (int f = 0; f < low.length; f++) {
            int p = low[f];
            int q = high[f];
            if (strong(f, strongest) && sameBlock(p, q, coarsen)) {
                sets.join(p, q);
            }
        }
        int[] number = new int[cells];
        int next = 0;
        for (int c = 0; c < cells; c++) {
            int r = sets.root(c);
            number[c] = strongest[c] == 0 ? -1 : r == c ? next++ : number[r];
        }
        return number;
    }

    private double[] strongest() {
        double[] strongest = new double[cells];
        for (int f = 0; f < low.length; f++) {
            strongest[low[f]] = Math.max(strongest[low[f]], conductanceM[f]);
            strongest[high[f]] = Math.max(strongest[high[f]], conductanceM[f]);
        }
        return strongest;
    }

    private boolean strong(int link, double[] strongest) {
        return conductanceM[link] >= STRONG * Math.min(strongest[low[link]], strongest[high[link]]);
    }

    private boolean sameBlock(int p, int q, boolean[] coarsen) {
        for (int a = 0; a < 3; a++) {
            int shift = coarsen[a] ? 1 : 0;
            if (block[3 * p + a] >> shift != block[3 * q + a] >> shift) {
                return false;
            }
        }
        return true;
    }

    /** The same cells and links in wider blocks. */
    FaceGraph widened(boolean[] coarsen) {
        int[] identity = new int[cells];
        for (int c = 0; c < cells; c++) {
            identity[c] = c;
        }
        return new FaceGraph(
                cells, low, high, axis, conductanceM, coarseBlocks(identity, cells, coarsen), wider(coarsen));
    }

    private double[] wider(boolean[] coarsen) {
        double[] wider = spacing.clone();
        for (int a = 0; a < 3; a++) {
            wider[a] *= coarsen[a] ? 2 : 1;
        }
        return wider;
    }

    /**
     * The coarse graph: links that join the same coarse pair are summed; strong ones are halved along a coarsened axis because
     * the distance between the centres has doubled. A weak link (a small hole in a sheet) is a resistance of its own that does
     * not grow with the cells, so it keeps its value.
     */
    FaceGraph coarse(int[] coarseOf, int coarseCells, boolean[] coarsen) {
        int[] p = new int[low.length];
        int[] q = new int[low.length];
        int[] start = new int[coarseCells + 1];
        for (int f = 0; f < low.length; f++) {
            int a = coarseOf[low[f]];
            int b = coarseOf[high[f]];
            p[f] = Math.min(a, b);
            q[f] = Math.max(a, b);
            start[p[f] + 1] += a == b ? 0 : 1;
        }
        for (int c = 0; c < coarseCells; c++) {
            start[c + 1] += start[c];
        }
        double[] strongest = strongest();
        int[] fill = start.clone();
        int[] target = new int[start[coarseCells]];
        double[] sum = new double[target.length];
        byte[] along = new byte[target.length];
        for (int f = 0; f < low.length; f++) {
            if (p[f] == q[f]) {
                continue;
            }
            int at = start[p[f]];
            while (at < fill[p[f]] && target[at] != q[f]) {
                at++;
            }
            if (at == fill[p[f]]) {
                target[at] = q[f];
                along[at] = axis[f];
                fill[p[f]]++;
            }
            sum[at] += conductanceM[f] * (coarsen[axis[f]] && strong(f, strongest) ? 0.5 : 1);
        }
        return packed(
                coarseCells, start, fill, target, along, sum, coarseBlocks(coarseOf, coarseCells, coarsen), coarsen);
    }

    private FaceGraph packed(
            int coarseCells,
            int[] start,
            int[] fill,
            int[] target,
            byte[] along,
            double[] sum,
            int[] blocks,
            boolean[] coarsen) {
        int links = 0;
        for (int c = 0; c < coarseCells; c++) {
            links += fill[c] - start[c];
        }
        int[] cl = new int[links];
        int[] ch = new int[links];
        byte[] ca = new byte[links];
        double[] cg = new double[links];
        int n = 0;
        for (int c = 0; c < coarseCells; c++) {
            for (int at = start[c]; at < fill[c]; at++) {
                cl[n] = c;
                ch[n] = target[at];
                ca[n] = along[at];
                cg[n++] = sum[at];
            }
        }
        return new FaceGraph(coarseCells, cl, ch, ca, cg, blocks, wider(coarsen));
    }

    private int[] coarseBlocks(int[] coarseOf, int coarseCells, boolean[] coarsen) {
        int[] coarse = new int[3 * coarseCells];
        for (int c = 0; c < cells; c++) {
            if (coarseOf[c] >= 0) {
                for (int a = 0; a < 3; a++) {
                    coarse[3 * coarseOf[c] + a] = block[3 * c + a] >> (coarsen[a] ? 1 : 0);
                }
            }
        }
        return coarse;
    }
}
