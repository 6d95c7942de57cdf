package baymist.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.CavitySpec;
import baymist.scene.SceneFixtures;
import baymist.scene.TargetSpec;
import baymist.scene.VoxelSpec;
import baymist.seam.QuadSheets;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Coverage of the seams of a box of 0.4 x 0.3 x 0.2 m: twelve edges, 4 (a + b + c) long. */
class SeamCoverageTest {
    private static final double A = 0.4;
    private static final double B = 0.3;
    private static final double C = 0.2;
    private static final double EDGES = 4 * (A + B + C);
    private static final TargetSpec TARGET = TargetSpec.DEFAULT;

    private static Cavity block(Vec3 turn) {
        CavitySpec.Block spec =
                new CavitySpec.Block("box", new Vec3(A, B, C), turn, Vec3.ZERO, 0.001, List.of(), SceneFixtures.HERE);
        return CavityBuilder.build(spec, List.of(), Map.of(), List.of());
    }

    private static VoxelGrid grid(Cavity cavity, VoxelSpec voxel) {
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(cavity, voxel, workers);
        }
    }

    private static SeamCoverage seams(Cavity cavity, VoxelGrid grid, double floorM, double wallsM) {
        double[] film = new double[grid.surfels().count()];
        for (int s = 0; s < film.length; s++) {
            String part = cavity.parts().get(grid.surfels().part()[s]).name();
            film[s] = part.equals("floor") ? floorM : part.equals("ceiling") ? 0 : wallsM;
        }
        return SeamMap.of(cavity, grid, TARGET.seamCreepM()).assess(film, TARGET);
    }

    @ParameterizedTest
    @CsvSource({"0.02,0,0,0", "0.013,0,0,0", "0.03,0,0,0", "0.02,20,-35,50", "0.012,45,0,0"})
    void lengthsAndSharesHoldAtAnyVoxelSizeAndAttitude(double voxel, double roll, double pitch, double yaw) {
        Cavity cavity = block(new Vec3(roll, pitch, yaw));
        VoxelGrid grid = grid(cavity, new VoxelSpec(voxel, voxel, voxel));
        SeamCoverage bare = seams(cavity, grid, 0, 0);
        assertEquals(EDGES, bare.lengthM(), 1e-9);
        assertEquals(EDGES, bare.lineM(), 1e-9);
        assertEquals(0, bare.unresolvedM(), 1e-9);
        assertEquals(12, bare.bySeam().size());
        assertEquals(12, bare.lines().size());
        assertEquals(A, bare.bySeam().get(0).bareM(), 1e-9);
        // the floor reaches its own rim, protects none of it; walls of 12 um protect it and the four uprights
        SeamCoverage floor = seams(cavity, grid, 20e-6, 0);
        assertEquals(2 * (A + B) / EDGES, floor.reached(), 1e-9);
        assertEquals(0, floor.protectedShare());
        SeamCoverage both = seams(cavity, grid, 20e-6, 12e-6);
        assertEquals(1, both.reached(), 1e-12);
        assertEquals((2 * (A + B) + 4 * C) / EDGES, both.protectedShare(), 1e-9);
    }

    @Test
    void eachSideOfAWebCountsByItsOwnFilm() {
        // a web at 0.2 whose one side is wet: its seam is reached on that side alone
        Cavity cavity =
                new QuadSheets().box(A, B, C).plate("web", 0, 0.21, 0, B, 0, C).build();
        for (double voxel : new double[] {0.02, 0.014}) {
            VoxelGrid grid = grid(cavity, new VoxelSpec(voxel, voxel, voxel));
            double[] film = new double[grid.surfels().count()];
            int web = cavity.partIndex("web");
            for (int s = 0; s < film.length; s++) {
                film[s] = grid.surfels().part()[s] == web && grid.surfels().normalX()[s] > 0 ? 20e-6 : 0;
            }
            SeamCoverage c = SeamMap.of(cavity, grid, TARGET.seamCreepM()).assess(film, TARGET);
            double perimeter = 2 * (B + C);
            assertEquals(EDGES + 2 * perimeter, c.lengthM(), 1e-9);
            assertEquals(perimeter / c.lengthM(), c.reached(), 1e-9);
            SeamCoverage.Share tees = SeamCoverage.find(c.byKind(), "T");
            assertTrue(tees != null && Math.abs(tees.reached() - 0.5) < 1e-9, "T " + tees);
        }
    }

    @Test
    void everyTableAddsUpToTheWholeAndCoverageFallsAsAThresholdRises() {
        Cavity cavity = new QuadSheets()
                .box(A, B, C)
                .plate("web", 0, 0.21, 0, B, 0.05, C)
                .plate("shelf", 2, 0.13, 0, 0.21, 0, B)
                .build();
        VoxelGrid grid = grid(cavity, new VoxelSpec(0.017, 0.017, 0.017));
        RandomGenerator random = RandomGenerator.of("L64X128MixRandom");
        double[] film = new double[grid.surfels().count()];
        for (int s = 0; s < film.length; s++) {
            film[s] = random.nextDouble() < 0.4 ? 0 : 30e-6 * random.nextDouble();
        }
        SeamMap map = SeamMap.of(cavity, grid, TARGET.seamCreepM());
        double before = 1;
        for (double haze : new double[] {0.1e-6, 1e-6, 3e-6, 8e-6, 20e-6}) {
            SeamCoverage c = map.assess(film, new TargetSpec(haze, 20e-6, 50e-6));
            assertTrue(c.reached() <= before && c.protectedShare() <= c.reached());
            before = c.reached();
            for (List<SeamCoverage.Share> table : List.of(c.byPart(), c.byBay(), c.byKind())) {
                assertEquals(
                        c.lengthM(),
                        table.stream().mapToDouble(SeamCoverage.Share::lengthM).sum(),
                        1e-9);
                assertEquals(
                        c.lengthM() * c.reached(),
                        table.stream()
                                .mapToDouble(r -> r.lengthM() * r.reached())
                                .sum(),
                        1e-9);
            }
            assertEquals(
                    c.lengthM(),
                    c.bySeam().stream().mapToDouble(SeamCoverage.Seam::lengthM).sum(),
                    1e-9);
            assertEquals(
                    c.lineM(),
                    c.lines().stream().mapToDouble(SeamCoverage.Line::lengthM).sum(),
                    1e-9);
            double bare =
                    c.bySeam().stream().mapToDouble(SeamCoverage.Seam::bareM).sum();
            double[] bySurfel = map.bareBySurfel(film, haze);
            assertEquals(bare, java.util.Arrays.stream(bySurfel).sum(), 1e-9);
            for (int s = 0; s < film.length; s++) {
                assertTrue(bySurfel[s] == 0 || film[s] < haze, "bare seam beside film");
            }
        }
    }

    @Test
    void filmBesideASeamIsThatWithinTheCreepDistance() {
        Cavity cavity = block(Vec3.ZERO);
        SeamCoverage s = seams(cavity, grid(cavity, new VoxelSpec(0.02, 0.025, 0.0125)), 10e-6, 0);
        // the floor's film above haze on a strip of the creep distance; walls have none
        assertEquals(9e-6 * TARGET.seamCreepM(), s.filmNearM2(), 1e-15);
    }
}
