package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ExposureTest {
    @Test
    void roomAirForALeak() {
        // 0.54 L/s at 50 g/m3 is 27 mg/s; 5.4 m3/s of room air hold the limit of 5 mg/m3 (29 CFR 1910.1000, table Z-1;
        // arithmetic).
        double rate = 0.54e-3 * 50e-3;
        assertEquals(27e-6, rate, 1e-12);
        assertEquals(5.4, Exposure.roomM3(rate), 1e-9);
    }

    @Test
    void nearFieldOfTheTwoZoneModel() {
        // Nicas (1996), from memory: beta = half of the free surface times the air speed; half-sphere of 1 m and 0.1
        // m/s: 0.314 m3/s.
        assertEquals(0.31416, Exposure.nearFieldM3PerS(), 1e-5);
        assertEquals(27e-6 / 0.31416, Exposure.nearFieldKgPerM3(27e-6), 1e-9);
    }

    @Test
    void aShiftAtTheLimitIsOneDay() {
        // At the limit for 8 h: G = c beta, mass G t.
        double kg = Exposure.LIMIT_KG_PER_M3 * Exposure.nearFieldM3PerS() * Exposure.SHIFT_S;
        assertEquals(1, Exposure.shareOfDay(kg), 1e-12);
        assertEquals(0.0452, kg, 1e-4);
    }
}
