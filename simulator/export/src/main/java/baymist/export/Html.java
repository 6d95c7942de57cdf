package baymist.export;

import java.util.List;
import java.util.Locale;

/** Small pieces of HTML: escaped text, numbers in the user's units, tables. */
final class Html {
    private Html() {}

    static String text(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }

    static String percent(double share) {
        return Double.isFinite(share) ? format("%.1f %%", 100 * share) : "-";
    }

    /** A number of three digits without zeros at its end. */
    static String plain(double value) {
        return new java.math.BigDecimal(value)
                .round(new java.math.MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A film in µm, three digits at most. */
    static String film(double filmM) {
        double um = 1e6 * filmM;
        return um < 0.05 ? "below 0.1 \u00b5m" : format(um < 9.95 ? "%.1f \u00b5m" : "%.0f \u00b5m", um);
    }

    static String area(double areaM2) {
        double cm2 = 1e4 * areaM2;
        return cm2 < 999.5
                ? format(cm2 < 9.95 ? "%.1f cm\u00b2" : "%.0f cm\u00b2", cm2)
                : format("%.3f m\u00b2", areaM2);
    }

    static String length(double lengthM) {
        return lengthM < 0.9995 ? format("%.0f mm", 1e3 * lengthM) : format("%.2f m", lengthM);
    }

    /** A mass in grams or milligrams. */
    static String mass(double kg) {
        return kg < 1e-3 ? format("%.1f mg", 1e6 * kg) : format("%.2f g", 1e3 * kg);
    }

    /**
     * A table.
     *
     * @param words columns that hold words and not numbers, by number
     */
    static String table(String caption, List<String> head, List<Integer> words, List<List<String>> rows) {
        StringBuilder out =
                new StringBuilder("<div class=\"scroll\"><table><caption>" + text(caption) + "</caption>\n<thead><tr>");
        for (int c = 0; c < head.size(); c++) {
            out.append(words.contains(c) ? "<th class=\"words\">" : "<th>")
                    .append(text(head.get(c)))
                    .append("</th>");
        }
        out.append("</tr></thead>\n<tbody>\n");
        for (List<String> row : rows) {
            out.append("<tr>");
            for (int c = 0; c < row.size(); c++) {
                out.append(words.contains(c) ? "<td class=\"words\">" : "<td>")
                        .append(text(row.get(c)))
                        .append("</td>");
            }
            out.append("</tr>\n");
        }
        return out.append("</tbody></table></div>\n").toString();
    }
}
