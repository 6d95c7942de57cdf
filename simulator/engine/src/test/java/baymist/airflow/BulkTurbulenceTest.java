package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.voxel.Bay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BulkTurbulenceTest {
    private static final Bay BAY = new Bay("bay", 0.075, 1.45, new Box3(Vec3.ZERO, new Vec3(0.5, 1, 0.15)), 1);

    @Test
    void constantsAreThoseOfThePublishedClosure() {
        // Launder & Spalding (1972): C_mu 0.09 (from memory); powers 1/4 and 3/4.
        assertEquals(0.5477, BulkTurbulence.VISCOSITY_FACTOR, 1e-4);
        assertEquals(0.1643, BulkTurbulence.DISSIPATION_FACTOR, 1e-4);
    }

    // Exact decay in a closed box: k = k0 / (1 + 0.1643 sqrt(k0) t / (2 l))², k0 1 m²/s², l 0.05 m.
    @ParameterizedTest
    @CsvSource({"0.1, 0.73768", "0.5, 0.30140", "1, 0.14315", "5, 0.011776"})
    void turbulenceDecaysByThePublishedLaw(double t, double k) {
        BulkTurbulence.State state = BulkTurbulence.advance(1, 0, 0.05, t);
        assertEquals(k, state.endM2PerS2(), 1e-3 * k);
        // Mean of sqrt(k): integral of 1 / (1 + c t) is ln(1 + c t) / c.
        double c = 0.1643 / (2 * 0.05);
        assertEquals(Math.log1p(c * t) / (c * t), state.meanRootMPerS(), 1e-3);
    }

    @Test
    void steadyTurbulenceBalancesThePower() {
        // 18 W into 75 L at density 1.2, l 0.03 m: epsilon 200 m²/s³, k 11.0, nu_t 0.0545 m²/s; 72 W: 27.7, 0.0865.
        double perMass = 18 / (1.2 * 0.075);
        assertEquals(200, perMass, 1e-9);
        assertEquals(11.0, BulkTurbulence.steadyK(perMass, 0.03), 0.11);
        assertEquals(0.0545, BulkTurbulence.eddyViscosityM2PerS(11.0, 0.03), 0.000545);
        assertEquals(27.7, BulkTurbulence.steadyK(4 * perMass, 0.03), 0.277);
        double reached = BulkTurbulence.advance(0, perMass, 0.03, 5).endM2PerS2();
        assertEquals(BulkTurbulence.steadyK(perMass, 0.03), reached, 1e-4 * reached);
    }

    @Test
    void growthAndRestAreExactInTheirLimits() {
        assertEquals(0.2, BulkTurbulence.advance(0, 200, 0.03, 1e-3).endM2PerS2(), 0.003);
        assertEquals(0, BulkTurbulence.advance(0, 0, 0.03, 10).endM2PerS2());
        assertEquals(4, BulkTurbulence.advance(4, 9, 0.03, 0).endM2PerS2());
        assertEquals(2, BulkTurbulence.advance(4, 9, 0.03, 0).meanRootMPerS());
    }

    @Test
    void lengthIsSevenHundredthsOfTheHydraulicDiameter() {
        assertEquals(4 * 0.075 / 1.45, BulkTurbulence.hydraulicDiameterM(BAY), 1e-12);
        assertEquals(0.0145, BulkTurbulence.lengthM(BAY), 1e-4);
    }

    // Cheng et al. (2011), Environ. Sci. Technol. 45, 4016 (formula from memory); published range 0.001 to 0.013 m²/s.
    @ParameterizedTest
    @CsvSource({"0.2, 1.035e-3", "1, 2.075e-3", "5.4, 7.795e-3"})
    void roomDiffusivityLiesInThePublishedRange(double changes, double expected) {
        double k = ResidualConvection.roomDiffusivityM2PerS(27, changes);
        assertEquals(expected, k, 1e-3 * expected);
        assertTrue(k > 0.001 && k < 0.013);
    }

    @Test
    void oneKelvinDrivesSevenCentimetresPerSecondInABayFifteenHigh() {
        // sqrt(g dT/T H), H 0.15 m: 0.07 m/s.
        double height = ResidualConvection.heightM(BAY, new Vec3(0, 0, -1));
        assertEquals(0.15, height, 1e-12);
        assertEquals(0.0709, ResidualConvection.speedMPerS(9.80665, 293.15, height), 1e-4);
        assertEquals(1.06e-4, ResidualConvection.diffusivityM2PerS(9.80665, 293.15, height), 1e-6);
        double tilted = ResidualConvection.heightM(BAY, new Vec3(0, 0.6, -0.8));
        assertEquals(0.6 * 1 + 0.8 * 0.15, tilted, 1e-12);
    }

    @Test
    void laminarConvectionShearsTheWallAsOstrachFound() {
        // Ostrach (1953), NACA Report 1111, Pr 0.72: f''(0) = 0.676. Equation f''' + 3 f f'' - 2 f'² + theta = 0,
        // theta'' + 3 Pr f theta' = 0 integrated here from the wall with his two slopes: both must die out far away.
        double[] y = {0, 0, 0.6760, 1, -0.5046};
        double step = 1e-3;
        for (int n = 0; n < 6000; n++) {
            double[] d = ostrach(y);
            double[] half = new double[5];
            for (int i = 0; i < 5; i++) {
                half[i] = y[i] + 0.5 * step * d[i];
            }
            double[] dm = ostrach(half);
            for (int i = 0; i < 5; i++) {
                y[i] += step * dm[i];
            }
        }
        assertEquals(0, y[1], 0.01);
        assertEquals(0, y[3], 0.01);
        // So a wall 0.15 m high with 1 K carries u* of 1.3 cm/s, within the 0.3 to 3 cm/s of Lai and Nazaroff (2000).
        assertEquals(0.0134, ResidualConvection.frictionSpeedMPerS(9.80665, 293.15, 0.15, 1.503e-5), 2e-4);
    }

    private static double[] ostrach(double[] y) {
        return new double[] {y[1], y[2], -3 * y[0] * y[2] + 2 * y[1] * y[1] - y[3], y[4], -3 * 0.72 * y[0] * y[4]};
    }
}
