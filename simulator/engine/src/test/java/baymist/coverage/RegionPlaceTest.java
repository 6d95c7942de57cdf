package baymist.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.TargetSpec;
import baymist.scene.VoxelSpec;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Places that stay bare on the floor of a box of 0.6 x 0.4 x 0.1 m, at several voxel sizes. */
class RegionPlaceTest {
    private static final Cavity BOX =
            CavityBuilder.build(SceneFixtures.block(new Vec3(0.6, 0.4, 0.1)), List.of(), Map.of(), List.of());

    private static VoxelGrid grid(Cavity cavity, double voxel) {
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(cavity, new VoxelSpec(voxel, voxel, voxel), workers);
        }
    }

    private static Vec3 centre(VoxelGrid grid, int s) {
        return new Vec3(
                grid.surfels().centreX()[s],
                grid.surfels().centreY()[s],
                grid.surfels().centreZ()[s]);
    }

    /** Regions when the floor is bare where the predicate holds, and everything else is wet. */
    private static List<UnreachedRegion> bareFloor(VoxelGrid grid, TargetSpec target, Predicate<Vec3> bare) {
        double[] film = new double[grid.surfels().count()];
        for (int s = 0; s < film.length; s++) {
            film[s] = grid.surfels().normalZ()[s] > 0.9 && bare.test(centre(grid, s)) ? 0 : 20e-6;
        }
        return CoverageAssessor.assess(BOX, grid, film, target).unreached();
    }

    private static boolean inside(Vec3 p, double x0, double x1, double y0, double y1) {
        return p.x() > x0 && p.x() < x1 && p.y() > y0 && p.y() < y1;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.0125, 0.01, 0.005})
    void aPlaceKeepsItsNameAtEveryVoxelSizeAndWhateverElseIsBare(double voxel) {
        VoxelGrid grid = grid(BOX, voxel);
        Predicate<Vec3> aft = p -> inside(p, 0.42, 0.56, 0.04, 0.12);
        Predicate<Vec3> middle = p -> inside(p, 0.26, 0.34, 0.16, 0.24);
        List<UnreachedRegion> one = bareFloor(grid, TargetSpec.DEFAULT, aft);
        List<UnreachedRegion> two = bareFloor(grid, TargetSpec.DEFAULT, aft.or(middle));
        assertEquals(1, one.size());
        assertEquals(2, two.size());
        // aft third, left third: third letter of the first row; the middle is e
        String floor = "1." + (BOX.partIndex("floor") + 1);
        assertEquals(floor + "c", one.get(0).label());
        assertEquals(floor + "c", two.get(0).label());
        assertEquals(floor + "e", two.get(1).label());
        assertEquals(0.14 * 0.08, one.get(0).areaM2(), 0.35 * voxel * 0.44);
        assertEquals(0.42, one.get(0).extentM().min().x(), voxel);
        assertEquals(0.12, one.get(0).extentM().max().y(), voxel);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.005})
    void narrowFilmPartsNothingAndANarrowNeckJoinsNothing(double voxel) {
        VoxelGrid grid = grid(BOX, voxel);
        TargetSpec wide = new TargetSpec(1e-6, 10e-6, 50e-6, 5e-3, 0.035, 0.02);
        Predicate<Vec3> left = p -> inside(p, 0.1, 0.25, 0.1, 0.3);
        // a strip of film 20 mm wide between two bare fields
        Predicate<Vec3> right = p -> inside(p, 0.27, 0.45, 0.1, 0.3);
        assertEquals(1, bareFloor(grid, wide, left.or(right)).size());
        assertEquals(2, bareFloor(grid, TargetSpec.DEFAULT, left.or(right)).size());
        // fields 60 mm apart joined by a neck of bare sheet 20 mm wide
        Predicate<Vec3> far = p -> inside(p, 0.31, 0.45, 0.1, 0.3);
        Predicate<Vec3> neck = p -> inside(p, 0.1, 0.45, 0.19, 0.21);
        List<UnreachedRegion> split = bareFloor(grid, wide, left.or(far).or(neck));
        assertEquals(2, split.size());
        List<UnreachedRegion> joined =
                bareFloor(grid, TargetSpec.DEFAULT, left.or(far).or(neck));
        assertEquals(1, joined.size());
        assertEquals(
                joined.get(0).areaM2(),
                split.stream().mapToDouble(UnreachedRegion::areaM2).sum(),
                1e-12);
        // a film of a single field is cut by neither
        assertEquals(1, bareFloor(grid, wide, left).size());
    }

    @Test
    void regionsAndReachedAreaAreTheWholeForAnyFilmAndAnyRule() {
        VoxelGrid grid = grid(BOX, 0.02);
        RandomGenerator random = RandomGenerator.of("L64X128MixRandom");
        SeamMap seams = SeamMap.of(BOX, grid, 5e-3);
        for (double bridge : new double[] {0, 0.01, 0.03, 0.08}) {
            double[] film = new double[grid.surfels().count()];
            for (int s = 0; s < film.length; s++) {
                film[s] = random.nextDouble() < 0.6 ? 0 : 20e-6;
            }
            TargetSpec target = new TargetSpec(1e-6, 10e-6, 50e-6, 5e-3, bridge, 0.04);
            Coverage c = CoverageAssessor.assess(BOX, grid, film, target, seams);
            double regions =
                    c.unreached().stream().mapToDouble(UnreachedRegion::areaM2).sum();
            assertEquals(
                    c.total().areaM2(),
                    regions + c.total().reached() * c.total().areaM2(),
                    1e-12);
            int[] all = c.unreached().stream()
                    .flatMapToInt(r -> Arrays.stream(r.surfels()))
                    .sorted()
                    .toArray();
            assertEquals(all.length, Arrays.stream(all).distinct().count());
            double bareSeam =
                    c.unreached().stream().mapToDouble(UnreachedRegion::seamM).sum();
            assertEquals(c.seams().lengthM() * (1 - c.seams().reached()), bareSeam, 1e-9);
            long names = c.unreached().stream()
                    .map(UnreachedRegion::label)
                    .distinct()
                    .count();
            assertEquals(c.unreached().size(), names);
        }
    }

    @Test
    void wordsOfStructureDoNotFollowGravity() {
        // the same film in a structure that lies level, on its side and on its back
        for (Vec3 down : List.of(new Vec3(0, 0, -1), new Vec3(0, 1, 0), new Vec3(0, 0, 1), new Vec3(-0.6, 0, -0.8))) {
            Scene scene = SceneFixtures.minimal()
                    .withGravity(down, 9.80665)
                    .withVoxel(0.02, 0.02, 0.02)
                    .build();
            Cavity cavity = CavityBuilder.build(scene);
            VoxelGrid grid = grid(cavity, 0.02);
            double[] film = new double[grid.surfels().count()];
            Arrays.fill(film, 20e-6);
            for (int s = 0; s < film.length; s++) {
                boolean ceiling = grid.surfels().normalZ()[s] < -0.9;
                film[s] =
                        ceiling && centre(grid, s).x() > 0.8 && centre(grid, s).y() > 0.12 ? 0 : film[s];
            }
            UnreachedRegion r = CoverageAssessor.assess(scene, cavity, grid, film)
                    .unreached()
                    .get(0);
            assertTrue(r.where().startsWith("ceiling"), r.where());
            assertTrue(
                    r.where().contains("aft right corner")
                            || r.where().contains("right corner at the aft wall")
                            || r.where().contains("aft corner"),
                    r.where());
        }
    }

    @Test
    void theMirroredPlaceHasTheMirroredWords() {
        VoxelGrid grid = grid(BOX, 0.02);
        String left = bareFloor(grid, TargetSpec.DEFAULT, p -> inside(p, 0.1, 0.5, 0, 0.1))
                .get(0)
                .where();
        String right = bareFloor(grid, TargetSpec.DEFAULT, p -> inside(p, 0.1, 0.5, 0.3, 0.4))
                .get(0)
                .where();
        String fore = bareFloor(grid, TargetSpec.DEFAULT, p -> inside(p, 0, 0.1, 0.1, 0.3))
                .get(0)
                .where();
        String aft = bareFloor(grid, TargetSpec.DEFAULT, p -> inside(p, 0.5, 0.6, 0.1, 0.3))
                .get(0)
                .where();
        assertTrue(left.contains("left") && !left.contains("right"), left);
        assertEquals(left.replace("left", "right"), right);
        assertTrue(fore.contains("forward") && !fore.contains("aft wall"), fore);
        assertEquals(fore.replace("forward", "aft"), aft);
    }

    /** A bare half of a wall of the box of the fixtures, lying as gravity says. */
    private static String half(Vec3 down, Vec3 normal, Predicate<Vec3> bare) {
        Scene scene = SceneFixtures.minimal()
                .withGravity(down, 9.80665)
                .withVoxel(0.02, 0.02, 0.0125)
                .build();
        Cavity cavity = CavityBuilder.build(scene);
        VoxelGrid grid = grid(cavity, 0.0125);
        double[] film = new double[grid.surfels().count()];
        for (int s = 0; s < film.length; s++) {
            Vec3 n = new Vec3(
                    grid.surfels().normalX()[s],
                    grid.surfels().normalY()[s],
                    grid.surfels().normalZ()[s]);
            film[s] = n.dot(normal) > 0.9 && bare.test(centre(grid, s)) ? 0 : 20e-6;
        }
        return CoverageAssessor.assess(scene, cavity, grid, film)
                .unreached()
                .get(0)
                .where();
    }

    /** Names stick to the structure (x aft, y right, z up), whichever way it lies; the mirror image has the opposite word. */
    @Test
    void upperAndLowerForeAndAftLeftAndRightHoldInAnyAttitude() {
        Vec3 fromRight = new Vec3(0, -1, 0);
        Vec3 fromLeft = new Vec3(0, 1, 0);
        Vec3 fromAft = new Vec3(-1, 0, 0);
        for (Vec3 down : List.of(
                new Vec3(0, 0, -1),
                new Vec3(0, 0, 1),
                new Vec3(0, 1, 0),
                new Vec3(0, -1, 0),
                new Vec3(1, 0, 0),
                new Vec3(-0.48, 0.6, -0.64))) {
            String upper = half(down, fromRight, p -> p.z() > 0.1);
            String lower = half(down, fromRight, p -> p.z() < 0.05);
            assertTrue(upper.startsWith("right wall") && upper.contains("ceiling"), upper);
            assertTrue(lower.startsWith("right wall") && lower.contains("floor"), lower);
            assertEquals(upper, half(down, fromLeft, p -> p.z() > 0.1).replace("left wall", "right wall"));
            String fore = half(down, fromRight, p -> p.x() < 0.3);
            String aft = half(down, fromRight, p -> p.x() > 0.7);
            assertTrue(fore.contains("forward") && aft.contains("aft"), fore + " / " + aft);
            assertEquals(aft, fore.replace("forward", "aft"));
            String left = half(down, fromAft, p -> p.y() < 0.08);
            String right = half(down, fromAft, p -> p.y() > 0.12);
            assertTrue(left.startsWith("aft wall") && left.contains("left") && !left.contains("right"), left);
            assertEquals(right, left.replace("left", "right"));
        }
    }

    @Test
    void depthIsTheWayThroughTheAir() {
        // a box of 1 x 0.2 x 0.15 m, entry in the middle of the aft wall
        Vec3 entry = new Vec3(1, 0.1, 0.075);
        Scene open = SceneFixtures.minimal()
                .withCuts(SceneFixtures.round("hole", "aft wall", 0.02, entry))
                .build();
        assertEquals(Math.sqrt(1 + 0.09 * 0.09 + 0.065 * 0.065), depth(open, new Vec3(0, 0.19, 0.14)), 0.03);
        assertEquals(0.075, depth(open, new Vec3(0.99, 0.1, 0)), 0.02);
    }

    /** Depth of a bare spot round a point on the walls. */
    private static double depth(Scene scene, Vec3 at) {
        Cavity cavity = CavityBuilder.build(scene);
        VoxelGrid grid = grid(cavity, 0.0125);
        double[] film = new double[grid.surfels().count()];
        for (int s = 0; s < film.length; s++) {
            film[s] = centre(grid, s).distance(at) < 0.02 ? 0 : 20e-6;
        }
        UnreachedRegion r =
                CoverageAssessor.assess(scene, cavity, grid, film).unreached().get(0);
        assertEquals("aft", r.entry());
        return r.depthM();
    }
}
