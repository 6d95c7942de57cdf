package baymist.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirTest {
    @Test
    void standardConditionsGiveTheStandardAir() {
        assertEquals(Air.STANDARD, Air.at(293.15, 101_325));
    }

    // US Standard Atmosphere 1976, table I (from memory): temperature, pressure, density, viscosity at 0, 2000 and 5000
    // m
    @ParameterizedTest
    @CsvSource({
        "288.150, 101325, 1.2250, 1.7894e-5",
        "275.154, 79501, 1.0066, 1.7260e-5",
        "255.676, 54048, 0.73643, 1.6282e-5"
    })
    void airAtHeightIsThatOfTheStandardAtmosphere(
            double temperature, double pressure, double density, double viscosity) {
        Air air = Air.at(temperature, pressure);
        assertEquals(density, air.densityKgPerM3(), 5e-4 * density);
        // The engine starts from 1.81e-5 Pa s at 20 degC, 0.2 % below Sutherland's 1.8134e-5
        assertEquals(viscosity, air.viscosityPaS(), 3e-3 * viscosity);
    }
}
