package baymist.viewer.draw;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** Numbers that a scale is marked with. */
public final class RoundNumbers {
    private RoundNumbers() {}

    /** 1, 2 and 5 times powers of ten between two numbers above 0, ends included. */
    public static List<Double> between(double low, double high) {
        List<Double> numbers = new ArrayList<>();
        for (int p = (int) Math.floor(Math.log10(low)); p <= Math.log10(high) + 1e-9; p++) {
            for (int lead : new int[] {1, 2, 5}) {
                double n = lead * Math.pow(10, p);
                if (n >= low * (1 - 1e-9) && n <= high * (1 + 1e-9)) {
                    numbers.add(n);
                }
            }
        }
        return numbers;
    }

    /** Two digits, never with a power of ten. */
    public static String plain(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(2))
                .stripTrailingZeros()
                .toPlainString();
    }
}
