package baymist.bench;

import java.util.Locale;

/**
 * One line of the table of ratios.
 *
 * @param what measured quantity
 * @param way kernel, element type, threads
 * @param value measured
 * @param goal what was aimed at, or NaN if the figure is only told
 * @param atMost whether the goal is an upper bound
 * @param format of both numbers, as {@link String#format}
 */
record Ratio(String what, String way, double value, double goal, boolean atMost, String format) {
    static Ratio atLeast(double goal, String what, String way, double value, String format) {
        return new Ratio(what, way, value, goal, false, format);
    }

    static Ratio atMost(double goal, String what, String way, double value, String format) {
        return new Ratio(what, way, value, goal, true, format);
    }

    static Ratio told(String what, String way, double value, String format) {
        return new Ratio(what, way, value, Double.NaN, false, format);
    }

    boolean reached() {
        return atMost ? value <= goal : value >= goal;
    }

    static String header() {
        return "| what | measured | goal | reached | way |\n|---|---|---|---|---|\n";
    }

    String row() {
        String aim = Double.isNaN(goal) ? "" : (atMost ? "at most " : "at least ") + text(goal);
        String verdict = Double.isNaN(goal) ? "" : reached() ? "yes" : "no";
        return "| " + what + " | " + text(value) + " | " + aim + " | " + verdict + " | " + way + " |\n";
    }

    private String text(double number) {
        return String.format(Locale.ROOT, format, number);
    }
}
