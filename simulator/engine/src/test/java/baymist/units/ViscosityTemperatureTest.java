package baymist.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ViscosityTemperatureTest {
    private static final double ZERO_C = 273.15;

    private static double cSt(double c1, double v1, double c2, double v2, double c) {
        return 1e6
                * ViscosityTemperature.through(c1 + ZERO_C, 1e-6 * v1, c2 + ZERO_C, 1e-6 * v2)
                        .kinematicM2PerS(c + ZERO_C);
    }

    @Test
    void gearOilWorkedExampleOfAstmD341() {
        // worked example on olezol.com, "Viscosity-temperature extrapolation (ASTM D341)": 404 cSt at 40 degC and 28
        // cSt at
        // 100 degC give 132.126 cSt at 60 degC
        assertEquals(132.126, cSt(40, 404, 100, 28, 60), 0.002 * 132.126);
    }

    @Test
    void extrapolationWorkedExampleOfAstmD341() {
        // same page: 68 cSt at 40 degC and 14.85 cSt at 80 degC give 8.8 cSt at 100 degC
        assertEquals(8.8, cSt(40, 68, 80, 14.85, 100), 0.05);
    }

    @Test
    void constantsOfAVg32Oil() {
        // worked sheet "Viscosity vs temperature calculator" (scribd 361017004): 32 cSt at 40 degC, 5.4 cSt at 100
        // degC:
        // A 9.5259, B 3.7449, 8.5 cSt at 80 degC; the sheet counts 273 K at 0 degC and leaves the exponential out
        ViscosityTemperature line = ViscosityTemperature.through(313, 32e-6, 373, 5.4e-6);
        assertEquals(9.5259, line.a(), 2e-3);
        assertEquals(3.7449, line.b(), 1e-3);
        assertEquals(8.5, 1e6 * line.kinematicM2PerS(353), 0.05);
    }

    // Stachowiak & Batchelor, Engineering Tribology, table 2.3: dynamic viscosity, mPa s, of all thirteen petroleum
    // oils at 30, 60 and
    // 100 degC. Here 60 degC is foretold from the outer two with a density of 860 kg/m3 throughout (ASSUMED; it all but
    // cancels).
    // 7 %: measured oils, not worked figures. The first oil of the table thins less between 60 and 100 degC than any
    // other and
    // lies 11 % off the line; it is kept, with its own tolerance, to show how far a real oil can stray.
    @ParameterizedTest
    @CsvSource({
        "38, 12.1, 5.3, 0.12",
        "153, 34, 9.1, 0.07",
        "250, 50.5, 12.6, 0.07",
        "810, 135, 26.8, 0.07",
        "18.6, 6.3, 2.4, 0.07",
        "45, 12, 3.9, 0.07",
        "107, 23.3, 6.4, 0.07",
        "122, 26.3, 7.3, 0.07",
        "171, 31, 7.5, 0.07",
        "30.7, 8.6, 3.1, 0.07",
        "165, 30.0, 6.8, 0.07",
        "310, 44.2, 9.4, 0.07",
        "2000, 180, 24, 0.07",
    })
    void measuredOilsLieOnTheLine(double at30, double at60, double at100, double tolerance) {
        double density = 0.860; // g/mL: mPa s to mm2/s
        double foretold = density * cSt(30, at30 / density, 100, at100 / density, 60);
        assertEquals(at60, foretold, tolerance * at60);
    }

    @ParameterizedTest
    @CsvSource({"0.25", "0.5", "1", "2", "10", "100", "1e5"})
    void theTwoFormsOfTheStandardAreInverse(double v) {
        // the inverse form of the standard is a fit to the direct one; it closes within 1 % over its range
        ViscosityTemperature line = ViscosityTemperature.through(300, v * 1e-6, 400, 0.9 * v * 1e-6 + 0.01e-6);
        assertEquals(v, 1e6 * line.kinematicM2PerS(300), 0.01 * v);
    }

    @Test
    void oilThinsAsItWarms() {
        double last = Double.POSITIVE_INFINITY;
        for (int c = -20; c <= 120; c += 10) {
            double v = cSt(40, 22, 100, 4.3, c);
            assertTrue(v < last, "at " + c);
            last = v;
        }
    }

    @Test
    void unfitPointsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> cSt(40, 22, 41, 21, 20));
        assertThrows(IllegalArgumentException.class, () -> cSt(40, 4, 100, 22, 20));
        assertThrows(IllegalArgumentException.class, () -> cSt(40, 22, 100, 0.1, 20));
        assertThrows(IllegalArgumentException.class, () -> cSt(40, Double.NaN, 100, 3, 20));
        assertThrows(IllegalArgumentException.class, () -> cSt(-300, 22, 100, 3, 20));
    }
}
