package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.voxel.SurfelSet;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/** Film on protected items against their limits. */
public final class ItemAssessor {
    /** Share of the mean surfel below which one says nothing about the film's thickness. */
    private static final double SLIVER = 0.01;

    private ItemAssessor() {}

    /**
     * The dose of every item that a computed bay holds, in the order of the scene.
     *
     * @param filmM wet film build on each surfel, m, [surfels]
     */
    public static List<ItemDose> assess(Scene scene, Cavity cavity, VoxelGrid grid, double[] filmM) {
        List<ItemDose> doses = new ArrayList<>();
        for (ProtectedItem item : scene.protectedItems()) {
            if (grid.part() != null && !touches(grid, cavity.partIndex(item.partName()))) {
                continue; // in a bay that is not computed
            }
            doses.add(dose(
                    item,
                    cavity.partIndex(item.partName()),
                    grid,
                    filmM,
                    scene.product().densityKgPerM3()));
        }
        return doses;
    }

    private static ItemDose dose(ProtectedItem item, int part, VoxelGrid grid, double[] filmM, double density) {
        SurfelSet surfels = grid.surfels();
        double area = 0;
        double volume = 0;
        int count = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isProtected(s) && surfels.part()[s] == part) {
                area += surfels.areaM2()[s];
                volume += surfels.areaM2()[s] * filmM[s];
                count++;
            }
        }
        double most = 0;
        for (int s = 0; s < surfels.count(); s++) {
            boolean mine = surfels.isProtected(s) && surfels.part()[s] == part;
            if (mine && surfels.areaM2()[s] >= SLIVER * area / count) {
                most = Math.max(most, filmM[s]);
            }
        }
        boolean masked = item.masked();
        return new ItemDose(
                item.name(),
                item.limitM(),
                area,
                unresolvedM2(grid, part),
                masked || area == 0 ? 0 : volume / area,
                masked ? 0 : most,
                masked,
                !masked && most > item.limitM(),
                volume * density);
    }

    private static boolean touches(VoxelGrid grid, int part) {
        SurfelSet surfels = grid.surfels();
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isProtected(s) && surfels.part()[s] == part) {
                return true;
            }
        }
        return unresolvedM2(grid, part) > 0;
    }

    private static double unresolvedM2(VoxelGrid grid, int part) {
        return grid.unresolved().stream()
                .filter(u -> u.part() == part)
                .mapToDouble(UnresolvedArea::areaM2)
                .sum();
    }

    /** Which surfels lie under a mask, [surfels]. */
    public static boolean[] masked(Scene scene, Cavity cavity, VoxelGrid grid) {
        boolean[] maskedPart = new boolean[cavity.parts().size()];
        for (ProtectedItem item : scene.protectedItems()) {
            int part = cavity.partIndex(item.partName());
            if (part >= 0) {
                maskedPart[part] = item.masked();
            }
        }
        SurfelSet surfels = grid.surfels();
        boolean[] masked = new boolean[surfels.count()];
        for (int s = 0; s < masked.length; s++) {
            masked[s] = surfels.isProtected(s) && maskedPart[surfels.part()[s]];
        }
        return masked;
    }
}
