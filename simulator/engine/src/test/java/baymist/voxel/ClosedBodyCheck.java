package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.numeric.Workers;
import baymist.scene.VoxelSpec;
import java.util.function.Predicate;

/** What must hold for the voxels of any closed structure with stated openings. */
final class ClosedBodyCheck {
    private ClosedBodyCheck() {}

    /** Voxels of about the given number of cells across each side of the bounding box. */
    static VoxelGrid coarse(Cavity cavity, int across) {
        var size = cavity.sheets().bounds().size();
        VoxelSpec voxel = new VoxelSpec(size.x() / across, size.y() / across, size.z() / across);
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(cavity, voxel, workers);
        }
    }

    /** Every opening has its exact area on faces or vents; no others do. */
    static void openingsAreExact(Cavity cavity, VoxelGrid grid, String what) {
        assertTrue(grid.leaks().isEmpty(), () -> what + ": " + grid.leaks());
        double[] area = new double[cavity.openings().size()];
        FaceSet f = grid.faces();
        for (int i = 0; i < f.opening().length; i++) {
            if (f.opening()[i] >= 0) {
                area[f.opening()[i]] += f.areaM2()[i];
            }
        }
        for (int i = 0; i < f.ventOpening().length; i++) {
            area[f.ventOpening()[i]] += f.ventAreaM2()[i];
        }
        for (int o = 0; o < area.length; o++) {
            Opening opening = cavity.openings().get(o);
            assertEquals(opening.areaM2(), area[o], 1e-9 * opening.areaM2(), what + ": " + opening.name());
        }
    }

    /** Resolved and unresolved area is that of the sheets with air on one side and twice that of those with air on both. */
    static void areaIsTheSumOfParts(Cavity cavity, VoxelGrid grid, Predicate<String> oneSided, String what) {
        double want = 0;
        for (int t = 0; t < cavity.cutSheets().triangleCount(); t++) {
            boolean one = oneSided.test(cavity.parts().get(cavity.partOfCut(t)).name());
            want += (one ? 1 : 2) * cavity.cutSheets().areaM2(t);
        }
        assertEquals(want, area(grid), 1e-9 * want, what);
    }

    static double area(VoxelGrid grid) {
        double found = grid.unresolvedAreaM2();
        for (int s = 0; s < grid.surfels().count(); s++) {
            found += grid.surfels().closure()[s] < 0 ? grid.surfels().areaM2()[s] : 0;
        }
        return found;
    }
}
