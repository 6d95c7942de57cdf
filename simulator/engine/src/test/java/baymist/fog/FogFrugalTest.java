package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.numeric.Workers;
import baymist.scene.Transport;
import baymist.scene.WallFinish;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Transport as a run has it by default: sizes side by side by donor cells in single precision, next to nothing for sizes that have fallen out. */
class FogFrugalTest {
    private static final SizeBins BINS = new SizeBins(
            new double[] {2e-6, 5e-6, 10e-6, 20e-6, 60e-6, 120e-6}, new double[] {0.2, 0.2, 0.2, 0.2, 0.1, 0.1});
    private static final int NX = 20;
    private static final int NY = 6;
    private static final int NZ = 10;

    /** A swirl in the middle layer a hundred times faster than beside it; divergence-free by its stream function. */
    private static AirField swirl(VoxelGrid grid) {
        double[] flux = new double[grid.faces().count()];
        for (int e = 0; e < flux.length; e++) {
            int c = grid.faces().low()[e];
            double strength = grid.j(c) == NY / 2 ? 1e-3 : 1e-5;
            int i = grid.i(c) + 1;
            int k = grid.k(c) + 1;
            int axis = grid.faces().axis()[e];
            if (axis == 0) {
                flux[e] = strength * (psi(i, k) - psi(i, k - 1));
            } else if (axis == 2) {
                flux[e] = strength * (psi(i - 1, k) - psi(i, k));
            }
        }
        return Fields.withFlux(Fields.still(grid, 1e-4, 0.05, 1), flux);
    }

    private static double psi(int i, int k) {
        return Math.sin(Math.PI * i / NX) * Math.sin(Math.PI * k / NZ);
    }

    private static VoxelGrid box() {
        return BoxGrid.cubes(NX, NY, NZ, 0.01).build();
    }

    private static FogStepper stepper(VoxelGrid grid, Transport transport, Workers workers) {
        return new FogStepper(grid, BINS, 880, Fields.AIR, Fields.DOWN, WallFinish.SMOOTH, transport, workers);
    }

    private static SprayHits spray(VoxelGrid grid) {
        double[] kgPerS = new double[BINS.count()];
        Arrays.fill(kgPerS, 1e-4);
        return Fields.fogSource(new int[] {grid.cellAt(3, NY / 2, NZ / 2)}, kgPerS);
    }

    private static double difference(FogStepper a, FogStepper b, VoxelGrid grid) {
        double sum = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            sum += Math.abs(a.depositedKg(s) - b.depositedKg(s));
        }
        return sum / Fields.depositedAll(b);
    }

    // The two ways choose their levels for all sizes and for one, so films differ by half a coarse step (10 ms) of 4 s:
    // 0.25 %.
    @Test
    void donorCellsOfManySizesAtOnceGiveTheFilmOfOneSizeAtATime() {
        VoxelGrid grid = box();
        FogStepper many = stepper(grid, Transport.AUTO, Fields.ONE);
        FogStepper one = stepper(grid, Transport.FIRST_ORDER, Fields.ONE);
        for (int i = 0; i < 20; i++) {
            many.advance(swirl(grid), spray(grid), 0.2);
            one.advance(swirl(grid), spray(grid), 0.2);
        }
        double share = difference(many, one, grid);
        assertTrue(share > 0 && share < 0.0025, "L1 of the film: " + share);
        assertEquals(0, Fields.closure(many), 1e-12);
        for (double c : many.concentrationKgPerM3()) {
            assertTrue(c >= 0);
        }
    }

    @Test
    void threadsChangeNoBitWhenJetsComeAndGo() {
        VoxelGrid grid = box();
        FogStepper one = jetsComeAndGo(grid, Fields.ONE);
        for (int threads = 2; threads <= 3; threads++) {
            try (Workers workers = new Workers(threads)) {
                FogStepper several = jetsComeAndGo(grid, workers);
                assertArrayEquals(one.concentrationKgPerM3(), several.concentrationKgPerM3());
                assertArrayEquals(one.depositedByBinKg(), several.depositedByBinKg());
                assertEquals(one.stats(), several.stats());
            }
        }
    }

    private static FogStepper jetsComeAndGo(VoxelGrid grid, Workers workers) {
        FogStepper fog = stepper(grid, Transport.AUTO, workers);
        for (int i = 0; i < 12; i++) {
            fog.advance(swirl(grid), i % 4 < 2 ? spray(grid) : null, 0.2);
        }
        return fog;
    }

    // 120 µm fall 0.1 m in some 0.3 s, so after 8 s next to none are left; 2 µm hang for minutes.
    @Test
    void sizesThatHaveFallenOutRestAndTheirLastKilogramsStayOnTheBooks() {
        VoxelGrid grid = box();
        FogStepper frugal = stepper(grid, Transport.AUTO, Fields.ONE);
        FogStepper all = stepper(grid, Transport.FIRST_ORDER, Fields.ONE);
        long first = 0;
        for (FogStepper fog : new FogStepper[] {frugal, all}) {
            fog.addUniform(0.01);
            for (int i = 0; i < 16; i++) {
                fog.advance(swirl(grid), null, 0.5);
                first = i == 0 && fog == frugal ? fog.stats().updates() : first;
            }
            assertEquals(0, Fields.closure(fog), 1e-12);
        }
        double share = difference(frugal, all, grid);
        assertTrue(share < 2e-3, "L1 of the film: " + share);
        double left = frugal.airborneKg(5);
        assertTrue(left > 0 && left <= FogBin.SPENT_SHARE * frugal.releasedKg(), left + " kg left");
        long before = frugal.stats().updates();
        frugal.advance(swirl(grid), null, 0.5);
        assertEquals(left, frugal.airborneKg(5));
        assertTrue(1.15 * (frugal.stats().updates() - before) < first, "a size at rest takes no steps");
        frugal.advance(swirl(grid), spray(grid), 0.1);
        frugal.advance(swirl(grid), null, 0.1);
        assertTrue(frugal.airborneKg(5) != left, "sizes that a jet adds to move again");
        assertEquals(0, Fields.closure(frugal), 1e-12);
    }
}
