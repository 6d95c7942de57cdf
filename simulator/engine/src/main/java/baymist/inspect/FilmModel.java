package baymist.inspect;

import java.util.List;

/**
 * Film of each place at any setting, from a few runs. The logarithm of a film goes through the runs' by cubic Lagrange pieces in the logarithm
 * of the droplet size, and by a parabola in that of the liquid rate (a film that runs off or drips does not grow in step with it); the two add
 * up. The level at the stated setting is that of the full run; where the full run has film and the planning run none (or the other way round)
 * the planning run's own level holds.
 */
final class FilmModel {
    /** Level and change are taken from different runs no further apart than this factor. */
    private static final double FARTHEST = 8;

    /**
     * Runs that the model goes through.
     *
     * @param sizeRange factor either way of the first and last of {@code bySize}; 1 = one run
     * @param bySize film of each place at the stated liquid rate, m, by size evenly in its logarithm, [sizes][places]
     * @param liquidRange factor either way of the liquid rate
     * @param least,most film of each place at the stated size with the least and most liquid, m, [places]
     */
    record Runs(double sizeRange, List<double[]> bySize, double liquidRange, double[] least, double[] most) {}

    private final Runs runs;
    private final double[][] logFilm;
    private final double[] shift;
    /** The part of {@code shift} that came of runs at fitted settings. */
    private final double[] correction;
    /** What the least and the most liquid add to the logarithm of the film, [places]. */
    private final double[] atLeast;

    private final double[] atMost;

    /** @param levelM film of each place in the full run at the stated setting, m */
    FilmModel(Runs runs, double[] levelM) {
        this.runs = runs;
        int n = levelM.length;
        logFilm = new double[runs.bySize().size()][n];
        for (int i = 0; i < logFilm.length; i++) {
            for (int p = 0; p < n; p++) {
                logFilm[i][p] = log(runs.bySize().get(i)[p]);
            }
        }
        shift = new double[n];
        correction = new double[n];
        atLeast = new double[n];
        atMost = new double[n];
        double far = Math.log(FARTHEST);
        for (int p = 0; p < n; p++) {
            double stated = bySize(p, 0);
            double s = log(levelM[p]) - stated;
            shift[p] = Math.abs(s) > far ? 0 : s;
            atLeast[p] = log(runs.least()[p]) - stated;
            atMost[p] = log(runs.most()[p]) - stated;
        }
    }

    private static double log(double filmM) {
        return Math.log(Math.max(FilmSpread.NONE_M, filmM));
    }

    /** Film of each place, m. */
    double[] at(Setting s) {
        double[] film = new double[shift.length];
        for (int p = 0; p < film.length; p++) {
            film[p] = Math.exp(planned(p, s) + shift[p]);
        }
        return film;
    }

    /** Moves every place so that a planning run made at a setting is met there; the full run's share of the level stays. */
    void correct(Setting at, double[] filmM) {
        for (int p = 0; p < shift.length; p++) {
            double moved = log(filmM[p]) - planned(p, at) - correction[p];
            shift[p] += moved;
            correction[p] += moved;
        }
    }

    private double planned(int place, Setting s) {
        return bySize(place, Math.log(s.size())) + byLiquid(place, Math.log(s.liquid()));
    }

    /** Parabola through the least, the stated (0) and the most. */
    private double byLiquid(int place, double logLiquid) {
        double x = logLiquid / Math.log(runs.liquidRange());
        return atLeast[place] * x * (x - 1) / 2 + atMost[place] * x * (x + 1) / 2;
    }

    private double bySize(int place, double logSize) {
        int n = logFilm.length;
        if (n == 1 || runs.sizeRange() <= 1) {
            return logFilm[0][place];
        }
        double x = (logSize / Math.log(runs.sizeRange()) + 1) / 2 * (n - 1);
        int first = (int) Math.max(0, Math.min(n - 4, Math.floor(x) - 1));
        int last = Math.min(n - 1, first + 3);
        double sum = 0;
        for (int i = first; i <= last; i++) {
            double weight = 1;
            for (int j = first; j <= last; j++) {
                weight *= i == j ? 1 : (x - j) / (i - j);
            }
            sum += weight * logFilm[i][place];
        }
        return sum;
    }
}
