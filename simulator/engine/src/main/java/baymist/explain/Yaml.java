package baymist.explain;

import baymist.geom.Vec3;
import java.util.Locale;

/** Values as a scene file writes them. */
final class Yaml {
    private Yaml() {}

    static String length(double m) {
        return plain(1e3 * m) + " mm";
    }

    static String time(double s) {
        return plain(s) + " s";
    }

    /** To a tenth, whole where that is all. */
    private static String plain(double x) {
        String text = String.format(Locale.ROOT, "%.1f", x);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    static String clock(double rad) {
        return Math.round(Math.toDegrees(rad)) + " deg";
    }

    static String point(Vec3 p) {
        return String.format(Locale.ROOT, "[%.1f mm, %.1f mm, %.1f mm]", 1e3 * p.x(), 1e3 * p.y(), 1e3 * p.z());
    }
}
