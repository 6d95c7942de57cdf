package baymist.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.fog.BoxGrid;
import baymist.geom.Vec3;
import baymist.problem.SimulationException;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Film on the walls of boxes against closed forms and laws. */
class FilmRunsTest {
    private static final ProductSpec OIL = new ProductSpec("oil", 880, 0.040, 0.030, 0.8, 293);
    private static final double NU = 0.040 / 880;
    private static final double G = 9.81;
    private static final Vec3 DOWN = new Vec3(0, 0, -G);
    private static final double[] SHUT = new double[8];
    private static final double[] OPEN = {1, 1, 1, 1, 1, 1, 1, 1};
    private static final FilmSettings FREE = new FilmSettings(0, 5, 20_000);

    private static int surfel(VoxelGrid grid, int cell, int direction, boolean closure) {
        SurfelSet f = grid.surfels();
        for (int s = 0; s < f.count(); s++) {
            if (f.cell()[s] == cell && f.direction()[s] == direction && f.closure()[s] >= 0 == closure) {
                return s;
            }
        }
        throw new AssertionError("no surfel on side " + direction + " of cell " + cell);
    }

    private static void coat(FilmState film, VoxelGrid grid, int direction, double buildM) {
        SurfelSet f = grid.surfels();
        for (int s = 0; s < f.count(); s++) {
            if (f.direction()[s] == direction && f.closure()[s] < 0) {
                film.addDirect(s, buildM * f.areaM2()[s] * 880);
            }
        }
    }

    private static void assertCloses(FilmState film) {
        double found = film.filmKg() + film.maskedKg() + film.drippedKg();
        assertEquals(film.addedKg(), found, 1e-12 * film.addedKg());
    }

    // Jeffreys (1930): thickness below the upper edge of an upright plate once the wave has passed; mean 2/3 of the
    // local.
    @Test
    void uprightPlateDrainsAsJeffreysSays() {
        // The scheme is first order: 1 mm rows come within 2 %, 2 mm rows within 3 %.
        int n = 300;
        double d = 0.001;
        VoxelGrid grid = new BoxGrid(1, 1, n, 0.01, 0.01, d).build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        FilmRuns runs = new FilmRuns(grid, OIL, DOWN, FREE);
        coat(film, grid, 0, 100e-6);
        runs.advance(film, SHUT, 600);
        for (double z : new double[] {0.1, 0.15, 0.25}) {
            int k = n - 1 - (int) (z / d);
            double exact = FilmFormulas.jeffreysM(100e-6, (n - k - 0.5) * d, 600, NU, G);
            assertEquals(exact, film.wetBuildM(surfel(grid, k, 0, false)), 0.02 * exact, "z " + z);
        }
        double sum = 0;
        for (int k = n - 150; k < n; k++) {
            sum += film.wetBuildM(surfel(grid, k, 0, false)) / 150;
        }
        assertEquals(FilmFormulas.jeffreysMeanM(100e-6, 0.15, 600, NU, G), sum, 0.02 * sum);
        assertCloses(film);
    }

    // Nusselt (1916): what reaches the floor while the lower edge still has its first thickness is g h³ w t/(3 nu).
    @ParameterizedTest
    @ValueSource(doubles = {0, 30, 60, 80})
    void slopedSheetPassesNusseltsFlux(double degrees) {
        double angle = Math.toRadians(degrees);
        Vec3 tilted = new Vec3(-G * Math.sin(angle), 0, -G * Math.cos(angle));
        VoxelGrid grid = BoxGrid.cubes(1, 1, 20, 0.01).build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        coat(film, grid, 0, 50e-6);
        new FilmRuns(grid, OIL, tilted, FREE).advance(film, SHUT, 60);
        double along = G * Math.cos(angle);
        double passed = FilmFormulas.nusseltFluxM2PerS(50e-6, NU, along) * 0.01 * 60 * 880;
        // On a slope the corner is a valley: film lies on both of its sheets.
        int lowest = surfel(grid, 0, 0, false);
        double inCorner = film.massKg(lowest) - 50e-6 * 1e-4 * 880 + film.massKg(surfel(grid, 0, 4, false));
        assertEquals(passed, inCorner, 1e-6 * passed);
        assertCloses(film);
    }

    @Test
    void sliverDoesNotDamTheFlow() {
        // The face with the hole keeps 1 % of its area: film passes it to the rim without piling up there.
        BoxGrid box = BoxGrid.cubes(1, 1, 8, 0.01);
        box.vent(0, 0, 2, 0, 0.99e-4);
        VoxelGrid grid = box.build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        coat(film, grid, 0, 60e-6);
        new FilmRuns(grid, OIL, DOWN, FREE).advance(film, SHUT, 300);
        for (int k = 0; k < 8; k++) {
            assertTrue(film.wetBuildM(surfel(grid, k, 0, false)) < 1.5e-3, "cell " + k);
        }
        assertCloses(film);
    }

    @Test
    void residualFilmStays() {
        VoxelGrid grid = BoxGrid.cubes(1, 1, 10, 0.01).build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        coat(film, grid, 0, 60e-6);
        coat(film, grid, 1, 4e-6);
        FilmRuns runs = new FilmRuns(grid, OIL, DOWN, new FilmSettings(5e-6, 5, 400));
        runs.advance(film, SHUT, 1e6);
        for (int k = 0; k < 10; k++) {
            double h = film.wetBuildM(surfel(grid, k, 0, false));
            assertTrue(h >= 5e-6 * (1 - 1e-12), "cell " + k + ": " + h);
            assertEquals(4e-6, film.wetBuildM(surfel(grid, k, 1, false)), 1e-18);
        }
        assertTrue(film.wetBuildM(surfel(grid, 9, 0, false)) < 5.5e-6);
        assertTrue(film.wetBuildM(surfel(grid, 0, 4, false)) > 100e-6);
        assertCloses(film);
    }

    @Test
    void openDrainLetsTheFloorsExcessGoAndAShutOneKeepsIt() {
        BoxGrid box = BoxGrid.cubes(3, 3, 2, 0.01);
        box.vent(1, 1, 0, 4, 2e-5);
        VoxelGrid grid = box.build();
        FilmRuns runs = new FilmRuns(grid, OIL, DOWN, FilmSettings.DEFAULT);
        FilmState open = new FilmState(grid.surfels(), OIL);
        FilmState shut = new FilmState(grid.surfels(), OIL);
        coat(open, grid, 4, 80e-6);
        coat(shut, grid, 4, 80e-6);
        runs.advance(open, OPEN, 3600);
        runs.advance(shut, SHUT, 3600);
        assertEquals(0, shut.drippedKg());
        // The face with the hole and its four neighbours reach the rim; corner faces do not, since the floor is level.
        double within = 75e-6 * 880 * (5e-4 - 2e-5);
        assertEquals(within, open.drippedKg(), 0.1 * within);
        assertEquals(80e-6, open.wetBuildM(surfel(grid, 0, 4, false)), 1e-12);
        assertCloses(open);
        assertCloses(shut);
    }

    @Test
    void wallFilmRunsOutOfALowHole() {
        BoxGrid box = BoxGrid.cubes(1, 1, 8, 0.01);
        box.vent(0, 0, 0, 0, 1e-4);
        VoxelGrid grid = box.build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        coat(film, grid, 0, 60e-6);
        new FilmRuns(grid, OIL, DOWN, FREE).advance(film, OPEN, 30);
        double passed = FilmFormulas.nusseltFluxM2PerS(60e-6, NU, G) * 0.01 * 30 * 880;
        assertEquals(passed, film.drippedKg(), 1e-6 * passed);
        assertCloses(film);
    }

    // Thin-film Rayleigh-Taylor rate: a 100 µm ceiling film loses its excess with 5 x 193 s at first, 25 µm hardly at
    // all.
    @Test
    void ceilingDripsWhenThickAndNotWhenThin() {
        VoxelGrid grid = BoxGrid.cubes(2, 2, 5, 0.01).build();
        FilmRuns runs = new FilmRuns(grid, OIL, DOWN, FilmSettings.DEFAULT);
        FilmState thick = new FilmState(grid.surfels(), OIL);
        coat(thick, grid, 5, 100e-6);
        runs.advance(thick, SHUT, 10);
        double expected = 95e-6 * 880 * 4e-4 * (1 - Math.exp(-10 / (5 * 193.2)));
        assertEquals(expected, thick.fallenKg(), 0.01 * expected);
        assertEquals(thick.fallenKg() / 4, thick.massKg(surfel(grid, 0, 4, false)), 1e-15);
        assertEquals(0, thick.drippedKg());
        FilmState thin = new FilmState(grid.surfels(), OIL);
        coat(thin, grid, 5, 25e-6);
        runs.advance(thin, SHUT, 3600);
        assertTrue(thin.fallenKg() < 0.06 * thin.addedKg(), "fallen " + thin.fallenKg() / thin.addedKg());
        assertCloses(thick);
    }

    @Test
    void dropsFallOutThroughAnOpenHoleAndOnItsCoverWhenShut() {
        BoxGrid box = BoxGrid.cubes(1, 1, 3, 0.01);
        box.vent(0, 0, 0, 4, 0.9e-4);
        VoxelGrid grid = box.build();
        FilmRuns runs = new FilmRuns(grid, OIL, DOWN, FilmSettings.DEFAULT);
        FilmState open = new FilmState(grid.surfels(), OIL);
        coat(open, grid, 5, 200e-6);
        runs.advance(open, OPEN, 100);
        assertTrue(open.drippedKg() > 0.3 * open.addedKg());
        assertEquals(0, open.fallenKg());
        FilmState shut = new FilmState(grid.surfels(), OIL);
        coat(shut, grid, 5, 200e-6);
        runs.advance(shut, SHUT, 100);
        assertEquals(open.drippedKg(), shut.maskedKg(), 1e-12);
        assertEquals(shut.fallenKg(), shut.maskedKg(), 1e-18);
        assertCloses(shut);
    }

    @Test
    void dropsFallThroughAnOpenInnerHole() {
        // Gravity along -x: the baffle at i = 2 is a floor with a hole as large as the face.
        BoxGrid box = BoxGrid.cubes(4, 1, 1, 0.01);
        box.baffle(2, 0, 0, 1e-4);
        VoxelGrid grid = box.build();
        FilmRuns runs = new FilmRuns(grid, OIL, new Vec3(-G, 0, 0), FilmSettings.DEFAULT);
        FilmState film = new FilmState(grid.surfels(), OIL);
        film.addDirect(surfel(grid, 3, 1, false), 200e-6 * 1e-4 * 880);
        runs.advance(film, OPEN, 50);
        assertTrue(film.massKg(surfel(grid, 0, 0, false)) > 0.1 * film.addedKg());
        assertCloses(film);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void massIsKeptOnAnySlopeWithTooFewSubSteps(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        BoxGrid box = BoxGrid.cubes(6, 4, 5, 0.01);
        box.vent(2, 2, 0, 4, 3e-5);
        VoxelGrid grid = box.build();
        Vec3 gravity = new Vec3(random.nextDouble() - 0.5, random.nextDouble() - 0.5, -1)
                .unit()
                .times(G);
        FilmState film = new FilmState(grid.surfels(), OIL);
        double[] fog = new double[grid.surfels().count()];
        for (int s = 0; s < fog.length; s++) {
            film.addDirect(s, 1e-6 * random.nextDouble());
            fog[s] = 1e-5 * random.nextDouble();
        }
        film.addFog(fog);
        FilmRuns runs = new FilmRuns(grid, OIL, gravity, new FilmSettings(5e-6, 5, 30));
        for (int i = 0; i < 50; i++) {
            runs.advance(film, OPEN, 20);
        }
        for (int s = 0; s < fog.length; s++) {
            assertTrue(film.directKg(s) >= 0 && film.fogKg(s) >= 0);
        }
        assertTrue(film.drippedKg() > 0);
        assertCloses(film);
    }

    @Test
    void mirroredFilmRunsToTheMirroredPlaces() {
        VoxelGrid grid = BoxGrid.cubes(5, 2, 4, 0.01).build();
        FilmState right = new FilmState(grid.surfels(), OIL);
        FilmState left = new FilmState(grid.surfels(), OIL);
        right.addDirect(surfel(grid, 1, 4, false), 1e-5);
        left.addDirect(surfel(grid, 3, 4, false), 1e-5);
        coat(right, grid, 0, 80e-6);
        coat(left, grid, 1, 80e-6);
        new FilmRuns(grid, OIL, new Vec3(3, 0, -9), FilmSettings.DEFAULT).advance(right, SHUT, 300);
        new FilmRuns(grid, OIL, new Vec3(-3, 0, -9), FilmSettings.DEFAULT).advance(left, SHUT, 300);
        SurfelSet f = grid.surfels();
        for (int s = 0; s < f.count(); s++) {
            int c = f.cell()[s];
            int twin = grid.cellAt(4 - grid.i(c), grid.j(c), grid.k(c));
            int d = f.direction()[s] < 2 ? 1 - f.direction()[s] : f.direction()[s];
            double other = left.massKg(surfel(grid, twin, d, false));
            assertEquals(right.massKg(s), other, 1e-12 * other + 1e-18);
        }
    }

    @Test
    void originIsKeptWhileFilmRuns() {
        VoxelGrid grid = BoxGrid.cubes(1, 1, 6, 0.01).build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        int top = surfel(grid, 5, 0, false);
        film.addDirect(top, 3e-5);
        double[] fog = new double[grid.surfels().count()];
        fog[top] = 1e-5;
        film.addFog(fog);
        new FilmRuns(grid, OIL, DOWN, FREE).advance(film, SHUT, 100);
        int below = surfel(grid, 4, 0, false);
        assertTrue(film.massKg(below) > 0);
        assertEquals(3, film.directKg(below) / film.fogKg(below), 1e-9);
    }

    @Test
    void nothingRunsWithoutWeightOrTime() {
        VoxelGrid grid = BoxGrid.cubes(2, 2, 2, 0.01).build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        coat(film, grid, 0, 500e-6);
        double before = film.massKg(surfel(grid, 0, 0, false));
        new FilmRuns(grid, OIL, Vec3.ZERO, FilmSettings.DEFAULT).advance(film, OPEN, 1000);
        new FilmRuns(grid, OIL, DOWN, FilmSettings.DEFAULT).advance(film, OPEN, 0);
        assertEquals(before, film.massKg(surfel(grid, 0, 0, false)));
    }

    @Test
    void badInputIsRefused() {
        VoxelGrid grid = BoxGrid.cubes(1, 1, 2, 0.01).build();
        FilmState film = new FilmState(grid.surfels(), OIL);
        FilmRuns runs = new FilmRuns(grid, OIL, DOWN, FilmSettings.DEFAULT);
        assertThrows(IllegalArgumentException.class, () -> runs.advance(film, OPEN, -1));
        assertThrows(IllegalArgumentException.class, () -> film.addDirect(0, -1));
        assertThrows(IllegalArgumentException.class, () -> film.addFog(new double[1]));
        assertThrows(IllegalArgumentException.class, () -> new FilmSettings(-1, 5, 4));
        ProductSpec odd = new ProductSpec("odd", 880, 0, 0.03, 2, 293);
        assertThrows(IllegalArgumentException.class, () -> new FilmState(grid.surfels(), odd));
        assertThrows(IllegalArgumentException.class, () -> new FilmRuns(grid, odd, DOWN, FilmSettings.DEFAULT));
        double[] fog = new double[grid.surfels().count()];
        fog[1] = 1;
        film.addFog(fog);
        assertThrows(IllegalArgumentException.class, () -> film.addFog(new double[fog.length]));
        film.direct[0] = -1;
        assertTrue(assertThrows(SimulationException.class, () -> runs.advance(film, OPEN, 1))
                .getMessage()
                .contains("surfel 0"));
    }
}
