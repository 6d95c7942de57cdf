package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrificeTest {
    private static final double INCH = 0.0254;
    /** No. 30 drill 0.1285 in (ASME B94.11M). */
    private static final double NO_30 = circle(0.1285 * INCH);

    private static double circle(double diameterM) {
        return Math.PI / 4 * diameterM * diameterM;
    }

    // Vents at low pressure, Cd 0.61 (value of Guidelines for Chemical Process Quantitative Risk Analysis, CCPS 2000),
    // rho 1.2.
    @ParameterizedTest
    @CsvSource({
        "0.54e-3, 0.1285, 1, 6717",
        "0.54e-3, 0.25, 4, 29.3",
        "2.157e-3, 0.25, 1, 7480",
        "0.135e-3, 0.25, 1, 29.3"
    })
    void pressureBehindAVentFollowsTheOrificeLaw(double flow, double inches, int holes, double pascal) {
        double area = holes * circle(inches * INCH);
        assertEquals(pascal, Orifice.pressureDifferencePa(area, flow, 1.2), 0.01 * pascal);
        assertEquals(flow, Orifice.volumeFlowM3PerS(area, pascal, 1.2), 0.01 * flow);
        assertEquals(-flow, Orifice.volumeFlowM3PerS(area, -pascal, 1.2), 0.01 * flow);
    }

    @Test
    void holeFor250PaAtOneLitreInTwoSecondsIsSevenMillimetres() {
        // The same law solved for the diameter: 7.4 mm at 0.54 L/s.
        double flow = 0.54e-3;
        double area = flow / Orifice.volumeFlowM3PerS(1, 250, 1.2);
        assertEquals(7.4e-3, Math.sqrt(4 * area / Math.PI), 0.01 * 7.4e-3);
    }

    // Handbook table "discharge of air through an orifice", free air cfm at C = 1, 14.7 psia, 70 F; recomputed with
    // Moss (1906).
    @ParameterizedTest
    @CsvSource({
        "0.015625, 40, 0.194", "0.015625, 60, 0.264", "0.015625, 80, 0.335", "0.015625, 100, 0.406",
        "0.03125, 40, 0.774", "0.03125, 60, 1.06", "0.03125, 80, 1.34", "0.03125, 100, 1.62",
        "0.0625, 40, 3.10", "0.0625, 60, 4.23", "0.0625, 80, 5.36", "0.0625, 100, 6.49"
    })
    void chokedDischargeAgreesWithTheHandbookTable(double inches, double psig, double cfm) {
        double psi = 6894.757;
        double kelvin = 294.26;
        double kgPerS = Orifice.massFlowKgPerS(circle(inches * INCH), (psig + 14.7) * psi, 14.7 * psi, kelvin);
        double density = 14.7 * psi / (Air.GAS_CONSTANT * kelvin);
        double found = kgPerS / density / Math.pow(0.3048, 3) * 60;
        assertEquals(cfm, found, 0.007 * cfm);
    }

    @Test
    void criticalPressureRatioOfAirIs0528() {
        // Exact: (2/(g+1))^(g/(g-1)), g = 1.4: 0.52828 (NACA Report 1135, 1953).
        assertEquals(0.52828, Orifice.CRITICAL_RATIO, 1e-5);
    }

    @Test
    void isentropicFlowAgreesWithTheNacaTable() {
        // NACA Report 1135 (1953), table II: M 0.50 has p/pt 0.84302 and A/A* 1.3398.
        double choked = Orifice.massFlowKgPerS(1, 1e6, 0, 300);
        double subsonic = Orifice.massFlowKgPerS(1, 1e6, 0.84302e6, 300);
        assertEquals(1 / 1.3398, subsonic / choked, 2e-4);
        // M 0.20: p/pt 0.97250, A/A* 2.9635.
        assertEquals(1 / 2.9635, Orifice.massFlowKgPerS(1, 1e6, 0.97250e6, 300) / choked, 2e-4);
    }

    @Test
    void massFormBecomesTheIncompressibleOneAtSmallPressure() {
        double ambient = 101_325;
        double density = ambient / (Air.GAS_CONSTANT * 293.15);
        for (double drop : new double[] {1e-6, 1e-3, 1, 10}) {
            double mass = Orifice.massFlow(0.61 * NO_30, drop, ambient, 293.15);
            assertEquals(density * Orifice.volumeFlowM3PerS(NO_30, drop, density), mass, 2e-4 * mass);
        }
    }

    @Test
    void outflowAndInflowAreAntisymmetricToFirstOrderAndZeroAtRest() {
        double out = Orifice.massFlowKgPerS(1e-5, 101_335, 101_325, 293.15);
        double in = Orifice.massFlowKgPerS(1e-5, 101_325, 101_335, 293.15);
        assertEquals(out, -in, 1e-9 * out);
        assertEquals(0, Orifice.massFlowKgPerS(1e-5, 101_325, 101_325, 293.15));
        assertTrue(in < 0);
    }
}
