package baymist.airflow;

/** The kernel in a plain loop. */
final class PlainFlowKernel implements FlowKernel {
    @Override
    public void move(Links links, int count, double[] viscous, int from) {
        for (int i = 0; i < count; i++) {
            double ahead = links.ahead[i];
            double value = links.upstream[i] + Limiter.beyond(links.behind[i], ahead);
            links.moved[i] = Math.abs(links.flux[i]) * value - viscous[from + i] * ahead;
        }
    }

    @Override
    public void substitute(double[] below, double[] left, int band, double[] perPivot, double[] x) {
        for (int k = 0; k < perPivot.length; k++) {
            x[band + k] *= perPivot[k];
            take(x[band + k], below, k * band, x, band + k + 1, band);
        }
        for (int k = perPivot.length - 1; k >= 0; k--) {
            x[band + k] *= perPivot[k];
            take(x[band + k], left, k * band, x, k, band);
        }
    }

    private static void take(double known, double[] factor, int at, double[] x, int from, int band) {
        for (int j = 0; j < band; j += LANES) {
            int to = from + j;
            x[to] -= factor[at + j] * known;
            x[to + 1] -= factor[at + j + 1] * known;
            x[to + 2] -= factor[at + j + 2] * known;
            x[to + 3] -= factor[at + j + 3] * known;
        }
    }
}
