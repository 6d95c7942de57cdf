package baymist.coverage;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.voxel.PartOfWhole;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Names regions by their place, so that a place keeps its name from run to run: number of the bay, number of the part that holds most of
 * the region, and a letter a to i for the ninth of that part's box in that bay which its middle lies in.
 */
final class RegionLabels {
    private final VoxelGrid grid;
    private final SurfelSet surfels;
    /** Box of each part in each bay, by {bay, part}. */
    private final Map<List<Integer>, Box3> boxes = new HashMap<>();

    RegionLabels(VoxelGrid grid) {
        this.grid = grid;
        this.surfels = grid.surfels();
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                boxes.merge(place(s), Box3.EMPTY.including(centre(s)), Box3::including);
            }
        }
    }

    /** Labels of regions, largest first; of two at one place the smaller gets a number. */
    List<String> labels(List<int[]> regions) {
        List<String> labels = new ArrayList<>();
        Set<String> used = new HashSet<>();
        for (int[] region : regions) {
            String label = label(region);
            String name = label;
            for (int n = 2; !used.add(name); n++) {
                name = label + n;
            }
            labels.add(name);
        }
        return labels;
    }

    private String label(int[] region) {
        Map<List<Integer>, Double> areas =
                new TreeMap<>((a, b) -> !a.get(0).equals(b.get(0)) ? a.get(0) - b.get(0) : a.get(1) - b.get(1));
        for (int s : region) {
            areas.merge(place(s), surfels.areaM2()[s], Double::sum);
        }
        List<Integer> most = List.of();
        double area = -1;
        for (Map.Entry<List<Integer>, Double> e : areas.entrySet()) {
            // a hair more, so that rounding does not choose between equal halves
            if (e.getValue() > area * (1 + 1e-9)) {
                most = e.getKey();
                area = e.getValue();
            }
        }
        Vec3 moment = Vec3.ZERO;
        for (int s : region) {
            moment = place(s).equals(most) ? moment.plus(surfels.areaM2()[s], centre(s)) : moment;
        }
        PartOfWhole part = grid.part();
        int bay = part == null ? most.get(0) : part.computed().get(most.get(0));
        return (bay + 1) + "." + (most.get(1) + 1)
                + letter(moment.times(1 / area), boxes.getOrDefault(most, Box3.EMPTY));
    }

    private static char letter(Vec3 at, Box3 box) {
        int thin = 0;
        for (int axis = 1; axis < 3; axis++) {
            thin = box.size().get(axis) < box.size().get(thin) ? axis : thin;
        }
        int u = thin == 0 ? 1 : 0;
        int v = thin == 2 ? 1 : 2;
        return (char) ('a' + 3 * third(at, box, v) + third(at, box, u));
    }

    private static int third(Vec3 at, Box3 box, int axis) {
        double length = box.size().get(axis);
        double share = length > 0 ? (at.get(axis) - box.min().get(axis)) / length : 0.5;
        return Math.max(0, Math.min(2, (int) (3 * share)));
    }

    private List<Integer> place(int s) {
        return List.of(grid.bayOfCell(surfels.cell()[s]), surfels.part()[s]);
    }

    private Vec3 centre(int s) {
        return new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
    }
}
