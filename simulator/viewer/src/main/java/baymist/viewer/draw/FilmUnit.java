package baymist.viewer.draw;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** Units in which film is told. */
public enum FilmUnit {
    MICROMETRES("µm", 1e-6),
    /** Thousandths of an inch. */
    MILS("mil", 25.4e-6);

    private final String symbol;
    private final double metres;

    FilmUnit(String symbol, double metres) {
        this.symbol = symbol;
        this.metres = metres;
    }

    public String symbol() {
        return symbol;
    }

    /** Metres that one of them has. */
    public double metres() {
        return metres;
    }

    /** A film in this unit with its symbol, to two digits. */
    public String text(double filmM) {
        return number(filmM) + " " + symbol;
    }

    /** The number alone, to two digits. */
    public String number(double filmM) {
        return BigDecimal.valueOf(filmM / metres)
                .round(new MathContext(2))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** 1, 2 and 5 times powers of ten of the unit between two films, as films, m. */
    public List<Double> ticksM(double lowM, double highM) {
        List<Double> ticks = new ArrayList<>();
        for (int p = (int) Math.floor(Math.log10(lowM / metres)); p <= Math.log10(highM / metres); p++) {
            for (int lead : new int[] {1, 2, 5}) {
                double m = lead * Math.pow(10, p) * metres;
                if (m >= lowM * (1 - 1e-9) && m <= highM * (1 + 1e-9)) {
                    ticks.add(m);
                }
            }
        }
        return ticks;
    }
}
