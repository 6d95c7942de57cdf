package baymist.report;

import baymist.cavity.Cavity;
import baymist.voxel.SurfelSet;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;

/** Inside surface by bay and part, m². */
final class CheckAreas {
    /** Area on surfels, [bays][parts], closures left out. */
    final double[][] byBay;
    /** Area on surfels, [parts]. */
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
            if (q.closure()[s] < 0) {
                byBay[grid.bayOfCell(q.cell()[s])][q.part()[s]] += q.areaM2()[s];
                resolved[q.part()[s]] += q.areaM2()[s];
            }
        }
        for (UnresolvedArea u : grid.unresolved()) {
            unresolved[u.part()] += u.areaM2();
        }
    }

    static double resolvedM2(VoxelGrid g) {
        double sum = 0;
        for (int s = 0; s < g.surfels().count(); s++) {
            sum += g.surfels().closure()[s] < 0 ? g.surfels().areaM2()[s] : 0;
        }
        return sum;
    }
}
