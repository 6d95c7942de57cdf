package baymist.inspect;

import baymist.scene.Inspection.Seen;
import baymist.scene.TargetSpec;

/** How likely each finding is where a film is predicted: a log-normal spread about it. */
public final class FilmSpread {
    /**
     * Factor of one standard deviation of a predicted film (ASSUMED: droplets known within 1.3, ray sampling, and a hand that holds neither
     * depth nor rate truer).
     */
    public static final double FACTOR = 1.6;

    /** The same of a measured film beside a fitted prediction (ASSUMED: the steps of a notched gauge, and the spot where it is set). */
    public static final double GAUGE = 1.3;

    /** Film of a dry place, m: predicted films below it are as good as none. */
    static final double NONE_M = 1e-9;

    private FilmSpread() {}

    /** Probabilities of wet, thin and dry, in the order of {@link Seen}. */
    public static double[] of(double filmM, TargetSpec targets) {
        return of(filmM, targets, FACTOR);
    }

    /** The same with another factor of one standard deviation. */
    static double[] of(double filmM, TargetSpec targets, double factor) {
        double wet = above(filmM, targets.buildM(), factor);
        double reached = above(filmM, targets.hazeM(), factor);
        return new double[] {wet, Math.max(0, reached - wet), 1 - reached};
    }

    private static double above(double filmM, double limitM, double factor) {
        return normal(Math.log(Math.max(NONE_M, filmM) / limitM) / Math.log(factor));
    }

    /** What is expected to be seen at a film. */
    public static Seen expected(double filmM, TargetSpec targets) {
        return filmM >= targets.buildM() ? Seen.WET : filmM >= targets.hazeM() ? Seen.THIN : Seen.DRY;
    }

    /** Distribution function of the normal law (Abramowitz and Stegun 26.2.17, error below 7.5e-8). */
    static double normal(double x) {
        if (x < 0) {
            return 1 - normal(-x);
        }
        double t = 1 / (1 + 0.2316419 * x);
        double poly = t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return 1 - Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI) * poly;
    }
}
