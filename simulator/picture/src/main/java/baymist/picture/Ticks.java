package baymist.picture;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Round numbers: 1, 2 or 5 times a power of ten. */
final class Ticks {
    private Ticks() {}

    /** The largest round number that is not above {@code value} (&gt; 0). */
    static double roundDown(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        double lead = value / power;
        return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
    }

    /** The smallest round number that is not below {@code value} (&gt; 0). */
    static double roundUp(double value) {
        double low = roundDown(value);
        if (low >= value) {
            return low;
        }
        double lead = low / Math.pow(10, Math.floor(Math.log10(low) + 1e-9));
        return lead > 4.5 ? 2 * low : lead > 1.5 ? 2.5 * low : 2 * low;
    }

    /** Multiples of a round step from 0 to {@code high}, some five of them. */
    static List<Double> upTo(double high) {
        List<Double> ticks = new ArrayList<>();
        if (!(high > 0)) {
            return List.of(0.0);
        }
        double step = roundDown(high / 4);
        for (int i = 0; i * step <= high * (1 + 1e-9); i++) {
            ticks.add(i * step);
        }
        return ticks;
    }

    /** 1, 2 and 5 times powers of ten within a range, ends included. */
    static List<Double> decades(double low, double high) {
        List<Double> ticks = new ArrayList<>();
        int first = (int) Math.floor(Math.log10(low));
        int last = (int) Math.ceil(Math.log10(high));
        for (int p = first; p <= last; p++) {
            for (int lead : new int[] {1, 2, 5}) {
                double t = lead * Math.pow(10, p);
                if (t >= low * (1 - 1e-9) && t <= high * (1 + 1e-9)) {
                    ticks.add(t);
                }
            }
        }
        return ticks;
    }

    /** Shortest plain writing of a number rounded to so many significant digits. */
    static String plain(double value, int digits) {
        if (value == 0) {
            return "0";
        }
        return BigDecimal.valueOf(value)
                .round(new java.math.MathContext(digits))
                .stripTrailingZeros()
                .toPlainString();
    }
}
