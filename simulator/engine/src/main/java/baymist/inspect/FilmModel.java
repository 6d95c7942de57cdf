package baymist.inspect;

import java.util.List;

/**
 * Film of each place at any setting, from a few runs: the logarithm of the film goes through the runs' by cubic Lagrange pieces in the
 * logarithm of the droplet size, and goes with the liquid rate. The level at the stated setting is that of the full run; where the full run
 * has film and the planning run none (or the other way round) the planning run's own level holds.
 */
final class FilmModel {
    /** Level and change are taken from different runs no further apart than this factor. */
    private static final double FARTHEST = 8;

    private final double range;
    private final double[][] logFilm;
    private final double[] shift;
    /** The part of {@code shift} that came of runs at fitted settings. */
    private final double[] correction;

    /**
     * @param range factor either way of the first and last of {@code films}; 1 = one run
     * @param films film of each place, m, by size, evenly in its logarithm, [sizes][places]
     * @param levelM film of each place in the full run at the stated setting, m
     */
    FilmModel(double range, List<double[]> films, double[] levelM) {
        this.range = range;
        logFilm = new double[films.size()][levelM.length];
        for (int i = 0; i < logFilm.length; i++) {
            for (int p = 0; p < levelM.length; p++) {
                logFilm[i][p] = log(films.get(i)[p]);
            }
        }
        shift = new double[levelM.length];
        correction = new double[levelM.length];
        double most = Math.log(FARTHEST);
        for (int p = 0; p < shift.length; p++) {
            double s = log(levelM[p]) - logAt(p, 0);
            shift[p] = Math.abs(s) > most ? 0 : s;
        }
    }

    private static double log(double filmM) {
        return Math.log(Math.max(FilmSpread.NONE_M, filmM));
    }

    /** Film of each place, m. */
    double[] at(Setting s) {
        double[] film = new double[shift.length];
        for (int p = 0; p < film.length; p++) {
            film[p] = Math.exp(logAt(p, Math.log(s.size())) + shift[p]) * s.liquid();
        }
        return film;
    }

    /** Moves every place so that a planning run made at a setting is met there; the full run's share of the level stays. */
    void correct(Setting at, double[] filmM) {
        for (int p = 0; p < shift.length; p++) {
            double planned = logAt(p, Math.log(at.size())) + Math.log(at.liquid());
            double moved = log(filmM[p]) - planned - correction[p];
            shift[p] += moved;
            correction[p] += moved;
        }
    }

    private double logAt(int place, double logSize) {
        int n = logFilm.length;
        if (n == 1 || range <= 1) {
            return logFilm[0][place];
        }
        double x = (logSize / Math.log(range) + 1) / 2 * (n - 1);
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
