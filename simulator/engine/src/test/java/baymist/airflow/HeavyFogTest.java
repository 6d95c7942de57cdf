package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Flows that the weight of fog drives. */
class HeavyFogTest {
    private static final double G = 9.80665;

    /** Carries a loading (fog mass over air density) with the flow and lets its weight pull. */
    private static final class Carried {
        final FlowSolver solver;
        final FlowGrid g;
        final CellScalar scalar;
        final double[] loading;
        final double[] gravity;

        Carried(FlowGrid g, FlowSettings settings, double[] gravity) {
            this.g = g;
            this.gravity = gravity;
            solver = new FlowSolver(g, settings);
            scalar = new CellScalar(g, g.volumeM3);
            loading = new double[g.cells];
        }

        /** Advances in windows with the weight frozen in each. */
        void advance(double durationS, double windowS) {
            int windows = (int) Math.round(durationS / windowS);
            for (int w = 0; w < windows; w++) {
                double[] push = new double[g.faces];
                for (int f = 0; f < g.faces; f++) {
                    push[f] = gravity[g.axis[f]] * 0.5 * (loading[g.low[f]] + loading[g.high[f]]) * g.faceVolumeM3(f);
                }
                double[] mean = new double[g.faces];
                solver.advance(
                        windowS,
                        new FlowDrive(new double[g.cells], new double[g.vents], push, new double[g.cells]),
                        mean);
                for (int f = 0; f < mean.length; f++) {
                    mean[f] /= windowS;
                }
                double[] none = new double[g.cells];
                int n = (int) Math.ceil(windowS * scalar.rate(mean, none) / 0.45);
                for (int i = 0; i < n; i++) {
                    scalar.step(loading, mean, new double[g.vents], none, false, windowS / n);
                }
            }
        }

        double mass(java.util.function.IntPredicate cells) {
            double sum = 0;
            for (int c = 0; c < g.cells; c++) {
                sum += cells.test(c) ? loading[c] * g.volumeM3[c] : 0;
            }
            return sum;
        }
    }

    private static FlowSettings settings() {
        return FlowSettings.laminar(1.5e-5)
                .with(FlowSettings.Walls.SLIP)
                .withTolerance(1e-4, 10)
                .withStep(0.6, 0.05);
    }

    @Test
    void theFrontOfALockExchangeRunsAtHalfTheSpeedOfItsHeight() {
        // Benjamin (1968), J. Fluid Mech. 31, 209: a loss-free front of half the channel's depth runs at 0.5 sqrt(g'
        // H).
        int nx = 120;
        int nz = 20;
        double h = 0.0075;
        FlowGrid g = FlowCases.grid(GridFixtures.box(nx, 1, nz, h).build(), 1);
        double reduced = 0.08;
        double height = nz * h;
        for (double[] gravity : new double[][] {{0, 0, -G}}) {
            Carried flow = new Carried(g, settings(), gravity);
            for (int c = 0; c < g.cells; c++) {
                flow.loading[c] = g.block[3 * c] < nx / 2 ? reduced / G : 0;
            }
            double speed = Math.sqrt(reduced * height);
            flow.advance(1.0 * height / speed * 2, 0.02);
            double first = front(flow, reduced);
            double time = 1.5 * height / speed;
            flow.advance(time, 0.02);
            double second = front(flow, reduced);
            double froude = (second - first) / (Math.round(time / 0.02) * 0.02) / speed;
            assertTrue(froude > 0.44 && froude < 0.54, "front speed over sqrt(g'H) = " + froude);
        }
    }

    /** Farthest point along the floor where half of the excess weight is reached. */
    private static double front(Carried flow, double reduced) {
        double far = 0;
        for (int c = 0; c < flow.g.cells; c++) {
            if (flow.g.block[3 * c + 2] == 0 && flow.loading[c] > 0.5 * reduced / G) {
                far = Math.max(far, (flow.g.block[3 * c] + 1) * flow.g.h[0]);
            }
        }
        return far;
    }

    @Test
    void denseFogLeavesThroughADoorwayAsBrownAndSolvasonMeasured() {
        // Brown and Solvason (1962), Int. J. Heat Mass Transfer 5, 859: Q = (Cd/3) A sqrt(g' H), Cd 0.6 to 1.
        double coefficient = doorway(24, 12, 16, 0.0125, 3, 6, 12, false);
        assertTrue(coefficient > 0.5 && coefficient < 1.0, "Cd = " + coefficient);
    }

    @Test
    void aSlotTooNarrowForTheBlocksExchangesWithItsOrificeLoss() {
        // The same law; the slot is two blocks wide and carries the loss of (A18), the contraction that blocks cannot
        // show.
        double coefficient = doorway(12, 6, 8, 0.025, 2, 2, 6, true);
        assertTrue(coefficient > 0.4 && coefficient < 0.9, "Cd = " + coefficient);
    }

    /** Cd of the exchange between two rooms of n x ny x nz cells through a doorway that begins at row k = 1 or 2. */
    private static double doorway(int n, int ny, int nz, double h, int from, int wide, int high, boolean narrow) {
        int sill = nz / 8;
        double area = wide * h * high * h;
        FlowGrid g = FlowGrid.of(
                GridFixtures.box(2 * n, ny, nz, h)
                        .baffle(
                                n,
                                0,
                                (j, k) -> j >= from && j < from + wide && k >= sill && k < sill + high ? h * h : 0)
                        .build(),
                new double[] {area},
                new double[] {1},
                1);
        double held = 0;
        for (double loss : g.loss) {
            held = Math.max(held, loss);
        }
        assertEquals(narrow, held > 0);
        double reduced = 0.08;
        Carried flow = new Carried(g, settings(), new double[] {0, 0, -G});
        for (int c = 0; c < g.cells; c++) {
            flow.loading[c] = g.block[3 * c] < n ? reduced / G : 0;
        }
        double height = high * h;
        double clock = height / Math.sqrt(reduced * height);
        flow.advance(2 * clock, 0.05);
        double before = flow.mass(c -> g.block[3 * c] >= n);
        double time = Math.round(2 * clock / 0.05) * 0.05;
        flow.advance(time, 0.05);
        double after = flow.mass(c -> g.block[3 * c] >= n);
        double exchange = (after - before) / (reduced / G) / time;
        return 3 * exchange / (area * Math.sqrt(reduced * height));
    }

    @Test
    void evenFogStaysAtRestInAnyAttitude() {
        FlowGrid g = FlowCases.grid(GridFixtures.box(6, 5, 4, 0.01).build(), 1);
        double[] gravity = {3, -4, Math.sqrt(G * G - 25)};
        Carried flow = new Carried(g, settings().withTolerance(1e-12, 100), gravity);
        Arrays.fill(flow.loading, 0.01);
        flow.advance(0.2, 0.1);
        for (double u : flow.solver.speedMPerS()) {
            assertTrue(Math.abs(u) < 1e-12, "speed " + u);
        }
    }
}
