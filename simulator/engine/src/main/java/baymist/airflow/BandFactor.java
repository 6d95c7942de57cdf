package baymist.airflow;

import java.util.Arrays;

/**
 * Cholesky factor of a banded symmetric matrix. The band below the diagonal is kept by columns and by rows, each a stretch of as many places as the widest needs; both substitutions
 * ({@link FlowKernel#substitute}) run along those stretches. Immutable.
 */
final class BandFactor {
    private final int n;

    /** Places kept below the diagonal, a multiple of four. */
    private final int band;

    /** {@code below[k * band + j] = L(k + 1 + j, k)}. */
    private final double[] below;

    /** {@code left[k * band + j] = L(k, k - band + j)}: the same again along rows, so that neither substitution has to add up along a stretch. */
    private final double[] left;

    private final double[] perPivot;

    /**
     * Factors a matrix.
     *
     * @param diagonal [n]
     * @param row,column,value entries below the diagonal, each pair once; row above column
     */
    BandFactor(double[] diagonal, int[] row, int[] column, double[] value) {
        n = diagonal.length;
        int widest = 0;
        for (int e = 0; e < row.length; e++) {
            widest = Math.max(widest, row[e] - column[e]);
        }
        band = (widest + FlowKernel.LANES - 1) / FlowKernel.LANES * FlowKernel.LANES;
        below = new double[n * band];
        perPivot = diagonal.clone();
        for (int e = 0; e < row.length; e++) {
            below[column[e] * band + row[e] - column[e] - 1] += value[e];
        }
        for (int k = 0; k < n; k++) {
            eliminate(k);
        }
        left = new double[n * band];
        for (int k = 0; k < n; k++) {
            for (int j = 0; j < band; j++) {
                int from = k - band + j;
                left[k * band + j] = from < 0 ? 0 : below[from * band + band - 1 - j];
            }
        }
    }

    private void eliminate(int k) {
        double pivot = Math.sqrt(perPivot[k]);
        perPivot[k] = 1 / pivot;
        int at = k * band;
        for (int j = 0; j < band; j++) {
            below[at + j] /= pivot;
        }
        for (int j = 0; j < band && k + 1 + j < n; j++) {
            double share = below[at + j];
            perPivot[k + 1 + j] -= share * share;
            int to = (k + 1 + j) * band;
            for (int i = j + 1; i < band && share != 0; i++) {
                below[to + i - j - 1] -= share * below[at + i];
            }
        }
    }

    /** Unknowns. */
    int size() {
        return n;
    }

    /** Place of the first unknown in the vectors of {@link #solve}. */
    int first() {
        return band;
    }

    /** Length of the vectors of {@link #solve}. */
    int length() {
        return n + 2 * band;
    }

    /** Solves in place; {@code x} holds the right side in {@link #size} places from {@link #first} on and is taken over up to {@link #length}. */
    void solve(double[] x, FlowKernel kernel) {
        Arrays.fill(x, 0, band, 0);
        Arrays.fill(x, band + n, n + 2 * band, 0);
        kernel.substitute(below, left, band, perPivot, x);
    }
}
