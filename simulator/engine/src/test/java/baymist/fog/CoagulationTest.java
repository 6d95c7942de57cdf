package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.spray.Droplet;
import baymist.units.Air;
import org.junit.jupiter.api.Test;

class CoagulationTest {
    private static final Air AIR = Fields.AIR;

    @Test
    void brownianCoefficientIsThatOfTheTextbook() {
        // Smoluchowski; Hinds (1999), Aerosol Technology, table 12.1: 3.0e-16 m3/s for 10 um (from memory, recomputed
        // 3.03e-16).
        assertEquals(3.03e-16, Coagulation.brownianM3PerS(Droplet.slip(10e-6, AIR), AIR), 0.01e-16);
        // Half of the pair kernel 8 k T/(3 mu) of two equal drops without slip: exact algebra of the two conventions.
        assertEquals(
                0.5 * 8 * Air.BOLTZMANN * AIR.temperatureK() / (3 * AIR.viscosityPaS()),
                Coagulation.brownianM3PerS(1, AIR),
                1e-24);
    }

    @Test
    void brownianLossOfFiveMinutes() {
        // 8 um, 880 kg/m3, 300 s: N/N0 0.99961, 0.99615, 0.96281 at 1, 10 and 100 g/m3 (derived).
        double k = Coagulation.brownianM3PerS(Droplet.slip(8e-6, AIR), AIR);
        double[][] rows = {{1e-3, 0.99961}, {10e-3, 0.99615}, {100e-3, 0.96281}};
        for (double[] row : rows) {
            double n = Coagulation.numberPerM3(row[0], 8e-6, 880);
            assertEquals(row[1], Coagulation.numberLeft(k * n * 300), 1e-4);
        }
    }

    @Test
    void shearKernelConstantIsThatOfSaffmanAndTurner() {
        // Saffman and Turner (1956): sqrt(8 pi/15) = 1.2944173.
        assertEquals(1.2944173, Coagulation.SHEAR, 1e-7);
    }

    @Test
    void turbulentHalfLifeDoesNotDependOnSize() {
        // 10 g/m3 at 100 W/kg: 27.6 s; 1 g/m3 at 1 W/kg: 2760 s (derived from the kernel). Half of the drops have gone
        // at K N0 t = 1.
        for (double d : new double[] {3e-6, 8e-6, 15e-6}) {
            assertEquals(27.6, halfLifeS(d, 10e-3, 100), 0.3);
            assertEquals(2760, halfLifeS(d, 1e-3, 1), 28);
        }
    }

    private static double halfLifeS(double d, double c, double eps) {
        return 1 / (Coagulation.turbulentM3PerS(d, eps, AIR) * Coagulation.numberPerM3(c, d, 880));
    }

    @Test
    void massIsKeptWhileTheNumberFalls() {
        for (double x : new double[] {0, 0.3, 2, 50}) {
            assertEquals(1, Coagulation.numberLeft(x) * Math.pow(Coagulation.growth(x), 3), 1e-12);
        }
        assertEquals(0.5, Coagulation.numberLeft(1));
        assertTrue(Coagulation.growth(0.33) < 1.11);
    }
}
