package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.CavityPressure.Load;
import baymist.units.Air;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CavityPressureTest {
    private static final Air AIR = Air.STANDARD;
    private static final double RT = Air.GAS_CONSTANT * AIR.temperatureK();
    private static final double NO_30 = 8.367e-6;

    private static void assertBalanced(PressureWindow w, double volumeM3) {
        double left = w.supplyM3PerS() - w.ventOutflowM3PerS() - volumeM3 * w.expansionPerS();
        assertEquals(0, left, 1e-15 + 1e-12 * w.supplyM3PerS());
    }

    @Test
    void sealedCavityIsPumpedUpLinearly() {
        // Ideal gas: p = p0 + m R T t / V.
        PressureWindow w = CavityPressure.advance(AIR, new Load(3, 20, 1e-3, 0, 0.075), 0);
        assertEquals(1e-3 * RT * 20 / 0.075, w.endGaugePa(), 1e-9 * w.endGaugePa());
        assertEquals(0, w.ventOutflowM3PerS());
        assertEquals(w.endGaugePa(), w.peakGaugePa());
        assertEquals(23, w.peakTimeS());
        assertBalanced(w, 0.075);
    }

    @Test
    void oneNo30HoleUnderASixteenthOfAnInchOfAirEndsAtFourteenPsi() {
        // 2.588 g/s (1/16 in orifice at 80 psig, Cd 0.85) through one No. 30 hole: 114 kPa gauge, choked; mass balance
        // of the
        // choked form, CCPS (2000): p0 = m sqrt(R T) / (0.6847 Cd A).
        PressureWindow w = CavityPressure.advance(AIR, new Load(0, 3000, 2.588e-3, NO_30, 0.075), 0);
        double choked = 2.588e-3 * Math.sqrt(RT) / (0.6847 * 0.61 * NO_30) - AIR.pressurePa();
        // 0.6847 = sqrt(1.4) (2/2.4)^3.
        assertEquals(0.6847, Math.sqrt(1.4) * Math.pow(2 / 2.4, 3), 1e-4);
        assertEquals(114_000, choked, 0.02 * 114_000);
        assertEquals(choked, w.endGaugePa(), 2e-3 * choked);
        PressureWindow pass = CavityPressure.advance(AIR, new Load(0, 12, 2.588e-3, NO_30, 0.075), 0);
        // About 24 kPa after 12 s in 75 L (estimate of the design notes for this case).
        assertEquals(24_000, pass.endGaugePa(), 0.1 * 24_000);
    }

    @Test
    void chokedBlowDownFallsExponentially() {
        // Isothermal vessel, choked outflow: p = p0 exp(-t/tau), tau = V / (0.6847 Cd A sqrt(R T)).
        double tau = 0.075 / (Math.sqrt(1.4) * Math.pow(2 / 2.4, 3) * 0.61 * NO_30 * Math.sqrt(RT));
        double p0 = 500_000;
        PressureWindow w = CavityPressure.advance(AIR, new Load(0, 0.5 * tau, 0, NO_30, 0.075), p0 - AIR.pressurePa());
        assertEquals(p0 * Math.exp(-0.5), w.endGaugePa() + AIR.pressurePa(), 2e-4 * p0);
        assertEquals(-1 / tau, w.expansionPerS(), 2e-4 / tau);
        assertTrue(w.ventOutflowM3PerS() > 0);
        assertBalanced(w, 0.075);
    }

    @Test
    void rootOfThePressureFallsLinearlyInAGentleBlowDown() {
        // Incompressible: sqrt(dp) = sqrt(dp0) - (pa Cd A / V) sqrt(1 / (2 rho)) t.
        double area = 2e-5;
        double volume = 0.075;
        double density = AIR.pressurePa() / RT;
        double slope = AIR.pressurePa() * 0.61 * area / volume * Math.sqrt(1 / (2 * density));
        double t = 0.6 * Math.sqrt(200) / slope;
        PressureWindow w = CavityPressure.advance(AIR, new Load(0, t, 0, area, volume), 200);
        assertEquals(200 * 0.4 * 0.4, w.endGaugePa(), 0.3);
        // It reaches ambient in finite time and stays there.
        PressureWindow after = CavityPressure.advance(AIR, new Load(0, 3 * t, 0, area, volume), 200);
        assertEquals(0, after.endGaugePa(), 1e-3);
        assertEquals(200, after.peakGaugePa());
        assertEquals(0, after.peakTimeS());
    }

    @Test
    void wideOpenCavityPassesItsSupplyAtOnce() {
        // Time constant of microseconds against a window of seconds.
        double kgPerS = 2e-3;
        PressureWindow w = CavityPressure.advance(AIR, new Load(0, 12, kgPerS, 0.05, 0.002), 0);
        double density = AIR.pressurePa() / RT;
        assertEquals(kgPerS / density, w.ventOutflowAmbientM3PerS(), 1e-6 * kgPerS / density);
        assertEquals(
                Orifice.pressureDifferencePa(0.05, kgPerS / density, density), w.endGaugePa(), 1e-3 * w.endGaugePa());
        assertBalanced(w, 0.002);
    }

    @Test
    void massIsConservedThroughPumpingUpAndBlowingOut() {
        List<Load> loads = List.of(
                new Load(0, 10, 0.65e-3, NO_30, 0.075),
                new Load(10, 5, 1.3e-3, NO_30, 0.075),
                new Load(15, 300, 0, NO_30, 0.075));
        List<PressureWindow> windows = CavityPressure.integrate(AIR, loads, 0);
        double vented = windows.stream()
                .mapToDouble(w -> w.ventOutflowAmbientM3PerS() * w.durationS())
                .sum();
        double supplied = (0.65e-3 * 10 + 1.3e-3 * 5) * RT / AIR.pressurePa();
        assertEquals(supplied, vented, 1e-6 * supplied);
        assertTrue(windows.get(0).endGaugePa() < windows.get(1).endGaugePa());
        assertEquals(windows.get(1).endGaugePa(), windows.get(2).startGaugePa());
        windows.forEach(w -> assertBalanced(w, 0.075));
    }

    @Test
    void splittingAWindowDoesNotChangeTheAnswer() {
        Load whole = new Load(0, 12, 0.65e-3, NO_30, 0.075);
        List<Load> parts = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            parts.add(new Load(i * 12 / 7.0, 12 / 7.0, 0.65e-3, NO_30, 0.075));
        }
        double one = CavityPressure.advance(AIR, whole, 0).endGaugePa();
        double many = CavityPressure.integrate(AIR, parts, 0).get(6).endGaugePa();
        assertEquals(one, many, 1e-4 * one);
    }

    @Test
    void cavityBelowAmbientDrawsAirIn() {
        PressureWindow w = CavityPressure.advance(AIR, new Load(0, 1, 0, NO_30, 0.075), -5000);
        assertTrue(w.ventOutflowM3PerS() < 0);
        assertTrue(w.endGaugePa() > -5000 && w.endGaugePa() < 0);
    }

    @Test
    void windowWithoutLengthGivesTheRatesOfTheMoment() {
        PressureWindow w = CavityPressure.advance(AIR, new Load(0, 0, 1e-3, NO_30, 0.075), 1000);
        assertEquals(1000, w.endGaugePa());
        assertBalanced(w, 0.075);
        assertTrue(w.ventOutflowM3PerS() > 0);
        assertThrows(
                IllegalArgumentException.class, () -> CavityPressure.advance(AIR, new Load(0, -1, 0, NO_30, 0.075), 0));
    }
}
