package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.WallFinish;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasuredWallsTest {
    private static DepositionLaw law(double diameterUm, WallFinish finish) {
        return new DepositionLaw(FogDroplet.of(diameterUm * 1e-6, 950, Fields.AIR, 9.81), Fields.AIR, finish);
    }

    @ParameterizedTest
    @CsvSource({
        // Sippola and Nazaroff (2004), steel: diameter um, u* m/s, v+ upright of the two sections, factor allowed
        // (seen)
        "5.2, 0.12, 1.6e-4, 4.5e-4, 3",
        "9.1, 0.13, 7.4e-4, 7.7e-4, 3",
        "16, 0.28, 1.2e-2, 1.8e-2, 3",
        "15, 0.45, 2.1e-2, 2.7e-2, 3"
    })
    void bareSteelIsWithinItsFactorOfTheDucts(double d, double u, double low, double high, double factor) {
        double plus = law(d, WallFinish.BARE_STEEL).speedMPerS(u, 0) / u;
        assertTrue(plus > low / factor && plus < high * factor, plus + " beside " + low + " and " + high);
    }

    @Test
    void liningTakesMoreThanSteelAndSteelMoreThanGentlyDrivenSmoothWalls() {
        for (double d : new double[] {0.5, 2, 8, 20}) {
            for (double u : new double[] {0.003, 0.05, 0.12}) {
                for (double up = -1; up <= 1; up += 0.25) {
                    double smooth = law(d, WallFinish.SMOOTH).speedMPerS(u, up);
                    double steel = law(d, WallFinish.BARE_STEEL).speedMPerS(u, up);
                    double lining = law(d, WallFinish.ROUGH_LINING).speedMPerS(u, up);
                    assertTrue(steel <= lining * (1 + 1e-12), d + " um, " + u + " m/s, " + up);
                    boolean gentle = law(d, WallFinish.SMOOTH).plusRelaxation(u) < 0.1;
                    assertTrue(!gentle || smooth <= steel, d + " um, " + u + " m/s, " + up);
                }
            }
        }
    }

    @Test
    void stillAirLeavesSettlingAlone() {
        for (WallFinish finish : WallFinish.values()) {
            assertEquals(0, law(10, finish).speedMPerS(0, 0));
            assertEquals(0, law(10, finish).speedMPerS(0, -1));
            assertEquals(
                    law(10, WallFinish.SMOOTH).speedMPerS(0, 1), law(10, finish).speedMPerS(0, 1));
        }
    }
}
