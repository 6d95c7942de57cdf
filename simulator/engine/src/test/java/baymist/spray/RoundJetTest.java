package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class RoundJetTest {
    /** 1/32 in at 80 psi: J = 0.3056 N, expanded speed 472.3 m/s, air 1.2 kg/m3 (check-value section 5.2). */
    private static final RoundJet JET = new RoundJet(0.3056, 472.3, 1.2);

    @Test
    void matchedConstants() {
        // row JT-01; prints of Rajaratnam (1976): 0.1, 0.32, 4.1
        assertEquals(0.09495, RoundJet.SPREAD, 1e-4 * 0.95);
        double d = JET.expandedDiameterM();
        double q0 = Math.PI / 4 * d * d * 472.3;
        double x = 30 * d;
        // row JT-04, Ricou & Spalding (1961): 0.32 x/d
        assertEquals(9.68, JET.flowM3PerS(x) / q0, 0.01);
        double e0 = 0.5 * 0.3056 * 472.3;
        assertEquals(4.133 / 30, JET.energyFluxW(x) / e0, 2e-4);
        // row JT-02, Rajaratnam (1976)
        assertEquals(0.310, JET.centreSpeedMPerS(20 * d) / 472.3, 1e-6);
        // row JT-03
        assertEquals(3.80, JET.halfWidthM(40 * d) / d, 0.02);
        // rows JT-05, JT-06: published bands
        assertTrue(RoundJet.DECAY >= 5.8 && RoundJet.DECAY <= 6.3);
        assertTrue(RoundJet.FOG_WIDTH >= 1.17 && RoundJet.FOG_WIDTH <= 1.20);
    }

    @Test
    void profileCarriesTheMomentumItWasGiven() {
        // integral of rho u^2 over the Gaussian = J at any distance (closed form and by quadrature)
        for (double x : new double[] {0.05, 0.2, 1}) {
            double b = JET.halfWidthM(x);
            double um = JET.centreSpeedMPerS(x);
            double sum = 0;
            double flow = 0;
            double dr = b / 2000;
            for (double r = dr / 2; r < 6 * b; r += dr) {
                double u = um * Math.exp(-Math.log(2) * r * r / (b * b));
                sum += 1.2 * u * u * 2 * Math.PI * r * dr;
                flow += u * 2 * Math.PI * r * dr;
            }
            assertEquals(0.3056, sum, 1e-4 * 0.3056);
            assertEquals(flow, JET.flowM3PerS(x), 1e-4 * flow);
        }
    }

    @Test
    void speedsOfASupplyAtEightyPsi() {
        // row JT-08
        assertEquals(35.3, JET.centreSpeedMPerS(0.1), 0.353);
        assertEquals(11.8, JET.centreSpeedMPerS(0.3), 0.118);
        // row JT-10: 14.4 L/s at 0.1 m; 0.5 g/s of oil in it is 34.7 g/m3
        assertEquals(14.4e-3, JET.flowM3PerS(0.1), 0.02 * 14.4e-3);
        assertEquals(34.7e-3, 0.5e-3 / JET.flowM3PerS(0.1), 0.02 * 34.7e-3);
    }

    @Test
    void nearTheNozzleSpeedWidthAndFlowAreThoseOfTheExit() {
        double d = JET.expandedDiameterM();
        assertEquals(472.3, JET.centreSpeedMPerS(0));
        assertEquals(d / 2, JET.halfWidthM(0));
        assertEquals(Math.PI / 4 * d * d * 472.3, JET.flowM3PerS(0), 1e-12);
    }

    @Test
    void aConfinedJetJoinsWithoutASteppedKeepsMomentumWhileFlatAndDiesWhenShutIn() {
        ConfinedJet jet = new ConfinedJet(JET, 0.105, 0.4, 0.1);
        for (double x : new double[] {0.105, 0.4}) {
            assertEquals(jet.centreSpeedMPerS(x), jet.centreSpeedMPerS(x * (1 + 1e-9)), 1e-5);
            assertEquals(jet.flowM3PerS(x), jet.flowM3PerS(x * (1 + 1e-9)), 1e-9);
            assertEquals(jet.halfWidthM(x), jet.halfWidthM(x * (1 + 1e-9)), 1e-9);
        }
        // Gaussian in both directions: J = rho um^2 pi b1 b2/(2 ln2), kept while flat
        double b = jet.halfWidthM(0.3);
        double um = jet.centreSpeedMPerS(0.3);
        assertEquals(0.3056, 1.2 * um * um * Math.PI * b * b / (2 * Math.log(2)), 1e-3 * 0.3056);
        // decay of a plane jet, x^-1/2 (Rajaratnam 1976)
        assertEquals(Math.sqrt(2), jet.centreSpeedMPerS(0.15) / jet.centreSpeedMPerS(0.30), 1e-12);
        assertEquals(Math.exp(-2), jet.centreSpeedMPerS(0.6) / jet.centreSpeedMPerS(0.4), 1e-12);
        assertEquals(Math.sqrt(2), jet.flowM3PerS(0.30) / jet.flowM3PerS(0.15), 1e-12);
        assertTrue(jet.flowM3PerS(0.5) < jet.flowM3PerS(0.4));
    }

    @Test
    void reachInvertsTheDecay() {
        ConfinedJet shut = new ConfinedJet(JET, 0.105, 0.4, 0.1);
        for (double x : new double[] {0.08, 0.2, 0.7}) {
            assertEquals(x, shut.reachM(shut.centreSpeedMPerS(x)), 1e-9);
        }
        ConfinedJet free = ConfinedJet.unconfined(JET);
        assertEquals(2, free.reachM(free.centreSpeedMPerS(2)), 1e-9);
        assertEquals(0, free.reachM(500));
    }
}
