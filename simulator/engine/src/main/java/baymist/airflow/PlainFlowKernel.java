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
    public void substitute(double[] below, int band, double[] perPivot, double[] x) {
        for (int k = 0; k < perPivot.length; k++) {
            double known = x[k] * perPivot[k];
            x[k] = known;
            int at = k * band;
            for (int j = 0; j < band; j += LANES) {
                int to = k + 1 + j;
                x[to] -= below[at + j] * known;
                x[to + 1] -= below[at + j + 1] * known;
                x[to + 2] -= below[at + j + 2] * known;
                x[to + 3] -= below[at + j + 3] * known;
            }
        }
        for (int k = perPivot.length - 1; k >= 0; k--) {
            double s0 = 0;
            double s1 = 0;
            double s2 = 0;
            double s3 = 0;
            int at = k * band;
            for (int j = 0; j < band; j += LANES) {
                int from = k + 1 + j;
                s0 += below[at + j] * x[from];
                s1 += below[at + j + 1] * x[from + 1];
                s2 += below[at + j + 2] * x[from + 2];
                s3 += below[at + j + 3] * x[from + 3];
            }
            x[k] = (x[k] - (s0 + s1 + (s2 + s3))) * perPivot[k];
        }
    }
}
