package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WallLawTest {
    private static final double NU = 1.5e-5;

    @ParameterizedTest
    @ValueSource(doubles = {60, 100, 200, 300})
    void outsideTheBufferLayerItIsTheLogLaw(double yPlus) {
        // Log law u+ = ln(y+)/0.41 + 5.0 (White, Viscous Fluid Flow; Pope 2000 with 5.2; Spalding's own constants are
        // 0.40, 5.5).
        double uPlus = Math.log(yPlus) / 0.41 + 5.0;
        double friction = 0.3;
        double found = WallLaw.frictionSpeedMPerS(uPlus * friction, yPlus * NU / friction, NU);
        assertEquals(friction, found, 0.05 * friction);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1, 3})
    void atTheWallItIsTheViscousSublayer(double yPlus) {
        // u+ = y+ (Prandtl); u*² = nu u / y.
        double friction = 0.05;
        double found = WallLaw.frictionSpeedMPerS(yPlus * friction, yPlus * NU / friction, NU);
        assertEquals(friction, found, 0.01 * friction);
    }

    @Test
    void bufferLayerAgreesWithMeasuredProfiles() {
        // Channel flow at y+ 10 and 30: u+ 8.4 and 13.1 +- 0.5 (Kim, Moin & Moser 1987; Pope 2000, figure 7.7; from
        // memory).
        assertEquals(10, WallLaw.yPlus(8.6), 1.0);
        assertEquals(30, WallLaw.yPlus(13.1), 3.0);
    }

    // Sippola & Nazaroff (2004), Aerosol Sci. Technol. 38, 914: duct 15 x 15 cm, mean speed and measured friction
    // speed.
    // Centre-line speed 1.2 times the mean (common for turbulent ducts, from memory), at half the width.
    @ParameterizedTest
    @CsvSource({"2.2, 0.12", "5.3, 0.28", "9, 0.45"})
    void ductOfFifteenCentimetresHasTheMeasuredFrictionSpeed(double mean, double friction) {
        assertEquals(friction, WallLaw.frictionSpeedMPerS(1.2 * mean, 0.075, 1.55e-5), 0.15 * friction);
    }

    @Test
    void seriesAndClosedFormMeet() {
        double at = 0.5 / WallLaw.KAPPA;
        assertEquals(WallLaw.yPlus(at - 1e-9), WallLaw.yPlus(at + 1e-9), 4e-9);
        assertEquals(0, WallLaw.frictionSpeedMPerS(0, 0.01, NU));
    }

    @Test
    void frictionGrowsWithSpeedFromStokesToFullTurbulence() {
        double last = 0;
        for (double u = 1e-6; u < 300; u *= 2) {
            double f = WallLaw.frictionSpeedMPerS(u, 0.005, NU);
            double uPlus = u / f;
            assertEquals(f * 0.005 / NU, WallLaw.yPlus(uPlus), 1e-9 * (1 + f * 0.005 / NU));
            assertTrue(f > last);
            last = f;
        }
    }

    @Test
    void plugFlowInADuctShearsTheSidesAndNotTheEnds() {
        double h = 0.01;
        VoxelGrid grid = GridFixtures.box(10, 4, 4, h).build();
        FaceSet faces = grid.faces();
        double[] flux = new double[faces.count()];
        for (int f = 0; f < flux.length; f++) {
            flux[f] = faces.axis()[f] == 0 ? 2 * h * h : 0;
        }
        double[] friction = WallLaw.frictionSpeeds(grid, flux, NU);
        double expected = WallLaw.frictionSpeedMPerS(2, h / 2, NU);
        double force = 0;
        for (int s = 0; s < friction.length; s++) {
            boolean end = grid.surfels().direction()[s] < 2;
            // Fields are read with the law's table, which is within 1e-4 of it.
            assertEquals(end ? 0 : expected, friction[s], 1e-4 * expected);
            force += 1.2 * friction[s] * friction[s] * h * h;
        }
        AirField field = new AirField(flux, new double[0], new double[0], 0, new double[0], friction, new double[0], 0);
        assertEquals(force, WallLaw.frictionForceN(grid, field, 1.2), 1e-15);
    }
}
