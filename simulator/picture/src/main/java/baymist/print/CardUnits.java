package baymist.print;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Units of a card: those that the scene is written in, and where both are useful the other in brackets.
 *
 * @param inches whether lengths are told in inches first
 * @param psi whether pressures are told in psi first
 * @param fahrenheit whether temperatures are told in °F first
 */
public record CardUnits(boolean inches, boolean psi, boolean fahrenheit) {
    /** A value of its own; what stands in a title, a story or a name says nothing of the units that somebody works in. */
    private static final String VALUE = "(?m)[:\\[,]\\s*-?\\d[\\d./ ]*\\s*(?:%s)\\s*(?=[,\\]}#]|$)";

    private static final Pattern IMPERIAL = Pattern.compile(String.format(VALUE, "in|ft|inch|mil|thou|in/s|ft/s"));
    private static final Pattern METRIC = Pattern.compile(String.format(VALUE, "mm|cm|m|mm/s|m/s"));
    private static final double INCH_M = 0.0254;
    private static final double PSI_PA = 6894.757;

    /** Units by how often the text of a scene uses them. */
    public static CardUnits of(String sceneText) {
        return new CardUnits(
                count(IMPERIAL, sceneText) > count(METRIC, sceneText),
                sceneText.contains("psi"),
                Pattern.compile("\\d\\s*degF\\b").matcher(sceneText).find());
    }

    private static int count(Pattern p, String text) {
        int n = 0;
        for (Matcher m = p.matcher(text); m.find(); ) {
            n++;
        }
        return n;
    }

    /** A length such as a depth: "1500 mm". */
    String length(double m) {
        return inches ? number(m / INCH_M, 3) + " in" : millimetres(m);
    }

    /** A length in both units: "1500 mm (59.1 in)". */
    String both(double m) {
        return inches
                ? number(m / INCH_M, 3) + " in (" + millimetres(m) + ")"
                : millimetres(m) + " (" + number(m / INCH_M, 3) + " in)";
    }

    private static String millimetres(double m) {
        double mm = 1e3 * m;
        return (mm < 20 ? number(mm, 3) : String.format(Locale.ROOT, "%.0f", mm)) + " mm";
    }

    String area(double m2) {
        if (inches) {
            return number(m2 / (INCH_M * INCH_M), 3) + " in\u00b2";
        }
        return m2 >= 0.1 ? number(m2, 3) + " m\u00b2" : number(1e4 * m2, 3) + " cm\u00b2";
    }

    /** A film build: "10 µm (0.39 mil)". */
    String film(double m) {
        String mil = number(m / 25.4e-6, 2) + " mil";
        String um = number(1e6 * m, 3) + " \u00b5m";
        return inches ? mil + " (" + um + ")" : um + " (" + mil + ")";
    }

    String filmUnit() {
        return inches ? "mil" : "\u00b5m";
    }

    /** A film build in one unit. */
    String thin(double m) {
        if (m > 0 && m < 1e-8) {
            return inches ? "<0.001 mil" : "<0.01 \u00b5m";
        }
        return inches ? number(m / 25.4e-6, 2) + " mil" : number(1e6 * m, 2) + " \u00b5m";
    }

    String pressure(double pa) {
        String p = number(pa / PSI_PA, 3) + " psi";
        String k = number(1e-3 * pa, 3) + " kPa";
        return psi ? p + " (" + k + ")" : k + " (" + p + ")";
    }

    /** Air as a volume of free air a minute, in both units. */
    String air(double m3PerS) {
        String litres = number(6e4 * m3PerS, 3) + " L/min";
        String feet = number(60 * m3PerS / 0.028316847, 2) + " cfm";
        return inches ? feet + " (" + litres + ")" : litres + " (" + feet + ")";
    }

    String liquid(double m3PerS) {
        return number(6e7 * m3PerS, 3) + " mL/min";
    }

    String volume(double m3) {
        String metric = m3 >= 1e-3 ? number(1e3 * m3, 3) + " L" : number(1e6 * m3, 3) + " mL";
        return inches ? number(m3 / 29.5735e-6, 3) + " fl oz (" + metric + ")" : metric;
    }

    String temperature(double k) {
        String c = String.format(Locale.ROOT, "%.0f \u00b0C", k - 273.15);
        String f = String.format(Locale.ROOT, "%.0f \u00b0F", (k - 273.15) * 1.8 + 32);
        return fahrenheit ? f + " (" + c + ")" : c + " (" + f + ")";
    }

    /** A rate of the hand: "75 mm/s". */
    String rate(double mPerS) {
        return inches ? number(mPerS / INCH_M, 2) + " in/s" : number(1e3 * mPerS, 3) + " mm/s";
    }

    /** Seconds or minutes: "45 s", "5 min", "1 h 20 min". */
    static String time(double s) {
        long whole = Math.round(s);
        if (s < 60) {
            return number(s, s < 10 ? 2 : 3) + " s";
        }
        if (whole < 120) {
            return whole + " s";
        }
        long h = whole / 3600;
        long min = whole % 3600 / 60;
        long rest = whole % 60;
        return (h > 0 ? h + " h " : "")
                + (min > 0 || h == 0 ? min + " min" : "")
                + (rest > 0 && h == 0 ? " " + rest + " s" : "");
    }

    static String percent(double share) {
        if (share > 0 && share < 0.001) {
            return "<0.1 %";
        }
        return share < 1 && share > 0.9995 ? "99.9 %" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    static String number(double value, int digits) {
        if (!Double.isFinite(value)) {
            return "\u2013";
        }
        return BigDecimal.valueOf(value)
                .round(new MathContext(digits, RoundingMode.HALF_UP))
                .stripTrailingZeros()
                .toPlainString();
    }
}
