package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Fog that runs out of a low vent and draws air in through a high one. Sources: Etheridge and Sandberg (1996), Building Ventilation, and Linden,
 * Lane-Serff and Smeed (1990), J. Fluid Mech. 212, 309 (both from memory; closed forms of Bernoulli's law at two openings).
 */
class StackExchangeTest {
    private static final double G = 9.80665;
    private static final double H_M = 0.02;
    private static final int HIGH = 10;
    private static final Air AIR = Air.STANDARD;

    /** A box with vents in its low x wall in the lowest and in the highest row of cells. */
    private static VoxelGrid box(double lowM2, double highM2) {
        return GridFixtures.box(6, 4, HIGH, H_M)
                .vent(0, 0, 1, 0, 0, lowM2)
                .vent(1, 0, 1, HIGH - 1, 0, highM2)
                .build();
    }

    private static double[] vents(VoxelGrid grid, double[] areas, double[] fog, Vec3 down, double windowS) {
        AirSettings settings = new AirSettings(AirSpec.DEFAULT, AIR, down, G, 1e-8);
        AirStage plan = AirStage.plan(
                settings, areas, grid, List.of(AirWindow.quiet(0, 10, new double[] {1, 1})));
        return ResolvedAir.of(plan, grid, areas, 1).advance(0, windowS, fog).ventFluxM3PerS();
    }

    private static double[] even(VoxelGrid grid, double kgPerM3) {
        double[] fog = new double[grid.cellCount()];
        Arrays.fill(fog, kgPerM3);
        return fog;
    }

    @Test
    void twoEqualVentsPassTheirAreaTimesTheRootOfReducedGravityAndHeight() {
        double area = 1e-4;
        VoxelGrid grid = box(area, area);
        double[] flux = vents(grid, new double[] {area, area}, even(grid, 0.01), new Vec3(0, 0, -1), 0.1);
        double height = (HIGH - 1) * H_M;
        double reduced = G * 0.01 / AIR.densityKgPerM3();
        assertEquals(Orifice.DISCHARGE * area * Math.sqrt(reduced * height), flux[0], 1e-9 * area);
        assertEquals(0, flux[0] + flux[1], 1e-15);
    }

    @Test
    void unequalVentsActAsTheirEffectiveArea() {
        // A* = A1 A2 sqrt(2) / sqrt(A1² + A2²), Q = Cd A* sqrt(g' H): the neutral level moves to the larger vent.
        double low = 3e-4;
        double high = 1e-4;
        VoxelGrid grid = box(low, high);
        double[] flux = vents(grid, new double[] {low, high}, even(grid, 0.005), new Vec3(0, 0, -1), 0.1);
        double effective = low * high * Math.sqrt(2) / Math.hypot(low, high);
        double reduced = G * 0.005 / AIR.densityKgPerM3();
        double expected = Orifice.DISCHARGE * effective * Math.sqrt(reduced * (HIGH - 1) * H_M);
        assertEquals(expected, flux[0], 1e-6 * expected);
        assertEquals(-expected, flux[1], 1e-6 * expected);
    }

    @Test
    void aLayerOnTheFloorDrivesByItsOwnDepthAlone() {
        double area = 1e-4;
        VoxelGrid grid = box(area, area);
        double[] fog = new double[grid.cellCount()];
        for (int c = 0; c < fog.length; c++) {
            fog[c] = grid.k(c) < 4 ? 0.02 : 0;
        }
        double[] flux = vents(grid, new double[] {area, area}, fog, new Vec3(0, 0, -1), 0.1);
        double reduced = G * 0.02 / AIR.densityKgPerM3();
        double expected = Orifice.DISCHARGE * area * Math.sqrt(reduced * 3.5 * H_M);
        assertEquals(expected, flux[0], 1e-6 * expected);
    }

    @Test
    void ventsOfOneHeightAndThinFogExchangeNothing() {
        double area = 1e-4;
        VoxelGrid grid = box(area, area);
        double[] areas = {area, area};
        double[] lying = vents(grid, areas, even(grid, 0.01), new Vec3(0, 1, 0), 0.1);
        assertEquals(0, lying[0], 1e-12);
        double[] thin = vents(grid, areas, even(grid, 1e-5), new Vec3(0, 0, -1), 0.1);
        assertEquals(0, thin[0], 0);
        // Turned over, the other vent is the low one.
        double[] over = vents(grid, areas, even(grid, 0.01), new Vec3(0, 0, 1), 0.1);
        assertTrue(over[1] > 0 && over[0] < 0);
    }
}
