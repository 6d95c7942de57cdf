package baymist.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GridConvergenceTest {
    @Test
    void workedExampleOfCelik() {
        // Celik et al. (2008), J. Fluids Eng. 130, 078001, table 1, first column (from memory): r21 1.5, r32 1.333,
        // values 6.063, 5.972, 5.863;
        // printed: order 1.53, extrapolated 6.1685, index 2.2 % of the finest value.
        GridConvergence g = GridConvergence.of(
                new double[] {1, 1.5, 1.5 * Math.sqrt(8000.0 / 4500)}, new double[] {6.063, 5.972, 5.863});
        assertTrue(g.monotone());
        assertEquals(1.53, g.order(), 0.01);
        assertEquals(6.1685, g.extrapolated(), 1e-3);
        assertEquals(0.022, g.index() / 6.063, 5e-4);
        assertEquals(0.2, g.spread(), 1e-12);
    }

    @Test
    void workedExampleOfThePressureRecovery() {
        // NASA Glenn, "Examining Spatial (Grid) Convergence" (from memory): pressure recovery 0.97050, 0.96854, 0.96178
        // on grids of ratio 2;
        // printed: order 1.786170, extrapolated 0.97130, index 0.103083 %.
        GridConvergence g = GridConvergence.of(new double[] {1, 2, 4}, new double[] {0.97050, 0.96854, 0.96178});
        assertEquals(1.786170, g.order(), 1e-6);
        assertEquals(0.97130, g.extrapolated(), 5e-6);
        assertEquals(0.00103083, g.index() / 0.97050, 1e-8);
    }

    @ParameterizedTest
    @CsvSource({"1, 1.3, 1.3", "2, 1.3, 1.3", "2, 1.2, 1.45", "0.5, 1.5, 1.3", "3, 2, 1.1"})
    void anExactPowerLawGivesItsOrderAndItsLimit(double order, double r21, double r32) {
        double[] h = {0.7, 0.7 * r21, 0.7 * r21 * r32};
        double[] f = new double[3];
        for (int i = 0; i < 3; i++) {
            f[i] = 0.8 - 0.1 * Math.pow(h[i], order);
        }
        GridConvergence g = GridConvergence.of(h, f);
        assertEquals(order, g.order(), 1e-9);
        assertEquals(0.8, g.extrapolated(), 1e-9);
        assertEquals(GridConvergence.SAFETY * Math.abs(f[0] - 0.8), g.index(), 1e-9);
    }

    @Test
    void noOrderWhereTheThreeDoNotShowOne() {
        double[] h = {1, 1.3, 1.69};
        GridConvergence swings = GridConvergence.of(h, new double[] {0.7, 0.72, 0.71});
        assertFalse(swings.monotone());
        assertTrue(Double.isNaN(swings.order()) && Double.isNaN(swings.index()));
        assertEquals(0.02, swings.spread(), 1e-15);
        // Monotone, but the finer pair differs more than the coarser one: it runs away.
        GridConvergence away = GridConvergence.of(h, new double[] {0.7, 0.8, 0.81});
        assertTrue(away.monotone() && Double.isNaN(away.order()));
        GridConvergence same = GridConvergence.of(h, new double[] {0.7, 0.7, 0.7});
        assertEquals(0, same.spread());
        assertEquals(0, same.index());
        assertEquals(0.7, same.extrapolated());
    }

    @Test
    void gridsOutOfOrderAreRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> GridConvergence.of(new double[] {1, 1, 2}, new double[] {1, 2, 3}));
        assertThrows(
                IllegalArgumentException.class, () -> GridConvergence.of(new double[] {1, 2}, new double[] {1, 2}));
    }
}
