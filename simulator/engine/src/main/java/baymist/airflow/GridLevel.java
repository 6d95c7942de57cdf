package baymist.airflow;

/**
 * The discrete Laplacian of one level in compressed rows: {@code (A x)_i = sum_j g_ij (x_i - x_j)}. Immutable.
 */
final class GridLevel {
    private final int[] start;
    private final int[] column;
    private final double[] weight;
    private final double[] diagonal;

    /** One over the diagonal, or nothing for a cell without links. */
    private final double[] perDiagonal;

    GridLevel(FaceGraph graph) {
        int n = graph.cells();
        start = new int[n + 1];
        for (int f = 0; f < graph.low().length; f++) {
            start[graph.low()[f] + 1]++;
            start[graph.high()[f] + 1]++;
        }
        for (int c = 0; c < n; c++) {
            start[c + 1] += start[c];
        }
        int[] fill = start.clone();
        column = new int[start[n]];
        weight = new double[start[n]];
        diagonal = new double[n];
        for (int f = 0; f < graph.low().length; f++) {
            int p = graph.low()[f];
            int q = graph.high()[f];
            double g = graph.conductanceM()[f];
            column[fill[p]] = q;
            weight[fill[p]++] = g;
            column[fill[q]] = p;
            weight[fill[q]++] = g;
            diagonal[p] += g;
            diagonal[q] += g;
        }
        perDiagonal = new double[n];
        for (int c = 0; c < n; c++) {
            perDiagonal[c] = diagonal[c] > 0 ? 1 / diagonal[c] : 0;
        }
    }

    int cells() {
        return diagonal.length;
    }

    double diagonal(int cell) {
        return diagonal[cell];
    }

    /** {@code out = A x}. */
    void apply(double[] x, double[] out) {
        for (int i = 0; i < diagonal.length; i++) {
            double sum = diagonal[i] * x[i];
            for (int k = start[i]; k < start[i + 1]; k++) {
                sum -= weight[k] * x[column[k]];
            }
            out[i] = sum;
        }
    }

    /** {@code out = b - A x}. */
    void residual(double[] b, double[] x, double[] out) {
        for (int i = 0; i < diagonal.length; i++) {
            double sum = b[i] - diagonal[i] * x[i];
            for (int k = start[i]; k < start[i + 1]; k++) {
                sum += weight[k] * x[column[k]];
            }
            out[i] = sum;
        }
    }

    /** One Gauss-Seidel sweep in ascending order. */
    void sweepUp(double[] b, double[] x) {
        for (int i = 0; i < diagonal.length; i++) {
            relax(i, b, x);
        }
    }

    /** One Gauss-Seidel sweep in descending order: the transpose of {@link #sweepUp}. */
    void sweepDown(double[] b, double[] x) {
        for (int i = diagonal.length - 1; i >= 0; i--) {
            relax(i, b, x);
        }
    }

    private void relax(int i, double[] b, double[] x) {
        double sum = b[i];
        for (int k = start[i]; k < start[i + 1]; k++) {
            sum += weight[k] * x[column[k]];
        }
        x[i] = sum * perDiagonal[i];
    }

    /** Row entries for the direct solver: {@code into[i * n + j] = A_ij}. */
    double[] dense() {
        int n = diagonal.length;
        double[] full = new double[n * n];
        for (int i = 0; i < n; i++) {
            full[i * n + i] = diagonal[i];
            for (int k = start[i]; k < start[i + 1]; k++) {
                full[i * n + column[k]] -= weight[k];
            }
        }
        return full;
    }
}
