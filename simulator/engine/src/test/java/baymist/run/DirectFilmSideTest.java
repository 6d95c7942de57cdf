package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.VoxelSpec;
import org.junit.jupiter.api.Test;

/** Spray gets nowhere that nothing leads to. */
class DirectFilmSideTest {
    @Test
    void jetsLeaveNothingBehindBlankBaffles() {
        // Continuity: the two baffles of this longeron have no hole, so what is sprayed between them stays there.
        RunResult r = TestScenes.run(
                TestScenes.read("blind-bay-hook.yaml")
                        .withVoxel(new VoxelSpec(0.019, 0.012, 0.014))
                        .withHangS(1)
                        .withNumerics(3, 128),
                2);
        double[] byBay = new double[r.grid().bays().size()];
        for (int s = 0; s < r.directKg().length; s++) {
            byBay[r.grid().bayOfCell(r.grid().surfels().cell()[s])] += r.directKg()[s];
        }
        int sprayed = 0;
        for (double kg : byBay) {
            sprayed += kg > 0 ? 1 : 0;
        }
        assertTrue(byBay.length >= 3, "a bay on either side of the sprayed one");
        assertEquals(1, sprayed, java.util.Arrays.toString(byBay));
    }
}
