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
}
