package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlowSolverTest {
    private static final double NU = 0.02;

    private static FlowCases.Field vortex(double t) {
        // Taylor and Green (1937), Proc. R. Soc. A 158, 499: the two-dimensional vortex, exact for all times.
        return (a, x, y, z) ->
                Math.exp(-2 * NU * t) * (a == 0 ? Math.sin(x) * Math.cos(y) : a == 1 ? -Math.cos(x) * Math.sin(y) : 0);
    }

    private static double vortexError(int n) {
        double h = Math.PI / n;
        FlowGrid g = FlowCases.grid(GridFixtures.box(n, n, 1, h).build(), 1);
        FlowSolver solver = new FlowSolver(g, FlowSettings.laminar(NU).with(FlowSettings.Walls.SLIP));
        FlowCases.start(solver, vortex(0));
        FlowCases.advance(solver, 2);
        return FlowCases.meanError(solver, vortex(2));
    }

    @Test
    void theTaylorGreenVortexDecaysAtTheExactRateToSecondOrder() {
        double coarse = vortexError(16);
        double fine = vortexError(32);
        double finest = vortexError(64);
        assertTrue(finest < 1e-3, "error " + finest);
        assertTrue(Math.log(fine / finest) / Math.log(2) > 1.8, "order from " + fine + " to " + finest);
    }

    /** Ghia, Ghia and Shin (1982), J. Comput. Phys. 48, 387, tables I and II (from memory): u on the upright centre line. */
    @ParameterizedTest
    @CsvSource({
        "100, 32, -0.21090, 0.17527, -0.24533, 0.03",
        "400, 48, -0.32726, 0.30203, -0.44993, 0.05",
        "1000, 64, -0.38289, 0.37095, -0.51550, 0.06"
    })
    void theLidDrivenCavityHasTheTabulatedExtremes(
            double reynolds, int n, double leastU, double mostV, double leastV, double tolerance) {
        double h = 1.0 / n;
        FlowGrid g = FlowCases.grid(GridFixtures.box(n, n, 1, h).build(), 1);
        FlowSettings settings = FlowSettings.laminar(1 / reynolds)
                .withTolerance(1e-5, 20)
                .withWallSpeed((place, axis) -> place[1] >= 4
                        ? Double.NaN
                        : place[1] == 3 && g.block[3 * place[0] + 1] == n - 1 && axis == 0 ? 1 : 0);
        FlowSolver solver = new FlowSolver(g, settings);
        solver.wake();
        FlowCases.advanceAwake(solver, reynolds > 500 ? 40 : 20);
        double[] u = new double[n];
        double[] v = new double[n];
        double leastFoundU = 0;
        double mostFoundV = 0;
        double leastFoundV = 0;
        for (int i = 0; i < n; i++) {
            u[i] = solver.speedMPerS()[FlowCases.face(g, n / 2 - 1 + n * i, 0)];
            v[i] = solver.speedMPerS()[FlowCases.face(g, i + n * (n / 2 - 1), 1)];
            leastFoundU = Math.min(leastFoundU, u[i]);
            mostFoundV = Math.max(mostFoundV, v[i]);
            leastFoundV = Math.min(leastFoundV, v[i]);
        }
        assertEquals(leastU, leastFoundU, tolerance * Math.abs(leastU));
        assertEquals(mostV, mostFoundV, tolerance * mostV);
        assertEquals(leastV, leastFoundV, tolerance * Math.abs(leastV));
        GhiaTables.hold((int) reynolds, u, v, 0.025);
    }

    @Test
    void aFreeStreamIsPreserved() {
        int n = 8;
        double h = 0.01;
        GridFixtures box = GridFixtures.box(n, n, n, h);
        for (int j = 0; j < n; j++) {
            for (int k = 0; k < n; k++) {
                box.vent(0, 0, j, k, 0, h * h);
                box.vent(0, n - 1, j, k, 1, h * h);
            }
        }
        FlowGrid g = FlowCases.grid(box.build(), 1);
        FlowSolver solver = new FlowSolver(g, FlowSettings.laminar(1.5e-5).with(FlowSettings.Walls.SLIP));
        double[] vents = new double[g.vents];
        double[] outflow = new double[g.cells];
        for (int v = 0; v < g.vents; v++) {
            vents[v] = g.ventSign[v] * 2 * g.ventAreaM2[v];
            outflow[g.ventCell[v]] -= vents[v];
        }
        for (int f = 0; f < g.faces; f++) {
            solver.speedMPerS()[f] = g.axis[f] == 0 ? 2 : 0;
        }
        solver.advance(
                0.1, new FlowDrive(outflow, vents, new double[g.faces], new double[g.cells]), new double[g.faces]);
        for (int f = 0; f < g.faces; f++) {
            assertEquals(g.axis[f] == 0 ? 2 : 0, solver.speedMPerS()[f], 1e-12);
        }
        assertTrue(solver.steps() > 10);
    }

    @Test
    void aFreeStreamIsPreservedThroughOpeningsOfAnyShare() {
        // Sheets across the stream with slots of one shape, one behind the other: every row passes its own share
        // undisturbed.
        int n = 8;
        double h = 0.01;
        GridFixtures box = GridFixtures.box(n, n, n, h);
        GridFixtures.Aperture slots = (j, k) -> h * h * (0.3 + 0.08 * j) * (k % 3 == 0 ? 0.5 : 1);
        for (int i = 1; i < n; i++) {
            box.baffle(i, 0, slots);
        }
        for (int j = 0; j < n; j++) {
            for (int k = 0; k < n; k++) {
                box.vent(0, 0, j, k, 0, slots.areaM2(j, k));
                box.vent(0, n - 1, j, k, 1, slots.areaM2(j, k));
            }
        }
        FlowGrid g = FlowCases.grid(box.build(), 1);
        FlowSolver solver = new FlowSolver(g, FlowSettings.laminar(1e-12).with(FlowSettings.Walls.SLIP));
        double[] vents = new double[g.vents];
        double[] outflow = new double[g.cells];
        for (int v = 0; v < g.vents; v++) {
            vents[v] = g.ventSign[v] * 2 * g.ventAreaM2[v];
            outflow[g.ventCell[v]] -= vents[v];
        }
        for (int f = 0; f < g.faces; f++) {
            solver.speedMPerS()[f] = g.axis[f] == 0 ? 2 : 0;
        }
        solver.advance(
                0.05, new FlowDrive(outflow, vents, new double[g.faces], new double[g.cells]), new double[g.faces]);
        for (int f = 0; f < g.faces; f++) {
            assertEquals(g.axis[f] == 0 ? 2 : 0, solver.speedMPerS()[f], 1e-9);
        }
        assertTrue(solver.steps() > 10);
    }

    @Test
    void projectionLeavesLessThanATrillionth() {
        FlowGrid g = FlowCases.grid(
                GridFixtures.box(20, 12, 9, new Vec3(0.01, 0.02, 0.015))
                        .baffle(7, 0, (j, k) -> j < 5 ? 1e-4 : 0)
                        .build(),
                1);
        FlowSolver solver = new FlowSolver(g, FlowSettings.laminar(1.5e-5));
        FlowCases.start(solver, (a, x, y, z) -> Math.sin(300 * x + 170 * y * (a + 1) - 90 * z));
        double worst = 0;
        for (double o : g.outflow(solver.fluxM3PerS())) {
            worst = Math.max(worst, Math.abs(o));
        }
        assertTrue(worst < 1e-12 * 0.02 * 0.015 * 10, "left " + worst);
        assertTrue(solver.leftOver() < 1e-12);
    }

    /** A jet in a closed box: a force on a few faces in the middle of one end. */
    private static FlowDrive jet(FlowGrid g, int n, double force) {
        double[] push = new double[g.faces];
        int face = FlowCases.face(g, 1 + 2 * n * (n / 2 + n * (n / 2)), 0);
        push[face] = force;
        push[FlowCases.face(g, 1 + 2 * n * (n / 2 - 1 + n * (n / 2)), 0)] = force;
        push[FlowCases.face(g, 1 + 2 * n * (n / 2 + n * (n / 2 - 1)), 0)] = force;
        push[FlowCases.face(g, 1 + 2 * n * (n / 2 - 1 + n * (n / 2 - 1)), 0)] = force;
        return new FlowDrive(new double[g.cells], new double[g.vents], push, new double[g.cells]);
    }

    @Test
    void theForcesOnTheWallsOfABoxBalanceAJetsThrust() {
        // Newton's second law over the whole box: thrust = pressure on both ends + friction along the walls + gain of
        // momentum.
        int n = 10;
        double h = 0.01;
        FlowGrid g = FlowCases.grid(GridFixtures.box(2 * n, n, n, h).build(), 1);
        FlowSolver solver = new FlowSolver(g, FlowSettings.run(1.5e-5).withTolerance(1e-12, 200));
        double thrust = 0.01;
        FlowDrive drive = jet(g, n, thrust / 4);
        solver.advance(1.5, drive, new double[g.faces]);
        FlowBalance.Forces f = FlowBalance.along(solver, drive, 0);
        assertTrue(Math.abs(f.frictionM4PerS2()) > 0.02 * thrust, f.toString());
        assertEquals(0, f.missingM4PerS2(), 1e-5 * thrust, f.toString());
    }

    @Test
    void mirroredJetsMakeMirroredFlowAndTurnedJetsTurnedFlow() {
        int n = 8;
        double h = 0.01;
        FlowGrid g = FlowCases.grid(GridFixtures.box(n, n, n, h).build(), 1);
        double[][] speeds = new double[3][];
        for (int turn = 0; turn < 3; turn++) {
            FlowSolver solver = new FlowSolver(g, FlowSettings.run(1.5e-5).withTolerance(1e-12, 200));
            double[] push = new double[g.faces];
            int[] at = turned(turn, n, new int[] {1, 2, 5});
            int axis = turn == 2 ? 1 : 0;
            int low = turn == 1 ? n - 2 - at[0] : at[0];
            int cell = turn == 1 ? low + n * (at[1] + n * at[2]) : at[0] + n * (at[1] + n * at[2]);
            push[FlowCases.face(g, cell, axis)] = turn == 1 ? -1e-3 : 1e-3;
            solver.advance(
                    0.2,
                    new FlowDrive(new double[g.cells], new double[g.vents], push, new double[g.cells]),
                    new double[g.faces]);
            speeds[turn] = solver.speedMPerS().clone();
        }
        double most = 0;
        for (double u : speeds[0]) {
            most = Math.max(most, Math.abs(u));
        }
        for (int i = 0; i < n - 1; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    double own = speeds[0][FlowCases.face(g, i + n * (j + n * k), 0)];
                    double mirror = speeds[1][FlowCases.face(g, n - 2 - i + n * (j + n * k), 0)];
                    // A quarter turn about z takes x to y and y to -x.
                    double turned = speeds[2][FlowCases.face(g, n - 1 - j + n * (i + n * k), 1)];
                    assertEquals(own, -mirror, 1e-7 * most);
                    assertEquals(own, turned, 1e-7 * most);
                }
            }
        }
    }

    private static int[] turned(int turn, int n, int[] at) {
        return turn == 2 ? new int[] {n - 1 - at[1], at[0], at[2]} : at;
    }

    @Test
    void turbulenceLeftAloneDecaysByItsExactLaw() {
        // k = k0/(1 + 0.1643 sqrt(k0) t/(2 l))²: Prandtl (1945), constants of Launder and Spalding (1972).
        FlowGrid g = FlowCases.grid(GridFixtures.box(4, 4, 4, 0.05).build(), 1);
        FlowSolver solver = new FlowSolver(g, FlowSettings.run(1e-12));
        Arrays.fill(solver.turbulence().k(), 0);
        int c = 21;
        double l = solver.turbulence().lengthM()[c];
        // Bay scale 0.07 of 4V/A = 0.2 m * 2/3.
        assertEquals(0.07 * 4 * 0.2 / 6, l, 1e-12);
        Arrays.fill(solver.turbulence().k(), 0.01);
        solver.turbulence().refresh();
        FlowCases.advance(solver, 3);
        double expected = 0.01 / Math.pow(1 + 0.1643 * 0.1 * 3 / (2 * l), 2);
        assertEquals(expected, solver.turbulence().k()[c], 2e-4 * expected);
        assertTrue(solver.resting());
    }

    @Test
    void pressureSolvesTakeAsManyIterationsOnAnyGrid() {
        int[] iterations = new int[2];
        int[] sizes = {10, 40};
        for (int i = 0; i < 2; i++) {
            int n = sizes[i];
            FlowGrid g = FlowCases.grid(GridFixtures.box(n, n, n, 0.3 / n).build(), 1);
            FlowSolver solver = new FlowSolver(g, FlowSettings.laminar(1.5e-5));
            FlowCases.start(solver, (a, x, y, z) -> Math.sin(40 * x + 17 * y * (a + 1) - 29 * z));
            iterations[i] = solver.iterations();
        }
        assertTrue(iterations[1] <= iterations[0] + 3, iterations[0] + " then " + iterations[1]);
    }
}
