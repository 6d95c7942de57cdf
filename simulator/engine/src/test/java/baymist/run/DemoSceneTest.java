package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.coverage.Fractions;
import baymist.ledger.MassLedger;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo scenes, made coarse, tell the stories that they are there to tell. */
class DemoSceneTest {
    private static Scene coarseElevator(String name) {
        return TestScenes.read(name)
                .withVoxel(new VoxelSpec(0.015, 0.02, 0.007))
                .withHangS(20)
                .withNumerics(6, 64);
    }

    @Test
    void turningThePinForwardReachesMuchMoreOfAControlSurface() {
        // Common practice, no source: one pass along the trailing edge treats the whole surface when the jets face
        // forward.
        RunResult forward = TestScenes.run(coarseElevator("control-surface-pin-forward.yaml"), 2);
        RunResult aft = TestScenes.run(coarseElevator("control-surface-pin-aft.yaml"), 2);
        double gain =
                forward.coverage().total().reached() - aft.coverage().total().reached();
        assertTrue(gain >= 0.20, "pin forward gains " + gain);
        assertTrue(Math.abs(forward.ledger().closure()) <= 1e-9
                && Math.abs(aft.ledger().closure()) <= 1e-9);
    }

    @Test
    void everyBarePlaceOfTheElevatorIsNamedByAPartOfIt() {
        RunResult r = TestScenes.run(coarseElevator("control-surface-pin-aft.yaml"), 2);
        assertFalse(r.coverage().unreached().isEmpty());
        r.coverage().unreached().forEach(u -> {
            assertFalse(u.where().isBlank());
            assertTrue(u.parts().stream()
                    .allMatch(p -> r.cavity().parts().stream()
                            .anyMatch(part -> part.name().equals(p))));
        });
        double bare =
                r.coverage().unreached().stream().mapToDouble(u -> u.areaM2()).sum();
        Fractions all = r.coverage().total();
        assertEquals(all.areaM2() * (1 - all.reached()), bare, 1e-9 * all.areaM2());
    }

    @Test
    void theWingBoxIsTreatedThroughItsLighteningHoles() {
        Scene scene = TestScenes.read("wing-box.yaml")
                .withVoxel(new VoxelSpec(0.03, 0.04, 0.02))
                .withHangS(5)
                .withNumerics(5, 48);
        RunResult r = TestScenes.run(scene, 2);
        assertEquals(4, r.grid().bays().size());
        assertTrue(Math.abs(r.ledger().closure()) <= 1e-9);
        double audited = r.ledger().audited();
        assertTrue(audited > 0 && audited <= MassLedger.MOST_AUDITED, "audits put right " + audited);
        assertEquals(3, r.insertions().size());
        r.insertions().forEach(i -> assertTrue(i.feasible() && i.maxDepthM() > 1.5, i.toString()));
        r.coverage().byBay().forEach(b -> assertTrue(b.reached() > 0.2, b.toString()));
    }

    @Test
    void theOpenMeshRunsThrough() {
        assumeTrue(Files.isDirectory(TestScenes.root().resolve("../shared/data")), "the open meshes are not here");
        Scene scene = TestScenes.read("open-wing-box-mesh.yaml")
                .withVoxel(new VoxelSpec(0.05, 0.03, 0.05))
                .withHangS(5)
                .withNumerics(5, 48);
        RunResult r = TestScenes.run(scene, 2);
        assertTrue(Math.abs(r.ledger().closure()) <= 1e-9);
        assertTrue(r.coverage().total().reached() > 0.1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"control-surface-pin-forward.yaml", "control-surface-pin-aft.yaml", "wing-box.yaml"})
    void everyDemoSceneIsSoundBeforeSpraying(String name) {
        CheckResult check = Simulation.check(TestScenes.read(name), new RunOptions(2), RunObserver.NONE);
        assertTrue(check.grid().leaks().isEmpty(), check.grid().leaks().toString());
        assertTrue(check.grid().unresolvedAreaM2() < 0.02);
        check.insertions().forEach(i -> assertTrue(i.feasible()));
    }
}
