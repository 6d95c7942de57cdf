package baymist.airflow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Symmetric multigrid V-cycle that preconditions the conjugate gradients: piecewise-constant transfer between a cell and its
 * block, two ascending Gauss-Seidel sweeps before and two descending ones after the coarse correction. Levels are immutable;
 * the vectors of one solve live in a {@link Workspace}.
 */
final class Multigrid {
    private static final int SWEEPS = 2;

    /** Largest level that is solved directly. */
    private static final int DIRECT = 64;

    /** A level that shrinks less than this is skipped: its blocks widen, its cells stay. */
    private static final double LEAST_SHRINK = 0.9;

    private final List<GridLevel> levels = new ArrayList<>();
    private final List<int[]> coarseOf = new ArrayList<>();
    private final List<CoarseSolver> direct = new ArrayList<>(1);

    Multigrid(FaceGraph finest) {
        FaceGraph graph = finest;
        levels.add(new GridLevel(graph));
        // Ends: once a block spans the lattice each linked cell merges with its strongest neighbour, so cells at least
        // halve.
        while (graph.cells() > DIRECT && graph.low().length > 0) {
            boolean[] coarsen = graph.axesToCoarsen();
            int[] number = graph.aggregate(coarsen);
            int coarseCells = Arrays.stream(number).max().orElse(-1) + 1;
            if (coarseCells > LEAST_SHRINK * graph.cells()) {
                graph = graph.widened(coarsen);
            } else {
                graph = graph.coarse(number, coarseCells, coarsen);
                coarseOf.add(number);
                levels.add(new GridLevel(graph));
            }
        }
        if (graph.cells() <= DIRECT) {
            direct.add(new CoarseSolver(levels.get(levels.size() - 1), graph));
        }
    }

    GridLevel finest() {
        return levels.get(0);
    }

    int levels() {
        return levels.size();
    }

    /** Vectors of one solve, one set a level. */
    static final class Workspace {
        private final double[][] b;
        private final double[][] x;
        private final double[][] r;

        Workspace(Multigrid grid) {
            int n = grid.levels.size();
            b = new double[n][];
            x = new double[n][];
            r = new double[n][];
            for (int l = 0; l < n; l++) {
                int cells = grid.levels.get(l).cells();
                b[l] = l == 0 ? new double[0] : new double[cells];
                x[l] = l == 0 ? new double[0] : new double[cells];
                r[l] = new double[cells];
            }
        }
    }

    /** {@code z = M b}: one V-cycle from zero. */
    void precondition(double[] b, double[] z, Workspace work) {
        cycle(0, b, z, work);
    }

    private void cycle(int l, double[] b, double[] x, Workspace work) {
        GridLevel level = levels.get(l);
        if (l == levels.size() - 1) {
            solveLast(b, x);
            return;
        }
        Arrays.fill(x, 0);
        for (int s = 0; s < SWEEPS; s++) {
            level.sweepUp(b, x);
        }
        double[] r = work.r[l];
        level.residual(b, x, r);
        int[] to = coarseOf.get(l);
        double[] coarseB = work.b[l + 1];
        Arrays.fill(coarseB, 0);
        for (int i = 0; i < r.length; i++) {
            if (to[i] >= 0) {
                coarseB[to[i]] += r[i];
            }
        }
        double[] coarseX = work.x[l + 1];
        cycle(l + 1, coarseB, coarseX, work);
        for (int i = 0; i < x.length; i++) {
            if (to[i] >= 0) {
                x[i] += coarseX[to[i]];
            }
        }
        for (int s = 0; s < SWEEPS; s++) {
            level.sweepDown(b, x);
        }
    }

    private void solveLast(double[] b, double[] x) {
        if (direct.isEmpty()) {
            // Cells without links: nothing to solve.
            Arrays.fill(x, 0);
        } else {
            direct.get(0).solve(b, x);
        }
    }
}
