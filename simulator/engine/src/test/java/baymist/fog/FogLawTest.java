package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Conservation, symmetry, positivity, uniformity, determinism. */
class FogLawTest {
    private static final SizeBins BINS =
            new SizeBins(new double[] {0, 2e-6, 8e-6, 25e-6, 80e-6}, new double[] {0.1, 0.2, 0.3, 0.3, 0.1});

    private static AirField moving(VoxelGrid grid, double strength, double k, double frictionSpeed) {
        return Fields.withFlux(Fields.still(grid, k, frictionSpeed, 1), Fields.swirl(grid, strength));
    }

    // Conservation and free-stream preservation; rows DF-10, DF-11.
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void sealedBoxKeepsItsMassInAnyFlow(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        VoxelGrid grid = BoxGrid.cubes(6, 5, 7, 0.02).build();
        double[] flux = Fields.swirl(grid, 1e-4);
        for (int e = 0; e < flux.length; e++) {
            flux[e] += 1e-4 * (random.nextDouble() - 0.5);
        }
        FogStepper fog = new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        for (int c = 0; c < grid.cellCount(); c++) {
            fog.release(c, random.nextDouble());
        }
        for (int i = 0; i < 20; i++) {
            fog.advance(Fields.withFlux(Fields.still(grid, 1e-3, 0.05, 1), flux), null, 0.5);
        }
        assertTrue(fog.stats().explicitSteps() + fog.stats().implicitSteps() > 1000);
        assertEquals(0, Fields.closure(fog), 1e-12);
    }

    @Test
    void uniformFogStaysUniformInADivergenceFreeFlow() {
        VoxelGrid grid = BoxGrid.cubes(12, 3, 9, 0.02).build();
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1);
        fog.advance(moving(grid, 1e-3, 1e-3, 0), null, 20);
        assertTrue(fog.stats().explicitSteps() >= 1000, fog.stats().toString());
        assertTrue(fog.stats().airBudgetError() < 1e-12);
        for (double c : fog.concentrationKgPerM3()) {
            assertEquals(1, c, Fields.SINGLE);
        }
    }

    @Test
    void uniformFogStaysUniformWhileItIsCompressed() {
        // Air enters cell 0 carrying nothing: dilution there; elsewhere pure compression, so the ratio to e^(t) shows.
        int n = 20;
        VoxelGrid grid = new BoxGrid(n, 1, 1, 0.05, 1, 1).build();
        double e = 0.1;
        double[] flux = new double[n - 1];
        // Compressed from a moving far end: flux through face i falls linearly so that every cell gains e V.
        for (int i = 0; i < flux.length; i++) {
            flux[i] = -e * 0.05 * (i + 1);
        }
        double[] source = new double[n];
        source[n - 1] = e * 0.05 * n;
        AirField f = Fields.still(grid, 0);
        AirField field = new AirField(
                flux, new double[0], source, e, f.eddyDiffusivityM2PerS(), f.frictionSpeedMPerS(), f.openFraction(), 0);
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1);
        double mass = fog.airborneKg();
        for (int i = 0; i < 1000; i++) {
            fog.advance(field, null, 1e-3);
        }
        assertTrue(fog.stats().airBudgetError() < 1e-12);
        // Far from the source the concentration has risen as the density of the air; its mass is what it was.
        assertEquals(Math.exp(e), fog.concentrationKgPerM3(0), 1e-4);
        assertEquals(fog.concentrationKgPerM3(0), fog.concentrationKgPerM3(5), 1e-5);
        assertEquals(mass, fog.airborneKg(), 1e-12 * mass);
    }

    // Well-mixed dilution, C = C0 exp(-Q t/V): supply air is clean and the vent carries fog out; share of row ST-10.
    @Test
    void supplyAirDilutesAndTheVentCarriesOut() {
        BoxGrid box = BoxGrid.cubes(4, 4, 4, 0.1);
        int hole = box.vent(3, 3, 3, 1, 1e-3);
        VoxelGrid grid = box.build();
        double q = 1e-4;
        AirField field = through(grid, q, 10);
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1e-3);
        double start = fog.airborneKg();
        fog.advance(field, null, 300);
        double expected = Math.exp(-q * 300 / 0.064);
        assertEquals(expected, fog.airborneKg() / start, 2e-3);
        assertEquals(1 - expected, fog.oversprayKg(hole) / start, 2e-3);
        assertEquals(0, Fields.closure(fog), 1e-12);
    }

    // Filling and venting of a stirred box, section on filling: share lost by vents (Q/V)/(Q/V + V_s/H); row ST-10.
    @Test
    void ventShareFollowsTheStirredBox() {
        BoxGrid box = new BoxGrid(4, 4, 4, 0.25, 0.125, 0.0375);
        box.vent(3, 3, 3, 1, 1e-3);
        VoxelGrid grid = box.build();
        SizeBins bins = new SizeBins(new double[] {5e-6, 10e-6, 20e-6}, new double[] {0.3, 0.3, 0.4});
        FogStepper fog = new FogStepper(grid, bins, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        fog.addUniform(1e-3);
        fog.advance(through(grid, 0.54e-3, 2), null, 3000);
        double[] share = {0.613, 0.287, 0.092};
        for (int b = 0; b < 3; b++) {
            assertEquals(share[b], fog.oversprayKg(0, b) / (1e-3 * 0.075 * bins.share()[b]), 0.01, "bin " + b);
        }
    }

    /** Air supplied evenly to the first row along x and leaving by the vent of the last cell; needs strong mixing. */
    private static AirField through(VoxelGrid grid, double q, double k) {
        AirField f = Fields.still(grid, k);
        double[] flux = new double[grid.faces().count()];
        double[] source = new double[grid.cellCount()];
        int last = grid.faces().ventCell()[0];
        source[grid.cellAt(0, grid.j(last), grid.k(last))] = q;
        for (int e = 0; e < flux.length; e++) {
            int c = grid.faces().low()[e];
            if (grid.faces().axis()[e] == 0 && grid.j(c) == grid.j(last) && grid.k(c) == grid.k(last)) {
                flux[e] = q;
            }
        }
        return new AirField(
                flux,
                new double[] {q},
                source,
                0,
                f.eddyDiffusivityM2PerS(),
                f.frictionSpeedMPerS(),
                f.openFraction(),
                0);
    }

    // A beam that draws Q from a stirred box and lands the share eta: decay at eta Q/V.
    @Test
    void scouredBoxDecaysAtTheScourRate() {
        VoxelGrid grid = BoxGrid.cubes(3, 3, 3, 0.1).build();
        SizeBins bins = new SizeBins(new double[] {0, 0}, new double[] {0.5, 0.5});
        FogStepper fog = new FogStepper(grid, bins, 880, Fields.AIR, Vec3.ZERO, Fields.ONE);
        fog.addUniform(1e-3);
        fog.advance(Fields.still(grid, 20), Fields.scour(13, 5, 5e-3, 0.8, 0.2), 3);
        assertEquals(Math.exp(-0.8 * 5e-3 * 3 / 0.027), fog.airborneKg(0) / (0.5e-3 * 0.027), 2e-3);
        assertEquals(Math.exp(-0.2 * 5e-3 * 3 / 0.027), fog.airborneKg(1) / (0.5e-3 * 0.027), 2e-3);
        assertEquals(Fields.depositedAll(fog), fog.depositedKg(5), 1e-18);
        assertEquals(0, Fields.closure(fog), 1e-12);
    }

    // FDS aerosol_scrubbing (seen): decay constant 6.66e-5 1/s, 0.716770 of the start after 5000 s; row FD-10.
    @Test
    void scrubbingFollowsFds() {
        VoxelGrid grid = BoxGrid.cubes(1, 1, 1, 0.1).build();
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1e-3);
        for (int i = 0; i < 500; i++) {
            fog.advance(Fields.still(grid, 0), Fields.scour(0, 5, 6.66e-5 * 1e-3, 1), 10);
        }
        // First order in time: windows of 10 s miss by half of 6.66e-4 of the exponent.
        assertEquals(0.716770, fog.airborneKg() / 1e-6, 2e-4);
    }

    // Stirred box that is sprayed and vented, nothing deposits: C = S/Q (1 - exp(-Q t/V)); 0.5 g/s and 0.54 L/s into 75
    // L give 32.7, 64.3 and
    // 179.9 g/m3 after 5, 10 and 30 s (derived); row SF-07.
    @Test
    void sprayedBoxClimbsTowardsTheUndilutedSpray() {
        BoxGrid box = new BoxGrid(4, 4, 4, 0.25, 0.125, 0.0375);
        box.vent(3, 3, 3, 1, 1e-3);
        VoxelGrid grid = box.build();
        FogStepper fog = Fields.tracer(grid);
        int[] cells = new int[grid.cellCount()];
        double[] rate = new double[cells.length];
        for (int c = 0; c < cells.length; c++) {
            cells[c] = c;
            rate[c] = 0.5e-3 / cells.length;
        }
        double[][] rows = {{5, 32.7e-3}, {10, 64.3e-3}, {30, 179.9e-3}};
        for (double[] row : rows) {
            fog.advance(through(grid, 0.54e-3, 2), Fields.fogSource(cells, rate), row[0] - fog.timeS());
            assertEquals(row[1], fog.airborneKg() / 0.075, 5e-3 * row[1]);
        }
    }

    // Closed budget in the manner of FDS' propane_flame_deposition; row FD-13: airborne + walls + vented = released.
    @Test
    void everyKilogramIsAccountedForWithAllMechanismsOn() {
        BoxGrid box = BoxGrid.cubes(8, 4, 5, 0.02);
        box.baffle(4, 1, 2, 1.5e-4);
        box.vent(7, 3, 2, 1, 1e-4);
        VoxelGrid grid = box.build();
        FogStepper fog = busy(grid, Fields.ONE);
        assertTrue(fog.oversprayKg() > 0 && Fields.depositedAll(fog) > 0 && fog.airborneKg() > 0);
        assertEquals(0, Fields.closure(fog), 1e-12);
        double byBin = 0;
        for (double kg : fog.depositedByBinKg()) {
            byBin += kg;
        }
        assertEquals(Fields.depositedAll(fog), byBin, 1e-15);
    }

    private static FogStepper busy(VoxelGrid grid, Workers workers) {
        FogStepper fog = new FogStepper(grid, BINS, 880, Fields.AIR, new Vec3(3, 0, -9), workers);
        fog.addUniform(1e-3);
        double[] source = new double[2 * BINS.count()];
        Arrays.fill(source, 1e-5);
        AirField spraying = moving(grid, 2e-4, 2e-3, 0.1);
        spraying.ventFluxM3PerS()[0] = 1e-4;
        fog.advance(spraying, Fields.fogSource(new int[] {3, 17}, source), 0.5);
        fog.advance(spraying, Fields.scour(9, 2, 1e-3, 0, 0.1, 0.2, 0.5, 1), 0.5);
        fog.advance(Fields.still(grid, 2e-3, 0.01, 1), null, 20);
        return fog;
    }

    @Test
    void threadsDoNotChangeABit() {
        BoxGrid box = BoxGrid.cubes(8, 4, 5, 0.02);
        box.baffle(4, 1, 2, 1.5e-4);
        box.vent(7, 3, 2, 1, 1e-4);
        VoxelGrid grid = box.build();
        FogStepper one = busy(grid, Fields.ONE);
        for (int threads = 2; threads <= 3; threads++) {
            try (Workers workers = new Workers(threads)) {
                FogStepper many = busy(grid, workers);
                assertArrayEquals(one.concentrationKgPerM3(), many.concentrationKgPerM3());
                assertArrayEquals(one.depositedByBinKg(), many.depositedByBinKg());
                assertEquals(one.oversprayKg(), many.oversprayKg());
                assertEquals(one.stats(), many.stats());
            }
        }
    }

    @Test
    void splittingABinInTwoChangesNothing() {
        VoxelGrid grid = BoxGrid.cubes(5, 4, 6, 0.02).build();
        SizeBins whole = new SizeBins(new double[] {9e-6}, new double[] {1});
        SizeBins halves = new SizeBins(new double[] {9e-6, 9e-6}, new double[] {0.25, 0.75});
        FogStepper a = new FogStepper(grid, whole, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        FogStepper b = new FogStepper(grid, halves, 880, Fields.AIR, Fields.DOWN, Fields.ONE);
        for (FogStepper fog : new FogStepper[] {a, b}) {
            fog.addUniform(1e-3);
            fog.advance(moving(grid, 1e-4, 1e-4, 0.1), null, 10);
        }
        for (int s = 0; s < grid.surfels().count(); s++) {
            assertEquals(a.depositedKg(s), b.depositedKg(s), Fields.SINGLE * a.depositedKg(s));
        }
        assertEquals(a.airborneKg(), b.airborneKg(), Fields.SINGLE * a.airborneKg());
    }

    @Test
    void mirroredBoxGivesTheMirroredDeposit() {
        BoxGrid box = BoxGrid.cubes(7, 3, 5, 0.02);
        VoxelGrid grid = box.build();
        AirField field = moving(grid, 3e-4, 5e-4, 0.05);
        FogStepper right = new FogStepper(grid, BINS, 880, Fields.AIR, new Vec3(2, 0, -9), Fields.ONE);
        FogStepper left = new FogStepper(grid, BINS, 880, Fields.AIR, new Vec3(-2, 0, -9), Fields.ONE);
        right.release(box.cell(1, 1, 3), 1);
        left.release(box.cell(5, 1, 3), 1);
        double[] mirrored = new double[field.faceFluxM3PerS().length];
        for (int e = 0; e < mirrored.length; e++) {
            int c = grid.faces().low()[e];
            int axis = grid.faces().axis()[e];
            int i = axis == 0 ? 5 - grid.i(c) : 6 - grid.i(c);
            int twin = box.cell(i, grid.j(c), grid.k(c));
            for (int o = 0; o < mirrored.length; o++) {
                if (grid.faces().low()[o] == twin && grid.faces().axis()[o] == axis) {
                    mirrored[e] = (axis == 0 ? -1 : 1) * field.faceFluxM3PerS()[o];
                }
            }
        }
        right.advance(field, null, 3);
        left.advance(Fields.withFlux(field, mirrored), null, 3);
        for (int s = 0; s < grid.surfels().count(); s++) {
            int c = grid.surfels().cell()[s];
            int direction = grid.surfels().direction()[s];
            int twin = box.cell(6 - grid.i(c), grid.j(c), grid.k(c));
            double other = 0;
            for (int t = 0; t < grid.surfels().count(); t++) {
                int d = grid.surfels().direction()[t];
                if (grid.surfels().cell()[t] == twin && d == (direction < 2 ? 1 - direction : direction)) {
                    other = left.depositedKg(t);
                }
            }
            assertEquals(right.depositedKg(s), other, Fields.SINGLE * other + 1e-25);
        }
    }

    @Test
    void openClosureCatchesNothingAndClosedOneCatchesAll() {
        BoxGrid box = BoxGrid.cubes(1, 1, 1, 0.1);
        int hole = box.vent(0, 0, 0, 4, 0.004);
        VoxelGrid grid = box.build();
        int closure = 0;
        while (grid.surfels().closure()[closure] != hole) {
            closure++;
        }
        FogStepper open = Fields.settling(grid, 1e-3, Fields.DOWN);
        FogStepper shut = Fields.settling(grid, 1e-3, Fields.DOWN);
        open.addUniform(1);
        shut.addUniform(1);
        open.advance(Fields.still(grid, 0, 0, 1), null, 10);
        shut.advance(Fields.still(grid, 0, 0, 0), null, 10);
        assertEquals(0, open.depositedKg(closure));
        // Fog above an open drain settles out of it; over a closed one it lands on the cover.
        assertEquals(open.oversprayKg(hole), shut.depositedKg(closure), Fields.SINGLE * open.oversprayKg(hole));
        assertTrue(shut.depositedKg(closure) > 0);
        assertEquals(0, shut.oversprayKg());
        assertEquals(open.airborneKg(), shut.airborneKg(), Fields.SINGLE * open.airborneKg());
    }

    @Test
    void fogCrossesABaffleOnlyThroughItsOpening() {
        BoxGrid box = BoxGrid.cubes(6, 3, 3, 0.02);
        int hole = box.baffle(3, 1, 1, 2e-4);
        VoxelGrid grid = box.build();
        FogStepper shut = Fields.tracer(grid);
        FogStepper open = Fields.tracer(grid);
        shut.release(0, 1);
        open.release(0, 1);
        AirField closed = Fields.still(grid, 1e-3, 0, 0);
        AirField passing = Fields.still(grid, 1e-3, 0, 1);
        shut.advance(closed, null, 10);
        open.advance(passing, null, 10);
        assertEquals(0, shut.meanConcentrationKgPerM3(1));
        assertTrue(open.meanConcentrationKgPerM3(1) > 0);
        assertTrue(open.meanConcentrationKgPerM3(0) > open.meanConcentrationKgPerM3(1));
        assertEquals(0, hole);
    }
}
