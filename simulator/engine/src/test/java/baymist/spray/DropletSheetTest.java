package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.DropletSpec;
import baymist.scene.DropletSpec.Correlation;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.units.Air;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class DropletSheetTest {
    @Test
    void aDataSheetsThreeFiguresAreMetExactly() {
        // Any sheet; here the quantiles of Rosin-Rammler q 2, Dv50 30 um (Dv10 0.32459 X, Dv90 1.51743 X): row AT-08
        double x = 30e-6 / 0.83255;
        VolumeDistribution v = VolumeDistribution.of(new DropletSpec.Sheet(0.32459 * x, 30e-6, 1.51743 * x));
        assertEquals(0.32459 * x, v.quantileM(0.1), 1e-6 * x);
        assertEquals(30e-6, v.quantileM(0.5), 1e-11);
        assertEquals(1.51743 * x, v.quantileM(0.9), 1e-6 * x);
        assertEquals(1.4327, v.span(), 1e-3);
        // between its figures it lies within 2 % of volume of the distribution that they came from
        VolumeDistribution rr = VolumeDistribution.of(new DropletSpec.RosinRammler(30e-6, 2));
        for (double d = 8e-6; d < 60e-6; d += 4e-6) {
            assertEquals(rr.below(d), v.below(d), 0.03);
        }
    }

    @Test
    void aSymmetricSheetIsALogNormal() {
        // log-normal s 2.0: D32/Dv50 0.78645, Dv90/Dv50 2.43100 (Hatch & Choate 1929): row AT-09
        VolumeDistribution v = VolumeDistribution.of(new DropletSpec.Sheet(30e-6 / 2.43100, 30e-6, 30e-6 * 2.43100));
        assertEquals(0.78645, v.sauterM() / 30e-6, 1e-4);
        assertEquals(
                1,
                Arrays.stream(DropletBins.of(new DropletSpec.Sheet(12e-6, 30e-6, 50e-6), 10)
                                .share())
                        .sum(),
                1e-15);
    }

    @Test
    void aFinerSettingScalesEveryDiameter() {
        DropletSpec stated = new DropletSpec.RosinRammler(30e-6, 2);
        SizeBins whole = DropletBins.of(stated, 8);
        SizeBins finer = DropletBins.of(new DropletSpec.Adjusted(stated, 0.5, 1.3), 8);
        assertArrayEquals(whole.share(), finer.share(), 1e-12);
        for (int b = 0; b < 8; b++) {
            assertEquals(0.5 * whole.diameterM()[b], finer.diameterM()[b], 1e-9 * whole.diameterM()[b]);
        }
        DropletSpec classes = new DropletSpec.Classes(new double[] {10e-6, 20e-6}, new double[] {0.5, 0.5});
        assertEquals(
                40e-6,
                DropletBins.of(new DropletSpec.Adjusted(classes, 2, 1.3), 8).diameterM()[1],
                1e-15);
        DropletSpec scaled = new DropletSpec.Adjusted(stated, 1.5, 1.3);
        VolumeDistribution v = java.util.Objects.requireNonNull(DropletBins.distribution(scaled));
        assertEquals(45e-6, v.medianM(), 1e-15);
        assertEquals(45e-6, v.quantileM(0.5), 1e-12);
        assertEquals(
                1.5
                        * VolumeDistribution.of(new DropletSpec.RosinRammler(30e-6, 2))
                                .sauterM(),
                v.sauterM(),
                1e-15);
    }

    @Test
    void movedSharesAreThoseOfTheMovedDistribution() {
        DropletSpec stated = new DropletSpec.RosinRammler(30e-6, 2);
        assertArrayEquals(DropletBins.of(stated, 10).share(), DropletBins.movedShares(stated, 10, 1), 1e-12);
        double[] coarse = DropletBins.movedShares(stated, 10, 1.5);
        assertEquals(1, Arrays.stream(coarse).sum(), 1e-12);
        SizeBins bins = DropletBins.of(stated, 10);
        double mean = 0;
        for (int b = 0; b < 10; b++) {
            mean += coarse[b] * Math.log(bins.diameterM()[b]);
        }
        double before = 0;
        for (int b = 0; b < 10; b++) {
            before += bins.share()[b] * Math.log(bins.diameterM()[b]);
        }
        assertEquals(Math.log(1.5), mean - before, 0.05);
        DropletSpec classes = new DropletSpec.Classes(new double[] {10e-6, 20e-6, 40e-6}, new double[] {0.2, 0.5, 0.3});
        assertArrayEquals(new double[] {0, 0.2, 0.8}, DropletBins.movedShares(classes, 3, 2), 1e-12);
        assertArrayEquals(new double[] {0.7, 0.3, 0}, DropletBins.movedShares(classes, 3, 0.5), 1e-12);
        assertArrayEquals(new double[] {1}, DropletBins.movedShares(new DropletSpec.Tracer(), 3, 2), 0);
    }

    @Test
    void aCorrelationGivesItsSauterMeanAndItsRange() {
        ProductSpec oil = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15);
        TipSpec.Jet jet = new TipSpec.Jet(0, 0, 1e-3, 1, 1);
        WandSpec wand = new WandSpec("w", 1, 6e-3, 2e-3, new TipSpec("t", List.of(jet)));
        double air = 1.204 * Math.PI / 4 * 1e-6 * 150;
        SupplySpec supply = new SupplySpec.ExitSpeed(150, air / 4, new DropletSpec.Tracer());
        TipFlow tip = TipFlow.of(supply, wand, oil, Air.STANDARD);
        assertEquals(4, tip.airLiquidRatio(), 1e-9);
        for (Correlation.Form form : Correlation.Form.values()) {
            AtomisedSizes sizes = AtomisedSizes.of(new Correlation(form, 2.4, false), tip, oil, Air.STANDARD);
            double sauter = VolumeDistribution.of(sizes.sizes()).sauterM();
            assertEquals(sizes.estimate().sauterM(), sauter, 1e-9 * sauter);
            // 40 mPa.s is the end of the air-blast range and beyond that of Nukiyama and Tanasawa (30 mPa.s)
            assertEquals(
                    form != Correlation.Form.NUKIYAMA_TANASAWA, sizes.estimate().inRange());
            assertTrue(Atomiser.range(form).contains("mPa.s"));
        }
        TipFlow fast = TipFlow.of(
                new SupplySpec.Pressure(551_581, 0.85, 1e-4, new DropletSpec.Tracer()), wand, oil, Air.STANDARD);
        assertEquals(314, fast.airSpeedMPerS(), 2);
        assertFalse(AtomisedSizes.of(new Correlation(Correlation.Form.RIZK_LEFEBVRE, 2, false), fast, oil, Air.STANDARD)
                .estimate()
                .inRange());
        assertThrows(
                IllegalArgumentException.class,
                () -> DropletBins.of(new Correlation(Correlation.Form.RIZK_LEFEBVRE, 2, false), 4));
    }
}
