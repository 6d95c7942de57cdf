package baymist.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Structures;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a full run teaches, on the block of {@link DoseMatrixTest}. */
class FullRoundsTest {
    private static final Scene BLOCK = DoseMatrixTest.block();
    private static final Cavity CAVITY = CavityBuilder.build(BLOCK);

    private static VoxelGrid grid(double sizeM) {
        try (Workers one = new Workers(1)) {
            return Voxelizer.voxelize(CAVITY, new VoxelSpec(sizeM, sizeM, sizeM), one);
        }
    }

    private static double[] film(VoxelGrid grid, double slope) {
        SurfelSet s = grid.surfels();
        double[] film = new double[s.count()];
        for (int i = 0; i < film.length; i++) {
            film[i] = slope * s.centreX()[i] + s.part()[i];
        }
        return film;
    }

    @Test
    void filmOnTheSameGridStaysAsItIs() {
        VoxelGrid grid = grid(0.025);
        double[] film = film(grid, 1);
        double[] on = FineFilm.on(grid, CAVITY, grid, film, new double[film.length]);
        for (int s = 0; s < film.length; s++) {
            assertEquals(grid.surfels().isStructure(s) ? film[s] : 0, on[s], 1e-12);
        }
    }

    @Test
    void filmOfAFinerGridIsItsMedianOnEachFacetAndShareOfAreaStays() {
        VoxelGrid coarse = grid(0.025);
        VoxelGrid fine = grid(0.0125);
        double[] on = FineFilm.on(
                coarse, CAVITY, fine, film(fine, 1), new double[coarse.surfels().count()]);
        double[] right = film(coarse, 1);
        for (int s = 0; s < on.length; s++) {
            if (coarse.surfels().isStructure(s)) {
                // a linear film: its median on a facet is that of its middle, to one fine cell; parts never mix
                assertEquals(right[s], on[s], 0.0126);
            }
        }
        double edge = 0.3; // a line between coarse cells: part 0..5 add whole numbers, so the share is that of x < 0.3
        assertEquals(share(fine, film(fine, 1), edge), share(coarse, on, edge), 0.02);
    }

    private static double share(VoxelGrid grid, double[] film, double edge) {
        SurfelSet s = grid.surfels();
        double all = 0;
        double less = 0;
        for (int i = 0; i < film.length; i++) {
            if (s.isStructure(i)) {
                all += s.areaM2()[i];
                less += film[i] - Math.floor(film[i]) < edge ? s.areaM2()[i] : 0;
            }
        }
        return less / all;
    }

    @Test
    void whatIsHandedOverIsTheBestOfWhatWasRunInFull() {
        DoseMatrix matrix = DoseMatrixTest.matrix(DoseStore.none(), 2, RunObserver.NONE);
        PlanLimits limits = new PlanLimits(0.05, 0.5, 6, Double.POSITIVE_INFINITY, 4);
        List<Stroke> poor = List.of(new Stroke(0, 0, matrix.lines().get(0).stations() - 1, 0.4));
        Scene planned = BLOCK.withPasses(PlanPasses.of(matrix, poor, 0));
        // a promise that no run keeps: the next plans by the matrix have to be run in full
        PlanScore promised = new PlanScore(1, 1, 1, 1e-6);
        FullRounds full = new FullRounds(limits, 0, Structures.shared(), new RunOptions(2), RunObserver.NONE);
        FullRounds.Verified one = full.of(planned, poor, matrix, promised, 0);
        assertEquals(1, one.rounds().size());
        assertEquals(poor, one.strokes());
        FullRounds.Verified more = full.of(planned, poor, matrix, promised, 1);
        assertEquals(2, more.rounds().size());
        assertNotEquals(poor, more.strokes(), "a slower draw-back reaches more within the limits");
        double found = FullRounds.found(more.ran().result()).reached();
        assertEquals(
                more.rounds().stream()
                        .mapToDouble(r -> r.found().reached())
                        .max()
                        .orElse(0),
                found);
        assertTrue(found > one.rounds().get(0).found().reached());
        assertTrue(limits.keeps(
                FullRounds.found(more.ran().result()).triggerS() * 0.999,
                more.rounds().get(1).found().productM3()));
        // the matrix that is handed on says of that plan what its full run found, here on the same grid
        double[] says = more.matrix().filmM(more.strokes());
        double[] ran = more.ran().result().filmM();
        double worst = 0;
        for (int s = 0; s < says.length; s++) {
            boolean own = matrix.grid().surfels().isStructure(s);
            worst = Math.max(worst, own ? Math.abs(says[s] - ran[s]) : 0);
        }
        assertTrue(worst < 1e-12 + 1e-6 * Arrays.stream(ran).max().orElse(0), "worst " + worst);
        assertFalse(more.matrix() == matrix);
    }
}
