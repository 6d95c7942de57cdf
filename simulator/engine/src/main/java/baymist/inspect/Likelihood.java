package baymist.inspect;

import baymist.scene.Inspection;
import baymist.scene.TargetSpec;

/**
 * How likely findings are where films are predicted. How far predictions scatter is not known beforehand: too wide a spread would drive a fit
 * away from limits that the eye saw on the right side. Both spreads, of the eye's verdicts and of measured films, are therefore taken as they
 * make the findings most likely, held near what is usual while findings are few.
 */
final class Likelihood {
    /** Least probability of a finding: a slip of the pen must not outweigh everything else. */
    private static final double LEAST = 1e-3;

    /** A measured film that is off by more than this factor counts as if it were off by so much. */
    private static final double FARTHEST = Math.log(8);

    /** The usual spread of measured films counts as so many findings (ASSUMED). */
    private static final double USUAL_COUNTS = 4;

    /** Factors that the spread of verdicts is tried at. */
    private static final double[] SPREADS = {1.08, 1.15, 1.25, 1.4, FilmSpread.FACTOR, 2, 2.8};

    /** How surely the spread of verdicts is the usual one: standard deviation of the logarithm of its logarithm (ASSUMED). */
    private static final double SURE = 0.8;

    private final Inspection inspection;
    private final TargetSpec targets;

    Likelihood(Inspection inspection, TargetSpec targets) {
        this.inspection = inspection;
        this.targets = targets;
    }

    /** Minus the logarithm of the likelihood, up to a constant. */
    double misfit(double[] filmM) {
        double least = Double.POSITIVE_INFINITY;
        for (double spread : SPREADS) {
            least = Math.min(least, verdicts(filmM, spread));
        }
        return least + measured(filmM);
    }

    private double verdicts(double[] filmM, double spread) {
        double sum = 0;
        for (int i = 0; i < filmM.length; i++) {
            Inspection.Place p = inspection.places().get(i);
            if (!p.measured()) {
                double likely =
                        FilmSpread.of(filmM[i], targets, spread)[p.seen().index()];
                sum -= Math.log(Math.max(LEAST, likely));
            }
        }
        double unusual = Math.log(Math.log(spread) / Math.log(FilmSpread.FACTOR)) / SURE;
        return sum + unusual * unusual / 2;
    }

    private double measured(double[] filmM) {
        double usual = Math.log(FilmSpread.GAUGE);
        double squares = USUAL_COUNTS * usual * usual;
        double count = USUAL_COUNTS;
        for (int i = 0; i < filmM.length; i++) {
            Inspection.Place p = inspection.places().get(i);
            if (p.measured()) {
                double off = Math.log(Math.max(FilmSpread.NONE_M, filmM[i]) / p.filmM());
                off = Math.max(-FARTHEST, Math.min(FARTHEST, off));
                squares += off * off;
                count++;
            }
        }
        return count / 2 * Math.log(squares / count / (usual * usual));
    }
}
