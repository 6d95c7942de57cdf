package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.coverage.Fractions;
import baymist.ledger.MassLedger;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import org.junit.jupiter.api.Test;

/** The tail-cone scene, made coarse. */
class TailConeSceneTest {
    @Test
    void fogFromAboveTheFloorHardlyGetsBelowIt() {
        Scene scene = TestScenes.read("tail-cone.yaml")
                .withVoxel(new VoxelSpec(0.065, 0.05, 0.05))
                .withHangS(5)
                .withNumerics(5, 48);
        RunResult r = TestScenes.run(scene, 2);
        assertEquals(7, r.grid().bays().size());
        assertTrue(r.grid().leaks().isEmpty());
        assertTrue(Math.abs(r.ledger().closure()) <= 1e-9);
        double audited = r.ledger().audited();
        assertTrue(audited > 0 && audited <= MassLedger.MOST_AUDITED, "audits put right " + audited);
        assertTrue(r.insertions().get(0).feasible() && r.insertions().get(0).maxDepthM() > 2.3);
        double above = 0;
        double below = 0;
        for (int b = 0; b < r.grid().bays().size(); b++) {
            Fractions f = r.coverage().byBay().get(b);
            double centre = r.grid().bays().get(b).bounds().centre().z();
            boolean under = centre < -0.22;
            below += under ? f.reached() * f.areaM2() : 0;
            above += under ? 0 : f.reached() * f.areaM2();
        }
        assertTrue(above > 1, "above the floor " + above);
        assertTrue(below < 0.1 * above, "below the floor " + below);
    }
}
