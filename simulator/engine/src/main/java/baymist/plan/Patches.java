package baymist.plan;

import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Surfels of structure gathered to some hundreds of patches: those of one part, one bay and one facing within a cube of a lattice.
 *
 * @param of patch of each surfel or -1, [surfels]; read-only
 * @param areaM2 [patches]; read-only
 */
record Patches(int[] of, double[] areaM2) {
    private static final int WANTED = 500;

    private record Key(int part, int bay, int facing, long x, long y, long z) {}

    static Patches of(VoxelGrid grid) {
        double all = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            all += grid.surfels().isStructure(s) ? grid.surfels().areaM2()[s] : 0;
        }
        double side = Math.sqrt(all / WANTED);
        Patches found = withSide(grid, side);
        // parts and bays cut more than area alone: coarser until the number fits
        for (int i = 0; i < 8 && found.areaM2.length > 1.2 * WANTED; i++) {
            side *= 1.2;
            found = withSide(grid, side);
        }
        return found;
    }

    private static Patches withSide(VoxelGrid grid, double sideM) {
        SurfelSet s = grid.surfels();
        Map<Key, Integer> known = new HashMap<>();
        List<Double> areas = new ArrayList<>();
        int[] of = new int[s.count()];
        Arrays.fill(of, -1);
        for (int i = 0; i < of.length; i++) {
            if (!s.isStructure(i)) {
                continue;
            }
            Vec3 at = new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]);
            Key key = new Key(
                    s.part()[i],
                    grid.bayOfCell(s.cell()[i]),
                    s.direction()[i],
                    (long) Math.floor(at.x() / sideM),
                    (long) Math.floor(at.y() / sideM),
                    (long) Math.floor(at.z() / sideM));
            Integer patch = known.get(key);
            if (patch == null) {
                patch = areas.size();
                known.put(key, patch);
                areas.add(0.0);
            }
            of[i] = patch;
            areas.set(patch, areas.get(patch) + s.areaM2()[i]);
        }
        return new Patches(of, areas.stream().mapToDouble(Double::doubleValue).toArray());
    }

    int count() {
        return areaM2.length;
    }

    /** Area-weighted means over the patches, [patches]. */
    double[] means(double[] value, SurfelSet s) {
        double[] mean = new double[areaM2.length];
        for (int i = 0; i < of.length; i++) {
            if (of[i] >= 0) {
                mean[of[i]] += value[i] * s.areaM2()[i] / areaM2[of[i]];
            }
        }
        return mean;
    }
}
