package baymist.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tech.units.indriya.function.RationalNumber;

/**
 * Reads and prints quantities: text with a unit in, SI doubles out.
 *
 * <p>{@code Quantities.parse("3/64 in", Dimension.LENGTH)} is 0.001190625 m. Factors are exact where the unit is defined exactly
 * (NIST SP 811 (2008), appendix B: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 US gal = 3.785411784 L) and the number is
 * rounded to a double once, after conversion. Pressures are gauge; a unit that counts from vacuum ({@code psia},
 * {@code bar_abs}, {@code kPa_abs}) has the standard atmosphere 101 325 Pa taken off.
 */
public final class Quantities {
    private Quantities() {}

    /**
     * Value in SI units.
     *
     * @throws QuantityException when the text is no quantity of this dimension; its message says which units would be right
     */
    public static double parse(String text, Dimension dimension) {
        return parse(text, List.of(dimension)).si();
    }

    /**
     * A quantity of the first of the allowed dimensions that has its unit.
     *
     * @throws QuantityException as {@link #parse(String, Dimension)}
     */
    public static Quantity parse(String text, List<Dimension> allowed) {
        int drill = QuantityText.drillNumber(text);
        if (drill != 0 && allowed.contains(Dimension.LENGTH)) {
            return new Quantity(drillDiameterM(drill), Dimension.LENGTH);
        }
        String wanted = wanted(allowed);
        List<QuantityText.Term> terms = QuantityText.split(text, wanted);
        for (Dimension d : allowed) {
            if (terms.size() > 1 && !QuantityText.allowsTwoTerms(d)) {
                continue;
            }
            if (terms.stream().allMatch(t -> isUnitOf(d, t))) {
                BigDecimal si = BigDecimal.ZERO;
                for (QuantityText.Term t : terms) {
                    si = si.add(toSi(t.number(), d, t.unit()));
                }
                return new Quantity(si.doubleValue(), d);
            }
        }
        throw refuse(text, terms, wanted, allowed);
    }

    private static boolean isUnitOf(Dimension d, QuantityText.Term term) {
        if (UnitTable.get().find(d, term.unit()) != null) {
            return true;
        }
        return term.unit().isEmpty() && term.number().signum() == 0 && d.zeroNeedsNoUnit();
    }

    /** To 34 digits, so that the only rounding to be seen is the last one to a double. */
    private static BigDecimal toSi(RationalNumber number, Dimension d, String unit) {
        UnitTable.Entry entry = UnitTable.get().find(d, unit);
        if (entry == null) {
            return BigDecimal.ZERO; // a bare zero, see isUnitOf
        }
        BigDecimal si = new BigDecimal(entry.toSi().convert((Number) number).toString());
        return entry.absolute() ? si.subtract(BigDecimal.valueOf(UnitTable.ATMOSPHERE_PA)) : si;
    }

    private static QuantityException refuse(
            String text, List<QuantityText.Term> terms, String wanted, List<Dimension> allowed) {
        String unit = terms.stream()
                .map(QuantityText.Term::unit)
                .filter(u -> allowed.stream().noneMatch(d -> UnitTable.get().find(d, u) != null))
                .findFirst()
                .orElse(terms.get(0).unit());
        if (unit.isEmpty()) {
            return new QuantityException(
                    QuantityException.Kind.MISSING_UNIT, "`" + text.trim() + "` has no unit; " + wanted);
        }
        for (Dimension d : Dimension.values()) {
            if (UnitTable.get().find(d, unit) != null) {
                return new QuantityException(
                        QuantityException.Kind.WRONG_UNIT,
                        "`" + text.trim() + "` is " + d.nounWithArticle() + "; " + wanted);
            }
        }
        String near = nearSpelling(unit, allowed);
        String hint = near.isEmpty() ? "" : ", did you mean `" + near + "`?";
        return new QuantityException(
                QuantityException.Kind.UNKNOWN_UNIT,
                "`" + text.trim() + "` has an unknown unit `" + unit + "`" + (hint.isEmpty() ? "; " : hint + " ")
                        + (hint.isEmpty() ? wanted : capital(wanted)));
    }

    private static String nearSpelling(String unit, List<Dimension> allowed) {
        for (Dimension d : allowed) {
            for (String spelling : UnitTable.get().spellings(d).keySet()) {
                if (spelling.equalsIgnoreCase(unit)) {
                    return spelling;
                }
            }
        }
        return "";
    }

    private static String capital(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    /** What would be right, e.g. "a length such as 8 ft, 0.25 in or 12 mm is wanted (units: m, mm, ...)". */
    private static String wanted(List<Dimension> allowed) {
        List<String> kinds = new ArrayList<>();
        Set<String> units = new LinkedHashSet<>();
        for (Dimension d : allowed) {
            List<String> examples = d.examples();
            int last = examples.size() - 1;
            String most = String.join("`, `", examples.subList(0, Math.max(last, 1)));
            kinds.add(d.nounWithArticle() + " such as `" + most + "`"
                    + (last > 0 ? " or `" + examples.get(last) + "`" : ""));
            units.addAll(units(d));
        }
        return String.join(", or ", kinds) + " is wanted (units: " + String.join(", ", units) + ")";
    }

    /** Preferred unit symbols of a dimension. */
    public static List<String> units(Dimension dimension) {
        return UnitTable.get().symbols(dimension).stream()
                .filter(s -> !s.isEmpty())
                .toList();
    }

    /** Regular expression that every accepted text of the dimension matches (JSON Schema dialect of ECMA 262). */
    public static String pattern(Dimension dimension) {
        return QuantityText.regex(dimension, UnitTable.get());
    }

    /**
     * Diameter of a number drill, m (ASME B94.11M).
     *
     * @param number 1 to 80
     */
    public static double drillDiameterM(int number) {
        if (!NumberDrills.exists(number)) {
            throw new QuantityException(
                    QuantityException.Kind.BAD_NUMBER,
                    "there is no number drill #" + number
                            + "; number drills run from #1 (0.228 in) to #80 (0.0135 in)");
        }
        RationalNumber inches = RationalNumber.of(NumberDrills.tenThousandthsOfInch(number), 10_000);
        return toSi(inches, Dimension.LENGTH, "in").doubleValue();
    }

    /** Value of an SI quantity in another unit of its dimension. */
    public static double inUnit(double si, Dimension dimension, String unit) {
        UnitTable.Entry entry = UnitTable.get().find(dimension, QuantityText.normalise(unit));
        if (entry == null) {
            throw new IllegalArgumentException(unit + " is no unit of " + dimension.noun());
        }
        double value = entry.absolute() ? si + UnitTable.ATMOSPHERE_PA : si;
        return entry.toSi().inverse().convert(value);
    }

    /** Prints an SI quantity in a unit, e.g. {@code format(0.00635, LENGTH, "in", 3)} is "0.25 in". */
    public static String format(double si, Dimension dimension, String unit, int digits) {
        return number(inUnit(si, dimension, unit), digits) + (unit.equals("%") ? " %" : " " + unit);
    }

    /** Prints a length in µm below 1 mm, mm below 1 m, else m, to three significant digits. */
    public static String length(double lengthM) {
        double size = Math.abs(lengthM);
        String unit = size == 0 || size >= 1e-3 ? (size >= 1 ? "m" : "mm") : "µm";
        return format(lengthM, Dimension.LENGTH, unit, 3);
    }

    /** Prints a film build in µm and mil, e.g. "10 µm (0.394 mil)". */
    public static String build(double thicknessM) {
        return format(thicknessM, Dimension.LENGTH, "µm", 3) + " (" + format(thicknessM, Dimension.LENGTH, "mil", 3)
                + ")";
    }

    /** A number to so many significant digits, without exponent or trailing zeros, with a point in every locale. */
    public static String number(double value, int digits) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
