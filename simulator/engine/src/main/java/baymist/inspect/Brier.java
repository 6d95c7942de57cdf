package baymist.inspect;

/**
 * Score of forecasts that give a probability to each of several classes: {@code P = 1/n sum_i sum_j (f_ij - E_ij)^2} with E = 1 for the class
 * that came true (Brier 1950, equation 2). 0 = always certain and right, 2 = always certain and wrong.
 */
public final class Brier {
    private Brier() {}

    /**
     * The score.
     *
     * @param forecast probabilities, [forecasts][classes], each row sums to 1
     * @param outcome class that came true, [forecasts]
     */
    public static double score(double[][] forecast, int[] outcome) {
        if (forecast.length != outcome.length || outcome.length == 0) {
            throw new IllegalArgumentException(forecast.length + " forecasts, " + outcome.length + " outcomes");
        }
        double sum = 0;
        for (int i = 0; i < outcome.length; i++) {
            for (int j = 0; j < forecast[i].length; j++) {
                double miss = forecast[i][j] - (j == outcome[i] ? 1 : 0);
                sum += miss * miss;
            }
        }
        return sum / outcome.length;
    }

    /** The score of who knows only how often each class came true: {@code 1 - sum_j p_j^2}. */
    public static double ofFrequencies(int[] outcome, int classes) {
        double[] share = new double[classes];
        for (int o : outcome) {
            share[o] += 1.0 / outcome.length;
        }
        double sum = 1;
        for (double p : share) {
            sum -= p * p;
        }
        return Math.max(0, sum);
    }
}
