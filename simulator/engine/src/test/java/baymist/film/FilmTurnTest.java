package baymist.film;

import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.fog.BoxGrid;
import baymist.geom.Vec3;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Film that runs, drips and creeps in a box turned by a quarter about z does what it did before, turned. */
class FilmTurnTest {
    private static final int NX = 6;
    private static final int NY = 4;
    private static final int NZ = 5;
    private static final int[] TURNED_SIDE = {2, 3, 1, 0, 4, 5};
    private static final ProductSpec OIL =
            new ProductSpec("oil", 880, 0.04, 0.03, 1, 293, 5e-6, 0, 0.02, 86400, Double.POSITIVE_INFINITY);

    @Test
    void turnedFilmRunsToTheTurnedPlaces() {
        BoxGrid box = new BoxGrid(NX, NY, NZ, 0.02, 0.03, 0.025);
        BoxGrid other = new BoxGrid(NY, NX, NZ, 0.03, 0.02, 0.025);
        int drain = box.vent(2, 1, 0, 4, 1e-4);
        other.vent(NY - 2, 2, 0, 4, 1e-4);
        VoxelGrid grid = box.build();
        VoxelGrid twin = other.build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        FilmState turned = new FilmState(twin.surfels(), OIL);
        SplittableRandom random = new SplittableRandom(3);
        SurfelSet f = grid.surfels();
        int[] there = new int[f.count()];
        for (int s = 0; s < f.count(); s++) {
            int c = f.cell()[s];
            int cell = other.cell(NY - 1 - grid.j(c), grid.i(c), grid.k(c));
            there[s] = surfel(twin, cell, TURNED_SIDE[f.direction()[s]], f.closure()[s] >= 0);
            double kg = 8e-5 * random.nextDouble() * f.areaM2()[s] * 880;
            film.addDirect(s, kg);
            turned.addDirect(there[s], kg);
        }
        double[] open = {1};
        FilmRuns runs = new FilmRuns(grid, OIL, new Vec3(1, 2, -9), FilmSettings.DEFAULT);
        FilmRuns twinRuns = new FilmRuns(twin, OIL, new Vec3(-2, 1, -9), FilmSettings.DEFAULT);
        FilmState later = FilmAgeing.after(film, runs, new FilmCreep(grid, OIL), open, 7200);
        FilmState twinLater = FilmAgeing.after(turned, twinRuns, new FilmCreep(twin, OIL), open, 7200);
        for (int s = 0; s < f.count(); s++) {
            assertEquals(later.massKg(s), twinLater.massKg(there[s]), 1e-10 * later.massKg(s) + 1e-18);
        }
        assertEquals(later.drippedKg(), twinLater.drippedKg(), 1e-10 * later.drippedKg());
        assertEquals(0, drain);
    }

    private static int surfel(VoxelGrid grid, int cell, int side, boolean closure) {
        for (int s = 0; s < grid.surfels().count(); s++) {
            if (grid.surfels().cell()[s] == cell
                    && grid.surfels().direction()[s] == side
                    && grid.surfels().closure()[s] >= 0 == closure) {
                return s;
            }
        }
        throw new AssertionError("no surfel on side " + side + " of cell " + cell);
    }
}
