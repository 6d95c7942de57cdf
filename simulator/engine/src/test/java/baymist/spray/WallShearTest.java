package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class WallShearTest {
    @Test
    void peakShearOfAThirtySecondInchHoleAtEightyPsi() {
        // Beltaos & Rajaratnam (1974), J. Hydraul. Div. ASCE 100, 1313 (from memory): row JT-11; u* 2.3 and 0.76 m/s
        assertEquals(6.2, WallShear.peakPa(0.3056, 0.1), 0.1);
        assertEquals(0.69, WallShear.peakPa(0.3056, 0.3), 0.01);
        assertEquals(2.3, Math.sqrt(WallShear.peakPa(0.3056, 0.1) / 1.2), 0.05);
        assertEquals(0.76, Math.sqrt(WallShear.peakPa(0.3056, 0.3) / 1.2), 0.01);
        assertEquals(0.014, WallShear.peakRadiusM(0.1), 1e-12);
    }

    @Test
    void stagnationPressureCarriesTheThrust() {
        // row JT-12: 25 rho U0^2 (d/H)^2 exp(-114 (r/H)^2) integrates to 0.877 J; must lie within 0.8 to 1.1
        assertEquals(0.877, WallShear.stagnationForceOverThrust(), 1e-3);
    }

    @Test
    void filmUnderGrowingShearThinsByTheClosedForm() {
        // dh/dt + (1/r) d(r G r h^2/(2 mu))/dr = 0 for an even film; integrated here in small steps against h0/(1 + G
        // h0 t/mu)
        double g = 443;
        double mu = 0.04;
        double h = 50e-6;
        int n = 200_000;
        for (int i = 0; i < n; i++) {
            h -= g * h * h / mu * 10.0 / n;
        }
        assertEquals(h, WallShear.leftM(50e-6, g, 10, mu), 1e-4 * h);
        assertEquals(mu / (g * 1e4), WallShear.leftM(50e-6, g, 1e4, mu), 1e-3 * mu / (g * 1e4));
        assertEquals(mu / (g * 10), WallShear.mostM(g * 10, mu), 1e-18);
        assertEquals(Double.POSITIVE_INFINITY, WallShear.mostM(0, mu));
        assertEquals(50e-6, WallShear.leftM(50e-6, g, 0, mu));
    }
}
