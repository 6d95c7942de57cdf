package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.numeric.Workers;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Steps with levels: against one step for all cells, and the laws that they must keep. */
class FogLevelsTest {
    private static final SizeBins BINS = new SizeBins(new double[] {2e-6, 10e-6, 40e-6}, new double[] {0.3, 0.4, 0.3});

    private static final int NX = 24;
    private static final int NY = 9;
    private static final int NZ = 12;

    private static VoxelGrid box() {
        return BoxGrid.cubes(NX, NY, NZ, 0.01).build();
    }

    /**
     * A plane jet of some 6 m/s in the middle layer with its return flow, its eddies (Prandtl's mixing length: K rises with
     * the speed), and a slow swirl in the other layers; divergence-free in each layer by its stream function.
     */
    private static AirField jet(VoxelGrid grid, double frictionSpeed) {
        double[] flux = new double[grid.faces().count()];
        for (int e = 0; e < flux.length; e++) {
            int c = grid.faces().low()[e];
            double strength = grid.j(c) == NY / 2 ? 1.4e-3 : 2e-5;
            int i = grid.i(c);
            int k = grid.k(c);
            int axis = grid.faces().axis()[e];
            if (axis == 0) {
                flux[e] = strength * (psi(i + 1, k + 1) - psi(i + 1, k));
            } else if (axis == 2) {
                flux[e] = -strength * (psi(i + 1, k + 1) - psi(i, k + 1));
            }
        }
        AirField field = Fields.withFlux(Fields.still(grid, 2e-4, frictionSpeed, 1), flux);
        for (int c = 0; c < grid.cellCount(); c++) {
            if (grid.j(c) == NY / 2 && Math.abs(grid.k(c) - NZ / 2 + 0.5) < 2) {
                field.eddyDiffusivityM2PerS()[c] = 4e-3;
            }
        }
        return field;
    }

    private static double psi(int i, int k) {
        double x = (double) i / NX;
        double z = (double) k / NZ;
        return Math.sin(Math.PI * x) * 4 * z * (1 - z) * Math.tanh(6 * (z - 0.5));
    }

    private static FogStepper stepper(VoxelGrid grid, SizeBins bins, Workers workers) {
        return new FogStepper(grid, bins, 880, Fields.AIR, Fields.DOWN, workers);
    }

    private static SprayHits spray(VoxelGrid grid, int bins) {
        int nozzle = grid.cellAt(3, NY / 2, NZ / 2);
        double[] kgPerS = new double[bins];
        Arrays.fill(kgPerS, 1e-4);
        return Fields.fogSource(new int[] {nozzle}, kgPerS);
    }

    private static long oneStepForAll(VoxelGrid grid, FogStepper fog) {
        return fog.stats().explicitSteps() * (grid.cellCount() + new FogLinks(grid).count());
    }

    // Frozen neighbours are seen half a coarse step late, here 6 ms of 4 s: 0.15 % of the film is to be expected.
    @ParameterizedTest
    @ValueSource(doubles = {2e-6, 40e-6})
    void levelsGiveTheFilmOfOneStepForAllWithAThirdOfTheUpdates(double diameterM) {
        VoxelGrid grid = box();
        AirField field = jet(grid, 0.1);
        SprayHits spray = spray(grid, 1);
        FogStepper levels = stepper(grid, Fields.one(diameterM), Fields.ONE);
        FogStepper plain = stepper(grid, Fields.one(diameterM), Fields.ONE);
        for (int i = 0; i < 20; i++) {
            levels.advance(field, i < 10 ? spray : null, 0.2);
        }
        // A window of one step leaves no room for levels.
        int windows = 2 * (int) Math.ceil(2 / levels.stats().smallestStepS());
        for (int i = 0; i < windows; i++) {
            plain.advance(field, i < windows / 2 ? spray : null, 4.0 / windows);
        }
        assertEquals(windows, plain.stats().explicitSteps());
        assertEquals(oneStepForAll(grid, plain), plain.stats().updates());
        double ratio = (double) plain.stats().updates() / levels.stats().updates();
        assertTrue(ratio >= 3, "updates saved: " + ratio);
        double difference = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            difference += Math.abs(levels.depositedKg(s) - plain.depositedKg(s));
        }
        double share = difference / Fields.depositedAll(plain);
        assertTrue(share <= 0.005, "L1 of the film map: " + share);
        assertTrue(share > 0, "the two ways are the same");
        assertEquals(plain.airborneKg(), levels.airborneKg(), 0.002 * plain.sourcedKg());
        assertEquals(0, Fields.closure(levels), 1e-12);
    }

    @Test
    void uniformFogStaysUniformAcrossLevels() {
        VoxelGrid grid = box();
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1);
        for (int i = 0; i < 5; i++) {
            fog.advance(jet(grid, 0), null, 0.5);
        }
        assertTrue(
                3 * fog.stats().updates() < oneStepForAll(grid, fog),
                fog.stats().toString());
        assertTrue(fog.stats().airBudgetError() < 1e-12);
        for (double c : fog.concentrationKgPerM3()) {
            assertEquals(1, c, Fields.SINGLE);
        }
    }

    // What is supplied at the cavity's own concentration and let out by a vent keeps it: sources, vents and links all
    // go at the
    // paces of their cells, and yet in step.
    @Test
    void supplyOfEqualFogKeepsFogUniformAcrossLevels() {
        BoxGrid box = BoxGrid.cubes(NX, NY, NZ, 0.01);
        int hole = box.vent(NX - 1, NY / 2, 1, 1, 1e-4);
        VoxelGrid grid = box.build();
        double q = 5e-4;
        AirField field = jet(grid, 0);
        int first = grid.cellAt(0, NY / 2, 1);
        for (int e = 0; e < grid.faces().count(); e++) {
            int c = grid.faces().low()[e];
            if (grid.faces().axis()[e] == 0 && grid.j(c) == NY / 2 && grid.k(c) == 1) {
                field.faceFluxM3PerS()[e] += q;
            }
        }
        field.ventFluxM3PerS()[0] = q;
        field.sourceM3PerS()[first] = q;
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(2);
        fog.advance(field, Fields.fogSource(new int[] {first}, new double[] {2 * q}), 0.5);
        assertTrue(
                3 * fog.stats().updates() < oneStepForAll(grid, fog),
                fog.stats().toString());
        assertTrue(fog.stats().airBudgetError() < 1e-12);
        for (double c : fog.concentrationKgPerM3()) {
            assertEquals(2, c, 2 * Fields.SINGLE);
        }
        assertEquals(2 * q * 0.5, fog.oversprayKg(hole), q * Fields.SINGLE);
        assertEquals(0, Fields.closure(fog), 1e-12);
    }

    // Compression without supply: every cell's fog grows as e^(rate t), whatever its pace; a coarse neighbour is seen
    // at most one of
    // its steps late.
    @Test
    void compressedFogStaysNearlyUniformAcrossLevels() {
        VoxelGrid grid = box();
        AirField still = jet(grid, 0);
        double rate = 0.1;
        double[] flux = still.faceFluxM3PerS();
        double[] source = new double[grid.cellCount()];
        for (int e = 0; e < flux.length; e++) {
            int c = grid.faces().low()[e];
            if (grid.faces().axis()[e] == 0) {
                flux[e] -= rate * 1e-6 * (grid.i(c) + 1);
            }
        }
        for (int c = 0; c < source.length; c++) {
            source[c] = grid.i(c) == NX - 1 ? rate * 1e-6 * NX : 0;
        }
        AirField field = new AirField(
                flux,
                still.ventFluxM3PerS(),
                source,
                rate,
                still.eddyDiffusivityM2PerS(),
                still.frictionSpeedMPerS(),
                still.openFraction(),
                0);
        double[] kgPerS = new double[NY * NZ];
        int[] cells = new int[NY * NZ];
        int n = 0;
        for (int c = 0; c < source.length; c++) {
            if (source[c] > 0) {
                cells[n] = c;
                // Supply at the mean concentration over the window of 0.2 s.
                kgPerS[n++] = source[c] * Math.expm1(rate * 0.2) / (rate * 0.2);
            }
        }
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1);
        fog.advance(field, Fields.fogSource(cells, kgPerS), 0.2);
        assertTrue(
                3 * fog.stats().updates() < oneStepForAll(grid, fog),
                fog.stats().toString());
        double lag = rate * 32 * fog.stats().smallestStepS();
        for (int c = 0; c < grid.cellCount(); c++) {
            if (grid.i(c) < NX / 2) {
                assertEquals(Math.exp(rate * 0.2), fog.concentrationKgPerM3(c), lag);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void anyFlowKeepsEveryKilogramAndNoMassTurnsNegative(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        VoxelGrid grid = BoxGrid.cubes(7, 6, 5, 0.01).build();
        double[] flux = new double[grid.faces().count()];
        for (int e = 0; e < flux.length; e++) {
            flux[e] = (random.nextBoolean() ? 1 : -1) * 3e-4 * Math.pow(random.nextDouble(), 20);
        }
        FogStepper fog = stepper(grid, BINS, Fields.ONE);
        AirField field = Fields.withFlux(Fields.still(grid, 1e-5, 0.05, 1), flux);
        fog.release(random.nextInt(grid.cellCount()), 1);
        SprayHits scour = Fields.scour(random.nextInt(grid.cellCount()), 4, 1e-4, 0, 0.5, 1);
        for (int i = 0; i < 20; i++) {
            fog.advance(field, i % 2 == 0 ? scour : null, 0.1);
            for (double c : fog.concentrationKgPerM3()) {
                assertTrue(c >= 0);
            }
        }
        assertTrue(
                2 * fog.stats().updates() < oneStepForAll(grid, fog),
                fog.stats().toString());
        assertEquals(0, Fields.closure(fog), 1e-12);
    }

    @Test
    void threadsDoNotChangeABitOfLevels() {
        VoxelGrid grid = box();
        FogStepper one = stepper(grid, BINS, Fields.ONE);
        one.advance(jet(grid, 0.1), spray(grid, 3), 0.2);
        assertTrue(3 * one.stats().updates() < oneStepForAll(grid, one));
        for (int threads = 2; threads <= 3; threads++) {
            try (Workers workers = new Workers(threads)) {
                FogStepper many = stepper(grid, BINS, workers);
                many.advance(jet(grid, 0.1), spray(grid, 3), 0.2);
                assertArrayEquals(one.concentrationKgPerM3(), many.concentrationKgPerM3());
                assertArrayEquals(one.depositedByBinKg(), many.depositedByBinKg());
                assertEquals(one.stats(), many.stats());
            }
        }
    }

    @Test
    void noCellGivesMoreThanItsShareInAStepAndNoneCouldTakeTwice() {
        VoxelGrid grid = BoxGrid.cubes(20, 5, 5, 0.01).build();
        SplittableRandom random = new SplittableRandom(5);
        double[] rate = new double[grid.cellCount()];
        double largest = 0;
        for (int c = 0; c < rate.length; c++) {
            rate[c] = c % 50 == 0 ? 0 : 1000 * Math.pow(random.nextDouble(), 6);
            largest = Math.max(largest, rate[c]);
        }
        RateLevels levels = new RateLevels(new FogLinks(grid), rate.length);
        long plain = (long) Math.ceil(largest / FogBin.COURANT);
        assertTrue(levels.choose(rate, largest, 1, plain, RateLevels.LATE_S));
        assertEquals(1, levels.finestSteps() * levels.stepS(0), 1e-12);
        int top = levels.coarsest();
        long updates = 0;
        for (int c = 0; c < rate.length; c++) {
            int k = levels.ofCell[c];
            assertTrue(levels.stepS(k) * rate[c] <= FogBin.COURANT * (1 + 1e-8));
            assertTrue(k == top || 2 * levels.stepS(k) * rate[c] > FogBin.COURANT);
            updates += levels.finestSteps() >> k;
        }
        for (byte k : levels.ofLink) {
            updates += levels.finestSteps() >> k;
        }
        assertEquals(updates, levels.updates());
        assertTrue(levels.updates() * 3 < plain * (rate.length + levels.ofLink.length));
    }

    @Test
    void cellsOfEqualPaceGetNoLevels() {
        VoxelGrid grid = BoxGrid.cubes(4, 4, 4, 0.01).build();
        double[] rate = new double[grid.cellCount()];
        Arrays.fill(rate, 100);
        RateLevels levels = new RateLevels(new FogLinks(grid), rate.length);
        assertFalse(levels.choose(rate, 100, 1, 112, RateLevels.LATE_S));
        rate[7] = 1e4;
        assertTrue(levels.choose(rate, 1e4, 1, 11_112, RateLevels.LATE_S));
        assertFalse(levels.choose(rate, 1e4, 1e-5, 1, RateLevels.LATE_S));
    }
}
