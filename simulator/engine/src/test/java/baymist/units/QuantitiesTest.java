package baymist.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantitiesTest {
    // NIST SP 811 (2008), appendix B.8: factors in bold there are exact; the others are printed to seven figures.
    @ParameterizedTest
    @CsvSource({
        "LENGTH, 1 in, 0.0254, 0",
        "LENGTH, 1 ft, 0.3048, 0",
        "LENGTH, 1 yd, 0.9144, 0",
        "LENGTH, 1 mil, 2.54e-5, 0",
        "VOLUME, 1 gal, 3.785412e-3, 5e-7",
        "VOLUME, 1 fl oz, 2.957353e-5, 5e-7",
        "MASS, 1 lb, 4.535924e-1, 5e-7",
        "MASS, 1 oz, 2.834952e-2, 5e-7",
        "PRESSURE, 1 psi, 6.894757e3, 5e-7",
        "PRESSURE, 1 bar, 1e5, 0",
        "DYNAMIC_VISCOSITY, 1 cP, 1e-3, 0",
        "KINEMATIC_VISCOSITY, 1 cSt, 1e-6, 0",
        "SURFACE_TENSION, 1 dyn/cm, 1e-3, 0",
        "DENSITY, 1 lb/ft3, 1.601846e1, 5e-7",
        "DENSITY, 1 lb/gal, 1.198264e2, 5e-7",
        "VOLUME_FLOW, 1 gal/min, 6.309020e-5, 5e-7",
        "SPEED, 1 ft/min, 5.08e-3, 0",
        "ACCELERATION, 1 ft/s2, 3.048e-1, 0",
        "ANGLE, 1 deg, 1.745329e-2, 5e-7",
    })
    void factorsAgreeWithNistSp811(Dimension d, String text, double si, double relative) {
        assertEquals(si, Quantities.parse(text, d), relative * si);
    }

    @Test
    void poundForcePerSquareInchIsExactToTheDouble() {
        // NIST SP 811 (2008): 1 lbf = 4.448 221 615 2605 N exactly, 1 in = 0.0254 m exactly
        assertEquals(4.4482216152605 / (0.0254 * 0.0254), Quantities.parse("1 psi", Dimension.PRESSURE), 1e-12);
        assertEquals(6894.757293168, Quantities.parse("1 psi", Dimension.PRESSURE), 5e-10);
    }

    // NIST SP 811 (2008), section B.9: t/degC = (t/degF - 32)/1.8, T/K = t/degC + 273.15
    @ParameterizedTest
    @CsvSource({
        "68 degF, 293.15",
        "32 °F, 273.15",
        "20 degC, 293.15",
        "-40 degF, 233.15",
        "-40 °C, 233.15",
        "293.15 K, 293.15"
    })
    void temperaturesHaveTheirZeroPoints(String text, double kelvin) {
        assertEquals(kelvin, Quantities.parse(text, Dimension.TEMPERATURE));
    }

    // check rows GE-01 and GE-02; ASME B94.11M (secondary: a public drill table)
    @ParameterizedTest
    @CsvSource({"40, 0.0980, 2.4892", "30, 0.1285, 3.2639", "21, 0.1590, 4.0386", "11, 0.1910, 4.8514"})
    void numberDrillsAgreeWithAsmeB94(int number, String inches, double millimetres) {
        double m = Quantities.drillDiameterM(number);
        assertEquals(Quantities.parse(inches + " in", Dimension.LENGTH), m);
        assertEquals(millimetres, 1e3 * m, 1e-4);
        assertEquals(m, Quantities.parse("#" + number + " drill", Dimension.LENGTH));
        assertEquals(m, Quantities.parse("No. " + number + " drill", Dimension.LENGTH));
    }

    // ASME B94.11M, more rows of the same public table (check-values, section on drills)
    @ParameterizedTest
    @CsvSource({
        "1, .2280",
        "10, .1935",
        "12, .1890",
        "20, .1610",
        "22, .1570",
        "29, .1360",
        "31, .1200",
        "32, .1160",
        "41, .0960",
        "80, .0135"
    })
    void otherNumberDrillsAgreeToo(int number, double inches) {
        assertEquals(inches * 0.0254, Quantities.drillDiameterM(number), 1e-15);
    }

    @Test
    void numberDrillsGetThinnerWithTheirNumber() {
        for (int n = 2; n <= 80; n++) {
            assertTrue(Quantities.drillDiameterM(n) < Quantities.drillDiameterM(n - 1), "drill " + n);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "3/64 in, 0.001190625",
        "1 3/8 in, 0.034925",
        "1-3/8 in, 0.034925",
        "0.25 in, 0.00635",
        ".25in, 0.00635",
        "4 ft 6 in, 1.3716",
        "10 um, 1e-5",
        "10 µm, 1e-5",
        "10 μm, 1e-5",
        "1e2 mm, 0.1",
        "-5 mm, -0.005",
        "+5 mm, 0.005",
        "5 thou, 1.27e-4",
        "0, 0",
    })
    void lengthsAreReadExactly(String text, double metres) {
        assertEquals(metres, Quantities.parse(text, Dimension.LENGTH));
    }

    @ParameterizedTest
    @CsvSource({
        "PRESSURE, 80 psi, 551580.5834534689",
        "PRESSURE, 14.695948775513 psia, 0",
        "PRESSURE, 2 bar_abs, 98675",
        "PRESSURE, 101.325 kPa_abs, 0",
        "VOLUME_FLOW, 60 mL/min, 1e-6",
        "VOLUME_FLOW, 60 cc/min, 1e-6",
        "CONCENTRATION, 12 mg/m³, 1.2e-5",
        "DYNAMIC_VISCOSITY, 40 mPa·s, 0.04",
        "DIFFUSIVITY, 1 cm2/s, 1e-4",
        "SPEED, 120 mm/s, 0.12",
        "MASS_FLOW, 12 g/s, 0.012",
        "TIME, 5 min, 300",
        "TIME, 1 min 30 s, 90",
        "ANGLE, 0.5 turn, 3.141592653589793",
        "FRACTION, 85 %, 0.85",
        "FRACTION, 1/3, 0.3333333333333333",
        "FRACTION, 0.15, 0.15",
    })
    void tradeUnitsAreRead(Dimension d, String text, double si) {
        assertEquals(si, Quantities.parse(text, d), si == 0 ? 1e-6 : 1e-14 * si);
    }

    @Test
    void firstAllowedDimensionWithTheUnitWins() {
        List<Dimension> flows = List.of(Dimension.VOLUME_FLOW, Dimension.MASS_FLOW);
        assertEquals(new Quantity(4e-4, Dimension.MASS_FLOW), Quantities.parse("0.4 g/s", flows));
        assertEquals(Dimension.VOLUME_FLOW, Quantities.parse("25 mL/min", flows).dimension());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "LENGTH|8|MISSING_UNIT|has no unit; a length such as `8 ft`",
                "PRESSURE|0|MISSING_UNIT|units: psi, bar",
                "TEMPERATURE|0|MISSING_UNIT|degC",
                "LENGTH|8 fet|UNKNOWN_UNIT|unknown unit `fet`",
                "PRESSURE|80 PSI|UNKNOWN_UNIT|did you mean `psi`?",
                "LENGTH|80 psi|WRONG_UNIT|is a pressure; a length",
                "LENGTH|long|BAD_NUMBER|`long` is not a number with a unit",
                "LENGTH|0,25 in|BAD_NUMBER|write the decimal with a point",
                "LENGTH|1/0 in|BAD_NUMBER|is not a number",
                "LENGTH|1e999999999 m|BAD_NUMBER|is not a number",
                "LENGTH|#99 drill|BAD_NUMBER|#1 (0.228 in) to #80",
                "LENGTH|NaN m|BAD_NUMBER|is not a number",
                "LENGTH|''|BAD_NUMBER|is not a number",
                "SPEED|3 m/s 2 m/s|WRONG_UNIT|speed",
            })
    void whatIsWrongIsSaidWithTheRemedy(Dimension d, String text, QuantityException.Kind kind, String part) {
        QuantityException e = assertThrows(QuantityException.class, () -> Quantities.parse(text, d));
        assertEquals(kind, e.kind(), e.getMessage());
        assertTrue(e.getMessage().contains(part), e.getMessage());
    }

    @Test
    void veryLongTextIsRefusedShortly() {
        QuantityException e = assertThrows(
                QuantityException.class, () -> Quantities.parse("1".repeat(100_000) + " m", Dimension.LENGTH));
        assertTrue(e.getMessage().length() < 400);
    }

    @Test
    void printingAndReadingAgreeInEveryUnit() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(11);
        for (Dimension d : Dimension.values()) {
            for (String unit : Quantities.units(d)) {
                double value = 0.5 + 100 * random.nextDouble();
                String text = Quantities.number(value, 9) + " " + unit;
                double si = Quantities.parse(text, d);
                double back = Quantities.inUnit(si, d, unit);
                assertEquals(value, back, 1e-7 * value, text);
                assertTrue(text.matches(Quantities.pattern(d)), text);
                assertEquals(si, Quantities.parse(Quantities.format(si, d, unit, 15), d), 1e-9 * Math.abs(si) + 1e-8);
            }
        }
    }

    @Test
    void everyUnitMeasuresItsDimension() {
        for (Dimension d : Dimension.values()) {
            UnitTable.get().spellings(d).forEach((spelling, entry) -> {
                assertTrue(entry.unit().isCompatible(entry.si()), spelling);
                assertFalse(entry.toSi() == null, spelling);
            });
        }
    }

    @Test
    void examplesOfEachDimensionAreReadAndMatchThePattern() {
        for (Dimension d : Dimension.values()) {
            for (String example : d.examples()) {
                assertTrue(Double.isFinite(Quantities.parse(example, d)), example);
                assertTrue(example.matches(Quantities.pattern(d)), example);
            }
        }
        assertFalse("8".matches(Quantities.pattern(Dimension.LENGTH)));
        assertTrue("#30 drill".matches(Quantities.pattern(Dimension.LENGTH)));
    }

    @Test
    void lengthsArePrintedInTheUnitThatReadsWell() {
        assertEquals("10 µm", Quantities.length(1e-5));
        assertEquals("12.7 mm", Quantities.length(0.0127));
        assertEquals("2.44 m", Quantities.length(2.4384));
        assertEquals("0 mm", Quantities.length(0));
        assertEquals("10 µm (0.394 mil)", Quantities.build(1e-5));
        assertEquals("80 psi", Quantities.format(551580.5834534689, Dimension.PRESSURE, "psi", 3));
        assertEquals("85 %", Quantities.format(0.85, Dimension.FRACTION, "%", 3));
        assertEquals("NaN", Quantities.number(Double.NaN, 3));
        assertThrows(IllegalArgumentException.class, () -> Quantities.format(1, Dimension.LENGTH, "psi", 3));
        assertThrows(IllegalArgumentException.class, () -> NumberDrills.tenThousandthsOfInch(0));
    }
}
