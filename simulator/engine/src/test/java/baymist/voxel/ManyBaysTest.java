package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.cavity.Cavity;
import baymist.cavity.CavityFixtures;
import baymist.geom.Outline;
import baymist.scene.CavitySpec;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.RibHole;
import baymist.scene.PhaseStates;
import baymist.scene.VoxelSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Bays of long structures: each is a small share of the whole, and still a bay. */
class ManyBaysTest {
    private static final double LONG_M = 40;

    /** A box of 0.4 x 0.2 m with a rib every metre, each with a hole, and one rib more. */
    private static Cavity box(double moreM) {
        RibHole hole = new RibHole(null, new Outline.Circle(0.03), 0.2, 0, PhaseStates.ALWAYS_OPEN);
        List<Rib> ribs = new ArrayList<>();
        for (int m = 0; m <= LONG_M; m++) {
            ribs.add(new Rib(m, 0, m > 0 && m < LONG_M ? List.of(hole) : List.of()));
        }
        ribs.add(new Rib(moreM, 0, List.of(hole)));
        ribs.sort(Comparator.comparingDouble(Rib::yM));
        return CavityFixtures.build(new CavitySpec.ControlSurface(
                "long box", LONG_M, 0.4, 0.4, 0.2, 0.2, 0.2, 0.001, ribs, List.of(), CavityFixtures.PLACE));
    }

    @Test
    void shortBayOfLongStructureStaysABay() {
        // one bay between every two ribs that follow one another; the short one holds 0.15 % of all air, 6 % of a
        // common bay
        VoxelGrid grid = VoxelizerLawTest.voxels(box(20.06), new VoxelSpec(0.05, 0.02, 0.05));
        assertEquals(41, grid.bays().size());
        assertEquals(0.4 * 0.2 * 0.06, grid.bays().get(20).volumeM3(), 1e-9);
    }

    @Test
    void pocketOfLongStructureJoinsItsNeighbour() {
        // 20 mm behind a rib are 2 % of a common bay: a pocket
        VoxelGrid grid = VoxelizerLawTest.voxels(box(20.02), new VoxelSpec(0.05, 0.02, 0.05));
        assertEquals(40, grid.bays().size());
    }
}
