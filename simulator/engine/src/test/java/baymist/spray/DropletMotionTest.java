package baymist.spray;

import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.units.Air;
import org.junit.jupiter.api.Test;

class DropletMotionTest {
    private static final Air AIR = new Air(1.205, 1.81e-5, 0.066e-6, 293.15, 101_325);

    private static void near(double expected, double relative, double found) {
        assertEquals(expected, found, relative * Math.abs(expected));
    }

    @Test
    void dragCoefficientsMatchThePublishedOnes() {
        // Schiller & Naumann (1935): rows DR-01, DR-02; Clift & Gauvin (1970), doctest value of the fluids library: row
        // DR-03
        assertEquals(27.6, DragLaw.SCHILLER_NAUMANN.coefficient(1), 1e-6);
        assertEquals(1.09173, DragLaw.SCHILLER_NAUMANN.coefficient(100), 1e-5);
        assertEquals(0.7905400398, DragLaw.CLIFT_GAUVIN_1970.coefficient(200), 1e-9);
    }

    @Test
    void aThrownSphereMatchesTheFluidsLibrary() {
        // fluids library test (own drag law there): row DR-05; Stokes alone: row DR-06 (g = 9.80665)
        Air air = new Air(1.2, 1.78e-5, 0.066e-6, 293.15, 101_325);
        double g = 9.80665 * (1 - 1.2 / 2200);
        DropletMotion.State fast = DropletMotion.fly(1e-3, 2200, air, DragLaw.CLIFT_GAUVIN_1970, 1, g, 30, 0.5);
        near(9.68647, 0.01, fast.speedMPerS());
        near(7.82945, 0.01, fast.distanceM());
        DropletMotion.State slow = DropletMotion.fly(1e-3, 2200, air, DragLaw.STOKES, 1, g, 10, 0.1);
        near(10.828446, 1e-6, slow.speedMPerS());
        near(1.0415229, 1e-6, slow.distanceM());
    }

    @Test
    void linearDragFollowsTheExponential() {
        // row EX-01, exact: tau 1 s, terminal speed 1 m/s
        double d = Math.sqrt(18 * 1.81e-5 / 1000);
        DropletMotion.State s = DropletMotion.fly(d, 1000, AIR, DragLaw.STOKES, 1, 1, 0, 1);
        near(0.632121, 1e-6, s.speedMPerS());
        near(0.367879, 1e-5, s.distanceM());
    }

    @Test
    void constantDragFollowsTheHyperbolicTangent() {
        // FDS verification case terminal_velocity (form), CD 1, D 10 mm: rows EX-02, EX-03
        Air air = new Air(1.199, 1.81e-5, 0.066e-6, 293.15, 101_325);
        DropletMotion.State one = DropletMotion.fly(0.01, 1000, air, DragLaw.constant(1), 1, 9.8, 0, 1);
        near(7.66926, 1e-4, one.speedMPerS());
        near(4.31416, 1e-4, one.distanceM());
        DropletMotion.State five = DropletMotion.fly(0.01, 1000, air, DragLaw.constant(1), 1, 9.8, 0, 5);
        near(10.43759, 1e-4, five.speedMPerS());
        near(44.48955, 1e-4, five.distanceM());
        // FDS flat_fire (form), CD 0.2, D 5 mm, 400 m/s: row EX-04
        DropletMotion.State flat = DropletMotion.fly(0.005, 1000, air, DragLaw.constant(0.2), 1, 0, 400, 0.5);
        near(58.4766, 1e-4, flat.distanceM());
        near(48.816, 1e-4, flat.speedMPerS());
    }

    @Test
    void oilDropsThrownIntoStillAirStopWhereIntegratedDragSays() {
        // row SD-04 and its table: Schiller-Naumann, 880 kg/m3
        near(35.2e-3, 0.01, DropletMotion.stoppingDistanceM(20e-6, 880, AIR, DragLaw.SCHILLER_NAUMANN, 100));
        near(2.09e-3, 0.01, DropletMotion.stoppingDistanceM(10e-6, 880, AIR, DragLaw.SCHILLER_NAUMANN, 10));
        near(289e-3, 0.01, DropletMotion.stoppingDistanceM(100e-6, 880, AIR, DragLaw.SCHILLER_NAUMANN, 50));
    }
}
