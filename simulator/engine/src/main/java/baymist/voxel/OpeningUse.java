package baymist.voxel;

import baymist.cavity.Cavity;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * How the voxels hold an opening.
 *
 * @param opening index in the cavity
 * @param bays indices of the bays that it leads from or to, ascending
 * @param outside whether it leads outside
 * @param faces voxel faces that carry it; 0 = not held, treated as closed
 * @param areaM2 area of those entries, m²: the outline's, or 0
 */
public record OpeningUse(int opening, List<Integer> bays, boolean outside, int faces, double areaM2) {
    public OpeningUse {
        bays = List.copyOf(bays);
    }

    /** One for each opening of the cavity, in its order. */
    public static List<OpeningUse> of(Cavity cavity, VoxelGrid grid) {
        int n = cavity.openings().size();
        FaceSet f = grid.faces();
        List<SortedSet<Integer>> bays = new ArrayList<>();
        for (int o = 0; o < n; o++) {
            bays.add(new TreeSet<>());
        }
        int[] faces = new int[n];
        double[] area = new double[n];
        boolean[] outside = new boolean[n];
        for (int e = 0; e < f.count(); e++) {
            int o = f.opening()[e];
            if (o >= 0) {
                faces[o]++;
                area[o] += f.areaM2()[e];
                bays.get(o).add(grid.bayOfCell(f.low()[e]));
                bays.get(o).add(grid.bayOfCell(f.high()[e]));
            }
        }
        for (int e = 0; e < f.vents(); e++) {
            int o = f.ventOpening()[e];
            faces[o]++;
            area[o] += f.ventAreaM2()[e];
            outside[o] = true;
            bays.get(o).add(grid.bayOfCell(f.ventCell()[e]));
        }
        List<OpeningUse> uses = new ArrayList<>();
        for (int o = 0; o < n; o++) {
            uses.add(new OpeningUse(o, new ArrayList<>(bays.get(o)), outside[o], faces[o], area[o]));
        }
        return uses;
    }
}
