package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class Naca4Test {
    // Abbott and von Doenhoff (1959), Theory of Wing Sections, appendix I, NACA 0012, per cent of chord (from memory)
    private static final double[][] NACA_0012 = {
        {1.25, 1.894},
        {2.5, 2.615},
        {5, 3.555},
        {7.5, 4.200},
        {10, 4.683},
        {15, 5.345},
        {20, 5.737},
        {25, 5.941},
        {30, 6.002},
        {40, 5.803},
        {50, 5.294},
        {60, 4.563},
        {70, 3.664},
        {80, 2.623},
        {90, 1.448},
        {95, 0.807},
        {100, 0.126}
    };

    // the same work, NACA 2412, upper and lower ordinates at the stations, per cent of chord (from memory); aft of the
    // middle the
    // printed lower ordinates depart from the polynomials by up to 0.025, hence the tolerance
    private static final double[][] NACA_2412 = {
        {2.5, 2.99, -2.27},
        {5, 4.13, -3.01},
        {10, 5.63, -3.75},
        {20, 7.26, -4.23},
        {30, 7.88, -4.12},
        {40, 7.80, -3.80},
        {50, 7.24, -3.34},
        {60, 6.36, -2.76},
        {70, 5.18, -2.14},
        {80, 3.75, -1.50},
        {90, 2.08, -0.82}
    };

    @Test
    void thicknessOrdinatesAreThePublishedOnes() {
        Naca4 section = Naca4.of("0012");
        for (double[] row : NACA_0012) {
            assertEquals(row[1], 100 * section.halfThickness(row[0] / 100), 0.0006, "x = " + row[0]);
            assertEquals(section.halfThickness(row[0] / 100), section.surface(row[0] / 100, 1)[1], 1e-15);
        }
    }

    @Test
    void camberedOrdinatesAreThePublishedOnes() {
        Naca4 section = Naca4.of("2412");
        for (double[] row : NACA_2412) {
            assertEquals(row[1], 100 * section.height(row[0] / 100, +1), 0.03, "upper, x = " + row[0]);
            assertEquals(row[2], 100 * section.height(row[0] / 100, -1), 0.03, "lower, x = " + row[0]);
        }
    }

    @Test
    void camberIsTwoPerCentAtFourTenths() {
        // NACA Report 460: first digit = camber in per cent, second = its position in tenths
        Naca4 section = Naca4.of("2412");
        assertEquals(0.02, section.camberLine(0.4), 1e-15);
        assertEquals(0, section.camberSlope(0.4), 1e-15);
        assertEquals(0, section.camberLine(0), 0);
        assertEquals(0, section.camberLine(1), 1e-15);
        for (double x : new double[] {0.1, 0.3, 0.5, 0.9}) {
            double slope = (section.camberLine(x + 1e-6) - section.camberLine(x - 1e-6)) / 2e-6;
            assertEquals(slope, section.camberSlope(x), 1e-9);
        }
    }

    @Test
    void leadingEdgeRadiusIsThePublishedOne() {
        // NACA Report 460: r = 1.1019 t^2; Abbott and von Doenhoff print 1.58 % for 0012 (from memory).
        // curvature of a curve y = a sqrt(x) at its vertex: r = a^2 / 2 = lim y^2 / (2 x)
        Naca4 section = Naca4.of("0012");
        double x = 1e-12;
        double y = section.halfThickness(x);
        assertEquals(section.leadingEdgeRadius(), y * y / (2 * x), 1e-6);
        assertEquals(0.0158, section.leadingEdgeRadius(), 1e-4);
    }

    @Test
    void sectionAreaIsTheIntegralOfThePolynomial() {
        // twice the integral of the thickness polynomial: 10 t (0.29690 * 2/3 - 0.126/2 - 0.3516/3 + 0.2843/4 -
        // 0.1015/5)
        // = 0.6851 t; the usual handbook figure is 0.685 t c^2
        Naca4 section = Naca4.of("0015");
        int n = 200_000;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += 2 * section.halfThickness((i + 0.5) / n) / n;
        }
        assertEquals(0.685, sum / 0.15, 2e-4);
    }

    @Test
    void wrongDesignationsAreRefused() {
        for (String digits : new String[] {"", "12", "23012", "24a2", "2400", "2012", "0412"}) {
            assertThrows(IllegalArgumentException.class, () -> Naca4.of(digits), digits);
        }
    }
}
