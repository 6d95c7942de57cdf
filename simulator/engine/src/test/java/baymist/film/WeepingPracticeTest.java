package baymist.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.fog.BoxGrid;
import baymist.geom.Vec3;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import org.junit.jupiter.api.Test;

/**
 * Common practice, no source: film of 10 um times area is the product needed; twice as much weeps. A bay of 0.3 x 0.2 x 0.15 m pitched by 2 degrees with a drain
 * in its low corner, coated evenly; what leaves by the drain in a day.
 */
class WeepingPracticeTest {
    private static final ProductSpec OIL = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293);

    /** Share of the film that weeps out in 24 h. */
    private static double weeps(double buildM) {
        BoxGrid box = new BoxGrid(15, 10, 10, 0.02, 0.02, 0.015);
        int drain = box.vent(14, 0, 0, 4, 5e-5);
        VoxelGrid grid = box.build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        SurfelSet f = grid.surfels();
        double area = 0;
        for (int s = 0; s < f.count(); s++) {
            if (f.closure()[s] < 0) {
                area += f.areaM2()[s];
                film.addDirect(s, buildM * f.areaM2()[s] * OIL.densityKgPerM3());
            }
        }
        assertEquals(FilmFormulas.productKg(880, area, buildM), film.filmKg(), 1e-9 * film.filmKg());
        double pitch = Math.toRadians(2);
        Vec3 gravity = new Vec3(Math.sin(pitch), -Math.sin(pitch), -Math.cos(pitch)).times(9.81);
        double[] open = {1};
        FilmState later =
                FilmAgeing.after(film, new FilmRuns(grid, OIL, gravity, FilmSettings.of(OIL)), null, open, 24 * 3600);
        assertEquals(0, drain);
        return later.drippedKg() / film.filmKg();
    }

    @Test
    void twiceTheProductNeededWeepsMoreThanTwiceAsMuch() {
        double half = weeps(5e-6);
        double right = weeps(10e-6);
        double twice = weeps(20e-6);
        assertTrue(half < 1e-9, "half of it: " + half);
        assertTrue(2 * twice > 2 * 2 * right, "the right amount: " + right + ", twice as much: " + twice);
        assertTrue(twice > 0.05, "twice as much: " + twice);
    }
}
