package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.scene.Transport;
import baymist.scene.WallFinish;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** Both forms of the kernel give the same fog. */
class FogKernelTest {
    private static final SizeBins BINS = new SizeBins(
            new double[] {0, 2e-6, 8e-6, 25e-6, 80e-6, 150e-6}, new double[] {0.1, 0.2, 0.2, 0.2, 0.2, 0.1});

    private static FogStepper run(VoxelGrid grid, AirField field, Vec3 gravity, FogKernel kernel) {
        FogStepper fog = new FogStepper(grid, BINS, 880, Fields.AIR, gravity, Fields.ONE);
        fog.useKernel(kernel);
        SplittableRandom random = new SplittableRandom(4);
        for (int c = 0; c < grid.cellCount(); c++) {
            fog.release(c, random.nextDouble() < 0.5 ? 0 : random.nextDouble());
        }
        for (int i = 0; i < 3; i++) {
            fog.advance(field, null, 0.1);
        }
        return fog;
    }

    @Test
    void vectorsGiveWhatPlainLoopsGive() {
        FogKernel vectors = FogKernels.best();
        Assumptions.assumeFalse(
                vectors instanceof PlainKernel, "this Java was started without --add-modules jdk.incubator.vector");
        VoxelGrid grid = BoxGrid.cubes(9, 8, 10, 0.01).build();
        double[] flux = Fields.swirl(grid, 3e-4);
        SplittableRandom random = new SplittableRandom(9);
        for (int e = 0; e < flux.length; e++) {
            flux[e] += 1e-5 * Math.pow(random.nextDouble(), 8) * (random.nextBoolean() ? 1 : -1);
        }
        AirField field = Fields.withFlux(Fields.still(grid, 1e-6, 0.05, 1), flux);
        for (Vec3 gravity : new Vec3[] {Fields.DOWN, new Vec3(1, 2, -9)}) {
            FogStepper plain = run(grid, field, gravity, new PlainKernel());
            FogStepper fast = run(grid, field, gravity, vectors);
            assertTrue(plain.stats().explicitSteps() > 50, plain.stats().toString());
            assertEquals(plain.stats(), fast.stats());
            double[] expected = plain.concentrationKgPerM3();
            double[] actual = fast.concentrationKgPerM3();
            for (int i = 0; i < expected.length; i++) {
                assertEquals(expected[i], actual[i], 1e-13 * (1 + expected[i]));
            }
            assertEquals(0, Fields.closure(fast), 1e-12);
        }
    }

    // While a jet is on the default carries all sizes by donor cells.
    @Test
    void vectorsGiveWhatPlainLoopsGiveWhileAJetIsOn() {
        FogKernel vectors = FogKernels.best();
        Assumptions.assumeFalse(
                vectors instanceof PlainKernel, "this Java was started without --add-modules jdk.incubator.vector");
        VoxelGrid grid = BoxGrid.cubes(9, 8, 10, 0.01).build();
        AirField field = Fields.withFlux(Fields.still(grid, 1e-4, 0.05, 1), Fields.swirl(grid, 3e-4));
        double[] kgPerS = new double[BINS.count()];
        java.util.Arrays.fill(kgPerS, 1e-3);
        FogStepper[] fog = new FogStepper[2];
        for (int i = 0; i < 2; i++) {
            fog[i] = new FogStepper(
                    grid, BINS, 880, Fields.AIR, Fields.DOWN, WallFinish.SMOOTH, Transport.AUTO, Fields.ONE);
            fog[i].useKernel(i == 0 ? new PlainKernel() : vectors);
            for (int n = 0; n < 3; n++) {
                fog[i].advance(field, Fields.fogSource(new int[] {grid.cellAt(3, 4, 5)}, kgPerS), 0.1);
            }
            assertEquals(0, Fields.closure(fog[i]), 1e-12);
        }
        assertEquals(fog[0].stats(), fog[1].stats());
        double[] expected = fog[0].concentrationKgPerM3();
        double[] actual = fog[1].concentrationKgPerM3();
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], actual[i], 1e-13 * (1 + expected[i]));
        }
    }

    @Test
    void slopesStayBetweenTheirBounds() {
        SplittableRandom random = new SplittableRandom(2);
        boolean cut = false;
        for (int i = 0; i < 100_000; i++) {
            double held = random.nextDouble();
            double behind = held - random.nextDouble();
            double ahead = random.nextDouble() - held;
            double courant = random.nextDouble();
            double sloped = courant * random.nextDouble();
            double room = LimitedSlope.room(courant, sloped);
            double along = LimitedSlope.beyond(held, behind, ahead, 0.5 * courant, 0, room);
            assertTrue(along * ahead >= 0 && Math.abs(along) <= Math.abs(ahead), "beyond the receiver");
            assertTrue(Math.abs(along) <= Math.abs(behind), "beyond the slope behind");
            double across = random.nextDouble() * 4 - 2;
            double all = LimitedSlope.beyond(held, behind, ahead, 0.5 * courant, across, room);
            // What a step leaves of the donor after the donor cells' own fluxes covers what slopes add.
            assertTrue(sloped * all <= (1 - courant) * held + 1e-15, "more than there is");
            assertTrue(held + all >= 0, "less than nothing");
            cut |= all != along + across;
        }
        assertTrue(cut, "nothing was limited");
        assertFalse(LimitedSlope.room(0.2, 0.2) < 1);
    }
}
