package baymist.size;

import baymist.units.Dimension;
import baymist.units.Quantities;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/**
 * A tube that a wand can be made of.
 *
 * @param outerM outside diameter, m
 * @param boreM diameter of the liquid's bore, m, above 0 and smaller than the outside
 */
public record Tube(double outerM, double boreM) {
    /**
     * Tubes that are tried where nothing else is asked for: fractional outside diameters as tube is sold by (common practice, no source), with the
     * liquid bores of the wands in models/wands.
     */
    public static final List<Tube> USUAL = List.of(
            new Tube(0.003175, 0.0016), new Tube(0.0047625, 0.002), new Tube(0.00635, 0.003), new Tube(0.0079375, 0.003));

    public Tube {
        if (!(boreM > 0 && boreM < outerM) || !Double.isFinite(outerM)) {
            throw new IllegalArgumentException("a tube of " + outerM + " m with a bore of " + boreM + " m");
        }
    }

    /** A tube of this outside with the bore of the nearest usual one, in proportion beyond their range. */
    public static Tube usual(double outerM) {
        Tube near = USUAL.get(0);
        for (Tube t : USUAL) {
            near = Math.abs(t.outerM - outerM) < Math.abs(near.outerM - outerM) ? t : near;
        }
        double bore = Math.abs(near.outerM - outerM) < 1e-6 ? near.boreM : near.boreM * outerM / near.outerM;
        return new Tube(outerM, bore);
    }

    /** Outside and bore in mm: "6.35/3 mm". */
    public String words() {
        return mm(outerM) + "/" + mm(boreM) + " mm";
    }

    /** A length in mm to three digits, from 1 m on to four, without its unit. */
    public static String mm(double m) {
        double mm = Quantities.inUnit(m, Dimension.LENGTH, "mm");
        return BigDecimal.valueOf(mm)
                .round(new MathContext(mm >= 1000 ? 4 : 3, RoundingMode.HALF_UP))
                .stripTrailingZeros()
                .toPlainString();
    }
}
