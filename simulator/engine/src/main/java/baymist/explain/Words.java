package baymist.explain;

import java.util.List;
import java.util.Locale;

/** Numbers as a person says them. */
final class Words {
    private Words() {}

    /** Fills a sentence in; numbers with a point whatever the country. */
    static String say(String sentence, Object... values) {
        return String.format(Locale.ROOT, sentence, values);
    }

    /** "35 mm", "1.25 m". */
    static String length(double m) {
        if (!Double.isFinite(m)) {
            return "no distance at all";
        }
        return Math.abs(m) < 1 ? Math.round(1e3 * m) + " mm" : String.format(Locale.ROOT, "%.2f m", m);
    }

    /** "12 um", "0.4 um". */
    static String film(double m) {
        double um = 1e6 * m;
        if (um == 0) {
            return "nothing";
        }
        return um < 0.05 ? "less than 0.1 um" : String.format(Locale.ROOT, um < 9.95 ? "%.1f um" : "%.0f um", um);
    }

    static String drop(double m) {
        return Math.round(1e6 * m) + " um";
    }

    /** "45 %"; small shares never read as nothing. */
    static String share(double x) {
        double p = 100 * x;
        return p > 0 && p < 0.5 ? "less than 1 %" : p < 100 && p > 99.5 ? "nearly all" : Math.round(p) + " %";
    }

    /** "all", "nearly all", "45 %". */
    static String allOr(double x) {
        return x >= 0.9999 ? "all" : share(x);
    }

    /** "none of it", "a tenth of it" ... : a share of a region as one says it. */
    static String partOfIt(double x) {
        if (x <= 0.005) {
            return "none of it";
        }
        if (x >= 0.995) {
            return "all of it";
        }
        return share(x) + " of it";
    }

    /** "8 s", "4.5 min". */
    static String time(double s) {
        if (!Double.isFinite(s)) {
            return "never";
        }
        if (s < 10) {
            return String.format(Locale.ROOT, "%.1f s", s).replace(".0 s", " s");
        }
        return s < 120
                ? Math.round(s) + " s"
                : String.format(Locale.ROOT, "%.1f min", s / 60).replace(".0 min", " min");
    }

    /** "0.3 g/m3". */
    static String fog(double kgPerM3) {
        double g = 1e3 * kgPerM3;
        return g < 0.005 ? "less than 0.01 g/m3" : String.format(Locale.ROOT, g < 1 ? "%.2f g/m3" : "%.1f g/m3", g);
    }

    /** "0.18 m2", "55 cm2". */
    static String area(double m2) {
        return m2 >= 0.0995
                ? String.format(Locale.ROOT, "%.2f m2", m2)
                : String.format(Locale.ROOT, m2 >= 9.95e-4 ? "%.0f cm2" : "%.1f cm2", 1e4 * m2);
    }

    /** "12 mg", "3.4 g". */
    static String mass(double kg) {
        double mg = 1e6 * kg;
        return mg < 1e3
                ? String.format(Locale.ROOT, mg < 9.95 ? "%.1f mg" : "%.0f mg", mg)
                : String.format(Locale.ROOT, "%.1f g", 1e-3 * mg);
    }

    static String volume(double m3) {
        double ml = 1e6 * m3;
        return String.format(Locale.ROOT, ml < 1 ? "%.2f mL" : ml < 100 ? "%.1f mL" : "%.0f mL", ml);
    }

    /** Clock angle of the pin: "90 degrees (3 o'clock)". */
    static String clock(double rad) {
        long deg = Math.round(Math.toDegrees(rad)) % 360;
        long hour = Math.round(deg / 30.0) % 12;
        return deg + " degrees (" + (hour == 0 ? 12 : hour) + " o'clock)";
    }

    /** "rib 5", "the upper skin": a part as a sentence names it. */
    static String the(String part) {
        boolean bare = part.isEmpty() || Character.isDigit(part.charAt(part.length() - 1)) || part.startsWith("the ");
        return bare ? part : "the " + part;
    }

    static String list(List<String> names) {
        if (names.size() < 2) {
            return String.join("", names);
        }
        return String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }
}
