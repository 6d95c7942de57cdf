package baymist.airflow;

/**
 * Cholesky solution of the coarsest level. The matrix is a graph Laplacian, singular once per connected group: the first cell
 * of each group gets its diagonal doubled, which fixes the constant and changes nothing else for a right side that sums to
 * zero in each group.
 */
final class CoarseSolver {
    private final int n;
    private final double[] factor;

    CoarseSolver(GridLevel level, FaceGraph graph) {
        n = level.cells();
        factor = level.dense();
        UnionFind groups = new UnionFind(n);
        for (int f = 0; f < graph.low().length; f++) {
            groups.join(graph.low()[f], graph.high()[f]);
        }
        for (int i = 0; i < n; i++) {
            if (groups.root(i) == i) {
                factor[i * n + i] += level.diagonal(i) > 0 ? level.diagonal(i) : 1;
            }
        }
        for (int j = 0; j < n; j++) {
            eliminate(j);
        }
    }

    private void eliminate(int j) {
        double pivot = factor[j * n + j];
        for (int k = 0; k < j; k++) {
            pivot -= factor[j * n + k] * factor[j * n + k];
        }
        pivot = Math.sqrt(pivot);
        factor[j * n + j] = pivot;
        for (int i = j + 1; i < n; i++) {
            double sum = factor[i * n + j];
            for (int k = 0; k < j; k++) {
                sum -= factor[i * n + k] * factor[j * n + k];
            }
            factor[i * n + j] = sum / pivot;
        }
    }

    void solve(double[] b, double[] x) {
        for (int i = 0; i < n; i++) {
            double sum = b[i];
            for (int k = 0; k < i; k++) {
                sum -= factor[i * n + k] * x[k];
            }
            x[i] = sum / factor[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = x[i];
            for (int k = i + 1; k < n; k++) {
                sum -= factor[k * n + i] * x[k];
            }
            x[i] = sum / factor[i * n + i];
        }
    }
}
