package baymist.scene;

import java.time.Period;
import org.jspecify.annotations.Nullable;

/**
 * What the work card of a job is told beside the job itself; no run looks at it.
 *
 * @param interval time until the treatment is due again; null = not stated, the card leaves a blank
 * @param allowance product to have at hand beyond what is sprayed, share of it, 0 or more
 * @param cupM3 what the cup or tank holds, m³, above 0
 */
public record CardSpec(@Nullable Period interval, double allowance, double cupM3) {
    /** ASSUMED: what stays in cups and hoses, a test spray and a second touch come to some fifth. */
    public static final double ALLOWANCE = 0.20;

    /** ASSUMED: a usual suction or pressure cup. */
    public static final double CUP_M3 = 1e-3;

    /** No interval, the usual allowance and cup. */
    public static final CardSpec USUAL = new CardSpec(null, ALLOWANCE, CUP_M3);

    public CardSpec {
        if (!(allowance >= 0 && cupM3 > 0)) {
            throw new IllegalArgumentException("allowance " + allowance + ", cup " + cupM3 + " m3");
        }
    }

    /** The same with another interval. */
    public CardSpec withInterval(Period other) {
        return new CardSpec(other, allowance, cupM3);
    }

    /**
     * An interval as it is written: "24 months", "1 year", "90 days", "6 weeks".
     *
     * @return the interval, or null if the text is none
     */
    public static @Nullable Period interval(String text) {
        var m = java.util.regex.Pattern.compile("([1-9]\\d{0,3})\\s+(day|week|month|year)s?")
                .matcher(text.strip());
        if (!m.matches()) {
            return null;
        }
        int n = Integer.parseInt(m.group(1));
        return switch (m.group(2)) {
            case "day" -> Period.ofDays(n);
            case "week" -> Period.ofWeeks(n);
            case "month" -> Period.ofMonths(n);
            default -> Period.ofYears(n);
        };
    }

    /** The interval in words: "24 months". */
    public static String words(Period interval) {
        StringBuilder words = new StringBuilder();
        add(words, interval.getYears(), "year");
        add(words, interval.getMonths(), "month");
        boolean weeks = interval.getDays() % 7 == 0;
        add(words, weeks ? interval.getDays() / 7 : interval.getDays(), weeks ? "week" : "day");
        return words.toString();
    }

    private static void add(StringBuilder words, int count, String unit) {
        if (count > 0) {
            words.append(words.isEmpty() ? "" : " ").append(count).append(' ').append(unit);
            words.append(count == 1 ? "" : "s");
        }
    }
}
