package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.scene.TargetSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;

/**
 * The places that stay bare, largest first.
 *
 * <p>Places smaller than {@link #smallM2} are gathered, when there are two or more of them, into one last entry of scattered spots, so that
 * the areas of all entries add up to the unreached area exactly.
 */
final class RegionFinder {
    /** A region below this many average surfels is a spot whatever its size: ASSUMED, one surfel tells nothing. */
    private static final double SPOT_SURFELS = 2;
    /** Areas that agree to this share of the whole count as equal, so that rounding doesn't decide the order. */
    private static final double EQUAL_SHARE = 1e-9;

    private final Cavity cavity;
    private final VoxelGrid grid;
    private final SurfelSet surfels;
    private final RegionGrouper grouper;
    private final RegionDescriber describer;
    private final double[] bareSeamM;
    private final EntryWays ways;
    private final double totalM2;
    private final double smallM2;

    /** @param bareSeamM bare length of seam by surfel, m, [surfels] */
    RegionFinder(
            Cavity cavity, VoxelGrid grid, Verdict[] verdict, TargetSpec target, double[] bareSeamM, EntryWays ways) {
        this.cavity = cavity;
        this.grid = grid;
        this.surfels = grid.surfels();
        this.grouper = new RegionGrouper(grid, verdict, target.bridgeM(), target.spotM());
        this.describer = new RegionDescriber(cavity, grid);
        this.bareSeamM = bareSeamM;
        this.ways = ways;
        double sum = 0;
        int count = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                sum += surfels.areaM2()[s];
                count++;
            }
        }
        totalM2 = sum;
        smallM2 = count == 0 ? 0 : Math.max(SPOT_SURFELS * sum / count, target.spotM() * target.spotM());
    }

    List<UnreachedRegion> find() {
        List<int[]> large = new ArrayList<>();
        List<int[]> small = new ArrayList<>();
        for (int[] component : grouper.places()) {
            if (!(areaM2(component) > 0)) {
                continue; // pieces without area are neither here nor there
            }
            (areaM2(component) < smallM2 ? small : large).add(component);
        }
        if (small.size() == 1) {
            large.addAll(small);
            small.clear();
        }
        large.sort(Comparator.comparingLong((int[] c) -> -Math.round(areaM2(c) / (EQUAL_SHARE * totalM2)))
                .thenComparingInt(c -> c[0]));
        List<String> labels = new RegionLabels(grid).labels(large);
        List<UnreachedRegion> regions = new ArrayList<>();
        for (int[] component : large) {
            int rank = regions.size();
            regions.add(region(rank + 1, labels.get(rank), component, describer.describe(component)));
        }
        if (!small.isEmpty()) {
            int[] all = small.stream().flatMapToInt(Arrays::stream).sorted().toArray();
            String where = describer.describeScattered(all, small.size());
            regions.add(region(regions.size() + 1, UnreachedRegion.SPOTS, all, where));
        }
        return List.copyOf(regions);
    }

    private double areaM2(int[] component) {
        double sum = 0;
        for (int s : component) {
            sum += surfels.areaM2()[s];
        }
        return sum;
    }

    private UnreachedRegion region(int id, String label, int[] component, String where) {
        double area = 0;
        double seam = 0;
        Vec3 moment = Vec3.ZERO;
        Box3 box = Box3.EMPTY;
        Map<Integer, Double> areaOfPart = new TreeMap<>();
        Map<Integer, Double> areaOfBay = new TreeMap<>();
        int nearest = component[0];
        for (int s : component) {
            double a = surfels.areaM2()[s];
            Vec3 centre = new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
            area += a;
            seam += bareSeamM[s];
            moment = moment.plus(a, centre);
            box = box.including(extent(s, centre));
            areaOfPart.merge(surfels.part()[s], a, Double::sum);
            areaOfBay.merge(grid.bayOfCell(surfels.cell()[s]), a, Double::sum);
            nearest = wayM(s) < wayM(nearest) ? s : nearest;
        }
        double way = wayM(nearest);
        return new UnreachedRegion(
                id,
                area,
                moment.times(1 / area),
                where,
                names(areaOfPart, p -> cavity.parts().get(p).name()),
                component,
                label,
                names(areaOfBay, b -> grid.bays().get(b).name()),
                box,
                seam,
                ways.name(surfels.cell()[nearest]),
                Double.isInfinite(way) ? Double.NaN : way);
    }

    /** Way from the nearest entry to a surfel, m. */
    private double wayM(int s) {
        int cell = surfels.cell()[s];
        Vec3 centre = new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
        return ways.wayM(cell) + grid.centre(cell).distance(centre);
    }

    /** A surfel as wide as its voxel in its own plane. */
    private Box3 extent(int s, Vec3 centre) {
        double[] n = {surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]};
        double[] half = new double[3];
        for (int axis = 0; axis < 3; axis++) {
            half[axis] = 0.5 * grid.sizeM().get(axis) * Math.sqrt(Math.max(0, 1 - n[axis] * n[axis]));
        }
        Vec3 h = new Vec3(half[0], half[1], half[2]);
        return new Box3(centre.minus(h), centre.plus(h));
    }

    private static List<String> names(Map<Integer, Double> areas, IntFunction<String> name) {
        return areas.entrySet().stream()
                .sorted(Map.Entry.<Integer, Double>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(e -> name.apply(e.getKey()))
                .toList();
    }
}
