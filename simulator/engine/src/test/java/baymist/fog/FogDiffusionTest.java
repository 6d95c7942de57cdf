package baymist.fog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.airflow.AirField;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Eddy diffusion, advection and absorption against closed-form solutions. */
class FogDiffusionTest {
    private static void near(double expected, double value, double relative) {
        assertEquals(expected, value, relative * Math.abs(expected));
    }

    private static VoxelGrid rod(int cells, double lengthM) {
        return new BoxGrid(cells, 1, 1, lengthM / cells, 1, 1).build();
    }

    /** Value on the wall from the two cells next to it, zero slope there: parabola through the centres. */
    private static double atWall(double first, double second) {
        return first + (first - second) / 8;
    }

    // Sealed rod, unit mass at 0.25 (between two cells), cosine series = images; rows DF-01, DF-02.
    @Test
    void pointReleaseSpreadsAsTheCosineSeries() {
        int n = 100;
        VoxelGrid grid = rod(n, 1);
        FogStepper fog = Fields.tracer(grid);
        fog.release(24, 0.5);
        fog.release(25, 0.5);
        AirField field = Fields.still(grid, 0.01);
        // Windows of a tenth of the explicit limit: the far end holds a tail that shows the first order in time.
        for (int i = 0; i < 10_000; i++) {
            fog.advance(field, null, 5e-4);
        }
        near(1.845964, end(fog, 0, 1), 1e-3);
        near(0.999255, 0.5 * (fog.concentrationKgPerM3(49) + fog.concentrationKgPerM3(50)), 1e-3);
        near(0.152547, end(fog, n - 1, n - 2), 1e-3);
        for (int i = 0; i < 30_000; i++) {
            fog.advance(field, null, 5e-4);
        }
        near(1.196450, end(fog, 0, 1), 1e-3);
        near(0.803550, end(fog, n - 1, n - 2), 1e-3);
    }

    private static double end(FogStepper fog, int first, int second) {
        return atWall(fog.concentrationKgPerM3(first), fog.concentrationKgPerM3(second));
    }

    // Cube, source at the centre, product of the series; row DF-03. 20 cells along each edge: 8 cells share the
    // release.
    @Test
    void pointReleaseInACubeIsTheProductOfThree() {
        int n = 40;
        BoxGrid box = BoxGrid.cubes(n, n, n, 1.0 / n);
        VoxelGrid grid = box.build();
        FogStepper fog = Fields.tracer(grid);
        for (int c = 0; c < 8; c++) {
            fog.release(box.cell(19 + c % 2, 19 + c / 2 % 2, 19 + c / 4), 0.125);
        }
        fog.advance(Fields.still(grid, 0.01), null, 5);
        near(2.090116, fog.concentrationKgPerM3(box.cell(19, 19, 19)), 1e-2);
        near(0.377811, fog.concentrationKgPerM3(box.cell(0, 0, 0)), 1e-2);
    }

    // Slab with absorbing ends, Fourier series; rows DF-04, DF-05. The end cell loses 2 K/h, half a cell of resistance.
    @ParameterizedTest
    @CsvSource({"0.05, 0.772312, 0.495912", "0.1, 0.474487, 0.302118", "0.2, 0.176867, 0.112597"})
    void absorbingSlabEmptiesAsTheFourierSeries(double fourier, double middle, double mean) {
        int n = 101;
        double k = 0.01;
        VoxelGrid grid = rod(n, 1);
        WallSpeed absorbing = (s, b, u, up) -> grid.surfels().direction()[s] < 2 ? 2 * k * n : 0;
        FogStepper fog =
                new FogStepper(grid, Fields.one(1e-6), Fields.falling(0), absorbing, Fields.WEIGHTLESS, Fields.ONE);
        fog.addUniform(1);
        // Shorter windows than the explicit limit, so that the error in time is below the tolerance.
        double window = 0.1 / (k * n * n);
        int steps = (int) Math.round(fourier / k / window);
        for (int i = 0; i < steps; i++) {
            fog.advance(Fields.still(grid, k), null, fourier / k / steps);
        }
        near(middle, fog.concentrationKgPerM3(n / 2), 1e-3);
        near(mean, fog.airborneKg(), 1e-3);
    }

    // Ogata and Banks (1961), rows DF-06 to DF-08, by its complement: fog everywhere, clean air at the end x = 0, which
    // absorbs. The end is half a cell from the first centre; its exponential flux against the flow is the wall speed.
    @ParameterizedTest
    @CsvSource({"0.5, 5, 0.616163, 0.01", "1, 10, 0.585289, 0.01", "1, 5, 0.080067, 0.05"})
    void frontFollowsOgataAndBanks(double x, double t, double published, double tolerance) {
        int n = 300;
        double length = 3;
        double h = length / n;
        double v = 0.1;
        double d = 0.01;
        BoxGrid box = new BoxGrid(n, 1, 1, h, 1, 1);
        box.vent(n - 1, 0, 0, 1, 1);
        VoxelGrid grid = box.build();
        double[] flux = new double[grid.faces().count()];
        Arrays.fill(flux, v);
        AirField still = Fields.still(grid, d);
        double[] source = new double[n];
        source[0] = v;
        AirField field = new AirField(
                flux,
                new double[] {v},
                source,
                0,
                still.eddyDiffusivityM2PerS(),
                still.frictionSpeedMPerS(),
                still.openFraction(),
                0);
        double end = ExponentialFlux.againstDrift(v, 2 * d / h);
        WallSpeed absorbing = (s, b, u, up) -> grid.surfels().direction()[s] == 0 ? end : 0;
        FogStepper fog =
                new FogStepper(grid, Fields.one(1e-6), Fields.falling(0), absorbing, Fields.WEIGHTLESS, Fields.ONE);
        fog.addUniform(1);
        for (int i = 0; i < 1000; i++) {
            fog.advance(field, null, t / 1000);
        }
        int right = (int) Math.round(x / h);
        double c = 0.5 * (fog.concentrationKgPerM3(right - 1) + fog.concentrationKgPerM3(right));
        near(published, 1 - c, tolerance);
        assertEquals(0, Fields.closure(fog), 1e-12);
    }

    // FDS Verification Guide, random_walk: spread after 15 s with D 0.0834 m²/s; row DF-09.
    @Test
    void spreadGrowsAsTheSquareRootOfTime() {
        int n = 401;
        VoxelGrid grid = rod(n, 20.05);
        FogStepper fog = Fields.tracer(grid);
        fog.release(n / 2, 1);
        fog.advance(Fields.still(grid, 0.0834), null, 15);
        double second = 0;
        for (int c = 0; c < n; c++) {
            double x = (c - n / 2) * 0.05;
            second += fog.concentrationKgPerM3(c) * 0.05 * x * x;
        }
        near(1.58177, Math.sqrt(second), 1e-2);
        near(0.252212, fog.concentrationKgPerM3(n / 2), 1e-2);
    }

    // Crank (1975): two layers of different diffusivity in series pass the flux of their resistances added.
    @Test
    void layersInSeriesAddTheirResistances() {
        int n = 40;
        VoxelGrid grid = rod(n, 1);
        AirField field = Fields.still(grid, 0.01);
        Arrays.fill(field.eddyDiffusivityM2PerS(), n / 2, n, 0.04);
        WallSpeed absorbing = (s, b, u, up) -> grid.surfels().direction()[s] == 1 ? 2 * 0.04 * n : 0;
        FogStepper fog =
                new FogStepper(grid, Fields.one(1e-6), Fields.falling(0), absorbing, Fields.WEIGHTLESS, Fields.ONE);
        for (int i = 0; i < 20; i++) {
            fog.advance(field, Fields.fogSource(new int[] {0}, new double[] {1}), 25);
        }
        // From the centre of the first cell: 19.5 cells of 0.01 and 20 of 0.04.
        near((19.5 / 0.01 + 20 / 0.04) / n, fog.concentrationKgPerM3(0), 2e-2);
    }
}
