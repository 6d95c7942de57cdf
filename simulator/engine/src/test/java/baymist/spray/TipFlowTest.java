package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.SupplySpec.CatchCup;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.units.Air;
import java.util.List;
import org.junit.jupiter.api.Test;

class TipFlowTest {
    private static final ProductSpec OIL = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15);
    private static final DropletSpec SIZES = new DropletSpec.RosinRammler(30e-6, 2);
    private static final double PSI80 = 551_580.58;

    private static WandSpec wand(double lengthM, double boreM, double orificeM, int jets) {
        TipSpec.Jet jet = new TipSpec.Jet(1, 0, orificeM, 1.0 / jets, 1.0 / jets);
        return new WandSpec("w", lengthM, 8e-3, boreM, new TipSpec("t", java.util.Collections.nCopies(jets, jet)));
    }

    private static SupplySpec.Pressure fed(double boreM, double lengthM, double friction) {
        return new SupplySpec.Pressure(
                PSI80, 0.85, 5e-4, SIZES, new SupplySpec.Feed(boreM, lengthM, friction), List.of());
    }

    @Test
    void withoutFeedThePressureHoldsAtTheTip() {
        SupplySpec stated = new SupplySpec.Pressure(PSI80, 0.85, 5e-4, SIZES);
        TipFlow t = TipFlow.of(stated, wand(1.2, 2e-3, 0.8e-3, 1), OIL, Air.STANDARD);
        assertEquals(stated, t.supply());
        assertEquals(0, t.airLossPa());
        // Hagen-Poiseuille: 128 mu L Q/(pi d^4)
        assertEquals(128 * 0.04 * 1.2 * 5e-4 / 880 / (Math.PI * 16e-12), t.liquidLossPa(), 1e-6 * t.liquidLossPa());
        assertEquals(t.airKgPerS() / 5e-4, t.airLiquidRatio(), 1e-12);
    }

    @Test
    void aTubeThatEndsOpenPassesTheFannoShare() {
        // Shapiro (1953), ch. 6: fL/D 6 leaves 0.4711 of the frictionless choked flow of the bore (row CH-19). A tip
        // whose orifices
        // are as wide as the bore with coefficient 1 lets the bore's end choke.
        double d = 1.6e-3;
        FeedTube.Flow flow = FeedTube.through(d, 6, 3 * d, 1, PSI80, 293.15, 101_325);
        double open = ChokedOrifice.of(d, 1, PSI80, 293.15, 101_325).massKgPerS();
        assertTrue(flow.chokedInBore());
        assertEquals(0.4711, flow.massKgPerS() / open, 1e-3 * 0.4711);
        // the handbook row: 1.6 mm bore, 1.0 m, f 0.024, fL/D 15: 0.3331 of the bore's own
        FeedTube.Flow thin = FeedTube.through(d, 0.024 / d, 3 * d, 1, PSI80, 293.15, 101_325);
        assertEquals(0.3331, thin.massKgPerS() / open, 1e-3 * 0.3331);
        assertTrue(thin.tipGaugePa() < 0.1 * PSI80);
    }

    @Test
    void aWideBoreCostsNothingAndAThinOneMoreTheLongerItIs() {
        double free = TipFlow.of(fed(50e-3, 1, 0.024), wand(1, 2e-3, 0.8e-3, 1), OIL, Air.STANDARD)
                .airLossPa();
        assertTrue(free < 1e-4 * PSI80, "loss " + free);
        double last = 0;
        for (double length : new double[] {0.5, 1, 2, 4}) {
            TipFlow t = TipFlow.of(fed(2e-3, length, 0.024), wand(1, 2e-3, 0.8e-3, 1), OIL, Air.STANDARD);
            assertTrue(t.airLossPa() > last && t.airLossPa() < PSI80);
            last = t.airLossPa();
        }
        assertTrue(last > 0.1 * PSI80, "4 m of 2 mm before a 0.8 mm orifice takes " + last);
    }

    @Test
    void slowAirLosesByDarcyAndWeisbach() {
        // Incompressible limit: dp = f L/D rho v^2/2 with the density of the supply. 0.3 mm orifice behind 4 mm: Mach
        // 0.005.
        double d = 4e-3;
        FeedTube.Flow flow = FeedTube.through(d, 12, 0.3e-3, 0.85, PSI80, 293.15, 101_325);
        double rho = (101_325 + PSI80) / (Air.GAS_CONSTANT * 293.15);
        double v = flow.massKgPerS() / rho / (Math.PI / 4 * d * d);
        double expected = 12 * 0.5 * rho * v * v;
        assertEquals(expected, PSI80 - flow.tipGaugePa(), 0.01 * expected);
        assertFalse(flow.chokedInBore());
        assertEquals(0, flow.inletMach(), 0.01);
    }

    @Test
    void massPassesTubeAndOrificesAlike() {
        for (double orifice : new double[] {0.3e-3, 0.8e-3, 1.5e-3, 3e-3}) {
            FeedTube.Flow f = FeedTube.through(2e-3, 15, orifice, 0.85, PSI80, 293.15, 101_325);
            double through = ChokedOrifice.of(orifice, 0.85, f.tipGaugePa(), 293.15, 101_325)
                    .massKgPerS();
            assertEquals(f.massKgPerS(), through, 1e-6 * through);
        }
    }

    @Test
    void withoutABoreTheRateGoesWithTheRootOfPressure() {
        // Turbulent orifice: Q ~ sqrt(dp); a bore of 20 mm costs nothing.
        LiquidMeter m = LiquidMeter.fit(List.of(new CatchCup(5e-4, 200e3, 0, 0)), OIL, 0.5, 20e-3);
        assertEquals(1e-3, m.rateKgPerS(800e3, OIL, 0.5, 20e-3), 1e-6);
        assertEquals(5e-4, m.rateKgPerS(200e3, OIL, 0.5, 20e-3), 1e-12);
        assertEquals(0, m.worstMisfit(), 1e-9);
    }

    @Test
    void aLongThinBoreMakesTheRateLinearAndLowersIt() {
        double bore = 1e-3;
        double perFlow = 128 * 0.04 / 880 * 2 / (Math.PI * 1e-12);
        double rate = 0.99 * 500e3 / perFlow;
        LiquidMeter m = LiquidMeter.fit(List.of(new CatchCup(rate, 500e3, 0, 0)), OIL, 2, bore);
        assertEquals(2 * rate, m.rateKgPerS(1000e3, OIL, 2, bore), 0.01 * 2 * rate);
        assertTrue(m.rateKgPerS(500e3, OIL, 4, bore) < 0.55 * rate, "a longer wand sprays less");
        assertTrue(m.rateKgPerS(500e3, OIL, 2, 2 * bore) > 2 * rate, "a wider bore sprays more");
    }

    @Test
    void testsThatDisagreeAreFittedAndToldByHowMuch() {
        LiquidMeter good = LiquidMeter.fit(
                List.of(new CatchCup(5e-4, 200e3, 0, 0), new CatchCup(1e-3, 800e3, 0, 0)), OIL, 0.5, 20e-3);
        assertEquals(0, good.worstMisfit(), 1e-3);
        LiquidMeter bad = LiquidMeter.fit(
                List.of(new CatchCup(5e-4, 200e3, 0, 0), new CatchCup(5e-4, 800e3, 0, 0)), OIL, 0.5, 20e-3);
        assertTrue(bad.worstMisfit() > 0.2);
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> LiquidMeter.fit(List.of(new CatchCup(5e-3, 200e3, 0, 0)), OIL, 2, 1e-3));
        assertTrue(e.getMessage().contains("200 kPa"), e.getMessage());
    }

    @Test
    void supplyAtTheTipHasBothLosses() {
        SupplySpec.Pressure s = new SupplySpec.Pressure(
                PSI80,
                0.85,
                5e-4,
                SIZES,
                new SupplySpec.Feed(2e-3, 0, 0.024),
                List.of(new CatchCup(5e-4, PSI80 / 4, 0, 0)));
        TipFlow t = TipFlow.of(s, wand(1.2, 2e-3, 0.8e-3, 1), OIL, Air.STANDARD);
        SupplySpec.Pressure at = (SupplySpec.Pressure) t.supply();
        assertEquals(PSI80, at.gaugePa() + t.airLossPa(), 1e-9 * PSI80);
        assertTrue(at.liquidKgPerS() > 1.9 * 5e-4 && at.liquidKgPerS() < 4 * 5e-4);
        assertTrue(at.cups().isEmpty() && at.feed() == null);
    }
}
