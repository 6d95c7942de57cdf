package baymist.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.fog.BoxGrid;
import baymist.geom.Vec3;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import org.junit.jupiter.api.Test;

class FilmAgeingTest {
    private static final Vec3 DOWN = new Vec3(0, 0, -9.81);
    private static final double[] SHUT = new double[4];

    private static ProductSpec oil(double residualM, double yieldPa) {
        return new ProductSpec("oil", 880, 0.04, 0.03, 0.5, 293, residualM, yieldPa, 0, 1, Double.POSITIVE_INFINITY);
    }

    private static FilmState coated(VoxelGrid grid, ProductSpec product, double buildM) {
        FilmState film = new FilmState(grid.surfels(), product);
        SurfelSet f = grid.surfels();
        for (int s = 0; s < f.count(); s++) {
            if (f.direction()[s] < 2) {
                film.addDirect(s, buildM * f.areaM2()[s] * product.densityKgPerM3());
            }
        }
        return film;
    }

    private static double build(VoxelGrid grid, FilmState film, int k) {
        SurfelSet f = grid.surfels();
        for (int s = 0; s < f.count(); s++) {
            if (f.direction()[s] == 0 && grid.k(f.cell()[s]) == k) {
                return film.wetBuildM(s);
            }
        }
        throw new AssertionError();
    }

    @Test
    void aNewtonianFilmThinsAsJeffreysSaysForADay() {
        // Jeffreys (1930), sqrt(nu z/(g t)), nu 45.45 cSt: 8.02, 13.9, 19.7 um after 1 h and 1.64, 2.84, 4.01 um after
        // 24 h at 50, 150, 300 mm
        // (from memory, recomputed). First order in space: 2 mm rows miss
        // by 3 % at 50 mm.
        int n = 175;
        VoxelGrid grid = new BoxGrid(1, 1, n, 0.01, 0.01, 0.002).build();
        ProductSpec oil = oil(0, 0);
        FilmState film = coated(grid, oil, 25.4e-6);
        double whole = film.filmKg();
        FilmRuns runs = new FilmRuns(grid, oil, DOWN, FilmSettings.of(oil));
        double[][] rows = {
            {3600, 0.05, 8.02},
            {3600, 0.15, 13.9},
            {3600, 0.3, 19.7},
            {86400, 0.05, 1.64},
            {86400, 0.15, 2.84},
            {86400, 0.3, 4.01}
        };
        for (double[] row : rows) {
            FilmState later = FilmAgeing.after(film, runs, null, SHUT, row[0]);
            int k = n - (int) Math.round(row[1] / 0.002);
            double found = 0.5 * (build(grid, later, k) + build(grid, later, k - 1));
            assertEquals(row[2] * 1e-6, found, 0.04 * row[2] * 1e-6, row[0] + " s, " + row[1] + " m");
            assertEquals(whole, later.filmKg() + later.drippedKg(), 1e-12 * whole);
        }
        assertEquals(25.4e-6, build(grid, film, n / 2), 1e-18);
    }

    @Test
    void aYieldStressHoldsItsFilm() {
        // tau_y/(rho g): 0.1 Pa holds 11.58 um of 880 kg/m3 on an upright sheet.
        VoxelGrid grid = new BoxGrid(1, 1, 40, 0.01, 0.01, 0.005).build();
        ProductSpec grease = oil(5e-6, 0.1);
        FilmState film = coated(grid, grease, 60e-6);
        FilmRuns runs = new FilmRuns(grid, grease, DOWN, FilmSettings.of(grease));
        FilmState later = FilmAgeing.after(film, runs, null, SHUT, 30 * 86400);
        assertEquals(0.1 / (880 * 9.81), build(grid, later, 38), 0.02 * 11.58e-6);
        FilmState thin = coated(grid, grease, 11e-6);
        FilmState still = FilmAgeing.after(thin, runs, null, SHUT, 86400);
        assertEquals(11e-6, build(grid, still, 38), 1e-18);
    }

    @Test
    void nothingHappensInNoTimeAndDryIsWhatStays() {
        VoxelGrid grid = BoxGrid.cubes(2, 2, 2, 0.01).build();
        ProductSpec oil = oil(5e-6, 0);
        FilmState film = coated(grid, oil, 40e-6);
        FilmState same = FilmAgeing.after(film, new FilmRuns(grid, oil, DOWN, FilmSettings.of(oil)), null, SHUT, 0);
        assertEquals(build(grid, film, 1), build(grid, same, 1));
        assertEquals(0.5 * film.wetBuildM(0), film.dryBuildM(0), 1e-18);
        assertTrue(same != film);
    }
}
