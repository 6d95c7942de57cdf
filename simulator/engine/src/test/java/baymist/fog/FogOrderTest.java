package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.scene.Transport;
import baymist.scene.WallFinish;
import baymist.voxel.VoxelGrid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Order of accuracy of the transport with limited slopes: the slope of the error over the size of the cells. */
class FogOrderTest {
    private static FogStepper tracer(VoxelGrid grid, Transport transport) {
        return new FogStepper(
                grid, Fields.one(0), 880, Fields.AIR, Vec3.ZERO, WallFinish.SMOOTH, transport, Fields.ONE);
    }

    /**
     * A smooth hump that turns once round with a rigid middle (Zalesak 1979 and LeVeque 1996 turn cones and humps like that): the exact
     * solution is what there was. Flux by stream function: rigid within 0.4 m of the middle, at rest beyond 0.48 m.
     */
    private static double turned(int n, Transport transport, double degrees) {
        double h = 1.0 / n;
        VoxelGrid grid = new BoxGrid(n, 1, n, h, 1, h).build();
        double[] flux = new double[grid.faces().count()];
        for (int e = 0; e < flux.length; e++) {
            int c = grid.faces().low()[e];
            int i = grid.i(c);
            int k = grid.k(c);
            flux[e] = grid.faces().axis()[e] == 0
                    ? psi((i + 1) * h, (k + 1) * h) - psi((i + 1) * h, k * h)
                    : psi(i * h, (k + 1) * h) - psi((i + 1) * h, (k + 1) * h);
        }
        FogStepper fog = tracer(grid, transport);
        for (int c = 0; c < grid.cellCount(); c++) {
            fog.release(c, hump(grid.centre(c)) * h * h);
        }
        fog.advance(Fields.withFlux(Fields.still(grid, 0), flux), null, degrees / 360);
        assertTrue(1.2 * fog.stats().updates() < fog.stats().explicitSteps() * 3 * grid.cellCount(), "all at one pace");
        double off = 0;
        double all = 0;
        double a = Math.toRadians(degrees);
        for (int c = 0; c < grid.cellCount(); c++) {
            double x = grid.centre(c).x() - 0.5;
            double z = grid.centre(c).z() - 0.5;
            Vec3 before = new Vec3(0.5 + x * Math.cos(a) + z * Math.sin(a), 0, 0.5 - x * Math.sin(a) + z * Math.cos(a));
            double exact = hump(before);
            off += Math.abs(fog.concentrationKgPerM3(c) - exact);
            all += exact;
            assertTrue(fog.concentrationKgPerM3(c) >= 0 && fog.concentrationKgPerM3(c) <= 1 + 1e-9);
        }
        assertEquals(0, Fields.closure(fog), 1e-12);
        return off / all;
    }

    private static double psi(double x, double z) {
        double r = Math.min(0.48, Math.hypot(x - 0.5, z - 0.5));
        double rigid = Math.min(r, 0.4);
        double slow = r - rigid;
        return Math.PI * (rigid * rigid + 0.8 * slow * (1 - slow / 0.16));
    }

    private static double hump(Vec3 at) {
        double r = Math.hypot(at.x() - 0.62, at.z() - 0.5) / 0.26;
        return r < 1 ? Math.pow(Math.cos(0.5 * Math.PI * r), 4) : 0;
    }

    // Order of smooth transport across the cells, over levels of steps: claimed in docs/theory/fog.md, section 2.
    @Test
    void aTurnedHumpConvergesAtSecondOrder() {
        double coarse = turned(40, Transport.SECOND_ORDER, 360);
        double fine = turned(80, Transport.SECOND_ORDER, 360);
        double order = Math.log(coarse / fine) / Math.log(2);
        assertTrue(order >= 1.8, "order " + order + " from " + coarse + " and " + fine);
        double donor = turned(40, Transport.FIRST_ORDER, 360);
        assertTrue(donor > 10 * coarse, donor + " by donor cells, " + coarse + " with slopes");
    }

    // Harten (1983), J. Comput. Phys. 49, 357: a limited transport lets no total variation grow. A block falls through
    // a column.
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.3, 0.59, 0.6})
    void aFallingBlockGrowsNoWaves(double courant) {
        int n = 100;
        VoxelGrid grid = new BoxGrid(1, 1, n, 0.1, 0.1, 0.01).build();
        FogStepper fog = Fields.settling(grid, 0.01, Fields.DOWN);
        for (int c = 60; c < 80; c++) {
            fog.release(c, 1e-4);
        }
        AirField still = Fields.still(grid, 0);
        double variation = 2;
        for (int i = 0; i < 50; i++) {
            fog.advance(still, null, courant);
            double now = fog.concentrationKgPerM3(0, 0) + fog.concentrationKgPerM3(n - 1, 0);
            for (int c = 0; c + 1 < n; c++) {
                now += Math.abs(fog.concentrationKgPerM3(c + 1, 0) - fog.concentrationKgPerM3(c, 0));
            }
            assertTrue(now <= variation * (1 + 1e-12), now + " after " + variation);
            variation = now;
        }
        assertTrue(variation > 1.9, "the block was smeared away: " + variation);
    }

    /** The width over which a front in still air rises from a tenth to nine tenths, after it has fallen by 0.5 m, in cells. */
    private static double frontCells(Transport transport) {
        int n = 100;
        VoxelGrid grid = new BoxGrid(1, 1, n, 0.1, 0.1, 0.01).build();
        FogStepper fog = new FogStepper(
                grid,
                Fields.one(10e-6),
                new FogDroplet[] {new FogDroplet(10e-6, 1, 1e-4, 0.01)},
                (s, b, u, up) -> up > 0 ? 0.01 : 0,
                Fields.DOWN,
                transport,
                Fields.ONE);
        fog.addUniform(1);
        // The largest steps have the least spread of all; other cells mostly force smaller ones.
        for (int i = 0; i < 250; i++) {
            fog.advance(Fields.still(grid, 0), null, 0.2);
        }
        double cells = 0;
        for (int c = 0; c < n; c++) {
            double x = fog.concentrationKgPerM3(c, 0);
            cells += x > 0.1 && x < 0.9 ? 1 : 0;
        }
        return cells;
    }

    @Test
    void aFrontStaysAFewCellsThick() {
        assertTrue(frontCells(Transport.SECOND_ORDER) <= 5, "cells: " + frontCells(Transport.SECOND_ORDER));
        assertTrue(frontCells(Transport.FIRST_ORDER) >= 12, "cells: " + frontCells(Transport.FIRST_ORDER));
    }
}
