package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.VoxelSpec;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class VoxelDeterminismTest {
    private static List<Integer> hash(Cavity cavity, double h, int threads) {
        try (Workers workers = new Workers(threads)) {
            VoxelGrid g = Voxelizer.voxelize(cavity, new VoxelSpec(h, h, h), workers);
            FaceSet f = g.faces();
            SurfelSet s = g.surfels();
            double[] volume = new double[g.cellCount()];
            int[] bay = new int[g.cellCount()];
            for (int c = 0; c < volume.length; c++) {
                volume[c] = g.volumeM3(c);
                bay[c] = g.bayOfCell(c) + 7 * g.latticeOfCell(c);
            }
            return List.of(
                    Arrays.hashCode(volume),
                    Arrays.hashCode(bay),
                    Arrays.hashCode(f.low()),
                    Arrays.hashCode(f.high()),
                    Arrays.hashCode(f.areaM2()),
                    Arrays.hashCode(f.opening()),
                    Arrays.hashCode(f.ventCell()),
                    Arrays.hashCode(f.ventAreaM2()),
                    Arrays.hashCode(s.cell()),
                    Arrays.hashCode(s.direction()),
                    Arrays.hashCode(s.part()),
                    Arrays.hashCode(s.closure()),
                    Arrays.hashCode(s.areaM2()),
                    Arrays.hashCode(s.normalX()),
                    Arrays.hashCode(s.centreZ()),
                    Arrays.hashCode(s.neighbour()),
                    g.bays().hashCode(),
                    g.unresolved().hashCode());
        }
    }

    @Test
    void sameHashForOneTwoThreeWorkersAndOnASecondRun() {
        for (Cavity cavity : List.of(
                VoxelFixtures.ribbedBox(0.5, 0.34, 0.143, 0.23, 0.05, 0.0016),
                VoxelFixtures.sphere(0.1, new Vec3(0.01, 0.02, 0.03), 48).cavity("ball"))) {
            List<Integer> one = hash(cavity, 0.011, 1);
            assertEquals(one, hash(cavity, 0.011, 1));
            assertEquals(one, hash(cavity, 0.011, 2));
            assertEquals(one, hash(cavity, 0.011, 3));
            assertNotEquals(one, hash(cavity, 0.012, 1));
        }
    }
}
