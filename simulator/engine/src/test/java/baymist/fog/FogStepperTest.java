package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.problem.SimulationException;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import org.junit.jupiter.api.Test;

/** Accessors, errors, and the choice between explicit and split steps. */
class FogStepperTest {
    private static final SizeBins BINS =
            new SizeBins(new double[] {3e-6, 10e-6, 30e-6, 100e-6}, new double[] {0.1, 0.3, 0.3, 0.3});

    @Test
    void splitStepsAgreeWithExplicitOnes() {
        BoxGrid box = BoxGrid.cubes(10, 6, 8, 0.02);
        box.baffle(5, 2, 3, 2e-4);
        VoxelGrid grid = box.build();
        // One bin each: the reference is driven by short windows, in which the explicit scheme is always chosen.
        FogStepper split = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        FogStepper explicit = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        AirField field = Fields.still(grid, 1e-3, 0.01, 1);
        for (int c = 0; c < 200; c++) {
            split.release(c, 1e-6);
            explicit.release(c, 1e-6);
        }
        split.advance(field, null, 60);
        for (int i = 0; i < 3000; i++) {
            explicit.advance(field, null, 0.02);
        }
        assertTrue(split.stats().implicitSteps() > 50, split.stats().toString());
        assertEquals(0, explicit.stats().implicitSteps());
        double difference = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            difference += Math.abs(split.depositedKg(s) - explicit.depositedKg(s));
        }
        assertTrue(difference < 0.01 * Fields.depositedAll(explicit));
        assertEquals(explicit.airborneKg(), split.airborneKg(), 0.005 * explicit.releasedKg());
        assertEquals(0, Fields.closure(split), 1e-12);
    }

    @Test
    void splitStepsAgreeWithExplicitOnesInASlowFlow() {
        VoxelGrid grid = BoxGrid.cubes(10, 4, 8, 0.02).build();
        FogStepper split = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        FogStepper explicit = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        AirField field = Fields.withFlux(Fields.still(grid, 4e-3, 0.01, 1), Fields.swirl(grid, 2e-6));
        split.addUniform(1e-3);
        explicit.addUniform(1e-3);
        split.advance(field, null, 20);
        for (int i = 0; i < 2000; i++) {
            explicit.advance(field, null, 0.01);
        }
        assertTrue(split.stats().implicitSteps() > 50, split.stats().toString());
        double difference = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            difference += Math.abs(split.depositedKg(s) - explicit.depositedKg(s));
        }
        assertTrue(difference < 0.01 * Fields.depositedAll(explicit));
        assertEquals(0, Fields.closure(split), 1e-12);
    }

    @Test
    void fogIsVisibleAfterFiveMinutes() {
        // Common practice, no source: fog hangs for five minutes. Stirred fog of 5 µm keeps exp(-300/220) = 26 %.
        VoxelGrid grid = BoxGrid.cubes(15, 10, 15, 0.01).build();
        FogStepper fog = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fog.addUniform(5e-3);
        fog.advance(Fields.still(grid, 1e-3, 0.005, 1), null, 300);
        assertTrue(fog.airborneKg(0) > 0.4 * 0.1 * fog.releasedKg());
        assertTrue(fog.airborneKg(2) < 1e-3 * fog.releasedKg());
        assertTrue(fog.stats().implicitSteps() > 100);
        assertEquals(0, Fields.closure(fog), 1e-12);
    }

    @Test
    void copiesHaveTheBinInnermost() {
        VoxelGrid grid = BoxGrid.cubes(2, 1, 1, 0.1).build();
        FogStepper fog = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fog.release(1, 1e-6);
        double[] c = fog.concentrationKgPerM3();
        assertEquals(8, c.length);
        assertEquals(0, c[1]);
        assertEquals(0.3e-3, c[5], 1e-18);
        assertEquals(0.3e-3, fog.concentrationKgPerM3(1, 1), 1e-18);
        assertEquals(1e-3, fog.concentrationKgPerM3(1), 1e-15);
        c[5] = 7;
        assertEquals(0.3e-3, fog.concentrationKgPerM3(1, 1), 1e-18);
        assertEquals(0.5e-3, fog.meanConcentrationKgPerM3(0), 1e-15);
        assertEquals(0, fog.meanConcentrationKgPerM3(5));
        assertEquals(1e-3, fog.peakConcentrationKgPerM3()[1], 1e-15);
        assertEquals(4, fog.bins());
        assertEquals(0, fog.oversprayKg(99));
        assertEquals(Double.POSITIVE_INFINITY, fog.stats().smallestStepS());
        assertEquals(-1, fog.stats().limitBin());
    }

    @Test
    void statsSayWhatLimitsTheStep() {
        VoxelGrid grid = BoxGrid.cubes(3, 3, 3, 0.01).build();
        FogStepper fog = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fog.addUniform(1);
        fog.advance(Fields.still(grid, 0), null, 0.1);
        assertEquals(3, fog.stats().limitBin());
        // 100 µm oil falls at 0.222 m/s: with slopes 0.6 cell in 0.6 * 0.01 / 0.222 s.
        assertEquals(0.6 * 0.01 / 0.2219, fog.stats().smallestStepS(), 1e-4);
        assertTrue(
                fog.stats().reason().contains("settling and eddies"),
                fog.stats().reason());
        fog.advance(Fields.withFlux(Fields.still(grid, 0), Fields.swirl(grid, 1e-4)), null, 0.01);
        assertTrue(fog.stats().reason().startsWith("air flow"), fog.stats().reason());
        assertEquals(0.11, fog.timeS(), 1e-12);
    }

    @Test
    void windowOfNoLengthChangesNothing() {
        VoxelGrid grid = BoxGrid.cubes(2, 2, 2, 0.01).build();
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1);
        fog.advance(Fields.still(grid, 1), null, 0);
        assertEquals(0, fog.timeS());
    }

    @Test
    void emptyBoxCostsNoSteps() {
        VoxelGrid grid = BoxGrid.cubes(2, 2, 2, 0.01).build();
        FogStepper fog = Fields.tracer(grid);
        fog.advance(Fields.still(grid, 1), null, 100);
        fog.advance(Fields.still(grid, 1), Fields.fogSource(new int[] {0}, new double[] {0}), 100);
        assertEquals(0, fog.stats().explicitSteps() + fog.stats().implicitSteps());
        assertEquals(200, fog.timeS());
    }

    @Test
    void badFieldsAreRefusedWithTheirPlace() {
        VoxelGrid grid = BoxGrid.cubes(2, 2, 2, 0.01).build();
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1);
        double[] flux = new double[grid.faces().count()];
        flux[3] = Double.NaN;
        AirField nan = Fields.withFlux(Fields.still(grid, 0), flux);
        assertTrue(assertThrows(SimulationException.class, () -> fog.advance(nan, null, 1))
                .getMessage()
                .contains("air flux of NaN at 3"));
        AirField negative = Fields.still(grid, -1);
        assertThrows(SimulationException.class, () -> fog.advance(negative, null, 1));
        AirField wide = Fields.still(grid, 0, 0, 2);
        assertThrows(IllegalArgumentException.class, () -> fog.advance(wide, null, 1));
        AirField wrong = Fields.withFlux(Fields.still(grid, 0), new double[1]);
        assertThrows(IllegalArgumentException.class, () -> fog.advance(wrong, null, 1));
        AirField good = Fields.still(grid, 0);
        assertThrows(IllegalArgumentException.class, () -> fog.advance(good, null, -1));
        assertThrows(
                IllegalArgumentException.class,
                () -> fog.advance(good, Fields.fogSource(new int[] {0}, new double[] {-1}), 1));
        assertThrows(IllegalArgumentException.class, () -> fog.advance(good, Fields.scour(0, 0, -1, 1), 1));
        assertThrows(IllegalArgumentException.class, () -> fog.release(0, Double.NaN));
    }

    @Test
    void brokenNumbersSayCellBinAndTime() {
        VoxelGrid grid = BoxGrid.cubes(2, 1, 1, 0.1).build();
        FogStepper fog = new FogStepper(
                grid,
                Fields.one(1e-5),
                Fields.falling(0),
                (s, b, u, up) -> s == 0 ? -1e4 : 0,
                Fields.WEIGHTLESS,
                Fields.ONE);
        fog.addUniform(1);
        SimulationException e = assertThrows(SimulationException.class, () -> {
            for (int i = 0; i < 100; i++) {
                fog.advance(Fields.still(grid, 0), null, 1e4);
            }
        });
        assertTrue(e.getMessage().contains("cell 0") && e.getMessage().contains("bin 0"), e.getMessage());
    }
}
