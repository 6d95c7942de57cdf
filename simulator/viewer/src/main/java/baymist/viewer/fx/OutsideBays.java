package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.surface.Patch;
import baymist.surface.Surface;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Which bay lies behind a sheet that is seen from outside. */
final class OutsideBays {
    private final Surface surface;
    private final VoxelGrid grid;

    OutsideBays(Surface surface, VoxelGrid grid) {
        this.surface = surface;
        this.grid = grid;
    }

    /** The bay behind a triangle, or -1. */
    int behind(int triangle) {
        int c = 3 * triangle;
        double h = grid.sizeM().length() / Math.sqrt(3);
        for (double back = 0.5; back < 3; back += 0.5) {
            double[] p = new double[3];
            for (int k = 0; k < 3; k++) {
                int v = 3 * surface.corners()[c + k];
                for (int a = 0; a < 3; a++) {
                    p[a] += (surface.xyz()[v + a] - back * h * surface.normals()[v + a]) / 3;
                }
            }
            int cell = grid.cellHolding(new Vec3(p[0], p[1], p[2]));
            if (cell >= 0) {
                return grid.bayOfCell(cell);
            }
        }
        return -1;
    }

    /** A patch's triangles by the bay behind them; those with none behind go with bay -1. */
    Map<Integer, int[]> parted(Patch patch) {
        Map<Integer, List<Integer>> byBay = new TreeMap<>();
        for (int t = patch.firstTriangle(); t < patch.firstTriangle() + patch.triangleCount(); t++) {
            byBay.computeIfAbsent(behind(t), b -> new ArrayList<>()).add(t);
        }
        Map<Integer, int[]> parted = new TreeMap<>();
        byBay.forEach((bay, list) ->
                parted.put(bay, list.stream().mapToInt(Integer::intValue).toArray()));
        return parted;
    }
}
