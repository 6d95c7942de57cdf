package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.spray.JetPush;
import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FluxRefinerTest {
    private static final double[] OPEN = {1, 1};

    private static VoxelGrid twoBays() {
        // The sheet at column 7 runs through the middle of blocks of two and four.
        return GridFixtures.box(15, 9, 6, 0.02)
                .baffle(7, 0, (j, k) -> j > 1 && j < 6 && k < 3 ? 4e-4 : 0)
                .vent(1, 0, 3, 3, 0, 1e-4)
                .build();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void refinedFluxesConserveVolumeInEveryFogCellAndKeepTheBlocksFluxes(int factor) {
        VoxelGrid grid = twoBays();
        FlowGrid air = FlowGrid.of(grid, new double[0], OPEN, factor);
        FluxRefiner refiner = new FluxRefiner(grid, air, OPEN);
        Random random = new Random(3);
        double[] outflow = new double[grid.cellCount()];
        double sum = 0;
        for (int c = 1; c < outflow.length; c++) {
            outflow[c] = random.nextGaussian() * 1e-6;
            sum += outflow[c];
        }
        outflow[0] = -sum;
        double[] flux = new double[air.faces];
        for (int f = 0; f < flux.length; f++) {
            flux[f] = random.nextGaussian() * 1e-4;
        }
        FlowSolver solver = new FlowSolver(air, FlowSettings.run(1.5e-5));
        solver.tighten(flux, refiner.gather(outflow), 1e-13);
        double[] fine = refiner.refine(flux, outflow);
        FaceSet faces = grid.faces();
        double[] left = outflow.clone();
        double[] back = new double[air.faces];
        for (int f = 0; f < fine.length; f++) {
            left[faces.low()[f]] -= fine[f];
            left[faces.high()[f]] += fine[f];
            if (air.faceOf[f] >= 0) {
                back[air.faceOf[f]] += fine[f];
            }
        }
        double worst = Arrays.stream(left).map(Math::abs).max().orElse(1);
        assertTrue(worst < 1e-12 * 1e-3, "left " + worst);
        for (int f = 0; f < flux.length; f++) {
            assertEquals(flux[f], back[f], 1e-15);
        }
        assertEquals(grid.totalVolumeM3(), Arrays.stream(air.volumeM3).sum(), 1e-15);
    }

    @Test
    void aSheetThroughABlockStillSeparates() {
        VoxelGrid grid =
                GridFixtures.box(14, 4, 4, 0.02).baffle(7, 0, (j, k) -> 0).build();
        for (int factor : new int[] {1, 2, 3, 4}) {
            FlowGrid air = FlowGrid.of(grid, new double[0], OPEN, factor);
            assertEquals(2, air.groups().count());
        }
    }

    @Test
    void anEvenStreamStaysEvenWhenRefined() {
        int n = 8;
        GridFixtures box = GridFixtures.box(n, 4, 4, 0.01);
        for (int j = 0; j < 4; j++) {
            for (int k = 0; k < 4; k++) {
                box.vent(0, 0, j, k, 0, 1e-4);
                box.vent(1, n - 1, j, k, 1, 1e-4);
            }
        }
        VoxelGrid grid = box.build();
        FlowGrid air = FlowGrid.of(grid, new double[0], OPEN, 2);
        double[] flux = new double[air.faces];
        double[] outflow = new double[grid.cellCount()];
        for (int f = 0; f < flux.length; f++) {
            flux[f] = air.axis[f] == 0 ? 3 * air.areaM2[f] : 0;
        }
        for (int v = 0; v < grid.faces().vents(); v++) {
            outflow[grid.faces().ventCell()[v]] -= 3e-4 * grid.faces().ventSign()[v];
        }
        double[] fine = new FluxRefiner(grid, air, OPEN).refine(flux, outflow);
        for (int f = 0; f < fine.length; f++) {
            assertEquals(grid.faces().axis()[f] == 0 ? 3e-4 : 0, fine[f], 1e-16);
        }
    }

    @Test
    void oneJetInAVentedBoxPushesBringsItsAirOutAndDies() {
        VoxelGrid grid = twoBays();
        double[] areas = {16 * 4e-4, 1e-4};
        int cell = 3 + 15 * (4 + 9 * 3);
        JetPush push = new JetPush(
                new int[] {cell},
                new double[] {0.02},
                new double[] {0},
                new double[] {0},
                new double[] {0.02 / 5},
                new double[] {0.01});
        SprayHits hits = GridFixtures.air(0.5e-3, cell, new int[0], new Vec3[0], 0, 0, push);
        AirSettings settings = new AirSettings(
                baymist.scene.AirSpec.DEFAULT, baymist.units.Air.STANDARD, new Vec3(0, 0, -1), 9.80665, 1e-8);
        AirStage plan = AirStage.plan(
                settings,
                areas,
                grid,
                java.util.List.of(
                        new AirWindow(0, 1, hits, OPEN),
                        AirWindow.quiet(1, 5, OPEN),
                        AirWindow.quiet(6, 60, new double[] {0, 1})));
        for (int factor : new int[] {1, 2}) {
            ResolvedAir air = ResolvedAir.of(plan, grid, areas, factor);
            AirField spraying = air.advance(0, 1, new double[0]);
            double energy = air.energyM5PerS2();
            // Power in: force times speed; the jet's own speed scale is sqrt(J/(rho A)).
            assertTrue(energy > 1e-5, "energy " + energy);
            assertTrue(air.fastestMPerS() < 5, "fastest " + air.fastestMPerS());
            assertTrue(spraying.residual() < 1e-7, "residual " + spraying.residual());
            assertEquals(0, GridFixtures.worstDivergence(grid, spraying), 1e-9);
            assertEquals(plan.pressure(0).ventOutflowM3PerS(), spraying.ventFluxM3PerS()[0], 1e-15);
            assertTrue(spraying.eddyDiffusivityM2PerS()[cell]
                    > air.advance(1, 5, new double[0]).eddyDiffusivityM2PerS()[cell]);
            assertTrue(air.energyM5PerS2() < 0.1 * energy, "energy " + air.energyM5PerS2() + " of " + energy);
            for (int n = 0; n < 20 && !air.resting(); n++) {
                AirField shut = air.advance(2, 60, new double[0]);
                assertTrue(shut.residual() < 1e-6);
            }
            assertEquals(0, air.lostPushN());
        }
    }
}
