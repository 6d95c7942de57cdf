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
 * between 0 and 1. Solved by BiCGStab (van der Vorst 1992, SIAM J. Sci. Stat. Comput. 13, 631) with symmetric Gauss-Seidel as preconditioner; backward Euler in growing
 * steps for the limited time.
 */
public final class FogDestiny {
    /** Residual at which a solve stops, of the right side. */
    static final double TOLERANCE = 1e-11;

    /** Where rounding lets it go no further, this much is accepted. */
    private static final double ACCEPTED = 1e-8;

    private static final int MOST_ITERATIONS = 4000;

    /** Steps of a limited time: first step over the whole, and growth from step to step (ASSUMED: first order, error told in theory). */
    private static final double FIRST_SHARE = 1.0 / 400;

    private static final double GROWTH = 1.15;

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
        double[] right = new double[n];
        double step = FIRST_SHARE * timeS;
        double left = timeS;
        while (left > 0) {
            double h = left < 1.5 * step ? left : step;
            for (int c = 0; c < n; c++) {
                right[c] = catchPerS[c] + p[c] / h;
            }
            solve(1 / h, right, p);
            left -= h;
            step *= GROWTH;
        }
        return bounded(p);
    }

    private static double[] bounded(double[] p) {
        for (int c = 0; c < p.length; c++) {
            p[c] = Math.min(1, Math.max(0, p[c]));
        }
        return p;
    }

    /** Solves (shift - A^T) x = b from the x given. Cells that nothing leaves keep 0. */
    private void solve(double shift, double[] b, double[] x) {
        int n = b.length;
        double goal = TOLERANCE * norm(b);
        if (goal == 0) {
            Arrays.fill(x, 0);
            return;
        }
        double[] r = new double[n];
        residual(shift, b, x, r);
        double[] shadow = r.clone();
        double[] d = new double[n];
        double[] v = new double[n];
        double[] y = new double[n];
        double[] t = new double[n];
        double rho = 1;
        double alpha = 1;
        double omega = 1;
        double size = norm(r);
        for (int i = 0; i < MOST_ITERATIONS && size > goal; i++) {
            double next = dot(shadow, r);
            if (Math.abs(next) < 1e-30 * size * norm(shadow)) {
                // breakdown: begin anew from here
                residual(shift, b, x, r);
                System.arraycopy(r, 0, shadow, 0, n);
                Arrays.fill(d, 0);
                Arrays.fill(v, 0);
                rho = 1;
                alpha = 1;
                omega = 1;
                next = dot(r, r);
            }
            double beta = next / rho * (alpha / omega);
            rho = next;
            for (int c = 0; c < n; c++) {
                d[c] = r[c] + beta * (d[c] - omega * v[c]);
            }
            precondition(shift, d, y);
            multiply(shift, y, v);
            alpha = rho / dot(shadow, v);
            for (int c = 0; c < n; c++) {
                x[c] += alpha * y[c];
                r[c] -= alpha * v[c];
            }
            size = norm(r);
            if (size <= goal) {
                break;
            }
            precondition(shift, r, y);
            multiply(shift, y, t);
            double tt = dot(t, t);
            omega = tt > 0 ? dot(t, r) / tt : 0;
            for (int c = 0; c < n; c++) {
                x[c] += omega * y[c];
                r[c] -= omega * t[c];
            }
            size = norm(r);
            if (omega == 0 || !Double.isFinite(size)) {
                break;
            }
        }
        residual(shift, b, x, r);
        if (!(norm(r) <= ACCEPTED / TOLERANCE * goal)) {
            throw new SimulationException(String.format(
                    Locale.ROOT,
                    "reach field: the adjoint solve stopped at a residual of %.2g of its right side, %.2g expected",
                    norm(r) / (goal / TOLERANCE),
                    ACCEPTED));
        }
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
