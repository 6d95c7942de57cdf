package baymist.inspect;

import baymist.scene.Inspection;
import baymist.scene.TargetSpec;

/** How likely findings are where films are predicted. */
final class Likelihood {
    /** Least probability of a finding: a slip of the pen must not outweigh everything else. */
    private static final double LEAST = 1e-3;

    /** A measured film that is off by more than this many standard deviations counts as if it were off by this many. */
    private static final double FARTHEST = 4;

    private final Inspection inspection;
    private final TargetSpec targets;

    Likelihood(Inspection inspection, TargetSpec targets) {
        this.inspection = inspection;
        this.targets = targets;
    }

    /** Minus the logarithm of the likelihood, up to a constant. */
    double misfit(double[] filmM) {
        double sum = 0;
        for (int i = 0; i < filmM.length; i++) {
            Inspection.Place p = inspection.places().get(i);
            if (p.measured()) {
                double off = Math.log(Math.max(FilmSpread.NONE_M, filmM[i]) / p.filmM()) / Math.log(FilmSpread.GAUGE);
                off = Math.max(-FARTHEST, Math.min(FARTHEST, off));
                sum += off * off / 2;
            } else {
                double likely = FilmSpread.of(filmM[i], targets)[p.seen().ordinal()];
                sum -= Math.log(Math.max(LEAST, likely));
            }
        }
        return sum;
    }
}
