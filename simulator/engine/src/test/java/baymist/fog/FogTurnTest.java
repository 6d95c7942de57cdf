package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A quarter turn about the vertical turns the fog with it; so does a mirror. */
class FogTurnTest {
    private static final int NX = 6;
    private static final int NY = 4;
    private static final int NZ = 5;
    private static final SizeBins BINS = new SizeBins(new double[] {3e-6, 30e-6}, new double[] {0.4, 0.6});

    /** Cell of the turned box that cell (i, j, k) becomes: (i, j) -> (NY - 1 - j, i). */
    private static int turned(BoxGrid box, int i, int j, int k) {
        return box.cell(NY - 1 - j, i, k);
    }

    /** Side of the turned box: -x, +x, -y, +y become -y, +y, +x, -x. */
    private static final int[] TURNED_SIDE = {2, 3, 1, 0, 4, 5};

    @Test
    void aTurnedBoxGivesTheTurnedDeposit() {
        BoxGrid box = new BoxGrid(NX, NY, NZ, 0.02, 0.03, 0.025);
        BoxGrid other = new BoxGrid(NY, NX, NZ, 0.03, 0.02, 0.025);
        VoxelGrid grid = box.build();
        VoxelGrid twin = other.build();
        SplittableRandom random = new SplittableRandom(11);
        double[] flux = new double[grid.faces().count()];
        double[] twinFlux = new double[flux.length];
        for (int e = 0; e < flux.length; e++) {
            flux[e] = 1e-5 * (random.nextDouble() - 0.5);
        }
        for (int e = 0; e < flux.length; e++) {
            int axis = grid.faces().axis()[e];
            int low = grid.faces().low()[e];
            int high = grid.faces().high()[e];
            // Along y the turned axis runs the other way.
            int from = turned(other, grid.i(axis == 1 ? high : low), grid.j(axis == 1 ? high : low), grid.k(low));
            int wanted = axis == 0 ? 1 : axis == 1 ? 0 : 2;
            twinFlux[face(twin, from, wanted)] = axis == 1 ? -flux[e] : flux[e];
        }
        Vec3 gravity = new Vec3(1, 2, -9);
        FogStepper fog = new FogStepper(grid, BINS, 880, Fields.AIR, gravity, Fields.ONE);
        FogStepper turned = new FogStepper(twin, BINS, 880, Fields.AIR, new Vec3(-2, 1, -9), Fields.ONE);
        fog.release(box.cell(4, 1, 3), 1e-3);
        turned.release(turned(other, 4, 1, 3), 1e-3);
        AirField field = Fields.withFlux(Fields.still(grid, 2e-4, 0.05, 1), flux);
        AirField twinField = Fields.withFlux(Fields.still(twin, 2e-4, 0.05, 1), twinFlux);
        // The air does not balance here, so mass may gather; it gathers alike.
        fog.advance(field, null, 5);
        turned.advance(twinField, null, 5);
        double all = Fields.depositedAll(fog);
        for (int s = 0; s < grid.surfels().count(); s++) {
            int c = grid.surfels().cell()[s];
            int there = turned(other, grid.i(c), grid.j(c), grid.k(c));
            int side = TURNED_SIDE[grid.surfels().direction()[s]];
            assertEquals(fog.depositedKg(s), turned.depositedKg(surfel(twin, there, side)), 0.1 * Fields.SINGLE * all);
        }
        assertEquals(fog.airborneKg(), turned.airborneKg(), 0.1 * Fields.SINGLE * fog.airborneKg());
    }

    private static int face(VoxelGrid grid, int low, int axis) {
        for (int e = 0; e < grid.faces().count(); e++) {
            if (grid.faces().low()[e] == low && grid.faces().axis()[e] == axis) {
                return e;
            }
        }
        throw new AssertionError("no face " + axis + " of cell " + low);
    }

    private static int surfel(VoxelGrid grid, int cell, int side) {
        for (int s = 0; s < grid.surfels().count(); s++) {
            if (grid.surfels().cell()[s] == cell && grid.surfels().direction()[s] == side) {
                return s;
            }
        }
        throw new AssertionError("no surfel on side " + side + " of cell " + cell);
    }

    @Test
    void uniformFogStaysUniformWhereTheFlowIsSolvedLoosely() {
        // Whatever the residual of the solver: advanced with the same fluxes, air and fog keep one concentration. A
        // tracer in a swirl that is
        // cut off after three digits drifts by no more than the residual lets pass.
        VoxelGrid grid = BoxGrid.cubes(8, 4, 8, 0.02).build();
        double[] exact = Fields.swirl(grid, 1e-3);
        double[] loose = new double[exact.length];
        for (int e = 0; e < loose.length; e++) {
            loose[e] = Math.rint(exact[e] * 1e6) / 1e6;
        }
        FogStepper fog = Fields.tracer(grid);
        fog.addUniform(1);
        fog.advance(Fields.withFlux(Fields.still(grid, 1e-4), loose), null, 2);
        double most = 0;
        for (int c = 0; c < grid.cellCount(); c++) {
            most = Math.max(most, Math.abs(fog.concentrationKgPerM3(c) - 1));
        }
        double passed = 2 * 4e-4 / grid.volumeM3(0);
        double allowed = fog.stats().airBudgetError() * passed;
        org.junit.jupiter.api.Assertions.assertTrue(most <= allowed, most + " > " + allowed);
        org.junit.jupiter.api.Assertions.assertTrue(most > 0, "the flow was not loose");
    }
}
