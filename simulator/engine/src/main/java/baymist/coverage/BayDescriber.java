package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.geom.Box3;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Says of each bay between which members it lies: "between rib 1 and rib 2".
 *
 * <p>Only axes along which the bays differ are told, the one along which they differ most first. A member bounds a bay at
 * one end if it has the most area of all parts that look back along the axis from the outer third of the bay there.
 */
public final class BayDescriber {
    /** Bays differ along an axis when their middles lie farther apart than this share of the cavity's length (ASSUMED). */
    private static final double APART = 0.15;

    /** Which share of a bay's length counts as its end, and how squarely a sheet must look along the axis: ASSUMED. */
    private static final double END = 0.34;

    private static final double LOOKS_ALONG = 0.7;

    private final Cavity cavity;
    private final VoxelGrid grid;
    private final BaySurfels ofBays;

    private BayDescriber(Cavity cavity, VoxelGrid grid) {
        this.cavity = cavity;
        this.grid = grid;
        this.ofBays = new BaySurfels(grid);
    }

    /** A description of each bay in the order of the grid's bays; empty for a cavity of one bay. */
    public static List<String> describe(Cavity cavity, VoxelGrid grid) {
        BayDescriber d = new BayDescriber(cavity, grid);
        List<Integer> axes = d.tellingAxes();
        List<String> all = new ArrayList<>();
        for (int bay = 0; bay < grid.bays().size(); bay++) {
            List<String> words = new ArrayList<>();
            for (int axis : axes) {
                String between = d.between(bay, axis);
                if (!between.isEmpty()) {
                    words.add(between);
                }
            }
            all.add(String.join(", ", words));
        }
        return all;
    }

    private List<Integer> tellingAxes() {
        List<Box3> boxes = new ArrayList<>();
        Box3 whole = Box3.EMPTY;
        for (var bay : grid.bays()) {
            if (!bay.bounds().isEmpty()) {
                boxes.add(bay.bounds());
                whole = whole.including(bay.bounds());
            }
        }
        TreeMap<Double, Integer> bySpread = new TreeMap<>();
        for (int axis = 0; axis < 3 && boxes.size() > 1; axis++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (Box3 b : boxes) {
                low = Math.min(low, b.centre().get(axis));
                high = Math.max(high, b.centre().get(axis));
            }
            if (high - low > APART * whole.size().get(axis)) {
                bySpread.putIfAbsent(low - high, axis);
            }
        }
        return new ArrayList<>(bySpread.values());
    }

    private String between(int bay, int axis) {
        String low = member(bay, axis, false);
        String high = member(bay, axis, true);
        if (Objects.equals(low, high)) {
            return "";
        }
        if (low != null && high != null) {
            return "between " + Places.withArticle(low) + " and " + Places.withArticle(high);
        }
        return low != null ? "beyond " + Places.withArticle(low) : "up to " + Places.withArticle(String.valueOf(high));
    }

    private @Nullable String member(int bay, int axis, boolean high) {
        Box3 box = grid.bays().get(bay).bounds();
        if (box.isEmpty()) {
            return null;
        }
        SurfelSet q = grid.surfels();
        double from = high
                ? box.max().get(axis) - END * box.size().get(axis)
                : box.min().get(axis);
        // the sheet may stand up to a voxel beyond the cells that face it
        double slack = grid.sizeM().get(axis);
        double to = high
                ? box.max().get(axis)
                : box.min().get(axis) + END * box.size().get(axis);
        double[] normals = axis == 0 ? q.normalX() : axis == 1 ? q.normalY() : q.normalZ();
        double[] centres = axis == 0 ? q.centreX() : axis == 1 ? q.centreY() : q.centreZ();
        Map<Integer, Double> areas = new TreeMap<>();
        for (int i = ofBays.start(bay); i < ofBays.end(bay); i++) {
            int s = ofBays.at(i);
            boolean looks = high ? normals[s] < -LOOKS_ALONG : normals[s] > LOOKS_ALONG;
            if (looks
                    && centres[s] >= from - slack
                    && centres[s] <= to + slack
                    && cavity.parts().get(q.part()[s]).kind() != PartKind.STRINGER) {
                areas.merge(q.part()[s], q.areaM2()[s], Double::sum);
            }
        }
        return areas.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(e -> cavity.parts().get(e.getKey()).name())
                .orElse(null);
    }
}
