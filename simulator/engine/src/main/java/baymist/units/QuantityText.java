package baymist.units;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.function.RationalNumber;

/**
 * The spelling of quantities: splits a text into an exact number and a unit and names what is wrong with it.
 *
 * <p>Numbers are decimals ({@code 0.25}, {@code 1e-4}), fractions ({@code 3/64}) or mixed numbers ({@code 1 3/8},
 * {@code 1-3/8}). Lengths, times and angles may have two terms ({@code 4 ft 6 in}). They are kept as exact fractions and rounded once,
 * after conversion.
 */
final class QuantityText {
    static final String DECIMAL = "(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?";
    static final String FRACTION = "(?:\\d+[ -])?\\d+/\\d+";
    private static final Pattern TERM =
            Pattern.compile("\\s*([+-]?)(" + FRACTION + "|" + DECIMAL + ")\\s*([^0-9+.,\\s-][^+-]*?)?\\s*");
    private static final Pattern SPLIT = Pattern.compile("^(.*[^0-9./\\s+-])\\s+(\\d.*)$");
    private static final Pattern DRILL =
            Pattern.compile("(?:#|No\\.?)\\s*(\\d{1,3})\\s*drill", Pattern.CASE_INSENSITIVE);
    private static final int MAX_CHARS = 64;
    private static final int MAX_EXPONENT = 60;

    private QuantityText() {}

    /** Exact number and normalised unit ("" when none). */
    record Term(RationalNumber number, String unit) {}

    /** Terms of the text; one, or two for compounds such as 4 ft 6 in. */
    static List<Term> split(String text, String wanted) {
        String plain = normalise(text);
        if (plain.length() > MAX_CHARS) {
            throw badNumber(plain.substring(0, MAX_CHARS) + "...", wanted);
        }
        Matcher two = SPLIT.matcher(plain);
        List<Term> terms = new ArrayList<>();
        if (two.matches()) {
            Term first = term(two.group(1));
            Term second = term(two.group(2));
            if (first != null && second != null) {
                terms.add(first);
                terms.add(second);
                return terms;
            }
        }
        Term only = term(plain);
        if (only == null) {
            throw badNumber(text, wanted);
        }
        terms.add(only);
        return terms;
    }

    /** Number of a drill written like "#30 drill" or "No. 30 drill", or 0. */
    static int drillNumber(String text) {
        Matcher m = DRILL.matcher(text.trim());
        return m.matches() ? Integer.parseInt(m.group(1)) : 0;
    }

    private static @Nullable Term term(String text) {
        Matcher m = TERM.matcher(text);
        if (!m.matches()) {
            return null;
        }
        RationalNumber number = number(m.group(2));
        if (number == null) {
            return null;
        }
        String unit = m.group(3);
        return new Term("-".equals(m.group(1)) ? number.negate() : number, unit == null ? "" : unit);
    }

    private static @Nullable RationalNumber number(String text) {
        int slash = text.indexOf('/');
        if (slash >= 0) {
            int gap = Math.max(text.indexOf(' '), text.indexOf('-'));
            BigInteger whole = gap < 0 ? BigInteger.ZERO : new BigInteger(text.substring(0, gap));
            BigInteger above = new BigInteger(text.substring(gap + 1, slash));
            BigInteger below = new BigInteger(text.substring(slash + 1));
            if (below.signum() == 0) {
                return null;
            }
            return RationalNumber.of(whole.multiply(below).add(above), below);
        }
        int e = Math.max(text.indexOf('e'), text.indexOf('E'));
        if (e >= 0) {
            BigInteger exponent = new BigInteger(text.substring(e + 1));
            if (exponent.abs().compareTo(BigInteger.valueOf(MAX_EXPONENT)) > 0) {
                return null; // no quantity of this trade; an exact fraction of it would fill the memory
            }
        }
        return RationalNumber.of(new BigDecimal(text));
    }

    /** One spelling for signs that look alike: micro, superscripts, dots, spaces. */
    static String normalise(String text) {
        return text.trim()
                .replace('\u00B5', 'u')
                .replace('\u03BC', 'u')
                .replace("\u00B2", "2")
                .replace("\u00B3", "3")
                .replace("^2", "2")
                .replace("^3", "3")
                .replace('\u00B7', '.')
                .replace('*', '.')
                .replace('\u00A0', ' ')
                .replaceAll("\\s+", " ");
    }

    private static QuantityException badNumber(String text, String wanted) {
        String hint = text.matches("[+-]?\\d+,\\d+.*") ? "; write the decimal with a point" : "";
        return new QuantityException(
                QuantityException.Kind.BAD_NUMBER, "`" + text + "` is not a number with a unit; " + wanted + hint);
    }

    /** Regular expression (ECMA 262 and Java) that a text of this dimension matches; for the published schema. */
    static String regex(Dimension d, UnitTable table) {
        List<String> units = new ArrayList<>();
        for (String spelling : table.spellings(d).keySet()) {
            if (!spelling.isEmpty()) {
                units.add(regexOf(spelling));
            }
        }
        String number = "[+-]?(?:" + FRACTION + "|" + DECIMAL + ")";
        String unit = "(?:" + String.join("|", units) + ")";
        String term = number + " *" + (table.find(d, "") == null ? unit : unit + "?");
        String all = allowsTwoTerms(d) ? term + "(?: +" + number + " *" + unit + ")?" : term;
        if (d == Dimension.LENGTH) {
            all = all + "|(?:#|[Nn][Oo]\\.?) *\\d{1,3} *drill";
        }
        if (d.zeroNeedsNoUnit()) {
            all = all + "|[+-]?0+(?:\\.0*)?";
        }
        return "^ *(?:" + all + ") *$";
    }

    static boolean allowsTwoTerms(Dimension d) {
        return d == Dimension.LENGTH || d == Dimension.TIME;
    }

    private static String regexOf(String spelling) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < spelling.length(); i++) {
            char c = spelling.charAt(i);
            switch (c) {
                case 'u' -> out.append("[u\u00B5\u03BC]");
                case '2' -> out.append("(?:2|\u00B2|\\^2)");
                case '3' -> out.append("(?:3|\u00B3|\\^3)");
                case '.' -> out.append("[.\u00B7*]");
                case ' ' -> out.append(" +");
                default -> out.append(c);
            }
        }
        return out.toString();
    }
}
