package baymist.run;

import baymist.cavity.Cavity;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what arrives on each protected item (or on its mask) in each pass, from jets and as fog. Fog counts for the pass in or after which it
 * settles, though an earlier one may have made it. What runs on to an item or off it is not seen here.
 */
final class ItemArrivals {
    private final List<String> items = new ArrayList<>();
    private final List<String> passes = new ArrayList<>();
    /** Item of each surfel or -1, [surfels]. */
    private final int[] itemOf;
    /** Deposit of fog at the last look, kg, [surfels]. */
    private final double[] seenKg;
    /** Kilograms from jets and as fog, [items][passes][2]. */
    private final double[][][] kg;

    private int pass;

    ItemArrivals(Scene scene, Cavity cavity, VoxelGrid grid) {
        SurfelSet surfels = grid.surfels();
        int[] itemOfPart = new int[cavity.parts().size()];
        Arrays.fill(itemOfPart, -1);
        for (ProtectedItem item : scene.protectedItems()) {
            int part = cavity.partIndex(item.partName());
            if (part >= 0) {
                itemOfPart[part] = items.size();
            }
            items.add(item.name());
        }
        scene.passes().forEach(p -> passes.add(p.name()));
        itemOf = new int[surfels.count()];
        for (int s = 0; s < itemOf.length; s++) {
            itemOf[s] = surfels.isProtected(s) ? itemOfPart[surfels.part()[s]] : -1;
        }
        seenKg = new double[itemOf.length];
        kg = new double[items.size()][Math.max(1, passes.size())][2];
    }

    /** Adds what a moment brought. */
    void note(@Nullable SprayHits hits, double[] depositedKg, Moment moment) {
        if (items.isEmpty()) {
            return;
        }
        pass = moment.station() == null ? pass : moment.station().pass();
        if (hits != null) {
            for (int i = 0; i < hits.hitSurfel().length; i++) {
                int item = itemOf[hits.hitSurfel()[i]];
                if (item >= 0) {
                    kg[item][pass][0] += hits.hitKgPerS()[i] * moment.durationS();
                }
            }
        }
        for (int s = 0; s < itemOf.length; s++) {
            if (itemOf[s] >= 0) {
                kg[itemOf[s]][pass][1] += depositedKg[s] - seenKg[s];
                seenKg[s] = depositedKg[s];
            }
        }
    }

    /** What arrived, item by item, passes in turn; passes that brought nothing are left out. */
    List<Consequences.Arrival> arrivals() {
        List<Consequences.Arrival> found = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            for (int p = 0; p < kg[i].length; p++) {
                if (kg[i][p][0] + kg[i][p][1] > 0) {
                    String name = passes.isEmpty() ? "fog at the start" : passes.get(p);
                    found.add(new Consequences.Arrival(items.get(i), name, kg[i][p][0], kg[i][p][1]));
                }
            }
        }
        return found;
    }
}
