package baymist.film;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.fog.BoxGrid;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FilmCreepTest {
    private static ProductSpec creeping(double residualM) {
        return new ProductSpec("oil", 880, 0.04, 0.03, 1, 293, residualM, 0, 0.01, 3600, Double.POSITIVE_INFINITY);
    }

    @Test
    void halfOfAKeptUpFilmGetsAsFarAsStated() {
        // Crank (1975), ch. 2: erfc(x/(2 sqrt(D t))) beside a boundary that is kept up; erfc(0.476936) = 1/2
        // (Abramowitz and Stegun).
        double d = FilmCreep.diffusivityM2PerS(0.01, 3600);
        assertEquals(0.476936, 0.01 / (2 * Math.sqrt(d * 3600)), 1e-6);
        assertEquals(4 * d, FilmCreep.diffusivityM2PerS(0.02, 3600), 1e-18);
    }

    @Test
    void anEdgeSpreadsAsTheErrorFunction() {
        // Crank (1975): a step of height 1 is 1/2 erfc(x/(2 sqrt(D t))) later: 0.5 at the edge, 0.25 at 0.476936 and
        // 0.078650 at 1 of 2 sqrt(D t).
        int n = 240;
        double cell = 0.001;
        VoxelGrid grid = new BoxGrid(n, 1, 1, cell, 0.01, 0.01).build();
        FilmState film = new FilmState(grid.surfels(), creeping(0));
        SurfelSet f = grid.surfels();
        for (int s = 0; s < f.count(); s++) {
            if (grid.i(f.cell()[s]) < n / 2 && f.direction()[s] > 1) {
                film.addDirect(s, 20e-6 * f.areaM2()[s] * 880);
            }
        }
        double time = 4 * 3600;
        new FilmCreep(grid, creeping(0)).advance(film, time);
        double length = 2 * Math.sqrt(FilmCreep.diffusivityM2PerS(0.01, 3600) * time);
        for (double[] row : new double[][] {{0, 0.5}, {0.4769363, 0.25}, {1, 0.0786496}, {-1, 0.9213504}}) {
            assertEquals(row[1], at(grid, film, n * cell / 2 + row[0] * length) / 20e-6, 0.003, "at " + row[0]);
        }
        assertEquals(film.addedKg(), film.filmKg(), 1e-12 * film.addedKg());
    }

    /** Film on floors, linear between the centres. */
    private static double at(VoxelGrid grid, FilmState film, double x) {
        SurfelSet f = grid.surfels();
        double h = grid.sizeM().x();
        int i = (int) Math.floor(x / h - 0.5);
        double[] two = new double[2];
        for (int s = 0; s < f.count(); s++) {
            int k = grid.i(f.cell()[s]) - i;
            if (f.direction()[s] == 4 && (k == 0 || k == 1)) {
                two[k] = film.wetBuildM(s);
            }
        }
        double share = x / h - 0.5 - i;
        return (1 - share) * two[0] + share * two[1];
    }

    @Test
    void creepKeepsMassAndOriginAndLeavesTheResidual() {
        SplittableRandom random = new SplittableRandom(7);
        BoxGrid box = BoxGrid.cubes(4, 3, 5, 0.01);
        box.vent(3, 1, 0, 1, 2e-5);
        VoxelGrid grid = box.build();
        FilmState film = new FilmState(grid.surfels(), creeping(5e-6));
        double[] fog = new double[grid.surfels().count()];
        double direct = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int s = 0; s < fog.length; s++) {
            double kg = 3e-6 * random.nextDouble();
            fog[s] = 1e-6 * random.nextDouble();
            if (grid.surfels().closure()[s] < 0) {
                film.addDirect(s, kg);
                direct += kg;
            }
        }
        film.addFog(fog);
        for (int s = 0; s < fog.length; s++) {
            least = Math.min(least, film.wetBuildM(s));
        }
        new FilmCreep(grid, creeping(5e-6)).advance(film, 24 * 3600);
        double directAfter = 0;
        for (int s = 0; s < fog.length; s++) {
            assertTrue(film.directKg(s) >= 0 && film.fogKg(s) >= 0);
            assertTrue(film.wetBuildM(s) >= Math.min(least, 5e-6) * (1 - 1e-12));
            directAfter += film.directKg(s);
        }
        assertEquals(direct, directAfter, 1e-12 * direct);
        assertEquals(film.addedKg(), film.filmKg() + film.maskedKg(), 1e-12 * film.addedKg());
    }

    @Test
    void aFilmThinnerThanTheResidualStays() {
        VoxelGrid grid = BoxGrid.cubes(3, 3, 3, 0.01).build();
        FilmState film = new FilmState(grid.surfels(), creeping(5e-6));
        film.addDirect(4, 4e-6 * grid.surfels().areaM2()[4] * 880);
        double[] before = masses(film);
        new FilmCreep(grid, creeping(5e-6)).advance(film, 1e5);
        assertArrayEquals(before, masses(film));
        ProductSpec still = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293);
        film.addDirect(4, 1e-5);
        before = masses(film);
        new FilmCreep(grid, still).advance(film, 1e5);
        assertArrayEquals(before, masses(film));
    }

    private static double[] masses(FilmState film) {
        double[] m = new double[film.count()];
        for (int s = 0; s < m.length; s++) {
            m[s] = film.massKg(s);
        }
        return m;
    }
}
