package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.spray.SizeBins;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Settling with and without eddies against exact and published solutions. */
class FogSettlingTest {
    private static void near(double expected, double value, double relative) {
        assertEquals(expected, value, relative * Math.abs(expected));
    }

    private static VoxelGrid column(int cells, double heightM) {
        return new BoxGrid(1, 1, cells, 0.1, 0.1, heightM / cells).build();
    }

    // Hinds (1999) ch. 3, stirred settling: oil of 880 kg/m³, 0.15 m; rows ST-01 and ST-03.
    @Test
    void stirredFogFallsOffExponentially() {
        VoxelGrid grid = column(15, 0.15);
        FogStepper fog = new FogStepper(grid, Fields.one(10e-6), 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fog.addUniform(1e-3);
        double start = fog.airborneKg();
        fog.advance(Fields.still(grid, 0.2), null, 60);
        near(0.3416, fog.airborneKg() / start, 5e-3);

        FogStepper fine = new FogStepper(grid, Fields.one(5e-6), 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fine.addUniform(1e-3);
        // Windows too short for split steps, whose error grows as a bin fades.
        for (int i = 0; i < 20_000; i++) {
            fine.advance(Fields.still(grid, 0.005), null, 1012 / 20_000.0);
        }
        assertEquals(0, fine.stats().implicitSteps());
        // 1 % of the start is left after 4.605 H/V, which the row gives to 0.5 % in time, 2.3 % in what is left.
        near(0.01, fine.airborneKg() / start, 0.025);
    }

    // Hinds (1999) ch. 3, quiet settling; row ST-02.
    @Test
    void quietFogFallsOffLinearly() {
        VoxelGrid grid = column(15, 0.15);
        FogStepper fog = new FogStepper(grid, Fields.one(5e-6), 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fog.addUniform(1e-3);
        double start = fog.airborneKg();
        fog.advance(Fields.still(grid, 0), null, 60);
        near(0.7270, fog.airborneKg() / start, 5e-3);
        // While the front has not arrived the floor catches c V t A and nothing else catches anything.
        near(1e-3 * 6.826e-4 * 60 * 0.01, Fields.deposited(fog, grid, 4), 1e-3);
        assertEquals(Fields.depositedAll(fog), Fields.deposited(fog, grid, 4));
    }

    // Slowest mode of settling plus constant diffusivity over a catching floor, exact eigenvalue; rows ST-04 to ST-08.
    @ParameterizedTest
    @CsvSource({"0.1, 1.016722", "1, 1.171963", "2, 1.353526", "5, 1.943046", "10, 3.021873"})
    void lateDecayFollowsTheExactEigenvalue(double peclet, double rate) {
        int n = 100;
        double v = 1e-3;
        double h = 0.1;
        double k = v * h / peclet;
        VoxelGrid grid = column(n, h);
        FogStepper fog = Fields.settling(grid, v, Fields.DOWN);
        AirField field = Fields.still(grid, k);
        fog.addUniform(1e-3);
        double mixing = h * h / k;
        int windows = (int) Math.ceil(1.2 * mixing / (0.2 * 1e-6 / k * 2000)) + 1;
        for (int i = 0; i < windows; i++) {
            fog.advance(field, null, 1.2 * mixing / windows);
        }
        double before = fog.airborneKg();
        // Steps of a tenth of the limit, so that the error in time does not hide the one in space.
        double window = 0.05 * (h / n) * (h / n) / k;
        int steps = (int) Math.round(0.05 * h / v / window);
        for (int i = 0; i < steps; i++) {
            fog.advance(field, null, window);
        }
        near(rate, Math.log(before / fog.airborneKg()) / (steps * window) * h / v, 1e-3);
    }

    // Barometric profile without deposition; row ST-09. A ceiling that gravity pulls at without a sink: walls take
    // nothing.
    @Test
    void profileWithoutDepositionIsBarometric() {
        int n = 30;
        VoxelGrid grid = column(n, 0.15);
        FogStepper fog = new FogStepper(
                grid, Fields.one(1e-5), Fields.falling(2.685e-3), (s, b, u, up) -> 0, Fields.DOWN, Fields.ONE);
        fog.addUniform(1e-3);
        fog.advance(Fields.still(grid, 1e-3), null, 400);
        double ratio = fog.concentrationKgPerM3(n - 1, 0) / fog.concentrationKgPerM3(0, 0);
        // Cell centres are h (n - 1)/n apart: the exponential flux meets the exact profile there.
        near(0.6684, Math.pow(ratio, n / (n - 1.0)), 1e-3);
        near(Math.exp(-2.685e-3 * 0.15 / 1e-3 * (n - 1) / n), ratio, 1e-6);
    }

    /** FDS Verification Guide, aerosol_gravitational_deposition: constants (row FD-01). */
    private static final double FDS_SPEED = 5.54671e-3;

    private static final double FDS_CONCENTRATION = 1e-5 * 1.19725;

    // Rows FD-02, FD-04: published deposit on a 1 cm box of 10³ cells, and its mirror image.
    @ParameterizedTest
    @ValueSource(ints = {1, -1})
    void floorDepositFollowsFds(int sense) {
        VoxelGrid grid = BoxGrid.cubes(10, 10, 10, 1e-3).build();
        FogStepper fog = Fields.settling(grid, FDS_SPEED, new Vec3(0, 0, -9.80665 * sense));
        fog.addUniform(FDS_CONCENTRATION);
        AirField field = Fields.still(grid, 0);
        double[] at = {0.72, 0.8, 0.9, 1.0};
        double[] published = {4.78e-8, 5.31e-8, 5.98e-8, 6.64e-8};
        int below = sense > 0 ? 4 : 5;
        for (int i = 0; i < at.length; i++) {
            fog.advance(field, null, at[i] - fog.timeS());
            near(published[i], Fields.deposited(fog, grid, below) / 1e-4, 3e-3);
            assertEquals(0, Fields.deposited(fog, grid, 9 - below));
        }
    }

    // Row FD-03: the band from 5 to 6 mm empties between 0.72 and 0.90 s; 400 cells, since donor-cell fronts smear.
    @Test
    void frontPassesTheBandWhenFdsSays() {
        VoxelGrid grid = column(400, 0.01);
        FogStepper fog = Fields.settling(grid, FDS_SPEED, new Vec3(0, 0, -9.80665));
        fog.addUniform(1);
        AirField field = Fields.still(grid, 0);
        fog.advance(field, null, 0.721);
        double start = band(fog);
        fog.advance(field, null, 0.811 - 0.721);
        double half = band(fog);
        fog.advance(field, null, 0.901 - 0.811);
        assertTrue(start > 0.95, "at the start " + start);
        near(0.5, half, 0.03);
        assertTrue(band(fog) < 0.05, "at the end " + band(fog));
    }

    private static double band(FogStepper fog) {
        double sum = 0;
        for (int c = 200; c < 240; c++) {
            sum += fog.concentrationKgPerM3(c, 0) / 40;
        }
        return sum;
    }

    // FDS Validation/Verification csv of the soot settling pair (rows FD-05, FD-06): 1 m cube, V fitted 1.414e-3 m/s.
    @Test
    void stirredCubeFollowsFds() {
        VoxelGrid grid = BoxGrid.cubes(4, 4, 4, 0.25).build();
        FogStepper fog = Fields.settling(grid, 1.414e-3, Fields.DOWN);
        fog.addUniform(1e-4);
        double[] published = {0.868e-4, 0.754e-4, 0.654e-4, 0.568e-4, 0.493e-4};
        for (double kg : published) {
            fog.advance(Fields.still(grid, 1), null, 100);
            near(kg, fog.airborneKg(), 5e-3);
        }
    }

    @Test
    void stillCubeFollowsFds() {
        VoxelGrid grid = BoxGrid.cubes(4, 4, 4, 0.25).build();
        FogStepper fog = Fields.settling(grid, 1.414e-3, Fields.DOWN);
        fog.addUniform(1e-4);
        double[] published = {0.9717e-4, 0.9434e-4, 0.9152e-4, 0.8869e-4, 0.8586e-4};
        for (double kg : published) {
            fog.advance(Fields.still(grid, 0), null, 20);
            near(kg, fog.airborneKg(), 1e-3);
        }
    }

    // Lai and Nazaroff (2000) with the enclosure sum, rows LN-10, LN-11: the stepper's loss rate in a stirred box.
    @ParameterizedTest
    @CsvSource({"0.1e-6, 1.953e-5", "5e-6, 4.553e-3", "10e-6, 1.794e-2"})
    void stirredBoxLosesAtTheEnclosureRate(double diameterM, double perS) {
        VoxelGrid grid = new BoxGrid(4, 4, 4, 0.25, 0.125, 0.0375).build();
        FogStepper fog = new FogStepper(grid, Fields.one(diameterM), 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fog.addUniform(1e-3);
        double start = fog.airborneKg();
        AirField field = Fields.still(grid, 1, 0.01, 1);
        fog.advance(field, null, 0.5 / perS);
        near(perS, Math.log(start / fog.airborneKg()) / (0.5 / perS), 8e-3);
    }

    // Inclined plates 0 to 180°: gravity is turned, each wall gets c v_d(angle) A t from fog that is still uniform.
    @ParameterizedTest
    @ValueSource(ints = {0, 15, 30, 60, 89, 90, 91, 120, 150, 180})
    void inclinedPlateCatchesWhatTheLawSays(int degrees) {
        double angle = Math.toRadians(degrees);
        Vec3 gravity = new Vec3(9.81 * Math.sin(angle), 0, -9.81 * Math.cos(angle));
        VoxelGrid grid = BoxGrid.cubes(6, 2, 6, 0.02).build();
        SizeBins bins = new SizeBins(new double[] {0.1e-6, 1e-6, 10e-6}, new double[] {0.3, 0.3, 0.4});
        FogStepper fog = new FogStepper(grid, bins, 880, Fields.AIR, gravity, Fields.ONE);
        fog.addUniform(1);
        fog.advance(Fields.still(grid, 0, 0.02, 1), null, 1e-3);
        for (int b = 0; b < 3; b++) {
            FogDroplet d = FogDroplet.of(bins.diameterM()[b], 880, Fields.AIR, 9.81);
            double v = new DepositionLaw(d, Fields.AIR).speedMPerS(0.02, Math.cos(angle));
            // The surfel in the middle of the lower z wall: its normal makes this angle with up.
            int s = middleOfFloor(grid);
            double expected = bins.share()[b] * v * 4e-4 * 1e-3;
            assertEquals(expected, fog.depositedKg(s, b), 1e-3 * expected + 1e-30);
        }
    }

    private static int middleOfFloor(VoxelGrid grid) {
        for (int s = 0; s < grid.surfels().count(); s++) {
            if (grid.surfels().direction()[s] == 4 && grid.surfels().cell()[s] == 3) {
                return s;
            }
        }
        throw new AssertionError("no floor");
    }

    @Test
    void weightlessFogDoesNotSettle() {
        VoxelGrid grid = column(5, 0.1);
        FogStepper fog = new FogStepper(grid, Fields.one(1e-5), 880, Air.STANDARD, Vec3.ZERO, Fields.ONE);
        fog.addUniform(1);
        fog.advance(Fields.still(grid, 0), null, 100);
        assertEquals(0, Fields.depositedAll(fog));
        assertEquals(fog.releasedKg(), fog.airborneKg(), 1e-18);
    }
}
