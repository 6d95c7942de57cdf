package baymist.print;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** Keeps a figure and its unit on one line. */
final class Unbroken {
    private static final char NO_BREAK = '\u00a0';
    private static final Pattern FIGURE =
            Pattern.compile("(?<=\\d) (?=(?:mm|cm|m|in|ft|mil|\u00b5m|s|min|h|g|mL|L|fl oz|psi|kPa|cfm|%"
                    + "|\u00b0[CF]|(?:c?m|in)[\u00b2\u00b3]|(?:mm|in)/s|m?L/min|m?g/m\u00b3)(?![\\w]))");

    private Unbroken() {}

    /** The same words; drawings are left as they are. */
    static Map<String, Object> of(Map<String, Object> words) {
        Map<String, Object> all = new LinkedHashMap<>();
        words.forEach((name, value) -> all.put(name, name.endsWith("Svg") ? value : any(value)));
        return all;
    }

    @SuppressWarnings("unchecked")
    private static Object any(Object value) {
        if (value instanceof String s) {
            return words(s);
        }
        if (value instanceof Map<?, ?> m) {
            return of((Map<String, Object>) m);
        }
        return value instanceof List<?> list ? list.stream().map(Unbroken::any).toList() : value;
    }

    static String words(String text) {
        return FIGURE.matcher(text).replaceAll(String.valueOf(NO_BREAK));
    }
}
