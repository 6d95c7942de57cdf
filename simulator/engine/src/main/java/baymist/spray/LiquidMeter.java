package baymist.spray;

import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec.CatchCup;
import java.util.List;

/**
 * Liquid rate of a wand at a pressure, from catch-cup tests at other pressures or with other wands.
 *
 * <p>The driving pressure is spent in two places: the metering orifice at the tip, {@code K m²} (turbulent orifice, constant
 * discharge coefficient), and the wand's bore, {@link BoreLoss}. K is fitted to the tests by least squares in pressure, {@code
 * K = Σ (Δp - loss) m² / Σ m⁴}; the rate at another pressure or with another bore solves {@code K m² + loss(m) = Δp}. With a
 * short wide bore this is the square-root law, with a long thin one the rate goes linearly with pressure.
 *
 * <p>ASSUMED: the liquid is driven by the pressure of the supply (a pressure pot) against the cavity's ambient pressure.
 *
 * @param perFlow2 K, Pa s²/kg²
 * @param worstMisfit largest relative difference of a test's rate from the fitted one
 */
public record LiquidMeter(double perFlow2, double worstMisfit) {
    /**
     * Fits the meter.
     *
     * @param lengthM,boreM of the wand for tests that state none, m
     * @throws IllegalArgumentException if the bore alone takes more pressure than a test had; the message says how much
     */
    public static LiquidMeter fit(List<CatchCup> cups, ProductSpec product, double lengthM, double boreM) {
        double above = 0;
        double below = 0;
        for (CatchCup cup : cups) {
            double m2 = cup.liquidKgPerS() * cup.liquidKgPerS();
            double left = cup.gaugePa() - lossPa(cup, cup.liquidKgPerS(), product, lengthM, boreM);
            if (!(left > 0)) {
                throw new IllegalArgumentException(String.format(
                        java.util.Locale.ROOT,
                        "at the %.3g g/s caught the bore alone takes %.3g kPa of the %.3g kPa that drove the test",
                        1e3 * cup.liquidKgPerS(),
                        1e-3 * (cup.gaugePa() - left),
                        1e-3 * cup.gaugePa()));
            }
            above += left * m2;
            below += m2 * m2;
        }
        LiquidMeter meter = new LiquidMeter(above / below, 0);
        double worst = 0;
        for (CatchCup cup : cups) {
            double rate = meter.rateKgPerS(cup.gaugePa(), product, or(cup.lengthM(), lengthM), or(cup.boreM(), boreM));
            worst = Math.max(worst, Math.abs(cup.liquidKgPerS() / rate - 1));
        }
        return new LiquidMeter(meter.perFlow2, worst);
    }

    private static double lossPa(CatchCup cup, double kgPerS, ProductSpec product, double lengthM, double boreM) {
        return loss(or(cup.lengthM(), lengthM), or(cup.boreM(), boreM), kgPerS, product);
    }

    private static double or(double stated, double otherwise) {
        return stated > 0 ? stated : otherwise;
    }

    private static double loss(double lengthM, double boreM, double kgPerS, ProductSpec product) {
        return BoreLoss.of(lengthM, boreM, kgPerS, product.densityKgPerM3(), product.viscosityPaS())
                .pressurePa();
    }

    /** Liquid rate at a driving pressure through a bore, kg/s; 0 without pressure. */
    public double rateKgPerS(double gaugePa, ProductSpec product, double lengthM, double boreM) {
        double low = 0;
        double high = Math.sqrt(Math.max(0, gaugePa) / perFlow2);
        for (int i = 0; i < 100; i++) {
            double m = 0.5 * (low + high);
            if (perFlow2 * m * m + loss(lengthM, boreM, m, product) < gaugePa) {
                low = m;
            } else {
                high = m;
            }
        }
        return 0.5 * (low + high);
    }
}
