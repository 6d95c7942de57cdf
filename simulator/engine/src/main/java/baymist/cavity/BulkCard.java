package baymist.cavity;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One entry of bulk data: its name and its fields after the name, continuation lines joined.
 *
 * @param fields stripped; empty where blank. Number 1 is the first after the name
 */
record BulkCard(String name, List<String> fields, SourcePlace place) {
    /** Real numbers may omit the E of the exponent, e.g. 7.59-16; D is an exponent sign too. */
    private static final Pattern REAL =
            Pattern.compile("([+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+))(?:[eEdD]?([+-]?[0-9]+))?");

    String text(int number) {
        return number <= fields.size() ? fields.get(number - 1) : "";
    }

    boolean isBlank(int number) {
        return text(number).isEmpty();
    }

    int id(int number) {
        String s = text(number);
        try {
            int id = Integer.parseInt(s);
            if (id > 0) {
                return id;
            }
        } catch (NumberFormatException e) {
            throw wrong(number, "a whole number above zero");
        }
        throw wrong(number, "a whole number above zero");
    }

    /** Blank counts as zero, as in the format's rules for coordinates. */
    double real(int number) {
        String s = text(number);
        if (s.isEmpty()) {
            return 0;
        }
        Matcher m = REAL.matcher(s);
        if (!m.matches()) {
            throw wrong(number, "a finite number");
        }
        double value = Double.parseDouble(m.group(2) == null ? m.group(1) : m.group(1) + "e" + m.group(2));
        if (!Double.isFinite(value)) {
            throw wrong(number, "a finite number");
        }
        return value;
    }

    private SceneException wrong(int number, String expected) {
        return new SceneException(
                "MSH-010",
                place,
                "field " + (number + 1) + " of " + name + " is '" + Names.printable(text(number)) + "'; " + expected
                        + " expected");
    }
}
