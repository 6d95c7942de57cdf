package baymist.airflow;

import baymist.geom.Vec3;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Solves {@code sum_faces g (phi_c - phi_n) = b_c} on the cavity's cells, with g = open area over centre distance and
 * nothing through walls.
 *
 * <p>Conjugate gradients (Hestenes and Stiefel 1952) preconditioned by a symmetric multigrid V-cycle ({@link Multigrid};
 * Tatebe 1993), double precision. The problem is singular once per connected group of cells: the right side of each group
 * must sum to zero; what is left of its sum is spread over the group's cells and reported as {@link Solution#imbalance}.
 *
 * <p>The solver holds no state of a solve: it may be used by several threads at once, each solve is sequential and its bits
 * depend on the input alone.
 */
public final class PoissonSolver {
    private static final Vec3 ISOTROPIC = new Vec3(1, 1, 1);
    private static final int MAX_ITERATIONS = 400;
    private static final int RESTARTS = 3;

    private final Multigrid multigrid;
    private final Components groups;
    private final double[] cellsOfGroup;

    private PoissonSolver(Multigrid multigrid, Components groups, int cells) {
        this.multigrid = multigrid;
        this.groups = groups;
        this.cellsOfGroup = new double[groups.count()];
        for (int c = 0; c < cells; c++) {
            cellsOfGroup[groups.groupOf(c)]++;
        }
    }

    /**
     * Prepares the solver for one state of the openings.
     *
     * @param openFraction [openings] open share of each opening, 0..1
     */
    public static PoissonSolver of(VoxelGrid grid, double[] openFraction) {
        return of(grid, openFraction, ISOTROPIC);
    }

    /** As {@link #of(VoxelGrid, double[])} with conductances along x, y, z multiplied by positive weights. */
    public static PoissonSolver of(VoxelGrid grid, double[] openFraction, Vec3 weights) {
        return of(grid, openFraction, weights, Components.of(grid, openFraction));
    }

    static PoissonSolver of(VoxelGrid grid, double[] openFraction, Vec3 weights, Components groups) {
        Multigrid multigrid = new Multigrid(FaceGraph.of(grid, openFraction, weights));
        return new PoissonSolver(multigrid, groups, grid.cellCount());
    }

    /** Prepares the solver for any graph of cells. */
    static PoissonSolver of(FaceGraph graph, Components groups) {
        return new PoissonSolver(new Multigrid(graph), groups, graph.cells());
    }

    /** Vectors of repeated solves; used by one thread. */
    final class Session {
        private final Multigrid.Workspace work = new Multigrid.Workspace(multigrid);
        private final double[] z;
        private final double[] q;
        private final double[] p;
        private int iterations;

        Session() {
            int n = multigrid.finest().cells();
            z = new double[n];
            q = new double[n];
            p = new double[n];
        }

        /**
         * Solves from zero until the Euclidean residual is at most {@code target} or {@code most} iterations are done.
         *
         * @param r right side, overwritten with what is left of it
         * @param x solution, overwritten, mean zero in each group
         * @return Euclidean norm of what is left
         */
        double solve(double[] r, double[] x, double target, int most) {
            Arrays.fill(x, 0);
            balance(r);
            if (Math.sqrt(dot(r, r)) > target) {
                iterations += iterate(x, r, target, most, z, q, p, work);
                centre(x);
            }
            return Math.sqrt(dot(r, r));
        }

        /** Iterations done so far. */
        int iterations() {
            return iterations;
        }
    }

    /**
     * A solution.
     *
     * @param potential phi, [cells], mean zero in each group
     * @param iterations of the conjugate gradients, restarts included
     * @param residual true |b - A phi| over |b|, Euclidean
     * @param imbalance largest |sum of b| of a group over the sum of |b| of all cells, before it was spread
     */
    public record Solution(double[] potential, int iterations, double residual, double imbalance) {}

    /**
     * Solves for one right side. Does not throw when the tolerance is not met: the caller looks at the residual.
     *
     * @param rightSide [cells]; not changed
     * @param relativeTolerance wanted |b - A phi| / |b|, 1e-14 or more
     */
    public Solution solve(double[] rightSide, double relativeTolerance) {
        double[] b = rightSide.clone();
        double imbalance = balance(b);
        double[] x = new double[b.length];
        double size = Math.sqrt(dot(b, b));
        if (size == 0) {
            return new Solution(x, 0, 0, imbalance);
        }
        Multigrid.Workspace work = new Multigrid.Workspace(multigrid);
        int iterations = 0;
        double residual = 1;
        double[] r = b.clone();
        // A restart mends what rounding has added to the recurred residual; it ends when it no longer helps.
        for (int attempt = 0; attempt <= RESTARTS && residual > relativeTolerance; attempt++) {
            double[] trial = x.clone();
            iterations += iterate(
                    trial,
                    r,
                    relativeTolerance * size,
                    MAX_ITERATIONS,
                    new double[b.length],
                    new double[b.length],
                    new double[b.length],
                    work);
            centre(trial);
            multigrid.finest().residual(b, trial, r);
            double left = Math.sqrt(dot(r, r)) / size;
            if (!(left < residual)) {
                break;
            }
            residual = left;
            x = trial;
            balance(r);
        }
        return new Solution(x, iterations, residual, imbalance);
    }

    /** Conjugate gradients from x with residual r; returns the number of iterations. */
    private int iterate(
            double[] x,
            double[] r,
            double target,
            int most,
            double[] z,
            double[] q,
            double[] p,
            Multigrid.Workspace work) {
        multigrid.precondition(r, z, work);
        System.arraycopy(z, 0, p, 0, z.length);
        double rz = dot(r, z);
        for (int n = 0; n < most; n++) {
            multigrid.finest().apply(p, q);
            double pq = dot(p, q);
            if (!(pq > 0) || !(rz > 0)) {
                return n;
            }
            double alpha = rz / pq;
            for (int i = 0; i < x.length; i++) {
                x[i] += alpha * p[i];
                r[i] -= alpha * q[i];
            }
            if (Math.sqrt(dot(r, r)) <= target) {
                return n + 1;
            }
            multigrid.precondition(r, z, work);
            double next = dot(r, z);
            double beta = next / rz;
            rz = next;
            for (int i = 0; i < p.length; i++) {
                p[i] = z[i] + beta * p[i];
            }
        }
        return most;
    }

    /** Makes each group's sum zero; returns the imbalance found. */
    private double balance(double[] b) {
        double[] sum = groupSums(b);
        double total = 0;
        for (double v : b) {
            total += Math.abs(v);
        }
        double worst = 0;
        for (double s : sum) {
            worst = Math.max(worst, Math.abs(s));
        }
        for (int c = 0; c < b.length; c++) {
            int g = groups.groupOf(c);
            b[c] = cellsOfGroup[g] == 1 ? 0 : b[c] - sum[g] / cellsOfGroup[g];
        }
        return total == 0 ? 0 : worst / total;
    }

    private void centre(double[] x) {
        double[] sum = groupSums(x);
        for (int c = 0; c < x.length; c++) {
            int g = groups.groupOf(c);
            x[c] -= sum[g] / cellsOfGroup[g];
        }
    }

    private double[] groupSums(double[] v) {
        double[] sum = new double[groups.count()];
        for (int c = 0; c < v.length; c++) {
            sum[groups.groupOf(c)] += v[c];
        }
        return sum;
    }

    /** Number of multigrid levels. */
    int levels() {
        return multigrid.levels();
    }

    private static double dot(double[] a, double[] b) {
        double s0 = 0;
        double s1 = 0;
        int n = a.length - 1;
        int i = 0;
        for (; i < n; i += 2) {
            s0 += a[i] * b[i];
            s1 += a[i + 1] * b[i + 1];
        }
        return i <= n ? s0 + s1 + a[n] * b[n] : s0 + s1;
    }
}
