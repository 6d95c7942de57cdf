package baymist.fog;

import baymist.problem.SimulationException;
import java.util.Arrays;
import java.util.Locale;

/**
 * Where droplets end that are let go in each cell, while one air field holds: the share of them that some walls catch.
 *
 * <p>With {@code w} the rate of reaching these walls from each cell, the share p for ever and the share within a time T obey
 *
 * <pre>  -A^T p = w,          dp/dt = A^T p + w,  p(0) = 0 </pre>
 *
 * (backward equation of a process that hops from cell to cell; docs/theory/field.md, (3) and (4)). -A^T is an M-matrix with weakly dominant rows: p lies
 * between 0 and 1. Solved by restarted GMRES (Saad and Schultz 1986, SIAM J. Sci. Stat. Comput. 7, 856) with a symmetric Gauss-Seidel sweep as preconditioner, whose
 * own iteration converges for such a matrix: a cycle never does worse. The limited time takes
 * growing steps of a second-order implicit scheme.
 */
public final class FogDestiny {
    /** Residual at which a solve stops, of the right side. */
    static final double TOLERANCE = 1e-11;

    /** Where rounding lets it go no further, this much is accepted. */
    private static final double ACCEPTED = 1e-8;

    /** Rounding of the terms of a residual: no solve gets below. */
    private static final double ROUNDING = 1e-15;

    /** Directions of a cycle and cycles. */
    private static final int CYCLE = 30;

    private static final int MOST_CYCLES = 400;

    /** Steps of a limited time: first step over the whole, and growth from step to step (ASSUMED; error told in docs/theory/field.md). */
    private static final double FIRST_SHARE = 1.0 / 400;

    private static final double GROWTH = 1.2;

    /** Of the two-stage, second-order, L-stable Runge-Kutta scheme of Alexander (1977), SIAM J. Numer. Anal. 14, 1006. */
    private static final double GAMMA = 1 - Math.sqrt(0.5);

    private final FogOperator operator;

    /** For each cell its links: start, neighbour, rate of passing to it. */
    private final int[] start;

    private final int[] neighbour;
    private final double[] rate;

    private final double[] diagonal;

    public FogDestiny(FogOperator operator) {
        this.operator = operator;
        int n = operator.cells();
        start = new int[n + 1];
        for (int l = 0; l < operator.links(); l++) {
            start[operator.low(l) + 1]++;
            start[operator.high(l) + 1]++;
        }
        for (int c = 0; c < n; c++) {
            start[c + 1] += start[c];
        }
        int[] at = Arrays.copyOf(start, n);
        neighbour = new int[start[n]];
        rate = new double[start[n]];
        for (int l = 0; l < operator.links(); l++) {
            int a = operator.low(l);
            int b = operator.high(l);
            neighbour[at[a]] = b;
            rate[at[a]++] = operator.upPerS(l);
            neighbour[at[b]] = a;
            rate[at[b]++] = operator.downPerS(l);
        }
        diagonal = new double[n];
        for (int c = 0; c < n; c++) {
            diagonal[c] = operator.leavingPerS(c);
        }
    }

    /**
     * Share that walls catch in the end.
     *
     * @param catchPerS rate of reaching the walls asked for, 1/s, [cells], see {@link FogOperator#rateOfReaching}
     * @return 0..1, [cells]; 0 where a droplet stays for ever or is caught elsewhere
     * @throws SimulationException if the solver does not converge
     */
    public double[] ever(double[] catchPerS) {
        double[] p = new double[catchPerS.length];
        solve(0, catchPerS, p);
        return bounded(p);
    }

    /** The same within a time, s, above 0. */
    public double[] within(double[] catchPerS, double timeS) {
        int n = catchPerS.length;
        double[] p = new double[n];
        double[] first = new double[n];
        double[] second = new double[n];
        double[] at = new double[n];
        double[] right = new double[n];
        double step = FIRST_SHARE * timeS;
        double left = timeS;
        while (left > 0) {
            double h = left < 1.5 * step ? left : step;
            stage(h, p, catchPerS, right, first);
            for (int c = 0; c < n; c++) {
                at[c] = p[c] + (1 - GAMMA) * h * first[c];
            }
            stage(h, at, catchPerS, right, second);
            for (int c = 0; c < n; c++) {
                p[c] += h * ((1 - GAMMA) * first[c] + GAMMA * second[c]);
            }
            left -= h;
            step *= GROWTH;
        }
        return bounded(p);
    }

    /** Slope k with k = A^T (from + γ h k) + w, sought from the k of the step before. */
    private void stage(double h, double[] from, double[] catchPerS, double[] right, double[] k) {
        double shift = 1 / (GAMMA * h);
        operator.applyTransposed(from, right);
        for (int c = 0; c < k.length; c++) {
            right[c] = shift * (right[c] + catchPerS[c]);
        }
        solve(shift, right, k);
    }

    private static double[] bounded(double[] p) {
        for (int c = 0; c < p.length; c++) {
            p[c] = Math.min(1, Math.max(0, p[c]));
        }
        return p;
    }

    /** Solves (shift - A^T) x = b from the x given. Cells that nothing leaves keep 0. */
    private void solve(double shift, double[] b, double[] x) {
        double[] r = new double[b.length];
        double right = norm(b);
        Krylov space = new Krylov(b.length);
        double size = Double.POSITIVE_INFINITY;
        for (int cycle = 0; cycle < MOST_CYCLES; cycle++) {
            residual(shift, b, x, r);
            size = norm(r);
            if (size <= Math.max(TOLERANCE * right, ROUNDING * scale(shift, x))) {
                return;
            }
            improve(shift, x, r, size, space);
        }
        if (!(size <= ACCEPTED * right)) {
            throw new SimulationException(String.format(
                    Locale.ROOT,
                    "reach field: the adjoint solve stopped at a residual of %.2g of its right side, %.2g expected",
                    size / right,
                    ACCEPTED));
        }
    }

    /** Room for the vectors of one cycle. */
    private static final class Krylov {
        final double[][] basis;
        final double[][] solved;
        final double[][] h = new double[CYCLE + 1][CYCLE];
        final double[] cosine = new double[CYCLE];
        final double[] sine = new double[CYCLE];
        final double[] g = new double[CYCLE + 1];

        Krylov(int n) {
            basis = new double[CYCLE + 1][n];
            solved = new double[CYCLE][n];
        }
    }

    /** One cycle: adds to x the combination of CYCLE preconditioned directions that leaves the least residual. */
    private void improve(double shift, double[] x, double[] r, double size, Krylov k) {
        scaled(r, 1 / size, k.basis[0]);
        Arrays.fill(k.g, 0);
        k.g[0] = size;
        int used = 0;
        for (int j = 0; j < CYCLE; j++) {
            precondition(shift, k.basis[j], k.solved[j]);
            double[] w = k.basis[j + 1];
            multiply(shift, k.solved[j], w);
            double before = norm(w);
            for (int i = 0; i <= j; i++) {
                k.h[i][j] = dot(w, k.basis[i]);
                add(w, -k.h[i][j], k.basis[i]);
            }
            double left = norm(w);
            rotate(k, j, left);
            used = j + 1;
            boolean exhausted = left <= 1e-14 * before || Math.abs(k.g[j + 1]) <= 1e-14 * size;
            if (exhausted) {
                break;
            }
            scaled(w, 1 / left, w);
        }
        double[] y = new double[used];
        for (int i = used - 1; i >= 0; i--) {
            double sum = k.g[i];
            for (int j = i + 1; j < used; j++) {
                sum -= k.h[i][j] * y[j];
            }
            y[i] = k.h[i][i] != 0 ? sum / k.h[i][i] : 0;
            add(x, y[i], k.solved[i]);
        }
    }

    /** Givens rotations keep the small matrix triangular. */
    private static void rotate(Krylov k, int j, double below) {
        for (int i = 0; i < j; i++) {
            double up = k.cosine[i] * k.h[i][j] + k.sine[i] * k.h[i + 1][j];
            k.h[i + 1][j] = -k.sine[i] * k.h[i][j] + k.cosine[i] * k.h[i + 1][j];
            k.h[i][j] = up;
        }
        double length = Math.hypot(k.h[j][j], below);
        k.cosine[j] = length > 0 ? k.h[j][j] / length : 1;
        k.sine[j] = length > 0 ? below / length : 0;
        k.h[j][j] = length;
        if (j + 1 < CYCLE) {
            k.h[j + 1][j] = 0;
        }
        k.g[j + 1] = -k.sine[j] * k.g[j];
        k.g[j] *= k.cosine[j];
    }

    private static void scaled(double[] from, double factor, double[] to) {
        for (int c = 0; c < from.length; c++) {
            to[c] = factor * from[c];
        }
    }

    private static void add(double[] to, double factor, double[] from) {
        for (int c = 0; c < to.length; c++) {
            to[c] += factor * from[c];
        }
    }

    /** Size of the terms that make up a residual. */
    private double scale(double shift, double[] x) {
        double sum = 0;
        for (int c = 0; c < x.length; c++) {
            double term = pivot(shift, c) * x[c];
            sum += term * term;
        }
        return Math.sqrt(sum);
    }

    private double pivot(double shift, int c) {
        double p = shift + diagonal[c];
        return p > 0 ? p : 1;
    }

    private void residual(double shift, double[] b, double[] x, double[] r) {
        multiply(shift, x, r);
        for (int c = 0; c < r.length; c++) {
            r[c] = b[c] - r[c];
        }
    }

    /** (shift - A^T) x; the identity on a cell that nothing leaves. */
    private void multiply(double shift, double[] x, double[] out) {
        for (int c = 0; c < x.length; c++) {
            double sum = pivot(shift, c) * x[c];
            for (int e = start[c]; e < start[c + 1]; e++) {
                sum -= rate[e] * x[neighbour[e]];
            }
            out[c] = sum;
        }
    }

    /** One symmetric Gauss-Seidel sweep from 0. */
    private void precondition(double shift, double[] b, double[] x) {
        Arrays.fill(x, 0);
        for (int c = 0; c < x.length; c++) {
            x[c] = relaxed(shift, b, x, c);
        }
        for (int c = x.length - 1; c >= 0; c--) {
            x[c] = relaxed(shift, b, x, c);
        }
    }

    private double relaxed(double shift, double[] b, double[] x, int c) {
        double sum = b[c];
        for (int e = start[c]; e < start[c + 1]; e++) {
            sum += rate[e] * x[neighbour[e]];
        }
        return sum / pivot(shift, c);
    }

    private static double norm(double[] a) {
        return Math.sqrt(dot(a, a));
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int c = 0; c < a.length; c++) {
            sum += a[c] * b[c];
        }
        return sum;
    }

    /** The operator whose destinies these are. */
    public FogOperator operator() {
        return operator;
    }
}
