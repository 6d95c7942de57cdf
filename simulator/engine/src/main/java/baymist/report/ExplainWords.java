package baymist.report;

import baymist.explain.Explanation;
import baymist.explain.Remedy;
import java.util.Locale;

/** An explanation in one paragraph, to be read aloud. */
public final class ExplainWords {
    private ExplainWords() {}

    /** The place, the cause, what proves it, what to do first. */
    public static String summary(Explanation e) {
        String place = e.region().id() > 0
                ? String.format(
                        Locale.ROOT,
                        "Bare region %d (%s), %s, %s, gets %s.",
                        e.region().id(),
                        e.region().label(),
                        e.region().where(),
                        TextReport.area(e.region().areaM2()),
                        film(e.film().meanM()))
                : String.format(
                        Locale.ROOT,
                        "The %s gets %s, and %.0f %% of it is reached.",
                        e.region().where(),
                        film(e.film().meanM()),
                        100 * e.film().reached());
        String cause = " Cause: " + e.cause().word() + ". " + e.cause().sentence() + " "
                + (e.proved() ? "In short: " : "No run proved it; what speaks for it: ")
                + e.because() + ".";
        return place + cause + advice(e);
    }

    private static String advice(Explanation e) {
        Remedy best = e.recommended();
        if (best == null) {
            return " None of the changes that were run doubles its film or raises its reached share by 20 points.";
        }
        String first = e.because().endsWith(best.change())
                ? " That is what to try first."
                : String.format(
                        Locale.ROOT,
                        " Try first: %s; it then has %s, and %.0f %% of it is reached.",
                        best.change(),
                        film(best.after().meanM()),
                        100 * best.after().reached());
        return first + (best.kind().drills() ? " " + Remedy.DRILLING : "");
    }

    private static String film(double m) {
        double um = 1e6 * m;
        if (um == 0) {
            return "no film";
        }
        return um < 0.05
                ? "less than 0.1 um of film"
                : String.format(Locale.ROOT, um < 9.95 ? "%.1f um of film" : "%.0f um of film", um);
    }
}
