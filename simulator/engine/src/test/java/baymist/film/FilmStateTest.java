package baymist.film;

import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.fog.BoxGrid;
import baymist.scene.ProductSpec;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import org.junit.jupiter.api.Test;

class FilmStateTest {
    private static final ProductSpec OIL = new ProductSpec("oil", 880, 0.040, 0.030, 0.6, 293);

    @Test
    void buildIsVolumeOverTrueArea() {
        VoxelGrid grid = BoxGrid.cubes(1, 1, 1, 0.1).build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        film.addDirect(2, 8.8e-5);
        assertEquals(10e-6, film.wetBuildM(2), 1e-18);
        assertEquals(6e-6, film.dryBuildM(2), 1e-18);
        assertEquals(6, film.count());
    }

    @Test
    void originsAreKeptApartAndMasksAreNotFilm() {
        BoxGrid box = BoxGrid.cubes(1, 1, 1, 0.1);
        box.vent(0, 0, 0, 1, 1e-3);
        VoxelGrid grid = box.build();
        int closure = 0;
        while (grid.surfels().closure()[closure] < 0) {
            closure++;
        }
        FilmState film = new FilmState(grid.surfels(), OIL);
        int[] none = {};
        double[] zero = {};
        SprayHits hits = new SprayHits(
                new int[] {0, closure, 0},
                new double[] {1e-3, 2e-3, 4e-3},
                none,
                zero,
                0,
                none,
                zero,
                zero,
                zero,
                none,
                none,
                zero,
                zero,
                0,
                -1,
                0,
                0,
                -1,
                0,
                7e-3);
        film.addDirect(hits, 2);
        double[] fog = new double[grid.surfels().count()];
        fog[0] = 1e-3;
        film.addFog(fog);
        fog[0] = 3e-3;
        film.addFog(fog);
        assertEquals(10e-3, film.directKg(0), 1e-15);
        assertEquals(3e-3, film.fogKg(0), 1e-15);
        assertEquals(13e-3, film.filmKg(), 1e-15);
        assertEquals(4e-3, film.maskedKg(), 1e-15);
        assertEquals(17e-3, film.addedKg(), 1e-15);
        assertEquals(0, film.drippedKg() + film.fallenKg());
    }
}
