package baymist.airflow;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/**
 * How the outflow of each group of bays splits over its vents: by Cd times open area, since all see one pressure and share one
 * Cd. The area of an opening is its exact one; within an opening its vent faces share by overlapped area.
 */
final class VentShares {
    private final int[] ventCell;
    private final double[] areaM2;
    private final double[] groupAreaM2;
    private final Components groups;

    /**
     * @param openingAreaM2 [openings] exact areas, m²
     * @param openFraction [openings] open share, 0..1
     */
    VentShares(VoxelGrid grid, double[] openingAreaM2, double[] openFraction, Components groups) {
        FaceSet faces = grid.faces();
        this.groups = groups;
        ventCell = faces.ventCell();
        areaM2 = new double[faces.vents()];
        groupAreaM2 = new double[groups.count()];
        double[] overlapped = new double[openingAreaM2.length];
        for (int v = 0; v < faces.vents(); v++) {
            overlapped[faces.ventOpening()[v]] += faces.ventAreaM2()[v];
        }
        for (int v = 0; v < faces.vents(); v++) {
            int o = faces.ventOpening()[v];
            double share = overlapped[o] > 0 ? faces.ventAreaM2()[v] / overlapped[o] : 0;
            areaM2[v] = share * openingAreaM2[o] * openFraction[o];
            groupAreaM2[groups.groupOf(ventCell[v])] += areaM2[v];
        }
    }

    /** Open area of a group to the outside, m². */
    double areaM2(int group) {
        return groupAreaM2[group];
    }

    /** Open area of one vent face, m². */
    double ventAreaM2(int vent) {
        return areaM2[vent];
    }

    /** Group that a vent face leads out of. */
    int groupOf(int vent) {
        return groups.groupOf(ventCell[vent]);
    }

    /** Outflow through each vent face when {@code outflowM3PerS} leaves {@code group}, m³/s, [vents]. */
    double[] split(int group, double outflowM3PerS) {
        double[] flux = new double[areaM2.length];
        if (outflowM3PerS != 0 && groupAreaM2[group] > 0) {
            for (int v = 0; v < flux.length; v++) {
                if (groups.groupOf(ventCell[v]) == group) {
                    flux[v] = outflowM3PerS * areaM2[v] / groupAreaM2[group];
                }
            }
        }
        return flux;
    }
}
