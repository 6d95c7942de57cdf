package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class OpeningUseTest {
    @Test
    void ribHoleJoinsTwoBaysAndTheDrainOneWithOutside() {
        Cavity cavity = VoxelFixtures.ribbedBox(0.5, 0.34, 0.143, 0.25, 0.05, 0.0016);
        List<OpeningUse> uses = OpeningUse.of(cavity, VoxelizerLawTest.voxels(cavity, 0.01));
        assertEquals(List.of(0, 1), uses.get(0).bays());
        assertTrue(!uses.get(0).outside() && uses.get(0).faces() > 50);
        assertEquals(Math.PI * 0.0025, uses.get(0).areaM2(), 1e-12);
        assertEquals(List.of(0), uses.get(1).bays());
        assertTrue(uses.get(1).outside());
        // its middle lies 1.45 mm from a plane of the lattice, its radius is 1.6 mm
        assertEquals(2, uses.get(1).faces());
    }

    @Test
    void fewPlacesTellTheCourseOfAWay() {
        // along x, up along z, back along x: two corners
        List<Vec3> way = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            way.add(new Vec3(i, 0, 0));
        }
        for (int k = 1; k <= 10; k++) {
            way.add(new Vec3(10, 0, k));
        }
        for (int i = 9; i >= 0; i--) {
            way.add(new Vec3(i, 0, 10));
        }
        assertEquals(
                List.of(Vec3.ZERO, new Vec3(10, 0, 0), new Vec3(10, 0, 10), new Vec3(0, 0, 10)),
                WayPoints.of(way, 1.5));
        assertEquals(2, WayPoints.of(way.subList(0, 5), 1.5).size());
    }

    @Test
    void nothingIsToBeGainedWhereEverythingIsResolved() {
        VoxelGrid grid = VoxelizerLawTest.voxels(VoxelFixtures.plainBox(0.5, 0.34, 0.143), 0.01);
        FinerVoxels finer = FinerVoxels.of(grid, 0.9);
        assertEquals(0, finer.share());
        assertEquals(grid.cellCount(), finer.cells());
        assertEquals(grid.sizeM().x(), finer.size().xM(), 1e-15);
        assertEquals(0, FinerVoxels.lapsM2(grid));
    }
}
