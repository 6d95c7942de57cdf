package baymist.spray;

import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.units.Air;

/**
 * What a wand's tip gets from the supply: pressure and liquid after the losses along the bores, and what its orifices make of them.
 *
 * @param supply as it is at the tip, without feed and tests
 * @param airKgPerS air through all orifices that have air
 * @param thrustN sum of the jets' thrust
 * @param airSpeedMPerS speed of the air where it meets the liquid: at the throats, at most sonic
 * @param orificeM mean diameter of the air orifices, by area
 * @param airLossPa total pressure lost along the air bore, Pa
 * @param liquidLossPa pressure lost along the liquid bore, Pa, whether or not the scene lets it lower the rate
 * @param meterMisfit largest relative misfit of the catch-cup tests, 0 without
 */
public record TipFlow(
        SupplySpec supply,
        double airKgPerS,
        double thrustN,
        double airSpeedMPerS,
        double orificeM,
        double airLossPa,
        double liquidLossPa,
        double meterMisfit) {
    /** Air per liquid by mass; infinite without liquid. */
    public double airLiquidRatio() {
        return supply.liquidKgPerS() > 0 ? airKgPerS / supply.liquidKgPerS() : Double.POSITIVE_INFINITY;
    }

    /**
     * State at the tip of a wand.
     *
     * @throws IllegalArgumentException if the catch-cup tests can't be (see {@link LiquidMeter#fit})
     */
    public static TipFlow of(SupplySpec stated, WandSpec wand, ProductSpec product, Air air) {
        SupplySpec at = stated;
        double misfit = 0;
        double lost = 0;
        if (stated instanceof SupplySpec.Pressure p) {
            double liquid = p.liquidKgPerS();
            if (!p.cups().isEmpty()) {
                LiquidMeter meter = LiquidMeter.fit(p.cups(), product, boreLengthM(p, wand), wand.boreM());
                liquid = meter.rateKgPerS(p.gaugePa(), product, boreLengthM(p, wand), wand.boreM());
                misfit = meter.worstMisfit();
            }
            double gauge = tipGaugePa(p, wand.tip(), wand.lengthM(), air);
            lost = p.gaugePa() - gauge;
            at = new SupplySpec.Pressure(gauge, p.dischargeCoefficient(), liquid, p.droplets());
        }
        double length = stated instanceof SupplySpec.Pressure p ? boreLengthM(p, wand) : wand.lengthM();
        double liquidLoss = BoreLoss.of(
                        length, wand.boreM(), at.liquidKgPerS(), product.densityKgPerM3(), product.viscosityPaS())
                .pressurePa();
        return figures(at, wand.tip(), air, lost, liquidLoss, misfit);
    }

    private static double boreLengthM(SupplySpec.Pressure p, WandSpec wand) {
        SupplySpec.Feed feed = p.feed();
        return feed != null && feed.lengthM() > 0 ? feed.lengthM() : wand.lengthM();
    }

    private static double tipGaugePa(SupplySpec.Pressure p, TipSpec tip, double wandM, Air air) {
        SupplySpec.Feed feed = p.feed();
        double orifices = Math.sqrt(orificeSum(tip, 2));
        if (feed == null || !(feed.airBoreM() > 0) || !(orifices > 0) || !(p.gaugePa() > 0)) {
            return p.gaugePa();
        }
        double length = feed.lengthM() > 0 ? feed.lengthM() : wandM;
        return FeedTube.through(
                        feed.airBoreM(),
                        feed.friction() * length / feed.airBoreM(),
                        orifices,
                        p.dischargeCoefficient(),
                        p.gaugePa(),
                        air.temperatureK(),
                        air.pressurePa())
                .tipGaugePa();
    }

    private static double orificeSum(TipSpec tip, int power) {
        return tip.jets().stream()
                .filter(j -> j.airShare() > 0)
                .mapToDouble(j -> Math.pow(j.orificeM(), power))
                .sum();
    }

    private static TipFlow figures(
            SupplySpec at, TipSpec tip, Air air, double lostPa, double liquidLossPa, double misfit) {
        double mass = 0;
        double thrust = 0;
        double speed = 0;
        for (TipSpec.Jet jet : tip.jets()) {
            if (!(jet.airShare() > 0)) {
                continue;
            }
            if (at instanceof SupplySpec.Pressure p) {
                ChokedOrifice o = ChokedOrifice.of(
                        jet.orificeM(), p.dischargeCoefficient(), p.gaugePa(), air.temperatureK(), air.pressurePa());
                mass += o.massKgPerS();
                thrust += o.thrustN();
                speed = o.exitSpeedMPerS();
            } else if (at instanceof SupplySpec.ExitSpeed e) {
                speed = e.speedMPerS();
                double m = air.densityKgPerM3() * Math.PI / 4 * jet.orificeM() * jet.orificeM() * speed;
                mass += m;
                thrust += m * speed;
            }
        }
        double area = orificeSum(tip, 2);
        double orifice = area > 0 ? orificeSum(tip, 3) / area : 0;
        return new TipFlow(at, mass, thrust, speed, orifice, lostPa, liquidLossPa, misfit);
    }
}
