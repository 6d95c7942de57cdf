package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Order of accuracy of each operator of the resolved air by itself. */
class FlowOrderTest {
    private static double order(double coarse, double fine) {
        return Math.log(coarse / fine) / Math.log(2);
    }

    /** A box open at both ends with air through it. */
    private static FlowGrid duct(int nx, int ny, int nz, Vec3 size) {
        GridFixtures box = GridFixtures.box(nx, ny, nz, size);
        for (int j = 0; j < ny; j++) {
            for (int k = 0; k < nz; k++) {
                box.vent(0, 0, j, k, 0, size.y() * size.z());
                box.vent(1, nx - 1, j, k, 1, size.y() * size.z());
            }
        }
        return FlowCases.grid(box.build(), 1);
    }

    private static FlowDrive through(FlowGrid g, double speedMPerS) {
        double[] vents = new double[g.vents];
        double[] outflow = new double[g.cells];
        for (int v = 0; v < g.vents; v++) {
            vents[v] = g.ventSign[v] * speedMPerS * g.ventAreaM2[v];
            outflow[g.ventCell[v]] -= vents[v];
        }
        return new FlowDrive(outflow, vents, new double[g.faces], new double[g.cells]);
    }

    private static double carriedError(int n, DoubleUnaryOperator shape) {
        double h = 1.0 / n;
        FlowGrid g = duct(n, 1, 1, new Vec3(h, h, h));
        CellScalar scalar = new CellScalar(g, g.volumeM3);
        double[] value = new double[n];
        double[] flux = new double[g.faces];
        double[] vents = through(g, 1).ventFluxM3PerS();
        Arrays.fill(flux, h * h);
        for (int c = 0; c < n; c++) {
            value[c] = shape.applyAsDouble((c + 0.5) * h - 0.35);
        }
        // Steps that fall with the square of the cell leave the error in space alone.
        int steps = n * n / 8;
        for (int s = 0; s < steps; s++) {
            scalar.step(value, flux, vents, new double[n], false, 0.3 / steps);
        }
        double error = 0;
        for (int c = n / 2; c < n; c++) {
            error += h * Math.abs(value[c] - shape.applyAsDouble((c + 0.5) * h - 0.65));
        }
        return error;
    }

    private static double front(double x) {
        return 0.5 - 0.5 * Math.tanh(x / 0.06);
    }

    private static double bump(double x) {
        return Math.exp(-x * x / (2 * 0.1 * 0.1));
    }

    @Test
    void advectionIsOfSecondOrderPositiveAndMakesNoExtremes() {
        double front = order(carriedError(256, FlowOrderTest::front), carriedError(512, FlowOrderTest::front));
        assertTrue(front > 1.9, "order " + front);
        // A limiter clips the top of a bump, which costs some of the order there.
        double bump = order(carriedError(128, FlowOrderTest::bump), carriedError(256, FlowOrderTest::bump));
        assertTrue(bump > 1.6, "order " + bump);
        FlowGrid g = duct(40, 1, 1, new Vec3(0.1, 0.1, 0.1));
        CellScalar scalar = new CellScalar(g, g.volumeM3);
        double[] step = new double[40];
        double[] flux = new double[g.faces];
        Arrays.fill(flux, 0.01);
        Arrays.fill(step, 5, 15, 1);
        double before = Arrays.stream(step).sum();
        for (int s = 0; s < 30; s++) {
            scalar.step(step, flux, new double[g.vents], new double[40], false, 0.045);
        }
        for (double v : step) {
            assertTrue(v >= 0 && v <= 1 + 1e-12, "value " + v);
        }
        assertEquals(before, Arrays.stream(step).sum(), 1e-12);
    }

    private static double layerError(int n) {
        double h = 1.0 / n;
        double nu = 0.1;
        FlowGrid g = duct(4, n, 1, new Vec3(0.25, h, 0.25));
        FlowSettings settings = FlowSettings.laminar(nu)
                .withStep(0.05, 1e-3)
                .withWallSpeed((place, axis) -> place[1] == 2 || place[1] == 3 ? 0 : Double.NaN);
        // A shear layer between plates: u = sin(pi y) exp(-nu pi² t), exact (any textbook on the heat equation).
        FlowMomentum momentum = new FlowMomentum(g, FlowLinks.of(g), settings);
        double[] u = new double[g.faces];
        for (int f = 0; f < g.faces; f++) {
            u[f] = g.axis[f] == 0 ? Math.sin(Math.PI * FlowCases.centre(g, f)[1]) : 0;
        }
        double t = 0.2;
        int steps = 4 * n * n;
        double[] rate = new double[g.faces];
        for (int s = 0; s < steps; s++) {
            FlowDrive drive = new FlowDrive(new double[g.cells], ends(g, u), new double[g.faces], new double[g.cells]);
            momentum.prepare(u, drive, new double[g.cells], new double[g.cells]);
            momentum.rates(u, rate, true);
            for (int f = 0; f < g.faces; f++) {
                u[f] += t / steps * rate[f];
            }
        }
        double error = 0;
        int count = 0;
        for (int f = 0; f < g.faces; f++) {
            if (g.axis[f] == 0) {
                double exact = Math.sin(Math.PI * FlowCases.centre(g, f)[1]) * Math.exp(-nu * Math.PI * Math.PI * t);
                error += Math.abs(u[f] - exact);
                count++;
            }
        }
        return error / count;
    }

    /** Lets what flows inside leave and enter at the ends, so that the layer knows of no ends. */
    private static double[] ends(FlowGrid g, double[] u) {
        double[] vents = new double[g.vents];
        for (int v = 0; v < g.vents; v++) {
            int inside = g.side(g.ventCell[v], g.ventSign[v] > 0 ? 0 : 1)[0];
            vents[v] = g.ventSign[v] * u[inside] * g.ventAreaM2[v];
        }
        return vents;
    }

    @Test
    void viscosityAndWallsAreOfSecondOrder() {
        double coarse = layerError(8);
        double fine = layerError(16);
        assertTrue(fine < 0.01, "error " + fine);
        assertTrue(order(coarse, fine) > 1.7, "order " + order(coarse, fine) + " from " + coarse + " to " + fine);
    }

    private static double[] vortexAfter(double stepS) {
        int n = 16;
        FlowGrid g = FlowCases.grid(GridFixtures.box(n, n, 1, Math.PI / n).build(), 1);
        FlowSolver solver = new FlowSolver(
                g, FlowSettings.laminar(0.02).with(FlowSettings.Walls.SLIP).withStep(0.9, stepS));
        // Two vortices of different size are no steady flow, so every term acts in time.
        FlowCases.start(
                solver,
                (a, x, y, z) -> a == 0
                        ? Math.sin(x) * Math.cos(y) + 0.5 * Math.sin(2 * x) * Math.cos(y)
                        : a == 1 ? -Math.cos(x) * Math.sin(y) - Math.cos(2 * x) * Math.sin(y) : 0);
        FlowCases.advance(solver, 0.64);
        return solver.speedMPerS().clone();
    }

    @Test
    void stepsInTimeAreOfSecondOrder() {
        double[] exact = vortexAfter(0.0025);
        double coarse = distance(vortexAfter(0.04), exact);
        double fine = distance(vortexAfter(0.02), exact);
        assertTrue(order(coarse, fine) > 1.7, "order " + order(coarse, fine) + " from " + coarse + " to " + fine);
    }

    private static double distance(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += Math.abs(a[i] - b[i]);
        }
        return sum / a.length;
    }

    @ParameterizedTest
    @CsvSource({"2.2, 0.12", "5.3, 0.28", "9.0, 0.45"})
    void aSquareDuctHasTheMeasuredFrictionSpeed(double bulkMPerS, double measuredMPerS) {
        // Sippola and Nazaroff (2004), Aerosol Sci. Technol. 38, 914: square steel duct of 15.2 cm; 15 %.
        int n = 8;
        int length = 40;
        double h = 0.152 / n;
        FlowGrid g = duct(length, n, n, new Vec3(4 * h, h, h));
        double nu = 1.5e-5;
        FlowSolver solver = new FlowSolver(g, FlowSettings.run(nu));
        FlowDrive drive = through(g, bulkMPerS);
        for (int f = 0; f < g.faces; f++) {
            solver.speedMPerS()[f] = g.axis[f] == 0 ? bulkMPerS : 0;
        }
        Arrays.fill(solver.turbulence().k(), 0.003 * bulkMPerS * bulkMPerS);
        solver.turbulence().refresh();
        solver.advance(1.5 * length * 4 * h / bulkMPerS, drive, new double[g.faces]);
        double sum = 0;
        int count = 0;
        for (int f = 0; f < g.faces; f++) {
            if (g.axis[f] == 0 && g.block[3 * g.low[f]] == length - 6) {
                for (int d = 2; d < 6; d++) {
                    if (g.sideCount(g.low[f], d) == 0) {
                        double u = WallLaw.frictionSpeedMPerS(Math.abs(solver.speedMPerS()[f]), 0.5 * h, nu);
                        sum += u * u;
                        count++;
                    }
                }
            }
        }
        assertEquals(measuredMPerS, Math.sqrt(sum / count), 0.15 * measuredMPerS);
    }
}
