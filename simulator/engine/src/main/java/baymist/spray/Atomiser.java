package baymist.spray;

import baymist.scene.DropletSpec;

/**
 * Published estimates of the Sauter mean diameter of air-assisted atomisers. A viscous oil at a low air-liquid ratio lies at
 * or beyond the edge of all of them: take the result as a starting range and measure. Formulas as printed in Lefebvre (1989),
 * Atomization and Sprays, ch. 6 (from memory).
 */
public final class Atomiser {
    private Atomiser() {}

    /**
     * Liquid and air at the tip.
     *
     * @param densityKgPerM3 liquid, kg/m³
     * @param viscosityPaS liquid, Pa·s
     * @param tensionNPerM surface tension, N/m
     * @param airDensityKgPerM3 air, kg/m³
     * @param speedMPerS air speed relative to the liquid, m/s
     * @param airLiquidRatio mass of air per mass of liquid
     */
    public record Conditions(
            double densityKgPerM3,
            double viscosityPaS,
            double tensionNPerM,
            double airDensityKgPerM3,
            double speedMPerS,
            double airLiquidRatio) {}

    /**
     * An estimate in its two parts.
     *
     * @param aerodynamicM part set by air speed against surface tension, m
     * @param viscousM part set by the liquid's viscosity, m
     * @param inRange whether the conditions lie in the range that the correlation was fitted to
     */
    public record Estimate(double aerodynamicM, double viscousM, boolean inRange) {
        public double sauterM() {
            return aerodynamicM + viscousM;
        }
    }

    /** First coefficient of Nukiyama and Tanasawa in SI, 0.585: 585 µm with U in m/s, dyn/cm and g/cm³. */
    static final double NT_AERODYNAMIC = 585e-6 * Math.sqrt(1e3 / 1e-3);

    /** Second coefficient in SI, 53.2: 597 µm with poise, dyn/cm, g/cm³ and 1000 QL/QA. */
    static final double NT_VISCOUS = 597e-6 * Math.pow(10, 0.45) * Math.pow(1000, 1.5);

    /** Nukiyama and Tanasawa (1939); 30 m/s to sonic, to 30 mPa·s, ALR of 2 and more. */
    public static Estimate nukiyamaTanasawa(Conditions c) {
        double aero = NT_AERODYNAMIC / c.speedMPerS * Math.sqrt(c.tensionNPerM / c.densityKgPerM3);
        double loading = c.airDensityKgPerM3 / (c.densityKgPerM3 * c.airLiquidRatio);
        double viscous = NT_VISCOUS
                * Math.pow(c.viscosityPaS * c.viscosityPaS / (c.tensionNPerM * c.densityKgPerM3), 0.225)
                * Math.pow(loading, 1.5);
        boolean in = c.speedMPerS >= 30 && c.speedMPerS <= 343 && c.viscosityPaS <= 0.030 && c.airLiquidRatio >= 2;
        return new Estimate(aero, viscous, in);
    }

    /** Rizk and Lefebvre (1984), plain jet of diameter {@code orificeM}; 60 to 180 m/s, ALR 2 to 8, to 40 mPa·s. */
    public static Estimate rizkLefebvre(Conditions c, double orificeM) {
        double load = 1 + 1 / c.airLiquidRatio;
        double weber = c.tensionNPerM / (c.airDensityKgPerM3 * c.speedMPerS * c.speedMPerS * orificeM);
        double aero = 0.48 * orificeM * Math.pow(weber, 0.4) * Math.pow(load, 0.4);
        double viscous = 0.15
                * orificeM
                * Math.sqrt(c.viscosityPaS * c.viscosityPaS / (c.tensionNPerM * c.densityKgPerM3 * orificeM))
                * load;
        return new Estimate(aero, viscous, inAirblastRange(c));
    }

    /** El-Shanawany and Lefebvre (1980), prefilming, lip and hydraulic diameter m; same range. */
    public static Estimate elShanawanyLefebvre(Conditions c, double lipM, double hydraulicM) {
        double load = 1 + 1 / c.airLiquidRatio;
        double weber = c.tensionNPerM / (c.airDensityKgPerM3 * c.speedMPerS * c.speedMPerS * lipM);
        double aero =
                hydraulicM * load * 0.33 * Math.pow(weber, 0.6) * Math.pow(c.densityKgPerM3 / c.airDensityKgPerM3, 0.1);
        double viscous = hydraulicM
                * load
                * 0.068
                * Math.sqrt(c.viscosityPaS * c.viscosityPaS / (c.densityKgPerM3 * c.tensionNPerM * lipM));
        return new Estimate(aero, viscous, inAirblastRange(c));
    }

    /** The range that a correlation was fitted to, in words. */
    public static String range(DropletSpec.Correlation.Form form) {
        return form == DropletSpec.Correlation.Form.NUKIYAMA_TANASAWA
                ? "30 to 343 m/s, 2 kg of air per kg of liquid or more, to 30 mPa.s"
                : "60 to 180 m/s, 2 to 8 kg of air per kg of liquid, to 40 mPa.s";
    }

    private static boolean inAirblastRange(Conditions c) {
        return c.speedMPerS >= 60
                && c.speedMPerS <= 180
                && c.airLiquidRatio >= 2
                && c.airLiquidRatio <= 8
                && c.viscosityPaS <= 0.040;
    }
}
