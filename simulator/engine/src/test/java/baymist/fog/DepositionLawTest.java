package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.spray.Droplet;
import baymist.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DepositionLawTest {
    private static final double G = 9.81;

    private static FogDroplet droplet(double diameterM, double density) {
        return FogDroplet.of(diameterM, density, Fields.AIR, G);
    }

    /** Law for a unit-density droplet with the Stokes settling speed that the published table uses. */
    private static DepositionLaw stokes(double diameterM, double density) {
        FogDroplet d = droplet(diameterM, density);
        return new DepositionLaw(diameterM, d.slip(), d.relaxationS(), d.relaxationS() * G, Fields.AIR);
    }

    private static void near(double expected, double value, double relative) {
        assertEquals(expected, value, relative * Math.abs(expected));
    }

    // Hinds (1999), Aerosol Technology, eq. 3.20, lambda 0.066 µm (rows SL-01 to SL-03, recomputed).
    @ParameterizedTest
    @CsvSource({"0.1e-6, 2.9282", "1e-6, 1.1546", "10e-6, 1.0154"})
    void slipFollowsHinds(double diameterM, double slip) {
        near(slip, Droplet.slip(diameterM, Fields.AIR), 1e-4);
    }

    // Hinds (1999) table A11, unit density (from memory): 3.48e-5, 3.06e-3, 0.249 m/s; in between recomputed.
    @ParameterizedTest
    @CsvSource({"1e-6, 3.48e-5, 0.002", "10e-6, 3.06e-3, 0.004", "100e-6, 0.249, 0.003", "200e-6, 0.7086, 0.002"})
    void settlingSpeedFollowsHinds(double diameterM, double speed, double tolerance) {
        near(speed, droplet(diameterM, 1000).settlingMPerS(), tolerance);
    }

    @Test
    void relaxationTimeFollowsHinds() {
        // Hinds (1999) table 5.1 (from memory): 3.5e-6, 3.1e-4, 3.1e-2 s for 1, 10, 100 µm.
        near(3.544e-6, droplet(1e-6, 1000).relaxationS(), 1e-3);
        near(3.117e-4, droplet(10e-6, 1000).relaxationS(), 1e-3);
        near(3.074e-2, droplet(100e-6, 1000).relaxationS(), 1e-3);
    }

    // Lai and Nazaroff (2000): layer integral; row LN-01 and the table of 10 cases, closed form against quadrature 0.02
    // %.
    @ParameterizedTest
    @CsvSource({
        "0.003, 0.1e-6, 10259",
        "0.003, 1e-6, 88469",
        "0.003, 10e-6, 4.414e5",
        "0.01, 1e-6, 88341",
        "0.01, 3e-6, 1.942e5",
        "0.03, 1e-6, 87976",
        "0.03, 10e-6, 3.854e5",
        "0.1, 10e-6, 2.483e5"
    })
    void layerIntegralFollowsLaiAndNazaroff(double frictionSpeed, double diameterM, double integral) {
        DepositionLaw law = stokes(diameterM, 1000);
        near(integral, DepositionLaw.layerIntegral(law.schmidt(), law.plusRadius(frictionSpeed)), 1e-3);
    }

    @Test
    void closedFormEqualsTheQuadratureOfTheLayer() {
        // LN-08: the layers from 4.3 to 30 hold 39 (39.024 by quadrature); the inner one is the closed form.
        double schmidt = 5.486e5;
        double outer = simpson(schmidt, 4.3, 12.5) + simpson(schmidt, 12.5, 30);
        near(39.024, outer, 1e-3);
        double inner = 0;
        double from = 3.33e-4;
        for (double at = from; at < 4.3; at *= 1.05) {
            inner += simpson(schmidt, at, Math.min(4.3, 1.05 * at));
        }
        near(inner + outer, DepositionLaw.layerIntegral(schmidt, from), 1e-3);
    }

    private static double simpson(double schmidt, double from, double to) {
        int n = 400;
        double sum = 0;
        for (int i = 0; i <= n; i++) {
            double y = from + (to - from) * i / n;
            double eddy = y < 4.3
                    ? 7.669e-4 * y * y * y
                    : y <= 12.5 && to <= 12.5 ? 1.00e-3 * Math.pow(y, 2.8214) : 1.07e-2 * Math.pow(y, 1.8895);
            sum += (i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2) / (eddy + 1 / schmidt);
        }
        return sum * (to - from) / n / 3;
    }

    // Lai and Nazaroff (2000), rows LN-02 to LN-07: upright, floor, ceiling.
    @ParameterizedTest
    @CsvSource({
        "0.01, 1e-6, 0, 1.132e-7",
        "0.01, 0.1e-6, 1, 1.481e-6",
        "0.01, 0.1e-6, -1, 5.996e-7",
        "0.03, 10e-6, 0, 7.784e-8",
        "0.003, 0.1e-6, 0, 2.924e-7",
        "0.01, 10e-6, 1, 3.058e-3",
        "0.03, 0.1e-6, 1, 3.388e-6",
        "0.01, 0.3e-6, -1, 4.7e-12"
    })
    void depositionSpeedFollowsLaiAndNazaroff(double frictionSpeed, double diameterM, double up, double speed) {
        near(speed, stokes(diameterM, 1000).speedMPerS(frictionSpeed, up), speed < 1e-11 ? 0.02 : 2e-3);
    }

    @Test
    void ceilingGetsNothingFromCoarseFogInGentleAir() {
        // LN-07: a public code that drops the integral gives 1.2e-2 m/s here.
        assertTrue(stokes(10e-6, 1000).speedMPerS(0.01, -1) < 1e-30);
    }

    @Test
    void floorMinusCeilingIsTheSettlingSpeed() {
        // LN-09: algebra of the published pair.
        DepositionLaw law = stokes(0.5e-6, 1000);
        double settling = droplet(0.5e-6, 1000).relaxationS() * G;
        for (double u : new double[] {0.003, 0.01, 0.03}) {
            near(settling, law.speedMPerS(u, 1) - law.speedMPerS(u, -1), 1e-9);
        }
    }

    // Lai and Nazaroff (2000) with the enclosure sum of rows LN-10, LN-11: box 1.0 x 0.5 x 0.15 m, u* 1 cm/s, oil.
    @ParameterizedTest
    @CsvSource({"0.1e-6, 1.953e-5", "1e-6, 2.046e-4", "5e-6, 4.5528e-3", "10e-6, 1.7938e-2"})
    void boxLossRateFollowsLaiAndNazaroff(double diameterM, double perS) {
        DepositionLaw law = stokes(diameterM, 880);
        double sum = 0.5 * law.speedMPerS(0.01, 1) + 0.5 * law.speedMPerS(0.01, -1) + 0.45 * law.speedMPerS(0.01, 0);
        near(perS, sum / 0.075, 5e-3);
    }

    // Wood (1981), rows WD-01 to WD-03 (from memory).
    @Test
    void upperRangeFollowsWood() {
        near(4.512e-4, DepositionLaw.woodPlusSpeed(1e7, 1), 1e-3);
        near(4.500e-2, DepositionLaw.woodPlusSpeed(1e7, 10), 1e-3);
        assertTrue(DepositionLaw.woodPlusSpeed(1e7, 16.9) < 0.13);
        assertEquals(0.13, DepositionLaw.woodPlusSpeed(1e7, 17.1));
    }

    // McCoy and Hanratty (1977) as in the FDS Technical Reference Guide, rows WD-04, WD-05.
    @Test
    void comparisonCurveFollowsMcCoyAndHanratty() {
        near(3.5e-2, DepositionLaw.mcCoyHanrattyPlusSpeed(1e7, 10), 1e-3);
        assertEquals(0.17, DepositionLaw.mcCoyHanrattyPlusSpeed(1e7, 30));
        near(0.086 * Math.pow(1e7, -0.7), DepositionLaw.mcCoyHanrattyPlusSpeed(1e7, 0.1), 1e-12);
    }

    // FDS Verification Guide, aerosol_turbulent_deposition (rows FD-07 to FD-09): published deposit after 1 s.
    @ParameterizedTest
    @CsvSource({"0.001, 1.78e-14, 0.01", "0.1, 2.99e-8, 0.005", "1, 3.72e-7, 0.005"})
    void ductDepositFollowsFds(double speed, double kgPerM2, double tolerance) {
        double nu = 1.67049e-5;
        double friction = Math.sqrt(nu * speed / 0.5e-3);
        double plus = 3325.696 * friction * friction;
        double v = friction * DepositionLaw.mcCoyHanrattyPlusSpeed(7.766e7, plus);
        near(kgPerM2, v * 1e-5 * 1.19725, tolerance);
    }

    // Row WD-06: friction speed at which the dimensionless relaxation time is 1, oil of 880 kg/m³.
    @ParameterizedTest
    @CsvSource({"5e-6, 0.465", "10e-6, 0.234", "20e-6, 0.117", "50e-6, 0.047"})
    void relaxationReachesOneWhereComputed(double diameterM, double frictionSpeed) {
        near(1, stokes(diameterM, 880).plusRelaxation(frictionSpeed), 0.02);
    }

    @Test
    void wallRateEqualsFallSpeedWhereComputed() {
        // Row WD-07: Wood's rate equals the fall speed of 10 µm oil at u* 0.45 m/s.
        DepositionLaw law = stokes(10e-6, 880);
        near(droplet(10e-6, 880).settlingMPerS(), law.speedMPerS(0.45, 0), 0.06);
        assertTrue(law.speedMPerS(0.43, 0) < 2.685e-3 && law.speedMPerS(0.46, 0) > 2.685e-3);
    }

    // Sippola and Nazaroff (2004), Aerosol Sci. Technol. 38, 914: bare steel duct, rows SX-01, SX-04, SX-05: ordering,
    // and
    // walls within a factor of 4 (3 plus the inertial scatter) where the dimensionless relaxation time exceeds 1.
    @ParameterizedTest
    @CsvSource({"16e-6, 0.28, 1.2e-2, 1.8e-2, 7.15e-2", "15e-6, 0.45, 2.1e-2, 2.7e-2, 8e-2"})
    void steelDuctIsMetInOrderAndSize(double diameterM, double u, double wallLow, double wallHigh, double floor) {
        DepositionLaw law = stokes(diameterM, 950);
        double wall = law.speedMPerS(u, 0) / u;
        assertTrue(law.speedMPerS(u, 1) > law.speedMPerS(u, 0));
        assertTrue(law.speedMPerS(u, 0) >= law.speedMPerS(u, -1));
        assertTrue(wall > wallLow / 4 && wall < wallHigh * 4, "wall v+ " + wall);
        near(floor, law.speedMPerS(u, 1) / u, 1);
    }

    @Test
    void inclinationChangesTheSpeedWithoutJumps() {
        DepositionLaw law = stokes(0.1e-6, 1000);
        double previous = law.speedMPerS(0.01, -1);
        for (int degrees = 179; degrees >= 0; degrees--) {
            double v = law.speedMPerS(0.01, Math.cos(Math.toRadians(degrees)));
            assertTrue(v > previous && v - previous < 2e-8, degrees + "°: " + v);
            previous = v;
        }
    }

    @Test
    void tracerNeverDepositsAndStillAirLeavesSettlingAlone() {
        assertEquals(0, new DepositionLaw(0, 1, 0, 0, Fields.AIR).speedMPerS(1, 1));
        DepositionLaw law = stokes(10e-6, 1000);
        near(3.058e-3, law.speedMPerS(0, 1), 1e-3);
        near(3.058e-3 / 2, law.speedMPerS(0, 0.5), 1e-3);
        assertEquals(0, law.speedMPerS(0, -1));
        assertEquals(0, law.speedMPerS(0, 0));
    }

    @Test
    void hugeArgumentsAreSafe() {
        for (double u : new double[] {1e-300, 1e-12, 1e-3, 1, 100}) {
            for (double up : new double[] {-1, -1e-300, 0, 1e-300, 1}) {
                for (double d : new double[] {1e-9, 1e-6, 1e-4}) {
                    double v = stokes(d, 1000).speedMPerS(u, up);
                    assertTrue(v >= 0 && Double.isFinite(v), d + " " + u + " " + up + ": " + v);
                }
            }
        }
    }

    @Test
    void dropletsBeyondTheDragLawAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> FogDroplet.of(0.02, 1000, Air.STANDARD, G));
        assertThrows(IllegalArgumentException.class, () -> new FogDroplet(-1, 1, 0, 0));
        assertEquals(0, FogDroplet.of(0, 1000, Air.STANDARD, G).settlingMPerS());
        assertEquals(0, FogDroplet.of(1e-5, 1000, Air.STANDARD, 0).settlingMPerS());
    }
}
