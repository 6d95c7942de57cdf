package baymist.units;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Stand-in to be dropped at merge: millimetres and inches alone. */
public final class Quantities {
    private static final Pattern LENGTH = Pattern.compile("\\s*([0-9.]+) *(mm|in)\\s*");

    private Quantities() {}

    /** Stand-in. */
    public static double parse(String text, Dimension dimension) {
        Matcher m = LENGTH.matcher(text);
        if (!m.matches()) {
            throw new QuantityException("\"" + text + "\" is no " + dimension);
        }
        return Double.parseDouble(m.group(1)) * (m.group(2).equals("mm") ? 1e-3 : 25.4e-3);
    }
}
