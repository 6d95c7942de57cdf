package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.units.Air;
import org.junit.jupiter.api.Test;

class ImpactionTest {
    private static final Air AIR = new Air(1.205, 1.81e-5, 0.066e-6, 293.15, 101_325);

    @Test
    void halfLandAtTheStokesNumberOfMarpleAndWilleke() {
        // row IM-01: Marple & Willeke (1976), Hinds (1999) table 5.4: sqrt Stk50 0.49 round, 0.77 slot
        assertEquals(0.5, Impaction.efficiency(0.24), 1e-12);
        assertEquals(0.49, Math.sqrt(Impaction.STK50_ROUND), 0.005);
        assertEquals(0.77, Math.sqrt(Impaction.STK50_SLOT), 0.005);
    }

    @Test
    void cutDiametersOfImpactors() {
        // rows IM-02, IM-03: unit density
        assertEquals(0.6253e-6, Impaction.cutTimesRootSlipM(1000, 100, 1e-3, AIR), 0.002 * 0.6253e-6);
        assertEquals(0.5516e-6, Impaction.cutM(1000, 100, 1e-3, AIR), 0.002 * 0.5516e-6);
        assertEquals(3.050e-6, Impaction.cutM(1000, 20, 5e-3, AIR), 0.002 * 3.050e-6);
        double tau = Droplet.relaxationTimeS(3.050e-6, 1000, AIR);
        assertEquals(0.5, Impaction.efficiency(Impaction.stokes(tau, 20, 5e-3)), 0.02);
    }

    @Test
    void cutOfAFreeJetOnAWallGrowsWithDistance() {
        // rows IM-04, IM-05: 80 psi, oil 880 kg/m3, orifices 1/64 to 1/16 in; 69.15 to 34.58 um per metre
        double[] thrust = {0.0764, 0.3056, 0.6875, 1.2222};
        double[] perMetre = {69.15, 48.90, 39.93, 34.58};
        for (int i = 0; i < 4; i++) {
            RoundJet jet = new RoundJet(thrust[i], 472.3, 1.2);
            for (double x : new double[] {0.3, 1}) {
                double cut = Impaction.cutTimesRootSlipM(880, jet.centreSpeedMPerS(x), 2 * jet.halfWidthM(x), AIR);
                assertEquals(perMetre[i] * x * 1e-6, cut, 0.01 * cut);
            }
        }
    }

    @Test
    void theCurveNeverFallsAndRunsThroughThePointsOfTheRoundImpactor() {
        // Hinds (1999), ch. 5, round impactor (from memory)
        assertTrue(Impaction.efficiency(0.35 * 0.35) < 0.02);
        assertTrue(Impaction.efficiency(0.42 * 0.42) > 0.10 && Impaction.efficiency(0.42 * 0.42) < 0.15);
        assertEquals(0.95, Impaction.efficiency(0.58 * 0.58), 1e-12);
        double before = 0;
        for (double s = 0; s < 1; s += 0.001) {
            double e = Impaction.efficiency(s);
            assertTrue(e >= before && e <= 1);
            before = e;
        }
        assertEquals(1, Impaction.efficiency(0.6));
        assertEquals(0, Impaction.efficiency(-1));
    }
}
