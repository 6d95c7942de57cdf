package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.DropletSpec;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class AtomiserTest {
    private static Atomiser.Conditions oil(double viscosity, double speed, double ratio) {
        return new Atomiser.Conditions(880, viscosity, 0.030, 1.2, speed, ratio);
    }

    private static void near(double expectedUm, double foundM) {
        assertEquals(expectedUm, 1e6 * foundM, 0.005 * expectedUm + 0.05);
    }

    @Test
    void correlationsGiveTheirWorkedValues() {
        // Lefebvre (1989), Atomization and Sprays, ch. 6 (from memory): rows AT-01 to AT-05
        assertEquals(0.585, Atomiser.NT_AERODYNAMIC, 1e-3);
        assertEquals(53.208, Atomiser.NT_VISCOUS, 1e-3);
        Atomiser.Estimate nt = Atomiser.nukiyamaTanasawa(oil(0.04, 300, 5));
        near(11.4, nt.aerodynamicM());
        near(27.0, nt.viscousM());
        Atomiser.Estimate rl = Atomiser.rizkLefebvre(oil(0.04, 300, 1), 1e-3);
        near(23.9, rl.aerodynamicM());
        near(73.9, rl.viscousM());
        near(52.1, Atomiser.rizkLefebvre(oil(0.04, 300, 1), 0.3e-3).sauterM());
        Atomiser.Estimate el = Atomiser.elShanawanyLefebvre(oil(0.04, 300, 1), 1e-3, 1e-3);
        near(9.4, el.aerodynamicM());
        near(33.5, el.viscousM());
    }

    @Test
    void dropsShrinkWithAirAndGrowWithViscosity() {
        // row AT-06
        double[] base = smd(0.04, 150, 2);
        double[] faster = smd(0.04, 300, 2);
        double[] richer = smd(0.04, 150, 4);
        double[] thicker = smd(0.06, 150, 2);
        for (int i = 0; i < 3; i++) {
            assertTrue(faster[i] < base[i] && richer[i] < base[i] && thicker[i] > base[i]);
        }
    }

    private static double[] smd(double mu, double u, double alr) {
        return new double[] {
            Atomiser.nukiyamaTanasawa(oil(mu, u, alr)).sauterM(),
            Atomiser.rizkLefebvre(oil(mu, u, alr), 1e-3).sauterM(),
            Atomiser.elShanawanyLefebvre(oil(mu, u, alr), 1e-3, 1e-3).sauterM()
        };
    }

    @Test
    void whatLiesOutsideTheFittedRangeSaysSo() {
        assertTrue(Atomiser.rizkLefebvre(oil(0.03, 150, 3), 1e-3).inRange());
        assertFalse(Atomiser.rizkLefebvre(oil(0.03, 300, 3), 1e-3).inRange());
        assertFalse(Atomiser.elShanawanyLefebvre(oil(0.06, 150, 3), 1e-3, 1e-3).inRange());
        assertTrue(Atomiser.nukiyamaTanasawa(oil(0.03, 300, 3)).inRange());
        assertFalse(Atomiser.nukiyamaTanasawa(oil(0.04, 300, 3)).inRange());
    }

    @Test
    void rosinRammlerRelations() {
        // Lefebvre (1989); rows AT-07, AT-08
        VolumeDistribution.RosinRammler a = new VolumeDistribution.RosinRammler(1, 2.4);
        assertEquals(0.65415, a.sauterM(), 1e-5);
        assertEquals(0.85838, a.medianM(), 1e-5);
        assertEquals(1.1929, a.span(), 1e-4);
        VolumeDistribution.RosinRammler b = new VolumeDistribution.RosinRammler(1, 2);
        assertEquals(0.56419, b.sauterM(), 1e-5);
        assertEquals(1.51743, b.quantileM(0.9), 1e-5);
        // rows AT-10, AT-11
        VolumeDistribution c = VolumeDistribution.of(new DropletSpec.RosinRammler(60e-6, 2));
        assertEquals(0.0191, c.below(10e-6), 0.005 * 0.0191);
        assertEquals(0.074, c.below(20e-6), 0.005 * 0.074);
        assertEquals(0, new VolumeDistribution.RosinRammler(1, 0.9).sauterM());
        // the Gamma function behind them: Gamma(1/2) = sqrt(pi), Gamma(5) = 24 (Abramowitz & Stegun 6.1)
        assertEquals(Math.sqrt(Math.PI), Special.gamma(0.5), 1e-13);
        assertEquals(24, Special.gamma(5), 1e-12);
        assertEquals(3.6256099082, Special.gamma(0.25), 1e-9);
    }

    @Test
    void logNormalRelations() {
        // Hatch & Choate (1929): row AT-09
        VolumeDistribution.LogNormal l =
                (VolumeDistribution.LogNormal) VolumeDistribution.of(new DropletSpec.LogNormal(1, 2));
        assertEquals(0.78645, l.sauterM(), 1e-5);
        assertEquals(0.23661, l.countMedianM(), 1e-5);
        assertEquals(2.43100, l.quantileM(0.9), 1e-4);
        assertEquals(0.5, l.below(1), 1e-15);
        // normal table (Abramowitz & Stegun 26.1): Phi(1.96) = 0.9750021, Phi(-1) = 0.1586553
        assertEquals(0.9750021, Special.normalBelow(1.96), 1e-7);
        assertEquals(0.1586553, Special.normalBelow(-1), 1e-7);
        assertEquals(1, Special.normalBelow(9));
        assertEquals(0, Special.normalBelow(-9));
    }

    @Test
    void binsKeepMassAndMeanDiameter() {
        for (int n : new int[] {1, 5, 12}) {
            SizeBins bins = DropletBins.of(new DropletSpec.RosinRammler(30e-6, 2), n);
            assertEquals(n, bins.count());
            assertEquals(1, Arrays.stream(bins.share()).sum(), 1e-15);
            double mean = 0;
            for (int i = 0; i < n; i++) {
                mean += bins.share()[i] * bins.diameterM()[i];
                assertTrue(i == 0 || bins.diameterM()[i] > bins.diameterM()[i - 1]);
            }
            // mass-weighted mean of Rosin-Rammler: X Gamma(1 + 1/q) with X = Dv50/sqrt(ln 2), q = 2
            assertEquals(30e-6 / Math.sqrt(Math.log(2)) * 0.5 * Math.sqrt(Math.PI), mean, 1e-5 * mean);
            SizeBins ln = DropletBins.of(new DropletSpec.LogNormal(30e-6, 1.8), n);
            double logMean = 0;
            for (int i = 0; i < n; i++) {
                logMean += ln.share()[i] * ln.diameterM()[i];
            }
            // mass-weighted mean of a log-normal: Dv50 exp(ln^2 s / 2)
            assertEquals(30e-6 * Math.exp(0.5 * Math.pow(Math.log(1.8), 2)), logMean, 1e-5 * logMean);
        }
    }

    @Test
    void classesAreSortedAndTracersHaveNoSize() {
        SizeBins c = DropletBins.of(new DropletSpec.Classes(new double[] {20e-6, 5e-6}, new double[] {0.7, 0.3}), 9);
        assertArrayEquals(new double[] {5e-6, 20e-6}, c.diameterM());
        assertArrayEquals(new double[] {0.3, 0.7}, c.share(), 1e-15);
        assertArrayEquals(
                new double[] {0}, DropletBins.of(new DropletSpec.Tracer(), 9).diameterM());
        assertThrows(IllegalArgumentException.class, () -> DropletBins.of(new DropletSpec.Tracer(), 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> DropletBins.of(new DropletSpec.Classes(new double[0], new double[0]), 3));
    }

    @Test
    void boreLossFollowsHagenPoiseuilleAndBlasius() {
        // Hagen-Poiseuille: wall shear 4 mu Q/(pi r^3), dp = 2 L tau/r: 1 g/s of 40 mPa.s oil, 2 mm bore, 1 m
        double q = 1e-3 / 880;
        double shear = 4 * 0.04 * q / (Math.PI * 1e-9);
        BoreLoss laminar = BoreLoss.of(1, 2e-3, 1e-3, 880, 0.04);
        assertEquals(2 * shear / 1e-3, laminar.pressurePa(), 1e-9 * laminar.pressurePa());
        assertFalse(laminar.turbulent());
        // Blasius (1913) at Re 1e4: Darcy f = 0.0316 (Moody chart, smooth)
        double mass = 1e4 * Math.PI / 4 * 2e-3 * 1e-3;
        BoreLoss turbulent = BoreLoss.of(1, 2e-3, mass, 1000, 1e-3);
        assertTrue(turbulent.turbulent());
        assertEquals(1e4, turbulent.reynolds(), 1e-6);
        double speed = 1e4 * 1e-3 / (1000 * 2e-3);
        assertEquals(0.0316, turbulent.pressurePa() / (1 / 2e-3 * 500 * speed * speed), 1e-4);
    }
}
