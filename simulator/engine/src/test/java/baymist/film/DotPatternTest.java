package baymist.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class DotPatternTest {
    @Test
    void oneSizeIsPoissonCoverage() {
        // Kolmogorov (1937): share covered by random spots = 1 - exp(-area of all spots over area); spot from a cap of
        // the drop's volume.
        DotPattern dots = new DotPattern(new double[] {10e-6}, 40e-6);
        double build = 2e-6;
        assertEquals(
                FilmFormulas.wettedShare(build, 10e-6, FilmFormulas.OIL_CONTACT_ANGLE_RAD),
                dots.wettedShare(build, new double[] {build}),
                1e-12);
        assertEquals(
                FilmFormulas.wettedShare(build, 40e-6, FilmFormulas.OIL_CONTACT_ANGLE_RAD),
                dots.wettedShare(build, new double[] {0}),
                1e-12);
    }

    @Test
    void independentSpotsLeaveTheProductOfWhatEachLeavesBare() {
        DotPattern dots = new DotPattern(new double[] {5e-6, 20e-6}, 50e-6);
        double bare = (1 - dots.wettedShare(1e-6, new double[] {1e-6, 0}))
                * (1 - dots.wettedShare(2e-6, new double[] {0, 2e-6}))
                * (1 - dots.wettedShare(3e-6, new double[] {0, 0}));
        assertEquals(1 - bare, dots.wettedShare(6e-6, new double[] {1e-6, 2e-6}), 1e-12);
    }

    @Test
    void fineDropsCoverMoreThanCoarseOnesAndFullCoverIsClosed() {
        DotPattern fine = new DotPattern(new double[0], 10e-6);
        DotPattern coarse = new DotPattern(new double[0], 50e-6);
        assertTrue(fine.wettedShare(1e-6, new double[0]) > coarse.wettedShare(1e-6, new double[0]));
        double full = FilmFormulas.fullCoverBuildM(50e-6, FilmFormulas.OIL_CONTACT_ANGLE_RAD);
        assertTrue(DotPattern.closed(coarse.wettedShare(1.0001 * full, new double[0])));
        assertFalse(DotPattern.closed(coarse.wettedShare(0.99 * full, new double[0])));
        assertEquals(0, new DotPattern(new double[] {0}, 0).wettedShare(1e-3, new double[] {1e-4}));
    }
}
