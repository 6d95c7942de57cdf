package baymist.viewer.model;

import java.util.Locale;

/** What film is told in. */
public enum FilmUnit {
    MICROMETRE("µm", 1e6),
    /** One thousandth of an inch, 25.4 µm exactly. */
    MIL("mil", 1 / 25.4e-6);

    private final String symbol;
    private final double perM;

    FilmUnit(String symbol, double perM) {
        this.symbol = symbol;
        this.perM = perM;
    }

    public String symbol() {
        return symbol;
    }

    /** A film in m in this unit. */
    public double of(double filmM) {
        return filmM * perM;
    }

    /** A film in this unit in m. */
    public double toM(double value) {
        return value / perM;
    }

    /** Value and unit to three digits, never in powers of ten. */
    public String text(double filmM) {
        double value = of(filmM);
        if (!Double.isFinite(value)) {
            return "unknown";
        }
        double size = Math.abs(value);
        int digits = size == 0 ? 0 : (int) Math.max(0, Math.min(4, 2 - Math.floor(Math.log10(size))));
        return String.format(Locale.ROOT, "%." + digits + "f %s", value, symbol);
    }
}
