package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ChokedOrificeTest {
    private static final double INCH = 0.0254;
    private static final double PSI = 6894.757293168;
    private static final double ATM = 14.7 * PSI;

    /** 70 degrees Fahrenheit. */
    private static final double T70F = 294.261;

    @Test
    void freeAirMatchesTheHandbookTableOfSmallOrifices() {
        // Handbook table of free air through orifices, C = 1, 14.7 psia, 70 F, from Moss (1906): rows CH-01 to CH-16.
        double[] inch = {1.0 / 64, 1.0 / 32, 3.0 / 64, 1.0 / 16};
        double[] gauge = {40, 60, 80, 100};
        double[][] scfm = {
            {0.1934, 0.2642, 0.3349, 0.4056},
            {0.7737, 1.0567, 1.3396, 1.6225},
            {1.7409, 2.3775, 3.0140, 3.6505},
            {3.0950, 4.2266, 5.3582, 6.4898}
        };
        double free = ATM / (287.053 * T70F);
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                double m = ChokedOrifice.of(inch[i] * INCH, 1, gauge[j] * PSI, T70F, ATM)
                        .massKgPerS();
                double cfm = m / free / 0.028316846592 * 60;
                assertEquals(scfm[i][j], cfm, 0.006 * scfm[i][j]);
            }
        }
    }

    @Test
    void isentropicFlowAndCriticalRatio() {
        // rows CH-17 (CCPS form) and CH-18 (exact)
        assertEquals(
                0.7612e-3,
                ChokedOrifice.of(INCH / 32, 1, 80 * PSI, T70F, 101_325).massKgPerS(),
                0.002 * 0.7612e-3);
        assertEquals(0.52828, ChokedOrifice.CRITICAL_RATIO, 1e-5);
    }

    @Test
    void thrustOfAThirtySecondInchHoleAtEightyPsi() {
        // row JT-07: Cd 0.85
        ChokedOrifice o = ChokedOrifice.of(INCH / 32, 0.85, 80 * PSI, T70F, 101_325);
        assertEquals(0.3056, o.thrustN(), 0.005 * 0.3056);
        assertEquals(0.647e-3, o.massKgPerS(), 0.005 * 0.647e-3);
        assertEquals(313.9, o.exitSpeedMPerS(), 0.3);
        assertEquals(344.9e3, o.exitPressurePa(), 0.4e3);
        assertEquals(472.3, o.effectiveSpeedMPerS(), 1);
        assertTrue(o.choked());
    }

    @Test
    void theTwoBranchesMeetAtTheCriticalRatio() {
        double critical = 101_325 / ChokedOrifice.CRITICAL_RATIO - 101_325;
        ChokedOrifice below = ChokedOrifice.of(1e-3, 0.8, critical * (1 - 1e-7), 293, 101_325);
        ChokedOrifice above = ChokedOrifice.of(1e-3, 0.8, critical * (1 + 1e-7), 293, 101_325);
        assertFalse(below.choked());
        assertTrue(above.choked());
        assertEquals(below.massKgPerS(), above.massKgPerS(), 1e-6 * above.massKgPerS());
        assertEquals(below.thrustN(), above.thrustN(), 1e-6 * above.thrustN());
    }

    @Test
    void aSmallPressureGivesBernoulliFlow() {
        // incompressible limit: m = Cd A sqrt(2 rho dp)
        double rho = 101_325 / (287.053 * 293.15);
        ChokedOrifice o = ChokedOrifice.of(2e-3, 0.6, 100, 293.15, 101_325);
        assertEquals(0.6 * Math.PI * 1e-6 * Math.sqrt(2 * rho * 100), o.massKgPerS(), 1e-3 * o.massKgPerS());
        ChokedOrifice none = ChokedOrifice.of(2e-3, 0.6, 0, 293.15, 101_325);
        assertEquals(0, none.massKgPerS());
        assertEquals(0, none.effectiveSpeedMPerS());
        assertThrows(IllegalArgumentException.class, () -> ChokedOrifice.of(2e-3, 0.6, -1, 293.15, 101_325));
    }

    @Test
    void aLongFeedTubeHalvesTheAir() {
        // Fanno flow choked at the exit: rows CH-19, CH-20 and section 7
        assertEquals(0.4711, FeedTube.flowFactor(6), 0.002 * 0.4711);
        assertEquals(0.3644, FeedTube.flowFactor(12), 0.002 * 0.3644);
        assertEquals(0.5555, FeedTube.flowFactor(3.6), 0.002 * 0.5555);
        assertEquals(1, FeedTube.flowFactor(0), 1e-6);
        assertThrows(IllegalArgumentException.class, () -> FeedTube.flowFactor(-1));
    }
}
