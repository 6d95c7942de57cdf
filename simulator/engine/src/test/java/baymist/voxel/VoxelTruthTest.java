package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.VoxelSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Area and volume of six shapes at 20 cells across, at ten random offsets of the lattice each, against closed forms. */
class VoxelTruthTest {
    private static final int OFFSETS = 10;

    /** A body, the size that 20 cells span, and its volume by a closed form or quadrature. */
    private record Body(VoxelFixtures sheets, double acrossM, double volumeM3, double facets) {}

    enum Shape {
        SPHERE,
        CYLINDER,
        TILTED_BOX,
        CORRUGATED,
        NACA_0012,
        NACA_2412;

        Body body(Random random) {
            return switch (this) {
                case SPHERE -> sphere(random, 160);
                case CYLINDER -> cylinder(random);
                case TILTED_BOX -> tiltedBox(random);
                case CORRUGATED -> corrugated();
                case NACA_0012 -> wing(0, 0.4, 0.12);
                case NACA_2412 -> wing(0.02, 0.4, 0.12);
            };
        }
    }

    /** Archimedes, On the Sphere and Cylinder: 4/3 pi r³. */
    private static Body sphere(Random random, int around) {
        Vec3 centre = new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble());
        return new Body(VoxelFixtures.sphere(0.1, centre, around), 0.2, 4.0 / 3 * Math.PI * 1e-3, 1.5e-3);
    }

    /** pi r² L; the polygon of 180 sides falls short by 0.02 %. */
    private static Body cylinder(Random random) {
        double angle = Math.PI * random.nextDouble();
        VoxelFixtures f = VoxelFixtures.prismSheets(
                VoxelFixtures.circleSection(0.1, 180), 0.3, p -> VoxelizerLawTest.turned(p, angle, Vec3.ZERO));
        return new Body(f, 0.2, Math.PI * 0.01 * 0.3, 3e-4);
    }

    private static Body tiltedBox(Random random) {
        double angle = Math.PI * random.nextDouble();
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, new Vec3(0.3, 0.2, 0.25), true, p -> VoxelizerLawTest.turned(p, angle, Vec3.ZERO));
        return new Body(f, 0.2, 0.3 * 0.2 * 0.25, 1e-12);
    }

    /** A box whose roof is a sine of 15 mm about 100 mm over five whole waves: volume length x width x 100 mm exactly. */
    private static Body corrugated() {
        List<double[]> roof = new ArrayList<>();
        List<double[]> floor = new ArrayList<>();
        int n = 200;
        for (int i = 0; i <= n; i++) {
            double x = 0.4 * i / n;
            roof.add(new double[] {x, 0.1 + 0.015 * Math.sin(10 * Math.PI * i / n)});
            floor.add(new double[] {x, 0});
        }
        return new Body(VoxelFixtures.stripPrism(roof, floor, 0.25), 0.1, 0.4 * 0.25 * 0.1, 1e-9);
    }

    /** Half thickness over chord, Jacobs, Ward and Pinkerton (1933), NACA Report 460, for a thickness ratio t. */
    private static double halfThickness(double t, double x) {
        return 5
                * t
                * (0.2969 * Math.sqrt(x) - 0.126 * x - 0.3516 * x * x + 0.2843 * x * x * x - 0.1015 * x * x * x * x);
    }

    private static double camber(double m, double p, double x) {
        return x < p ? m / (p * p) * (2 * p * x - x * x) : m / ((1 - p) * (1 - p)) * (1 - 2 * p + 2 * p * x - x * x);
    }

    private static double slope(double m, double p, double x) {
        return x < p ? 2 * m / (p * p) * (p - x) : 2 * m / ((1 - p) * (1 - p)) * (p - x);
    }

    /**
     * NACA Report 460: thickness is laid off square to the camber line, so the section's area is the integral of 2 y_t along
     * the camber line (what bends away on one side bends in on the other); quadrature by Simpson's rule in the square root
     * of x, either side of the camber's crest.
     */
    private static double sectionArea(double m, double p, double t) {
        DoubleUnaryOperator f =
                u -> 2 * halfThickness(t, u * u) * Math.sqrt(1 + slope(m, p, u * u) * slope(m, p, u * u)) * 2 * u;
        return simpson(f, 0, Math.sqrt(p)) + simpson(f, Math.sqrt(p), 1);
    }

    private static double simpson(DoubleUnaryOperator f, double a, double b) {
        int n = 2000;
        double h = (b - a) / n;
        double sum = f.applyAsDouble(a) + f.applyAsDouble(b);
        for (int i = 1; i < n; i++) {
            sum += (i % 2 == 0 ? 2 : 4) * f.applyAsDouble(a + i * h);
        }
        return sum * h / 3;
    }

    private static Body wing(double m, double p, double t) {
        double chord = 0.6;
        double span = 0.25;
        int n = 150;
        List<double[]> upper = new ArrayList<>();
        List<double[]> lower = new ArrayList<>();
        for (int i = 0; i <= n; i++) {
            double x = 0.5 * (1 - Math.cos(Math.PI * i / n));
            double y = halfThickness(t, x);
            double sin = Math.sin(Math.atan(slope(m, p, x)));
            double cos = Math.cos(Math.atan(slope(m, p, x)));
            double c = camber(m, p, x);
            upper.add(new double[] {chord * (x - y * sin), chord * (c + y * cos)});
            lower.add(new double[] {chord * (x + y * sin), chord * (c - y * cos)});
        }
        double volume = span * chord * chord * sectionArea(m, p, t);
        return new Body(VoxelFixtures.stripPrism(upper, lower, span), t * chord, volume, 5e-4);
    }

    /** Two chips off the body move the lattice by a random part of a voxel along every axis; no interior surface. */
    private static Cavity shifted(Body body, Random random) {
        VoxelFixtures f = body.sheets;
        var box = f.cavity("bare").sheets().bounds();
        int part = f.part("chips");
        Vec3 low = box.min().minus(new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble()).times(0.03));
        Vec3 high = box.max().plus(new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble()).times(0.03));
        f.triangle(part, low, low.plus(1e-4, Vec3.X), low.plus(1e-4, Vec3.Y));
        f.triangle(part, high, high.minus(new Vec3(1e-4, 0, 0)), high.minus(new Vec3(0, 1e-4, 0)));
        return f.cavity("shifted");
    }

    @ParameterizedTest
    @EnumSource(Shape.class)
    void areaIsExactAndVolumeWithinHalfAPercentAtTwentyCellsAcross(Shape shape) {
        double raw = 0;
        for (int seed = 0; seed < OFFSETS; seed++) {
            Random random = new Random(100 + seed);
            Body body = shape.body(random);
            double facets = VoxelFixtures.area(body.sheets.cavity("bare").sheets());
            Cavity cavity = shifted(body, random);
            double h = body.acrossM / 20;
            VoxelGrid grid = VoxelizerLawTest.voxels(cavity, h);
            double found = VoxelizerLawTest.surfelArea(grid, false) + grid.unresolvedAreaM2();
            assertEquals(facets, found, 1e-9 * facets, shape + " seed " + seed);
            assertEquals(body.volumeM3, grid.totalVolumeM3(), 5e-3 * body.volumeM3, shape + " seed " + seed);
            raw += Math.abs(VoxelizerLawTest.rawVolume(cavity, h) / body.volumeM3 - 1) / OFFSETS;
        }
        // before the cells are matched to the surface: the mean error of volumes from distances alone
        assertTrue(raw < 5e-3, shape + ": mean error of the raw volume " + raw);
    }

    @ParameterizedTest
    @EnumSource(Shape.class)
    void errorsFallWithRefinement(Shape shape) {
        double[] error = new double[3];
        int offsets = shape.ordinal() > 2 ? 4 : 2;
        for (int level = 0; level < 3; level++) {
            for (int seed = 0; seed < offsets; seed++) {
                Random random = new Random(500 + seed);
                Body body = shape == Shape.SPHERE ? sphere(random, 96) : shape.body(random);
                double exact =
                        Math.abs(VoxelFixtures.volume(body.sheets.cavity("bare").sheets()));
                Cavity cavity = shifted(body, random);
                double h = body.acrossM / (20 << level);
                // long voxels along y, where nothing changes, keep this quick
                boolean prism = shape.ordinal() > 2;
                VoxelSpec spec = new VoxelSpec(prism ? 2 * h : h, prism ? 8 * h : h, h);
                error[level] += Math.pow(VoxelizerLawTest.rawVolume(cavity, spec) / exact - 1, 2) / offsets;
            }
        }
        String told = shape + ": mean square error " + error[0] + ", " + error[1] + ", " + error[2];
        assertTrue(error[2] < error[0] / 4 && error[2] < error[1], told);
    }

    @Test
    void unresolvedAreaOfASharpEdgeFallsWithThePitch() {
        // two skins that close up to nothing: what no voxel faces is the stretch on which they stand closer than a
        // pitch
        List<double[]> upper = List.of(new double[] {0, 0.03}, new double[] {0.3, 1e-9});
        List<double[]> lower = List.of(new double[] {0, -0.03}, new double[] {0.3, -1e-9});
        double[] hidden = new double[3];
        for (int level = 0; level < 3; level++) {
            for (int seed = 0; seed < 2; seed++) {
                Body body = new Body(VoxelFixtures.stripPrism(upper, lower, 0.2), 0.06, 0, 0);
                double facets = VoxelFixtures.area(body.sheets.cavity("bare").sheets());
                Cavity cavity = shifted(body, new Random(900 + seed));
                double h = 0.06 / (20 << level);
                VoxelGrid grid = VoxelizerLawTest.voxels(cavity, new VoxelSpec(h, 8 * h, h));
                hidden[level] += grid.unresolvedAreaM2() / 2;
                double found = VoxelizerLawTest.surfelArea(grid, false) + grid.unresolvedAreaM2();
                assertEquals(facets, found, 1e-9 * facets);
            }
        }
        assertTrue(hidden[0] > 0 && hidden[1] < hidden[0] && hidden[2] < hidden[1], java.util.Arrays.toString(hidden));
    }

    @Test
    void publishedSectionAreaOf0012() {
        // Abbott and von Doenhoff (1959), Theory of Wing Sections: the thickness polynomial integrates to 0.0822 c²
        assertEquals(0.0822, sectionArea(0, 0.4, 0.12), 1e-4);
    }
}
