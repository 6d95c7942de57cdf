package baymist.plan;

/**
 * Film per trigger-second from one station.
 *
 * @param bins number of size bins
 * @param filmMPerS m/s by size, [bins * surfels], surfel innermost; read-only
 * @param sprayedKgPerS liquid leaving the tip, kg/s; 0 where the tip can't stand
 */
record DoseColumn(int bins, float[] filmMPerS, double sprayedKgPerS) {
    static DoseColumn empty(int bins, int surfels) {
        return new DoseColumn(bins, new float[bins * surfels], 0);
    }

    int surfels() {
        return filmMPerS.length / bins;
    }

    /** All sizes together, each times a weight, m/s, [surfels]. */
    float[] together(double[] weight) {
        int n = surfels();
        float[] sum = new float[n];
        for (int b = 0; b < bins; b++) {
            float w = (float) weight[b];
            for (int s = 0; s < n; s++) {
                sum[s] += w * filmMPerS[b * n + s];
            }
        }
        return sum;
    }
}
