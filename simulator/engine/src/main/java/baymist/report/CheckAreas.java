package baymist.report;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.voxel.SurfelSet;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;

/** Inside surface by bay and part, m². */
final class CheckAreas {
    /** Area of the structure on surfels, [bays][parts], without closures and protected items. */
    final double[][] byBay;
    /** Area on surfels, [parts], protected items with the rest. */
    final double[] resolved;
    /** Area that no voxel faces, [parts]. */
    final double[] unresolved;

    CheckAreas(Cavity cavity, VoxelGrid grid) {
        int parts = cavity.parts().size();
        byBay = new double[grid.bays().size()][parts];
        resolved = new double[parts];
        unresolved = new double[parts];
        SurfelSet q = grid.surfels();
        for (int s = 0; s < q.count(); s++) {
            if (q.isStructure(s)) {
                byBay[grid.bayOfCell(q.cell()[s])][q.part()[s]] += q.areaM2()[s];
            }
            if (q.closure()[s] < 0) {
                resolved[q.part()[s]] += q.areaM2()[s];
            }
        }
        for (UnresolvedArea u : grid.unresolved()) {
            unresolved[u.part()] += u.areaM2();
        }
    }

    /** Area of the structure on surfels, m²; protected items are told by themselves. */
    static double resolvedM2(VoxelGrid g) {
        double sum = 0;
        for (int s = 0; s < g.surfels().count(); s++) {
            sum += g.surfels().isStructure(s) ? g.surfels().areaM2()[s] : 0;
        }
        return sum;
    }

    /** Area of the structure that no voxel faces, m². */
    static double unresolvedM2(Cavity cavity, VoxelGrid g) {
        return g.unresolved().stream()
                .filter(u -> cavity.parts().get(u.part()).kind() != PartKind.PROTECTED)
                .mapToDouble(UnresolvedArea::areaM2)
                .sum();
    }
}
