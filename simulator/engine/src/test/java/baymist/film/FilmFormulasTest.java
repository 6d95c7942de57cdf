package baymist.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows FM-01 to FM-13: oil of 880 kg/m³, 0.040 Pa·s, 0.030 N/m; gravity 9.81 m/s². */
class FilmFormulasTest {
    private static final double MU = 0.040;
    private static final double RHO = 880;
    private static final double SIGMA = 0.030;
    private static final double NU = MU / RHO;
    private static final double G = 9.81;

    private static void near(double expected, double value, double relative) {
        assertEquals(expected, value, relative * Math.abs(expected));
    }

    // Jeffreys (1930), Proc. Camb. Phil. Soc. 26, 204: rows FM-01, FM-02 and the table of the same formula.
    @ParameterizedTest
    @CsvSource({"0.15, 600, 34.0", "0.30, 3600, 19.7", "0.10, 60, 87.9", "0.05, 86400, 1.64"})
    void drainageFollowsJeffreys(double belowEdgeM, double timeS, double micrometres) {
        near(micrometres * 1e-6, FilmFormulas.jeffreysM(Double.POSITIVE_INFINITY, belowEdgeM, timeS, NU, G), 5e-3);
    }

    @Test
    void thinningStartsWhenTheWaveArrives() {
        // Row FM-03.
        near(1077, FilmFormulas.jeffreysOnsetS(25.4e-6, 0.15, NU, G), 5e-3);
        near(25.4e-6, FilmFormulas.jeffreysM(25.4e-6, 0.15, 1076, NU, G), 1e-12);
        assertTrue(FilmFormulas.jeffreysM(25.4e-6, 0.15, 1100, NU, G) < 25.4e-6);
        assertEquals(1e-5, FilmFormulas.jeffreysM(1e-5, 0.1, 0, NU, G));
    }

    @Test
    void meanIsTwoThirdsOfTheLocalThickness() {
        // Row FM-04.
        double local = FilmFormulas.jeffreysM(1e-3, 0.15, 600, NU, G);
        near(2.0 / 3 * local, FilmFormulas.jeffreysMeanM(1e-3, 0.15, 600, NU, G), 1e-3);
        // Before the wave arrives: what has left is the Nusselt flux at the start's thickness, h0³ g t/(3 nu).
        double gone = FilmFormulas.nusseltFluxM2PerS(25.4e-6, NU, G) * 300;
        near(25.4e-6 * 0.15 - gone, 0.15 * FilmFormulas.jeffreysMeanM(25.4e-6, 0.15, 300, NU, G), 1e-9);
        assertEquals(1e-5, FilmFormulas.jeffreysMeanM(1e-5, 0.15, 0, NU, G));
    }

    @Test
    void fluxAndSpeedsFollowNusselt() {
        // Nusselt (1916), row FM-05.
        near(1.179e-9, FilmFormulas.nusseltFluxM2PerS(25.4e-6, NU, G), 5e-3);
        near(46.4e-6, FilmFormulas.nusseltMeanSpeedMPerS(25.4e-6, NU, G), 5e-3);
        near(69.6e-6, FilmFormulas.nusseltSurfaceSpeedMPerS(25.4e-6, NU, G), 5e-3);
    }

    @Test
    void hangingDropsFollowRayleighAndTaylor() {
        // Rows FM-06, FM-07 (thin-film Rayleigh-Taylor).
        near(1.864e-3, FilmFormulas.capillaryLengthM(SIGMA, RHO, G), 2e-3);
        near(16.56e-3, FilmFormulas.fastestWaveM(SIGMA, RHO, G), 2e-3);
        near(11791, 1 / FilmFormulas.hangingGrowthPerS(25.4e-6, MU, SIGMA, RHO, G), 5e-3);
        near(193, 1 / FilmFormulas.hangingGrowthPerS(100e-6, MU, SIGMA, RHO, G), 5e-3);
    }

    @Test
    void creepAndRiseInAGapFollowWashburnAndJurin() {
        // Washburn (1921), slot form, row FM-08 and table; Jurin, row FM-09.
        near(0.150, FilmFormulas.slotCreepM(25e-6, 0, 3600, SIGMA, MU), 1e-2);
        near(61.2e-3, FilmFormulas.slotCreepM(25e-6, 0, 600, SIGMA, MU), 1e-3);
        near(0.278, FilmFormulas.slotRiseM(25e-6, 0, SIGMA, RHO, G), 1e-2);
        near(0.0695, FilmFormulas.slotRiseM(100e-6, 0, SIGMA, RHO, G), 1e-2);
    }

    @Test
    void dropSpreadsAsHuppertSays() {
        // Huppert (1982), J. Fluid Mech. 121, 43: 1 µL after a minute, an hour, a day.
        near(2.55e-3, FilmFormulas.spreadRadiusM(1e-9, 60, NU, G), 5e-3);
        near(4.25e-3, FilmFormulas.spreadRadiusM(1e-9, 3600, NU, G), 5e-3);
        near(6.32e-3, FilmFormulas.spreadRadiusM(1e-9, 86400, NU, G), 5e-3);
    }

    @Test
    void productNeededIsAreaTimesBuild() {
        // Rows FM-10, FM-11: box 1.0 x 0.5 x 0.15 m, 1 mil (25.4 µm exactly).
        near(32.41e-3, FilmFormulas.productKg(RHO, 1.45, FilmFormulas.MIL_M), 1e-3);
        assertEquals(25.4e-6, FilmFormulas.MIL_M);
    }

    @Test
    void airShearAndYieldFilm() {
        // Row FM-12: 25 µm under 5 Pa.
        near(3.1e-3, FilmFormulas.shearSurfaceSpeedMPerS(25e-6, 5, MU), 2e-2);
        near(1 / (880 * 9.81), FilmFormulas.yieldFilmM(1, 880, 9.81), 1e-12);
        assertEquals(Double.POSITIVE_INFINITY, FilmFormulas.yieldFilmM(1, 880, 0));
    }

    // ASTM D4414, row FM-13.
    @ParameterizedTest
    @CsvSource({"100e-6, 13e-6", "150e-6, 13e-6", "200e-6, 25e-6", "250e-6, 25e-6", "600e-6, 50e-6"})
    void notchGaugeStepsFollowAstm(double thickness, double step) {
        assertEquals(step, FilmFormulas.notchGaugeStepM(thickness));
    }

    @Test
    void splatHoldsTheDropsVolume() {
        // A half sphere (90°) of the same volume is 2^(1/3) wider; flat caps follow 4/theta (solid geometry).
        near(Math.cbrt(2), FilmFormulas.splatRatio(Math.PI / 2), 1e-12);
        double angle = Math.toRadians(1);
        near(2 * Math.cbrt(2.0 / 3 / angle), FilmFormulas.splatRatio(angle), 1e-3);
    }

    @Test
    void thinBuildOfCoarseDropsIsHaze() {
        // Poisson coverage (Kolmogorov 1937): 1 - 1/e of the sheet is wetted when the spots' areas add up to the
        // sheet's.
        double ratio = FilmFormulas.splatRatio(FilmFormulas.OIL_CONTACT_ANGLE_RAD);
        double once = 50e-6 / (1.5 * ratio * ratio);
        near(1 - Math.exp(-1), FilmFormulas.wettedShare(once, 50e-6, FilmFormulas.OIL_CONTACT_ANGLE_RAD), 1e-12);
        double full = FilmFormulas.fullCoverBuildM(50e-6, FilmFormulas.OIL_CONTACT_ANGLE_RAD);
        near(0.99, FilmFormulas.wettedShare(full, 50e-6, FilmFormulas.OIL_CONTACT_ANGLE_RAD), 1e-9);
        assertTrue(FilmFormulas.isHaze(1e-6, 50e-6));
        assertFalse(FilmFormulas.isHaze(10e-6, 5e-6));
    }
}
