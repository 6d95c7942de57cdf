package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.CavityPressure.Load;
import baymist.geom.Vec3;
import baymist.problem.SimulationException;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class AirProjectorTest {
    private static final double H = 0.01;
    private static final double Q = 1e-3;
    /** Supply that leaves at once at ambient pressure. */
    private static final PressureWindow THROUGH = new PressureWindow(0, 1, Q, Q, Q, 0, 0, 0);

    private static AirField project(VoxelGrid grid, double[] areas, SprayHits hits) {
        double[] open = new double[areas.length];
        Arrays.fill(open, 1);
        return new AirProjector(grid, areas, 1e-13).project(hits, open, THROUGH, GridFixtures.calm(grid));
    }

    /** Sum of the fluxes along x between columns i - 1 and i. */
    private static double through(VoxelGrid grid, AirField field, int i) {
        FaceSet faces = grid.faces();
        return IntStream.range(0, faces.count())
                .filter(f -> faces.axis()[f] == 0 && grid.i(faces.high()[f]) == i)
                .mapToDouble(f -> field.faceFluxM3PerS()[f])
                .sum();
    }

    @Test
    void flowBetweenPlatesEvensOutAtThePotentialRate() {
        // Laplace's equation between plates H apart: the slowest uneven mode falls as exp(-pi x / H) (Lamb 1932).
        int nz = 16;
        GridFixtures fixture = GridFixtures.box(64, 1, nz, H);
        for (int k = 0; k < nz; k++) {
            fixture.vent(0, 63, 0, k, 1, H * H);
        }
        VoxelGrid grid = fixture.build();
        AirField field = project(grid, new double[] {nz * H * H}, GridFixtures.supply(Q, fixture.cell(0, 0, 0)));
        double[] excess = new double[2];
        FaceSet faces = grid.faces();
        for (int f = 0; f < faces.count(); f++) {
            if (faces.axis()[f] == 0 && grid.k(faces.low()[f]) == 0) {
                int i = grid.i(faces.high()[f]);
                double over = field.faceFluxM3PerS()[f] - Q / nz;
                excess[0] = i == 16 ? over : excess[0];
                excess[1] = i == 24 ? over : excess[1];
            }
        }
        assertEquals(Math.exp(-Math.PI * 8 / nz), excess[1] / excess[0], 0.02);
        assertEquals(Q, through(grid, field, 40), 1e-12 * Q);
        assertTrue(field.residual() < 1e-10);
    }

    @Test
    void slitInABaffleAddsItsConformalLength() {
        // Symmetric slit of width w in a channel H wide: length added (2H/pi) ln(1/sin(pi w/2H)) (Smythe, Static and
        // Dynamic
        // Electricity, conformal map). The edges are singular, so the error halves with the cell.
        double exact = 2 / Math.PI * Math.log(1 / Math.sin(Math.PI / 4));
        double coarse = slitLength(20);
        double fine = slitLength(40);
        assertEquals(2, (coarse - exact) / (fine - exact), 0.2);
        assertEquals(exact, 2 * fine - coarse, 0.01 * exact);
    }

    /** Length that a slit half as wide as the channel adds, over the channel's width. */
    private static double slitLength(int nz) {
        int nx = 2 * nz;
        GridFixtures fixture =
                GridFixtures.box(nx, 1, nz, H).baffle(nx / 2, 0, (j, k) -> k >= nz / 4 && k < 3 * nz / 4 ? H * H : 0);
        VoxelGrid grid = fixture.build();
        double[] b = new double[grid.cellCount()];
        for (int k = 0; k < nz; k++) {
            b[fixture.cell(0, 0, k)] = 1.0 / nz;
            b[fixture.cell(nx - 1, 0, k)] = -1.0 / nz;
        }
        double[] phi = PoissonSolver.of(grid, new double[] {1}).solve(b, 1e-12).potential();
        double drop = phi[fixture.cell(0, 0, 5)] - phi[fixture.cell(nx - 1, 0, 5)];
        double plain = (nx - 1) * H / (nz * H * H);
        return (drop - plain) * nz * H * H / (nz * H);
    }

    @Test
    void allTheFlowPassesASmallHole() {
        GridFixtures fixture = GridFixtures.box(12, 6, 6, H)
                .baffle(6, 0, (j, k) -> j == 4 && k == 1 ? 3e-6 : 0)
                .vent(1, 11, 3, 3, 5, 2e-5);
        VoxelGrid grid = fixture.build();
        AirField field = project(grid, new double[] {3e-6, 2e-5}, GridFixtures.supply(Q, fixture.cell(2, 2, 2)));
        assertEquals(Q, through(grid, field, 6), 1e-10 * Q);
        assertEquals(Q, field.ventFluxM3PerS()[0], 1e-15);
        assertTrue(GridFixtures.worstDivergence(grid, field) < 1e-10 * Q);
    }

    @Test
    void symmetricDuctSplitsInHalves() {
        int n = 15;
        GridFixtures fixture =
                GridFixtures.box(n, 5, 5, H).vent(0, 0, 2, 2, 0, H * H).vent(1, n - 1, 2, 2, 1, H * H);
        VoxelGrid grid = fixture.build();
        AirField field = project(grid, new double[] {1e-4, 1e-4}, GridFixtures.supply(Q, fixture.cell(n / 2, 2, 2)));
        assertEquals(-Q / 2, through(grid, field, 3), 1e-10 * Q);
        assertEquals(Q / 2, through(grid, field, 12), 1e-10 * Q);
    }

    @Test
    void ventsShareByTheirExactArea() {
        // check row VN-06: holes of 1/4, 1/4 and 1/2 in at one pressure: shares 1/6, 1/6, 4/6 (orifice law, one Cd).
        // Vent faces overlap
        // them badly.
        GridFixtures fixture = GridFixtures.box(6, 6, 6, H)
                .vent(0, 0, 2, 2, 0, 1e-5)
                .vent(1, 5, 2, 2, 1, 4e-5)
                .vent(2, 2, 0, 2, 2, 2e-5)
                .vent(2, 3, 0, 2, 2, 6e-5);
        VoxelGrid grid = fixture.build();
        double quarter = Math.PI / 4 * 0.00635 * 0.00635;
        AirField field = project(
                grid, new double[] {quarter, quarter, 4 * quarter}, GridFixtures.supply(Q, fixture.cell(3, 3, 3)));
        double[] v = field.ventFluxM3PerS();
        assertEquals(Q / 6, v[0], 1e-9 * Q);
        assertEquals(Q / 6, v[1], 1e-9 * Q);
        assertEquals(4 * Q / 6, v[2] + v[3], 1e-9 * Q);
        assertEquals(3 * v[2], v[3], 1e-9 * Q);
    }

    @Test
    void groupsWithoutTheTipStandStill() {
        GridFixtures fixture = GridFixtures.box(12, 4, 4, H)
                .baffle(6, 0, (j, k) -> 1e-5)
                .vent(1, 0, 1, 1, 0, 1e-5)
                .vent(2, 11, 1, 1, 1, 1e-5);
        VoxelGrid grid = fixture.build();
        PressureWindow rising = CavityPressure.advance(Air.STANDARD, new Load(0, 5, 1e-4, 1e-5, 96 * 1e-6), 0);
        AirField field = new AirProjector(grid, new double[] {1.6e-4, 1e-5, 1e-5}, 1e-12)
                .project(
                        GridFixtures.supply(1e-4, fixture.cell(2, 2, 2)),
                        new double[] {0, 1, 1},
                        rising,
                        GridFixtures.calm(grid));
        FaceSet faces = grid.faces();
        for (int f = 0; f < faces.count(); f++) {
            if (grid.i(faces.high()[f]) >= 6) {
                assertEquals(0, field.faceFluxM3PerS()[f]);
            }
        }
        assertEquals(0, field.ventFluxM3PerS()[1]);
        assertTrue(field.expansionPerS() > 0);
        // The identity outflow = source - expansion volume holds in every cell, moving or not.
        assertTrue(GridFixtures.worstDivergence(grid, field) < 1e-9 * field.ventFluxM3PerS()[0]);
    }

    @Test
    void mirroredJetGivesTheMirroredField() {
        int nx = 14;
        int n = 8;
        GridFixtures fixture =
                GridFixtures.box(nx, n, n, H).vent(0, 1, 3, 3, 4, 1e-5).vent(0, nx - 2, 3, 3, 4, 1e-5);
        VoxelGrid grid = fixture.build();
        double v = 0.4 * H * H * H;
        SprayHits right = GridFixtures.air(
                Q,
                fixture.cell(6, 4, 4),
                new int[] {fixture.cell(7, 4, 4), fixture.cell(8, 4, 4)},
                new Vec3[] {new Vec3(3 * v, 0.5 * v, 0), new Vec3(2 * v, 0.5 * v, 0)},
                0,
                0);
        SprayHits left = GridFixtures.air(
                Q,
                fixture.cell(7, 4, 4),
                new int[] {fixture.cell(6, 4, 4), fixture.cell(5, 4, 4)},
                new Vec3[] {new Vec3(-3 * v, 0.5 * v, 0), new Vec3(-2 * v, 0.5 * v, 0)},
                0,
                0);
        AirField a = project(grid, new double[] {2e-5}, right);
        AirField b = project(grid, new double[] {2e-5}, left);
        FaceSet faces = grid.faces();
        Map<Long, Double> ofA = new HashMap<>();
        for (int f = 0; f < faces.count(); f++) {
            ofA.put(3L * faces.low()[f] + faces.axis()[f], a.faceFluxM3PerS()[f]);
        }
        for (int f = 0; f < faces.count(); f++) {
            int along = faces.axis()[f] == 0 ? 1 : 0;
            int low = faces.low()[f];
            long twin = 3L * fixture.cell(nx - 1 - grid.i(low) - along, grid.j(low), grid.k(low)) + faces.axis()[f];
            double expected = ofA.get(twin) * (along == 1 ? -1 : 1);
            assertEquals(expected, b.faceFluxM3PerS()[f], 1e-11 * Q);
        }
        // The mirror is no mirror of nothing: the jet moves a good part of its supply or more.
        assertTrue(Arrays.stream(a.faceFluxM3PerS()).map(Math::abs).max().orElse(0) > 0.1 * Q);
    }

    @Test
    void jetDrivesReturnFlowAndItsSpeedIsCapped() {
        GridFixtures fixture = GridFixtures.box(12, 6, 6, H).vent(0, 0, 0, 0, 0, 1e-4);
        VoxelGrid grid = fixture.build();
        int cell = fixture.cell(6, 3, 3);
        double v = H * H * H;
        SprayHits fast = GridFixtures.air(
                Q, cell, new int[] {cell, cell}, new Vec3[] {new Vec3(300 * v, 0, 0), new Vec3(100 * v, 0, 0)}, 0, 0);
        SprayHits capped = GridFixtures.air(Q, cell, new int[] {cell}, new Vec3[] {new Vec3(5 * v, 0, 0)}, 0, 0);
        AirField field = project(grid, new double[] {1e-4}, fast);
        AirField same = project(grid, new double[] {1e-4}, capped);
        for (int f = 0; f < field.faceFluxM3PerS().length; f++) {
            assertEquals(same.faceFluxM3PerS()[f], field.faceFluxM3PerS()[f], 1e-12 * Q);
        }
        double[] u = WallLaw.cellVelocities(grid, field.faceFluxM3PerS());
        assertTrue(u[3 * cell] > 0.5);
        // Beside the jet the air comes back.
        assertTrue(u[3 * fixture.cell(6, 5, 3)] < 0);
    }

    @Test
    void supplyInATinyCellIsSpread() {
        GridFixtures fixture = GridFixtures.box(6, 6, 6, 0.001).vent(0, 0, 0, 0, 0, 1e-6);
        VoxelGrid grid = fixture.build();
        double[] source = new double[grid.cellCount()];
        StartField.addSupply(grid, fixture.cell(3, 3, 3), Q, source);
        assertEquals(Q, Arrays.stream(source).sum(), 1e-15);
        // 1 L/s must not leave a 1 mm cell at 170 m/s: some 190 cells share it.
        assertTrue(Arrays.stream(source).filter(s -> s > 0).count() > 100);
    }

    @Test
    void blowDownLeavesByTheVentWithUniformExpansion() {
        GridFixtures fixture = GridFixtures.box(8, 8, 8, H).vent(0, 7, 4, 4, 1, 8.367e-6);
        VoxelGrid grid = fixture.build();
        PressureWindow blow =
                CavityPressure.advance(Air.STANDARD, new Load(0, 0.05, 0, 8.367e-6, grid.totalVolumeM3()), 3000);
        AirField field = new AirProjector(grid, new double[] {8.367e-6}, 1e-12)
                .projectQuiet(new double[] {1}, 0, blow, GridFixtures.calm(grid));
        assertTrue(field.expansionPerS() < 0);
        assertEquals(-field.expansionPerS() * grid.totalVolumeM3(), field.ventFluxM3PerS()[0], 1e-12);
        assertTrue(GridFixtures.worstDivergence(grid, field) < 1e-10 * field.ventFluxM3PerS()[0]);
        // Half the volume lies upstream of the middle, so half the outflow passes it.
        assertEquals(field.ventFluxM3PerS()[0] / 2, through(grid, field, 4), 1e-9 * Q);
    }

    @Test
    void calmWindowsAndStillModeHaveNoFlow() {
        VoxelGrid grid = GridFixtures.box(3, 3, 3, H).vent(0, 0, 0, 0, 0, 1e-5).build();
        AirProjector projector = new AirProjector(grid, new double[] {1e-5}, 1e-8);
        AirField quiet =
                projector.projectQuiet(new double[] {1}, 0, PressureWindow.calm(0, 1), GridFixtures.calm(grid));
        AirField still = projector.still(new double[] {1}, GridFixtures.calm(grid));
        AirField outside =
                projector.project(GridFixtures.supply(Q, -1), new double[] {1}, THROUGH, GridFixtures.calm(grid));
        for (AirField f : new AirField[] {quiet, still, outside}) {
            assertArrayEquals(new double[grid.faces().count()], f.faceFluxM3PerS());
            assertArrayEquals(new double[1], f.ventFluxM3PerS());
            assertEquals(0, f.expansionPerS());
        }
    }

    @Test
    void badInputIsRefused() {
        VoxelGrid grid = GridFixtures.box(3, 3, 3, H).vent(0, 0, 0, 0, 0, 1e-5).build();
        AirProjector projector = new AirProjector(grid, new double[] {1e-5}, 1e-8);
        SprayHits hits = GridFixtures.supply(Q, 0);
        Mixing calm = GridFixtures.calm(grid);
        assertThrows(IllegalArgumentException.class, () -> projector.project(hits, new double[0], THROUGH, calm));
        assertThrows(IllegalArgumentException.class, () -> projector.project(hits, new double[] {1.1}, THROUGH, calm));
        PressureWindow bad = new PressureWindow(7, 1, Double.NaN, Q, Q, 0, 0, 0);
        SimulationException e =
                assertThrows(SimulationException.class, () -> projector.project(hits, new double[] {1}, bad, calm));
        assertTrue(e.getMessage().contains("at 7.0 s"), e.getMessage());
    }
}
