package baymist.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.scene.InitialFog;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class VoxelStudyTest {
    private static SceneFixtures settled() {
        return SceneFixtures.minimal()
                .withVoxel(0.05, 0.05, 0.05)
                .withPasses()
                .withHangS(600)
                .withFog(new InitialFog(0.1, null, 0))
                .withAir(new AirSpec(AirSpec.Mode.STILL, 0, 0, 10_000));
    }

    private static RunResult study(Scene scene, double ratio) {
        return VoxelStudy.run(scene, ratio, new RunOptions(2), RunObserver.NONE);
    }

    @Test
    void whatDoesNotDependOnVoxelsIsConverged() {
        // Fog that settles in a block lies on the floor alone: the floor's share of the walls at any voxel size.
        RunResult r = study(settled().build(), 1.5);
        CoverageConvergence c = r.convergence();
        assertNotNull(c);
        assertTrue(c.converged(), c.verdict());
        assertEquals(0, c.reached().spread(), 1e-9);
        assertEquals(0.2 / (0.76 - Math.PI * 1e-4), c.grids().get(0).reached(), 1e-9);
        assertTrue(c.verdict().startsWith("converged: "), c.verdict());
        assertTrue(r.findings().stream().noneMatch(f -> f.id().equals("CNV-001")));
    }

    @Test
    void theResultIsThatOfTheStatedVoxels() {
        Scene scene = settled().build();
        RunResult alone = TestScenes.run(scene, 1);
        RunResult studied = study(scene, 1.3);
        assertNull(alone.convergence());
        assertEquals(alone.record().stateHash(), studied.record().stateHash());
        assertArrayEquals(alone.filmM(), studied.filmM());
        CoverageConvergence c = studied.convergence();
        assertNotNull(c);
        assertEquals(alone.grid().cellCount(), c.grids().get(1).cells());
        assertTrue(c.grids().get(0).cells() > c.grids().get(1).cells()
                && c.grids().get(1).cells() > c.grids().get(2).cells());
    }

    @Test
    void coverageThatDependsOnTheVoxelsSaysSo() {
        // A drop of fog in still air settles on the floor below its own cell: the wetted share is a cell's face over
        // the walls.
        Scene scene = settled()
                .withCavity(SceneFixtures.block(new Vec3(0.4, 0.4, 0.4)))
                .withCuts()
                .withEntries()
                .withVoxel(0.2, 0.2, 0.2)
                .withFog(new InitialFog(0, new Vec3(0.11, 0.11, 0.2), 1e-2))
                .build();
        RunResult r = study(scene, 2);
        CoverageConvergence c = r.convergence();
        assertNotNull(c);
        assertFalse(c.converged(), c.verdict());
        assertTrue(c.verdict().startsWith("not converged: "), c.verdict());
        assertEquals(
                c.verdict(),
                r.findings().stream()
                        .filter(f -> f.id().equals("CNV-001"))
                        .findFirst()
                        .orElseThrow()
                        .text()
                        .split("; use")[0]);
    }

    @Test
    void progressOfTheStudyNeverFallsAndEndsAtOne() {
        List<Double> seen = new ArrayList<>(List.of(0.0));
        List<String> stages = new ArrayList<>();
        VoxelStudy.run(settled().withHangS(20).build(), 1.3, new RunOptions(1), new RunObserver() {
            @Override
            public void stage(String name) {
                stages.add(name);
            }

            @Override
            public void progress(double done, double jobTimeS) {
                assertTrue(done >= seen.get(seen.size() - 1));
                seen.add(done);
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        });
        assertEquals(1, seen.get(seen.size() - 1), 1e-9);
        assertTrue(stages.contains("finer voxels: voxels"), stages.toString());
    }

    @Test
    void aRatioThatTellsNothingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> study(settled().build(), 1.01));
        assertThrows(IllegalArgumentException.class, () -> study(settled().build(), Double.NaN));
    }
}
